import { basename, dirname, join } from "node:path";
import { EXIT } from "../exit-code.js";
import { CommandFailure } from "../failure.js";
import type { Disk } from "./io.js";
import { describeSystemError, systemCode } from "./system-code.js";

export interface NewFile {
  /** Absolute. */
  readonly path: string;
  readonly content: string | Uint8Array;
}

export interface WriteOptions {
  /** Replace what stands there. */
  readonly force: boolean;
  /** Names the temporary files apart from those of other running commands. */
  readonly runId: string;
  /** How a path is shown to the person. */
  readonly show: (path: string) => string;
}

/** Steps that take back what was done, in the order of doing. */
type Undo = (() => Promise<unknown>)[];

/**
 * Writes files whole or not at all: all of them first under temporary names in their own folders, on the disk to the
 * last byte, and only then given their names. Folders that are missing are made. Nothing is overwritten without
 * `force`; no temporary file and no new empty folder is left behind when anything fails.
 *
 * Limit: the names are given one after another. Should that fail half way, files that are new are taken back, but one
 * that was replaced under `force` stays replaced (each of them whole).
 *
 * @throws {CommandFailure} exit code 5: `would-overwrite` or `cannot-write`.
 */
export async function writeWhole(
  disk: Disk,
  files: readonly NewFile[],
  options: WriteOptions,
): Promise<void> {
  await refuseToOverwrite(disk, files, options);
  const undo: Undo = [];
  try {
    const staged: { readonly temporary: string; readonly path: string }[] = [];
    for (const [index, file] of files.entries()) {
      await attempt(file.path, options, () => makeFolder(disk, dirname(file.path), undo, options));
      const temporary = join(dirname(file.path), `.${basename(file.path)}.${options.runId}-${index}.tmp`);
      await attempt(file.path, options, () => createTemporary(disk, temporary, file.content));
      undo.push(() => disk.removeFile(temporary));
      staged.push({ temporary, path: file.path });
    }
    for (const { temporary, path } of staged) {
      await attempt(path, options, () =>
        options.force ? disk.rename(temporary, path) : place(disk, temporary, path, options, undo),
      );
    }
  } catch (error) {
    for (const step of undo.reverse()) {
      // A step may have nothing left to undo; the failure that is reported is the first one.
      await step().catch(() => undefined);
    }
    throw error;
  }
}

async function refuseToOverwrite(
  disk: Disk,
  files: readonly NewFile[],
  options: WriteOptions,
): Promise<void> {
  const taken: string[] = [];
  for (const { path } of files) {
    const entry = await attempt(path, options, () => disk.entry(path));
    if (entry === "folder") {
      throw new CommandFailure(
        EXIT.write,
        "cannot-write",
        `${options.show(path)} is a folder, so the file of that name cannot be written`,
        "Choose another folder with --out DIR, or move that folder away.",
        { file: options.show(path) },
      );
    }
    if (entry === "file" && !options.force) taken.push(options.show(path));
  }
  if (taken.length > 0) throw wouldOverwrite(taken);
}

function wouldOverwrite(shown: readonly string[]): CommandFailure {
  const subject =
    shown.length === 1 ? `${shown[0]} exists` : `${shown.length} files exist: ${shown.join(", ")}`;
  return new CommandFailure(
    EXIT.write,
    "would-overwrite",
    `${subject}; nothing was written`,
    "Add --force to replace, or choose another folder with --out DIR.",
    shown[0] === undefined ? {} : { file: shown[0] },
  );
}

async function makeFolder(disk: Disk, folder: string, undo: Undo, options: WriteOptions): Promise<void> {
  const topmost = await disk.makeFolder(folder).catch((error: unknown) => {
    if (systemCode(error) !== "EEXIST" && systemCode(error) !== "ENOTDIR") throw error;
    throw new CommandFailure(
      EXIT.write,
      "cannot-write",
      `${options.show(folder)} cannot be made a folder: a file of that name, or of a part of it, exists`,
      "Choose another folder with --out DIR.",
      { file: options.show(folder) },
    );
  });
  if (topmost === undefined) return;
  // Emptied from the deepest up; a folder that someone else has put a file into stays.
  for (let made = topmost; ; made = join(made, nextBelow(made, folder))) {
    const current = made;
    undo.push(() => disk.removeFolder(current));
    if (made === folder) return;
  }
}

/** The name of the folder below `above` on the way to `below`. */
function nextBelow(above: string, below: string): string {
  let name = basename(below);
  for (
    let folder = dirname(below);
    folder !== above && folder !== dirname(folder);
    folder = dirname(folder)
  ) {
    name = basename(folder);
  }
  return name;
}

async function createTemporary(disk: Disk, path: string, content: string | Uint8Array): Promise<void> {
  try {
    await disk.createFile(path, typeof content === "string" ? new TextEncoder().encode(content) : content);
  } catch (error) {
    // A full disk leaves a file that is cut short. One that was there before is not ours to remove.
    if (systemCode(error) !== "EEXIST") await disk.removeFile(path).catch(() => undefined);
    throw error;
  }
}

/** Gives a finished file its name without replacing anything, even a file that appeared a moment ago. */
async function place(
  disk: Disk,
  temporary: string,
  path: string,
  options: WriteOptions,
  undo: Undo,
): Promise<void> {
  try {
    await disk.link(temporary, path);
  } catch (error) {
    if (systemCode(error) === "EEXIST") throw wouldOverwrite([options.show(path)]);
    // Some file systems (FAT, some network shares) have no links: the look beforehand has to do there.
    if ((await disk.entry(path)) !== "nothing") throw error;
    await disk.rename(temporary, path);
    undo.push(() => disk.removeFile(path));
    return;
  }
  undo.push(() => disk.removeFile(path));
  await disk.removeFile(temporary);
}

/** What to do where the folder is not what is wrong. */
const WHAT_TO_DO: Readonly<Record<string, string>> = {
  ENAMETOOLONG: "Give a shorter name.",
};

async function attempt<T>(path: string, options: WriteOptions, step: () => Promise<T>): Promise<T> {
  try {
    return await step();
  } catch (error) {
    const shown = options.show(path);
    if (error instanceof CommandFailure) throw error;
    throw new CommandFailure(
      EXIT.write,
      "cannot-write",
      `cannot write ${shown}: ${describeSystemError(error)}`,
      WHAT_TO_DO[systemCode(error) ?? ""] ?? "Make the folder writable, or give another with --out DIR.",
      { file: shown },
    );
  }
}
