import { basename } from "node:path";
import { EXIT } from "../exit-code.js";
import { CommandFailure } from "../failure.js";
import { STDIN } from "../read-input.js";

/** Files that can be begun. */
export type NewKind = "knife" | "shop";

const KNIFE_NAME = /\.knife\.ya?ml$/iu;
const YAML_NAME = /\.ya?ml$/iu;

/** What a name means: `shop.yaml` a shop, everything else a knife. */
export function kindOfName(name: string | undefined): NewKind {
  return name !== undefined && /^shop\.ya?ml$/iu.test(basename(name)) ? "shop" : "knife";
}

/**
 * The name that a new file gets: a name without an ending gets the one that belongs to it.
 *
 * @throws {CommandFailure} exit code 2 where the file would not be found under that name afterwards.
 */
export function newName(given: string, kind: NewKind): string {
  if (given === STDIN) return given;
  if (given.trim() === "" || /[/\\]$/u.test(given)) {
    throw wrong(`"${given}" is no file name`, `Give one, such as ${example(kind)}.`);
  }
  if (/\.json$/iu.test(given)) {
    const instead = given.replace(/(?:\.knife)?\.json$/iu, kind === "knife" ? ".knife.yaml" : ".yaml");
    throw wrong("JSON has no comments, and a new file is full of them", `Name it ${instead}.`);
  }
  if (kind === "shop") return YAML_NAME.test(given) ? given : `${given}.yaml`;
  if (KNIFE_NAME.test(given)) return given;
  if (YAML_NAME.test(given)) {
    throw wrong(
      `${given} is no name for a knife file: it ends in .knife.yaml`,
      `Name it ${given.replace(YAML_NAME, ".knife.yaml")}; or add --shop-file for a shop.`,
    );
  }
  return `${given.replace(/\.knife$/iu, "")}.knife.yaml`;
}

/** What a file is called without its endings: `river-hunter`. */
export const stemOf = (name: string): string =>
  basename(name).replace(/(?:\.knife)?\.(?:ya?ml|json)$/iu, "") || "knife";

/** The stem as a code for orders: `RIVER-HUNTER`. */
export const codeOf = (stem: string): string => stem.toUpperCase().slice(0, LONGEST);

/** The stem as words: `River hunter`. */
export function titleOf(stem: string): string {
  const words = stem
    .replace(/[-_.\s]+/gu, " ")
    .trim()
    .slice(0, LONGEST);
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}`;
}

/** Longest code and title made of a file's name. */
const LONGEST = 60;

const example = (kind: NewKind): string => (kind === "knife" ? "hunter.knife.yaml" : "shop.yaml");

const wrong = (message: string, todo: string): CommandFailure =>
  new CommandFailure(EXIT.usage, "no-such-name", message, todo);
