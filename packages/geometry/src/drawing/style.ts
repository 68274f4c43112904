import { count } from "../errors/issue.js";
import { drawingError, styleOutside } from "./drawing-issue.js";
import { MOST_RULES } from "./limits.js";
import { mayMean, readSelectors, type Selector } from "./selector.js";
import type { DrawingElement } from "./xml.js";

/** One rule of a style sheet. */
export interface StyleRule {
  readonly selectors: readonly Selector[];
  /** Whether it stands inside a condition (`@media`), which may hold or not. */
  readonly isConditional: boolean;
  readonly declarations: ReadonlyMap<string, Declared>;
}

interface Declared {
  readonly value: string;
  readonly isImportant: boolean;
}

/**
 * The rules of a file's style sheets that declare at least one of the properties asked about.
 *
 * @throws {SpecError} `drawing-style-outside`, `drawing-style-too-long`
 */
export function readStyleSheets(sheets: readonly string[], properties: ReadonlySet<string>): StyleRule[] {
  const rules = sheets.flatMap((sheet) => readStyleSheet(withoutComments(sheet), properties));
  if (rules.reduce((sum, { selectors }) => sum + selectors.length, 0) > MOST_RULES) {
    throw drawingError(
      "drawing-style-too-long",
      "The drawing's style sheet has more than {most} rules that move or hide lines. Save it as plain SVG.",
      { most: count(MOST_RULES) },
    );
  }
  return rules;
}

function readStyleSheet(text: string, properties: ReadonlySet<string>): StyleRule[] {
  if (importsMore(text)) throw styleOutside();
  const rules: StyleRule[] = [];
  let depth = 0;
  for (const part of text.split("}")) {
    const opened = part.split("{").length - 1;
    const isConditional = depth + opened > 1;
    depth = Math.max(0, depth + opened - 1);
    const brace = part.lastIndexOf("{");
    if (brace < 0) continue;
    const declarations = readDeclarations(part.slice(brace + 1));
    if (![...declarations.keys()].some((property) => properties.has(property))) continue;
    const before = part.slice(0, brace);
    const selector = before.slice(Math.max(before.lastIndexOf("{"), before.lastIndexOf(";")) + 1);
    rules.push({ selectors: readSelectors(selector), isConditional, declarations });
  }
  return rules;
}

/** Whether a style sheet has an `@import`, however its letters are written; what stands in quotes is none. */
function importsMore(text: string): boolean {
  const words = text.replace(/"[^"\n]*"|'[^'\n]*'/gu, '""').matchAll(/@((?:[\w-]|\\[^\n])+)/gu);
  // A name of an at-rule that is written with escapes is not worth reading.
  return [...words].some(([, word = ""]) => word.toLowerCase() === "import" || word.includes("\\"));
}

/** What a `style` attribute, or the inside of a rule, declares. */
function readDeclarations(text: string): Map<string, Declared> {
  const found = new Map<string, Declared>();
  for (const part of withoutComments(text).split(";")) {
    const colon = part.indexOf(":");
    if (colon < 0) continue;
    const property = part.slice(0, colon).trim().toLowerCase();
    const [value = "", ...flags] = part.slice(colon + 1).split("!");
    const isImportant = flags.at(-1)?.trim().toLowerCase() === "important";
    if (found.get(property)?.isImportant === true && !isImportant) continue;
    found.set(property, { value: value.trim(), isImportant });
  }
  return found;
}

function withoutComments(text: string): string {
  const [first = "", ...rest] = text.split("/*");
  return [first, ...rest.map((part) => part.split("*/").slice(1).join("*/"))].join(" ");
}

/** What styles make of one property of an element. */
export interface Styled {
  /** The values that it may have; several where it depends on selectors or conditions that are not judged. */
  readonly values: readonly string[];
  /** Whether one of them holds for certain, so that the attribute of the same name does not count. */
  readonly isCertain: boolean;
}

/** Heavier than any selector, as a `style` attribute is. */
const INLINE = Number.MAX_VALUE;

/**
 * What style sheets and the `style` attribute declare for an element, property by property: the weightiest that surely
 * holds, and those that may hold and weigh as much or more. What is marked important weighs more than what is not, a
 * `style` attribute more than every selector, an id more than a class, a class more than a type, and of equals the later.
 *
 * Source: W3C, CSS Cascading and Inheritance 4, section 6.1.
 */
export function styledProperties(
  element: DrawingElement,
  rules: readonly StyleRule[],
): ReadonlyMap<string, Styled> {
  const claims: { property: string; declared: Declared; weight: number; isCertain: boolean }[] = [];
  const claim = (declarations: ReadonlyMap<string, Declared>, weight: number, isCertain: boolean): void => {
    for (const [property, declared] of declarations) claims.push({ property, declared, weight, isCertain });
  };
  const classes = new Set((element.attributes.get("class") ?? "").split(/\s+/u));
  for (const { selectors, isConditional, declarations } of rules) {
    for (const selector of selectors) {
      if (mayMean(selector, element, classes)) {
        claim(declarations, selector.weight, selector.isPlain && !isConditional);
      }
    }
  }
  claim(readDeclarations(element.attributes.get("style") ?? ""), INLINE, true);
  // Sorting keeps the order of equals.
  claims.sort(
    (a, b) => Number(a.declared.isImportant) - Number(b.declared.isImportant) || a.weight - b.weight,
  );
  const found = new Map<string, Styled>();
  for (const { property, declared, isCertain } of claims) {
    const below = isCertain ? undefined : found.get(property);
    found.set(property, {
      values: [...(below?.values ?? []), declared.value],
      isCertain: isCertain || below?.isCertain === true,
    });
  }
  return found;
}
