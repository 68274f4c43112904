import { basename, dirname, join } from "node:path";
import { EXIT } from "../exit-code.js";
import { CommandFailure } from "../failure.js";
import { hiddenName, temporaryEnding } from "./hidden-name.js";
import type { Access, Disk } from "./io.js";
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
 * `force`; no temporary file and no new empty folder is left behind when anything fails. What is replaced under `force` keeps
 * its rights and its owner, and where a link leads to it, the link stays one.
 *
 * Limit: the names are given one after another. Should that fail half way, files that are new are taken back, but one
 * that was replaced under `force` stays replaced (each of them whole).
 *
 * @throws {CommandFailure} exit code 5: `would-overwrite`, `write-protected`, `name-too-long` or `cannot-write`.
 */
export async function writeWhole(
  disk: Disk,
  files: readonly NewFile[],
  options: WriteOptions,
): Promise<void> {
  await refuseTaken(disk, files, options);
  const undo: Undo = [];
  try {
    const staged: { readonly temporary: string; readonly path: string }[] = [];
    for (const [index, file] of files.entries()) {
      await attempt(file.path, options, () => makeFolder(disk, dirname(file.path), undo, options));
      const { path, access } = await attempt(file.path, options, () => placeOf(disk, file.path, options));
      const ending = temporaryEnding(options.runId, index);
      const temporary = join(dirname(path), `${hiddenName(basename(path))}${ending}`);
      await attempt(file.path, options, () => createTemporary(disk, temporary, file.content, access));
      undo.push(() => disk.removeFile(temporary));
      staged.push({ temporary, path });
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

/** Where a file goes: itself, or where a link leads that is to stay one; and the rights of what it replaces. */
async function placeOf(
  disk: Disk,
  path: string,
  { force }: WriteOptions,
): Promise<{ readonly path: string; readonly access: Access | undefined }> {
  if (!force || (await disk.entry(path)) === "nothing") return { path, access: undefined };
  const real = await disk.realPath(path);
  return { path: real, access: await disk.accessOf(real) };
}

/**
 * Refuses what {@link writeWhole} would refuse, and folders that cannot be written into: for commands that do something
 * before which must not be done twice, or that takes long.
 *
 * @throws {CommandFailure} as `writeWhole` does.
 */
export async function refuseToWrite(
  disk: Disk,
  files: readonly Pick<NewFile, "path">[],
  options: Omit<WriteOptions, "runId">,
): Promise<void> {
  await refuseTaken(disk, files, options);
  for (const folder of new Set(files.map(({ path }) => dirname(path)))) {
    await attempt(folder, options, () => refuseFolder(disk, folder, options));
  }
}

/** The folder, or the one above it that would have to hold it. */
async function refuseFolder(disk: Disk, folder: string, { show }: Pick<WriteOptions, "show">): Promise<void> {
  for (let at = folder; ; at = dirname(at)) {
    const entry = await disk.entry(at);
    if (entry === "nothing" && at !== dirname(at)) continue;
    if (entry === "file") throw noFolder(show(folder));
    if (entry === "folder" && (await disk.isWritable(at))) return;
    throw Object.assign(new Error(`${at} cannot be written into`), { code: "EACCES" });
  }
}

async function refuseTaken(
  disk: Disk,
  files: readonly Pick<NewFile, "path">[],
  options: Omit<WriteOptions, "runId">,
): Promise<void> {
  const taken: string[] = [];
  for (const { path } of files) {
    const entry = await attempt(path, options, () => disk.entry(path));
    const file = options.show(path);
    if (entry === "folder") {
      throw new CommandFailure(
        EXIT.write,
        "cannot-write",
        `${file} is a folder, so the file of that name cannot be written`,
        "Choose another folder with --out DIR, or move that folder away.",
        { file },
      );
    }
    if (entry === "nothing" && (await attempt(path, options, () => disk.isLink(path)))) {
      throw new CommandFailure(
        EXIT.write,
        "would-overwrite",
        `${file} is a link that leads nowhere; nothing was written`,
        "Remove the link, or bring back what it leads to.",
        { file },
      );
    }
    if (entry === "file" && !options.force) taken.push(file);
    if (entry === "file" && options.force && !(await attempt(path, options, () => disk.isWritable(path)))) {
      throw new CommandFailure(
        EXIT.write,
        "write-protected",
        `${file} is write-protected; nothing was written`,
        "Take the write protection off, or choose another folder with --out DIR.",
        { file },
      );
    }
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
    throw noFolder(options.show(folder));
  });
  if (topmost === undefined) return;
  // Emptied from the deepest up; a folder that someone else has put a file into stays.
  for (let made = topmost; ; made = join(made, nextBelow(made, folder))) {
    const current = made;
    undo.push(() => disk.removeFolder(current));
    if (made === folder) return;
  }
}

const noFolder = (file: string): CommandFailure =>
  new CommandFailure(
    EXIT.write,
    "cannot-write",
    `${file} cannot be made a folder: a file of that name, or of a part of it, exists`,
    "Choose another folder with --out DIR.",
    { file },
  );

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

async function createTemporary(
  disk: Disk,
  path: string,
  content: string | Uint8Array,
  access: Access | undefined,
): Promise<void> {
  const bytes = typeof content === "string" ? new TextEncoder().encode(content) : content;
  try {
    await disk.createFile(path, bytes, access);
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

async function attempt<T>(
  path: string,
  options: Pick<WriteOptions, "show">,
  step: () => Promise<T>,
): Promise<T> {
  try {
    return await step();
  } catch (error) {
    const shown = options.show(path);
    if (error instanceof CommandFailure) throw error;
    const isLong = systemCode(error) === "ENAMETOOLONG";
    throw new CommandFailure(
      EXIT.write,
      isLong ? "name-too-long" : "cannot-write",
      `cannot write ${shown}: ${describeSystemError(error)}`,
      isLong ? "Give it a shorter name." : "Make the folder writable, or give another with --out DIR.",
      { file: shown },
    );
  }
}
