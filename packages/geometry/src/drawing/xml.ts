import { SaxesParser } from "saxes";
import { count } from "../errors/issue.js";
import { drawingError, quoted, styleOutside } from "./drawing-issue.js";
import { MOST_CHARACTERS, MOST_DEPTH, MOST_ELEMENTS } from "./limits.js";

const SVG = "http://www.w3.org/2000/svg";

/** One element of the file. Elements of other vocabularies (an editor's own notes) have an empty tag. */
export interface DrawingElement {
  readonly tag: string;
  readonly id: string | undefined;
  /** The name that an editor shows beside the id. */
  readonly label: string | undefined;
  /** Attributes without a namespace. */
  readonly attributes: ReadonlyMap<string, string>;
  readonly parent: DrawingElement | undefined;
}

/** The elements of an SVG file in its own order, the root first, and the texts of its style sheets. */
export interface DrawingTree {
  readonly root: DrawingElement;
  readonly elements: readonly DrawingElement[];
  readonly styleSheets: readonly string[];
}

/**
 * Reads an SVG file as XML. Nothing is fetched and no entity is replaced but the five of XML itself; a document type
 * that declares something of its own is refused.
 *
 * @throws {SpecError} `drawing-empty`, `drawing-too-large`, `drawing-not-xml`, `drawing-not-svg`,
 *   `drawing-doctype`, `drawing-style-outside`, `drawing-too-deep`.
 */
export function readTree(text: string): DrawingTree {
  if (text.trim() === "") throw drawingError("drawing-empty", "The drawing is empty. Save it again as SVG.");
  if (text.length > MOST_CHARACTERS) {
    throw drawingError(
      "drawing-too-large",
      "The drawing has {size} characters; {most} are the most. Save only the outline, without pictures in it.",
      { size: count(text.length), most: count(MOST_CHARACTERS) },
    );
  }
  const elements: DrawingElement[] = [];
  const open: DrawingElement[] = [];
  const styleSheets: string[] = [];
  const parser = new SaxesParser({ xmlns: true, position: true });
  parser.on("error", (error) => {
    throw drawingError(
      "drawing-not-xml",
      "The drawing cannot be read as XML at its line {line}: {reason}. Save it again as plain SVG.",
      { line: count(parser.line), reason: quoted(error.message.replace(/^[\d:\s]+/u, ""), 120) },
    );
  });
  parser.on("doctype", (doctype) => {
    // Editors write a bare line that names the format; only a part in brackets can declare entities.
    if (!/[[<&%]/u.test(doctype)) return;
    throw drawingError(
      "drawing-doctype",
      "The drawing declares entities or rules of its own in its DOCTYPE, which are not read. Save it as plain SVG.",
    );
  });
  parser.on("processinginstruction", ({ target }) => {
    if (target === "xml-stylesheet") throw styleOutside();
  });
  parser.on("opentag", (tag) => {
    const ours = tag.uri === SVG || (tag.uri === "" && tag.prefix === "");
    const attributes = new Map<string, string>();
    let label: string | undefined;
    for (const { prefix, local, value } of Object.values(tag.attributes)) {
      if (prefix === "") attributes.set(local, value);
      else if (local === "label") label = value;
    }
    const element: DrawingElement = {
      tag: ours ? tag.local : "",
      id: attributes.get("id"),
      label,
      attributes,
      parent: open.at(-1),
    };
    elements.push(element);
    open.push(element);
    if (element.tag === "style") styleSheets.push("");
    if (elements.length > MOST_ELEMENTS || open.length > MOST_DEPTH) {
      throw drawingError(
        "drawing-too-deep",
        "The drawing has more than {elements} elements, or more than {depth} inside one another. Save only the outline.",
        { elements: count(MOST_ELEMENTS), depth: count(MOST_DEPTH) },
      );
    }
  });
  parser.on("closetag", () => open.pop());
  const addText = (part: string): void => {
    if (open.at(-1)?.tag === "style") styleSheets.push(`${styleSheets.pop() ?? ""}${part}`);
  };
  parser.on("text", addText);
  parser.on("cdata", addText);
  parser.write(text).close();
  const [root] = elements;
  if (root?.tag !== "svg") {
    throw drawingError("drawing-not-svg", "The drawing is XML but not SVG. Save it as SVG in the editor.");
  }
  return { root, elements, styleSheets };
}

/** An element and those around it, from the inside out. */
export function withAncestors(element: DrawingElement): DrawingElement[] {
  const chain: DrawingElement[] = [];
  for (let here: DrawingElement | undefined = element; here !== undefined; here = here.parent)
    chain.push(here);
  return chain;
}
