import { basename, dirname, relative, resolve } from "node:path";
import { nearestWord } from "@scantling/geometry/units";
import { EXIT } from "./exit-code.js";
import { CommandFailure } from "./failure.js";
import { decodeFile, showText } from "./file/index.js";
import { type Io, MOST_BYTES } from "./io/io.js";
import { describeSystemError, systemCode } from "./io/system-code.js";

/** The word that stands for standard input. */
export const STDIN = "-";

/** What a file is to be; decides which names are proposed where it is not there. */
export type FileKind = "knife" | "shop";

export interface InputText {
  /** As messages name it. */
  readonly shown: string;
  /** Absolute; undefined for standard input. */
  readonly path: string | undefined;
  readonly text: string;
  /** As they were read: the mark before the text, which is not part of it, among them. */
  readonly bytes: Uint8Array;
}

/** A path as the person sees it from where they stand. */
export function showPath(io: Io, path: string): string {
  return showText(relative(io.cwd, path) || ".", 300);
}

/**
 * The text of a file that was given by name, or of standard input.
 *
 * @throws {CommandFailure} exit code 3 where it cannot be read.
 * @throws {FileError} where it is no text.
 */
export async function readInput(io: Io, given: string, kind: FileKind): Promise<InputText> {
  if (given === STDIN) {
    const shown = "standard input";
    if (io.stdinIsTTY) io.stderr.write("Reading standard input; end with Ctrl-D.\n");
    const bytes = await io.readStdin(MOST_BYTES);
    return { shown, path: undefined, text: decodeFile(bytes, shown), bytes };
  }
  const path = resolve(io.cwd, given);
  const shown = showPath(io, path);
  try {
    const bytes = await io.disk.readFile(path, MOST_BYTES);
    return { shown, path, text: decodeFile(bytes, shown), bytes };
  } catch (error) {
    if (systemCode(error) === undefined) throw error;
    throw new CommandFailure(
      EXIT.file,
      "cannot-read",
      `cannot read ${shown}: ${describeSystemError(error)}`,
      await advise(io, path, kind, systemCode(error)),
      { file: shown },
    );
  }
}

async function advise(io: Io, path: string, kind: FileKind, code: string | undefined): Promise<string> {
  if (code === "EISDIR") return `Name a file in it: ${await filesIn(io, path, kind)}`;
  if (code !== "ENOENT") return "Check the path, and that you may read it.";
  const folder = dirname(path);
  const names = await io.disk.list(folder).catch(() => undefined);
  if (names === undefined) return `There is no folder ${showPath(io, folder)} to read from. Check the path.`;
  const near = nearestFile(basename(path), names.filter(isOfKind[kind]));
  if (near !== undefined) return `Did you mean ${showPath(io, resolve(folder, near))}?`;
  return `Check the name: ${await filesIn(io, folder, kind)}`;
}

const KNIFE_NAME = /\.knife\.(?:ya?ml|json)$/iu;
const SHOP_NAME = /\.(?:ya?ml|json)$/iu;

const isOfKind: Readonly<Record<FileKind, (name: string) => boolean>> = {
  knife: (name) => KNIFE_NAME.test(name),
  shop: (name) => SHOP_NAME.test(name) && !KNIFE_NAME.test(name),
};

/** Compared without their endings: those are alike in every name and would make any two of them near. */
function nearestFile(name: string, names: readonly string[]): string | undefined {
  const stem = (text: string): string => text.replace(KNIFE_NAME, "").replace(SHOP_NAME, "");
  const near = nearestWord(stem(name), names.map(stem));
  return names.find((each) => stem(each) === near);
}

async function filesIn(io: Io, folder: string, kind: FileKind): Promise<string> {
  const names = (await io.disk.list(folder).catch(() => [])).filter(isOfKind[kind]).sort();
  if (names.length === 0) {
    return kind === "knife"
      ? "there is no NAME.knife.yaml in that folder. To begin one: scantling new NAME.knife.yaml."
      : "there is no shop file (NAME.yaml) in that folder. To begin one: scantling new shop.yaml.";
  }
  const shown = names.slice(0, 5).map((name) => showPath(io, resolve(folder, name)));
  return `${shown.join(", ")}${names.length > shown.length ? " …" : ""}`;
}
