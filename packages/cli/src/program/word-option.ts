import { nearestWord } from "@scantling/geometry/units";
import { type Argument, InvalidArgumentError, Option } from "commander";

/** How the words of an option are taken: one of them, several parted by commas, or these and others too. */
export type WordForm = "one" | "list" | "open";

/**
 * An option of which the words that it takes are known. Help, the pages of the manual and the shell's completion read
 * them from here.
 */
export class WordOption extends Option {
  readonly words: readonly string[];
  readonly form: WordForm;

  constructor(flags: string, description: string, words: readonly string[], form: WordForm) {
    super(flags, description);
    this.words = words;
    this.form = form;
  }
}

/** One of some words, in capitals or small letters; one that is none is answered with the nearest. */
export function oneOf(flags: string, description: string, words: readonly string[], what: string): Option {
  return new WordOption(flags, description, words, "one").argParser((value: string) =>
    knownWord(value.trim().toLowerCase(), words, what),
  );
}

/** Several of some words, parted by commas, or `all`. */
export function listOf(flags: string, description: string, words: readonly string[], what: string): Option {
  return new WordOption(flags, description, words, "list").argParser((value: string) =>
    wordList(value, words, what),
  );
}

/** Any text, of which some words are usual. */
export function usually(flags: string, description: string, words: readonly string[]): Option {
  return new WordOption(flags, description, words, "open");
}

/** The words of an option and how they are taken; none where it takes anything. */
export function wordsOf(option: Option): { readonly words: readonly string[]; readonly form: WordForm } {
  if (option instanceof WordOption) return option;
  return { words: option.argChoices ?? [], form: option.argChoices === undefined ? "open" : "one" };
}

/** More words than these are told apart, in a section of their own. */
const MOST_SHOWN = 6;

/** What help and manual say of an option: what it is, the words that it takes, and what holds without it. */
export function optionWords(option: Option): string {
  const { words, form } = wordsOf(option);
  const shown = form === "open" || words.length > MOST_SHOWN ? "" : `: ${words.join(", ")}`;
  // Where the default is no plain word it stands at the end of the description.
  const [, about = option.description, told = ""] =
    /^(.*?)( \(default: .*\))$/u.exec(option.description) ?? [];
  const usual = typeof option.defaultValue === "string" ? ` (default: ${option.defaultValue})` : told;
  return `${about}${shown}${option.mandatory ? " (must be given)" : usual}`;
}

/** The same of an argument. */
export function argumentWords({ description, argChoices = [] }: Argument): string {
  return argChoices.length === 0 ? description : `${description}: ${argChoices.join(", ")}`;
}

/** Words of a list parted by commas, each once, in the order of the list that they are from. */
function wordList<T extends string>(value: string, known: readonly T[], what: string): readonly T[] {
  const asked = value.split(",").map((word) => word.trim().toLowerCase());
  if (asked.includes("all")) return known;
  const found = asked.map((word) => knownWord(word, known, what));
  return known.filter((name) => found.includes(name));
}

function knownWord<T extends string>(word: string, known: readonly T[], what: string): T {
  const found = known.find((name) => name === word);
  if (found !== undefined) return found;
  const near = nearestWord(word, known);
  const meant = near === undefined ? "" : `Did you mean ${near}? `;
  throw new InvalidArgumentError(`${meant}The ${what} are: ${known.join(", ")}.`);
}
