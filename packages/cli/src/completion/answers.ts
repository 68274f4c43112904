import type { ArgumentFacts, CommandFacts, OptionFacts, ProgramFacts } from "../manual/facts.js";
import type { Shell } from "../options.js";

/**
 * What a shell offers where a word is asked for: some words, several of them parted by commas, files of a kind,
 * folders, or nothing.
 */
export type Offer =
  | { readonly kind: "words" | "list"; readonly words: readonly string[] }
  | { readonly kind: "files"; readonly files: FileKind }
  | { readonly kind: "folders" }
  | { readonly kind: "nothing" };

/** `knife`: NAME.knife.yaml and its like; `shop`: other YAML or JSON; `any`: all files. */
export type FileKind = "knife" | "shop" | "any";

/** The first line of a script. */
export const headLine = ({ name, version }: ProgramFacts, shell: Shell): string =>
  `# Completion of ${name} ${version} for ${shell}. Written by: ${name} completion ${shell}`;

/** Options of a command that take a value, with its name before them: `weigh --at`. */
export const takingOptions = ({ name, options }: CommandFacts): string[] =>
  options.flatMap(({ long, value }) => (value === undefined ? [] : [`${name} ${long}`]));

/** In single quotes where a shell would part the word or take it for something else; `quote` as the shell has it. */
export const wordFor = (word: string, quote: (text: string) => string): string =>
  /^[\w.-]+$/u.test(word) ? word : quote(word);

const NOTHING: Offer = { kind: "nothing" };

/** Endings of knife files. */
export const KNIFE_ENDINGS = [".knife.yaml", ".knife.yml", ".knife.json"] as const;

/** Endings of shop files; those of knife files are none. */
export const SHOP_ENDINGS = [".yaml", ".yml", ".json"] as const;

/** What follows an option; undefined for a switch. */
export function offerForOption({ value, words, form, brief }: OptionFacts): Offer | undefined {
  if (value === undefined) return undefined;
  if (words.length > 0) {
    return form === "list" ? { kind: "list", words: [...words, "all"] } : { kind: "words", words };
  }
  if (/\bDIR\b/u.test(value)) return { kind: "folders" };
  if (/\b(?:FILE|KNIFE|RECORD)\b/u.test(value)) return { kind: "files", files: fileKind(brief) };
  return NOTHING;
}

/** What stands in the place of an argument. */
export function offerForArgument({ name, words, about }: ArgumentFacts): Offer {
  if (words.length > 0) return { kind: "words", words };
  if (/DIR|FOLDER/u.test(name)) return { kind: "folders" };
  if (/FILE|KNIFE|RECORD/u.test(name)) return { kind: "files", files: fileKind(about) };
  return NOTHING;
}

/** What the argument at a place is, counted from 0; the last one of several takes all further places. */
export function argumentAt({ arguments: all }: CommandFacts, place: number): ArgumentFacts | undefined {
  const last = all.at(-1);
  return all[place] ?? (last?.isVariadic ? last : undefined);
}

/** By the words that the file is described with. */
function fileKind(about: string): FileKind {
  if (/\bknife files?\b/u.test(about.split(/[;(]/u)[0] ?? "")) return "knife";
  return /\bshop file\b/u.test(about) ? "shop" : "any";
}
