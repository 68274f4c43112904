import type { SpecError } from "../errors/errors.js";
import { drawingError, quoted } from "./drawing-issue.js";
import { readStyleSheets, type Styled, styledProperties } from "./style.js";
import { type DrawingElement, type DrawingTree, withAncestors } from "./xml.js";

/** Properties that move or shape a line where a style sets them; in attributes of the same name they are read. */
const SHAPING = new Set(
  "transform transform-origin transform-box translate rotate scale zoom offset offset-path d x y cx cy r rx ry width height".split(
    " ",
  ),
);
const CUTTING = ["clip-path", "mask", "clip"] as const;
const UNCUT = new Set(["", "none", "auto"]);
const LOOKED_AT = new Set([...SHAPING, ...CUTTING, "display", "visibility"]);
const ANIMATIONS = new Set(["animate", "animateTransform", "animateMotion", "set"]);
const GROUPS = new Set(["g", "a"]);

/** What the whole file says about how its elements look. */
export interface DrawingLook {
  /** What styles declare for an element, by property. */
  styled(element: DrawingElement): ReadonlyMap<string, Styled>;
  /** Elements that another one inside them moves as time goes. */
  readonly animated: ReadonlySet<DrawingElement>;
}

export function lookOf({ elements, styleSheets }: DrawingTree): DrawingLook {
  const rules = readStyleSheets(styleSheets, LOOKED_AT);
  const known = new Map<DrawingElement, ReadonlyMap<string, Styled>>();
  return {
    styled(element) {
      const found = known.get(element) ?? styledProperties(element, rules);
      known.set(element, found);
      return found;
    },
    animated: new Set(
      elements.flatMap(({ tag, parent }) => (ANIMATIONS.has(tag) && parent !== undefined ? [parent] : [])),
    ),
  };
}

/** What an element is called in messages: its id, or its kind where it has none. */
export function nameOf(element: DrawingElement): string {
  return element.id === undefined || element.id === "" ? `<${element.tag}>` : quoted(element.id);
}

/**
 * Why an element cannot be read as it is drawn, or undefined where it can: it is hidden, clipped, kept aside to be drawn
 * elsewhere, or shaped by a style. Better to say so than to cut a blade to a line that nobody saw.
 */
export function whyNotRead(element: DrawingElement, look: DrawingLook): SpecError | undefined {
  const name = nameOf(element);
  const chain = withAncestors(element);
  for (const here of chain) {
    const isRoot = here.parent === undefined;
    if (here !== element && !isRoot && !GROUPS.has(here.tag)) {
      return drawingError(
        "drawing-element-aside",
        "The element {id} stands inside {around}, which is not read. Move it to the top of the drawing, or ungroup it.",
        { id: name, around: here.tag === "" ? "another format" : `<${quoted(here.tag)}>` },
      );
    }
    const shaped = shapingOf(here, look, isRoot);
    if (shaped !== undefined) {
      return drawingError(
        "drawing-style-moves",
        "The element {id} is moved or shaped by {property}, which is not read. Save the drawing as plain SVG.",
        { id: name, property: shaped },
      );
    }
    if (valuesOf(here, "display", look).includes("none")) return hidden(name);
    const cut = CUTTING.find((key) => valuesOf(here, key, look).some((value) => !UNCUT.has(value)));
    if (cut !== undefined) {
      return drawingError(
        "drawing-element-clipped",
        "The element {id} is cut by a {cut}, which is not read. Release the clip or mask in the editor.",
        { id: name, cut },
      );
    }
  }
  return isInvisible(chain, look) ? hidden(name) : undefined;
}

/** What moves or shapes an element beside its own attributes. */
function shapingOf(element: DrawingElement, look: DrawingLook, isRoot: boolean): string | undefined {
  if (look.animated.has(element)) return "an animation";
  const styled = [...look.styled(element).keys()].find((key) => SHAPING.has(key));
  if (styled !== undefined) return `the style "${styled}"`;
  if (element.attributes.has("transform-origin")) return "a transform-origin";
  // On the root it turns the whole page, in browsers only.
  return isRoot && element.attributes.has("transform") ? "a transform of the whole page" : undefined;
}

/** The values that a property of an element may have; an attribute counts where no style surely holds. */
function valuesOf(element: DrawingElement, key: string, look: DrawingLook): string[] {
  const styled = look.styled(element).get(key);
  const attribute = styled?.isCertain === true ? [] : [element.attributes.get(key) ?? ""];
  return [...attribute, ...(styled?.values ?? [])].map((value) => value.trim().toLowerCase());
}

function hidden(id: string): SpecError {
  return drawingError(
    "drawing-element-hidden",
    "The element {id} is hidden in the drawing. Show it, or name the one that is meant.",
    { id },
  );
}

/** `visibility` is inherited: the nearest word about it holds. */
function isInvisible(chain: readonly DrawingElement[], look: DrawingLook): boolean {
  for (const element of chain) {
    const words = valuesOf(element, "visibility", look);
    if (words.some((word) => word === "hidden" || word === "collapse")) return true;
    if (words.every((word) => word !== "" && word !== "inherit")) return false;
  }
  return false;
}
