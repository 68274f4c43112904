import { dirname } from "node:path";
import { EXIT } from "../exit-code.js";
import { CommandFailure } from "../failure.js";
import { type Io, MOST_BYTES } from "./io.js";
import { withLock } from "./lock-file.js";
import { describeSystemError, systemCode } from "./system-code.js";
import { writeWhole } from "./write-whole.js";

/** A file as it was read and as it shall be. */
export interface Change {
  /** Absolute. */
  readonly path: string;
  /** Its bytes as they were read; undefined where there was no such file. */
  readonly seen: Uint8Array | undefined;
  /** All of it, with what is new. */
  readonly content: string;
}

/**
 * Puts a changed file in place of the one that was read, unless somebody else has changed that since. When it resolves with
 * `stored`, the new file is on the disk to the last byte, its name with it: neither a kill nor a power cut takes it back. At every moment
 * before, the old file stands there whole.
 *
 * @returns `changed`, with nothing written, where somebody else was faster: read again.
 * @throws {CommandFailure} exit code 5: `locked`, `cannot-write`; `not-confirmed` where the file is written, but the disk did not
 * say that it is there for good.
 */
export async function changeFile(
  io: Pick<Io, "disk" | "machine" | "runId">,
  { path: given, seen, content }: Change,
  show: (path: string) => string,
): Promise<"stored" | "changed"> {
  const { disk, runId } = io;
  // Through a link: the file that it leads to is the one that changes.
  const path = seen === undefined ? given : await disk.realPath(given).catch(() => given);
  return withLock(io, path, show, async () => {
    if (!isSame(await currentBytes(io, path, show), seen)) return "changed";
    await put({ disk, runId }, { path, seen, content }, show);
    try {
      await disk.syncFolder(dirname(path));
    } catch (error) {
      throw new CommandFailure(
        EXIT.write,
        "not-confirmed",
        `${show(path)} is written, but the disk did not say that it is there for good: ${describeSystemError(error)}`,
        "Look whether what is new stands in it before you try again.",
        { file: show(path) },
      );
    }
    return "stored";
  });
}

/** What to do, in the words of a file that has its place: there is no other folder to choose. */
async function put(
  { disk, runId }: Pick<Io, "disk" | "runId">,
  { path, seen, content }: Change,
  show: (path: string) => string,
): Promise<void> {
  try {
    await writeWhole(disk, [{ path, content }], { force: seen !== undefined, runId, show });
  } catch (error) {
    if (!(error instanceof CommandFailure)) throw error;
    const todo = `Nothing was stored. ${WHAT_NEXT[error.code] ?? "Make room on the disk, or the folder writable, and try again."}`;
    throw new CommandFailure(error.exitCode, error.code, error.message, todo, error.details);
  }
}

const WHAT_NEXT: Readonly<Record<string, string>> = {
  "write-protected": "Take the write protection off, and try again.",
  "name-too-long": "Give the files shorter names, and try again.",
  // It came while this command ran.
  "would-overwrite": "Try again: what stands there now is read then.",
};

async function currentBytes(
  { disk }: Pick<Io, "disk">,
  path: string,
  show: (path: string) => string,
): Promise<Uint8Array | undefined> {
  try {
    return await disk.readFile(path, MOST_BYTES);
  } catch (error) {
    if (systemCode(error) === "ENOENT") return undefined;
    throw new CommandFailure(
      EXIT.write,
      "cannot-write",
      `cannot read ${show(path)} again: ${describeSystemError(error)}`,
      "Nothing was stored. Check the path, and that you may read and write it.",
      { file: show(path) },
    );
  }
}

function isSame(a: Uint8Array | undefined, b: Uint8Array | undefined): boolean {
  if (a === undefined || b === undefined) return a === b;
  return a.length === b.length && a.every((byte, index) => byte === b[index]);
}
