import type { DrawingElement } from "./xml.js";

/** One selector of a style rule, as far as it is looked into. */
export interface Selector {
  /** Its last part: what it says of the element itself. */
  readonly tag: string | undefined;
  readonly id: string | undefined;
  readonly classes: readonly string[];
  /** Whether that is all it asks for; otherwise it only may mean an element. */
  readonly isPlain: boolean;
  /** Ids, classes and types that it counts, as one number; of one that is not plain at least as much as it weighs. */
  readonly weight: number;
}

/** A selector longer than this is not looked into. */
const LONGEST_SELECTOR = 500;

/** More of one kind than a selector of that length can hold: an id outweighs all classes, a class all types. */
const OUTWEIGHS = 1000;

/** Heavier than any selector. */
const HEAVIEST = OUTWEIGHS ** 3;

const ANY: Selector = { tag: undefined, id: undefined, classes: [], isPlain: false, weight: HEAVIEST };

/**
 * The selectors of a list, `a, b > c`. Only types, classes and ids are looked into; of a selector of several parts only
 * the last.
 *
 * Source of the weights: W3C, Selectors 4, section 17.
 *
 * @example
 * readSelectors("path, .a").map(({ weight }) => weight); // [1, 1000]
 */
export const readSelectors = (list: string): Selector[] => splitList(list).map(readSelector);

function readSelector(text: string): Selector {
  if (/[\\|]/u.test(text) || text.length > LONGEST_SELECTOR) return ANY;
  const bare = text.replace(/\[\]|::?[\w-]+(?:\(\))?/gu, "").trim();
  const parts = bare.split(/[\s>+~]+/u);
  const last = parts.at(-1) ?? "";
  const tag = /^[\w-]+/u.exec(last)?.[0];
  const ids = [...last.matchAll(/#([^.#]+)/gu)].map(([, id = ""]) => id);
  const classes = [...last.matchAll(/\.([^.#]+)/gu)].map(([, name = ""]) => name);
  // What stands in brackets may weigh anything.
  const weight = text.includes("(")
    ? HEAVIEST
    : OUTWEIGHS ** 2 * count(text, /#/gu) +
      OUTWEIGHS * count(text, /\.|\[|:/gu) +
      // The second colon of `::before` is counted above, which is too much: it is not plain.
      parts.filter((part) => /^[\w-]/u.test(part)).length;
  const isPlain = /^(?:\*|[\w-]+)?(?:[.#][^.#\s>+~:()[\]*]+)*$/u.test(text) && ids.length <= 1;
  return { tag, id: ids[0], classes, isPlain, weight };
}

const count = (text: string, what: RegExp): number => text.match(what)?.length ?? 0;

/** The selectors of a list as written, without what stands in brackets. */
function splitList(list: string): string[] {
  const found: string[] = [];
  let text = "";
  let depth = 0;
  for (const letter of list) {
    if (letter === ")" || letter === "]") depth = Math.max(0, depth - 1);
    if (letter === "," && depth === 0) {
      found.push(text.trim());
      text = "";
    } else if (depth === 0) text += letter;
    if (letter === "(" || letter === "[") depth++;
  }
  return [...found, text.trim()];
}

/** Whether a selector may mean this element, which has these classes. What cannot be judged counts as yes. */
export const mayMean = (
  selector: Selector,
  { tag, id }: DrawingElement,
  classes: ReadonlySet<string>,
): boolean =>
  (selector.tag === undefined || selector.tag === tag) &&
  (selector.id === undefined || selector.id === id) &&
  selector.classes.every((name) => classes.has(name));
