import type { SpecError } from "../errors/errors.js";
import { count } from "../errors/issue.js";
import type { Segment } from "../plane/segment.js";
import { type Affine, affine, compose } from "./affine.js";
import { drawingError, quoted } from "./drawing-issue.js";
import { type DrawingLook, lookOf, nameOf, whyNotRead } from "./not-read.js";
import { isShape, shapeCommands } from "./shapes.js";
import { strokesOf } from "./strokes.js";
import { readTransform } from "./transform-list.js";
import { readViewport, type Viewport } from "./viewport.js";
import { type DrawingElement, type DrawingTree, readTree, withAncestors } from "./xml.js";

/** An SVG drawing that was read as far as its elements and its size; lines are read when they are asked for. */
export interface Drawing {
  readonly tree: DrawingTree;
  readonly look: DrawingLook;
  readonly viewport: Viewport;
}

/**
 * Reads a drawing from the text of its SVG file.
 *
 * @throws {SpecError} where it is not SVG, too large, or its size cannot be read; see {@link readTree} and
 *   {@link readViewport}. The path of its issues is empty.
 *
 * @example
 * const drawing = readDrawing('<svg xmlns="http://www.w3.org/2000/svg" width="30mm" viewBox="0 0 30 10"><path id="a" d="M0 0H30"/></svg>');
 * strokeOf(drawing, findElement(drawing, "a"), drawing.viewport.unit); // one line, 30 mm long
 */
export function readDrawing(svg: string): Drawing {
  const tree = readTree(svg);
  return {
    tree,
    look: lookOf(tree),
    viewport: readViewport(tree.root),
  };
}

/**
 * The shape with this id, or the one shape inside the group with this id.
 *
 * @throws {SpecError} `drawing-no-such-id`, `drawing-id-twice`, `drawing-several-paths`, `drawing-not-a-line`.
 */
export function findElement(drawing: Drawing, id: string): DrawingElement {
  const [element, ...others] = drawing.tree.elements.filter((candidate) => candidate.id === id);
  if (element === undefined) throw noSuchId(drawing, id);
  if (others.length > 0) {
    throw drawingError(
      "drawing-id-twice",
      "The drawing has {count} elements with the id {id}. Give each its own id in the editor.",
      { count: count(others.length + 1), id: quoted(id) },
    );
  }
  if (isShape(element)) return element;
  if (element.tag === "g" || element.tag === "a") {
    const inside = drawing.tree.elements.filter((candidate) => withAncestors(candidate).includes(element));
    return onlyShape(inside, drawing, "The group {id}", id);
  }
  if (element.tag === "use") throw clone(quoted(id));
  throw drawingError(
    "drawing-not-a-line",
    "The element {id} is a <{tag}>, not a path or shape. Name the path itself, or turn it into a path in the editor.",
    { id: quoted(id), tag: element.tag === "" ? "part of another format" : element.tag },
  );
}

/**
 * The only shape that the drawing shows.
 *
 * @throws {SpecError} `drawing-several-paths`, `drawing-no-path`, `drawing-element-clone`
 */
export function findOnlyShape(drawing: Drawing): DrawingElement {
  return onlyShape(drawing.tree.elements, drawing, "The drawing", "");
}

function onlyShape(
  elements: readonly DrawingElement[],
  drawing: Drawing,
  whole: string,
  id: string,
): DrawingElement {
  // What is hidden, or kept to be drawn elsewhere, is not part of the picture.
  const isShown = (element: DrawingElement): boolean => {
    const why = whyNotRead(element, drawing.look)?.issues[0]?.code;
    return why !== "drawing-element-hidden" && why !== "drawing-element-aside";
  };
  const shown: DrawingElement[] = [];
  for (const element of elements) {
    if ((isShape(element) || element.tag === "use") && isShown(element)) shown.push(element);
    if (shown.length > MOST_NAMES) break;
  }
  const [only, ...others] = shown;
  if (only === undefined) {
    throw drawingError("drawing-no-path", `${whole} shows no path. Draw the outline, and save it as SVG.`, {
      id: quoted(id),
    });
  }
  if (others.length > 0) {
    throw drawingError(
      "drawing-several-paths",
      `${whole} has several paths: {names}. Join them into one, or say which is meant by its id.`,
      { id: quoted(id), names: namesOf(shown) },
    );
  }
  if (only.tag === "use") throw clone(nameOf(only));
  return only;
}

function clone(id: string): SpecError {
  return drawingError(
    "drawing-element-clone",
    "The element {id} is a clone (<use>) of another one, which is not read. Unlink the clone in the editor.",
    { id },
  );
}

function noSuchId(drawing: Drawing, id: string): SpecError {
  const labelled = drawing.tree.elements.find(({ label }) => label === id);
  if (labelled !== undefined) {
    return drawingError(
      "drawing-no-such-id",
      "The drawing has no element with the id {id}; {other} has it as its label only. Set its id, or write {other} here.",
      { id: quoted(id), other: nameOf(labelled) },
    );
  }
  const shapes = drawing.tree.elements.filter(isShape);
  return shapes.length === 0
    ? drawingError("drawing-no-such-id", "The drawing has no element with the id {id}, nor any path.", {
        id: quoted(id),
      })
    : drawingError("drawing-no-such-id", "The drawing has no element with the id {id}. It has: {names}.", {
        id: quoted(id),
        names: namesOf(shapes),
      });
}

const MOST_NAMES = 6;

function namesOf(elements: readonly DrawingElement[]): string {
  const names = elements.slice(0, MOST_NAMES).map(nameOf);
  return `${names.join(", ")}${elements.length > MOST_NAMES ? ", …" : ""}`;
}

/**
 * The one connected stroke of an element, in mm with y up, from the drawing's origin.
 *
 * @param unit - mm per unit of the drawing, along x and y.
 * @throws {SpecError} where the element cannot be read as drawn, has no lines, or lifts the pen.
 */
export function strokeOf(
  drawing: Drawing,
  element: DrawingElement,
  unit: { readonly x: number; readonly y: number },
): readonly Segment[] {
  const refusal = whyNotRead(element, drawing.look);
  if (refusal !== undefined) throw refusal;
  const id = nameOf(element);
  const map = compose(affine(unit.x, 0, 0, -unit.y, 0, 0), mapToRoot(element));
  const [stroke, ...others] = strokesOf(shapeCommands(element), map, id);
  if (stroke === undefined) {
    throw drawingError("drawing-path-empty", "The element {id} has no lines. Draw it, or name another.", {
      id,
    });
  }
  if (others.length > 0) {
    throw drawingError(
      "drawing-several-strokes",
      "The element {id} has {count} separate strokes. Break it apart in the editor and name the one that is meant.",
      { id, count: count(others.length + 1) },
    );
  }
  return stroke;
}

/** From an element's own coordinates to those of the drawing. */
function mapToRoot(element: DrawingElement): Affine {
  return withAncestors(element)
    .filter(({ parent }) => parent !== undefined)
    .map(({ attributes }) => readTransform(attributes.get("transform") ?? ""))
    .reduce((inner, outer) => compose(outer, inner));
}
