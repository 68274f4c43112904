import { count } from "../errors/issue.js";
import { drawingError } from "./drawing-issue.js";
import { MOST_RULES } from "./limits.js";
import type { DrawingElement } from "./xml.js";

/** One rule of a style sheet: its selectors as written, and what it declares. */
export interface StyleRule {
  readonly selectors: readonly string[];
  readonly declarations: ReadonlyMap<string, string>;
}

/**
 * The rules of a style sheet that declare at least one of the properties asked about; those inside a condition
 * (`@media`) as if it held.
 *
 * @throws {SpecError} `drawing-style-too-long`
 */
export function readStyleSheet(text: string, properties: ReadonlySet<string>): StyleRule[] {
  const rules: StyleRule[] = [];
  for (const part of withoutComments(text).split("}")) {
    const brace = part.lastIndexOf("{");
    if (brace < 0) continue;
    const declarations = readDeclarations(part.slice(brace + 1));
    if (![...declarations.keys()].some((property) => properties.has(property))) continue;
    const before = part.slice(0, brace);
    const selector = before.slice(Math.max(before.lastIndexOf("{"), before.lastIndexOf(";")) + 1);
    rules.push({ selectors: selector.split(",").map((each) => each.trim()), declarations });
  }
  if (rules.reduce((sum, { selectors }) => sum + selectors.length, 0) > MOST_RULES) {
    throw drawingError(
      "drawing-style-too-long",
      "The drawing's style sheet has more than {most} rules that move or hide lines. Save it as plain SVG.",
      { most: count(MOST_RULES) },
    );
  }
  return rules;
}

/** What a `style` attribute, or the inside of a rule, declares. */
function readDeclarations(text: string): Map<string, string> {
  const found = new Map<string, string>();
  for (const part of withoutComments(text).split(";")) {
    const colon = part.indexOf(":");
    if (colon < 0) continue;
    const [value = ""] = part.slice(colon + 1).split("!");
    found.set(part.slice(0, colon).trim().toLowerCase(), value.trim());
  }
  return found;
}

function withoutComments(text: string): string {
  const [first = "", ...rest] = text.split("/*");
  return [first, ...rest.map((part) => part.split("*/").slice(1).join("*/"))].join(" ");
}

/** A selector longer than this is not looked into. */
const LONGEST_SELECTOR = 500;

/**
 * Whether a selector may mean this element, judged by its last part alone. What cannot be judged counts as yes: these
 * rules are only asked whether something is moved, hidden or clipped, and then it is said so.
 */
function mayMatch(selector: string, element: DrawingElement): boolean {
  if (selector.includes("\\") || selector.length > LONGEST_SELECTOR) return true;
  const last =
    selector
      .replace(/\[[^\]]*\]|::?[\w-]+(?:\([^)]*\))?/gu, "")
      .trim()
      .split(/[\s>+~]+/u)
      .at(-1) ?? "";
  const tag = /^[\w-]+/u.exec(last)?.[0];
  const classes = (element.attributes.get("class") ?? "").split(/\s+/u);
  return (
    (tag === undefined || tag === element.tag) &&
    [...last.matchAll(/#([^.#]+)/gu)].every(([, id]) => id === element.id) &&
    [...last.matchAll(/\.([^.#]+)/gu)].every(([, name = ""]) => classes.includes(name))
  );
}

/** What style sheets and the `style` attribute declare for an element: property and value; the later ones weigh more. */
export function styledProperties(
  element: DrawingElement,
  rules: readonly StyleRule[],
): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  for (const { selectors, declarations } of rules) {
    if (!selectors.some((selector) => mayMatch(selector, element))) continue;
    for (const [property, value] of declarations) found.set(property, value);
  }
  for (const [property, value] of readDeclarations(element.attributes.get("style") ?? "")) {
    found.set(property, value);
  }
  return found;
}
