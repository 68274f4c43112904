import { basename, dirname, join } from "node:path";
import { EXIT } from "../exit-code.js";
import { CommandFailure } from "../failure.js";
import type { Io } from "./io.js";
import { describeSystemError, systemCode } from "./system-code.js";

/** Who holds a lock, as its file says. */
interface Owner {
  readonly host: string;
  readonly processId: number;
}

/** How often, and how far apart, a lock that is held is tried for again: 5 s in all. */
const TRIES = 100;
const PAUSE = 50;
/** No lock is longer than this. */
const MOST_BYTES = 4096;

type World = Pick<Io, "disk" | "machine" | "runId">;

/** Where the lock of a file lies: beside it, out of sight. */
export const lockPathOf = (path: string): string => join(dirname(path), `.${basename(path)}.lock`);

/**
 * Runs `work` while no other command that asks for the same lock does. A lock that was left by a command which was killed
 * on this computer is taken over; one that is held is waited for, five seconds at most.
 *
 * @param path - The file that is locked, absolute; its folder must exist.
 * @param show - How a path is shown to the person.
 * @throws {CommandFailure} exit code 5: `locked`, with what to do, or `cannot-write`.
 */
export async function withLock<T>(
  world: World,
  path: string,
  show: (path: string) => string,
  work: () => Promise<T>,
): Promise<T> {
  const lock = lockPathOf(path);
  await takeLock(world, lock, show);
  try {
    await removeLeftovers(world, path);
    return await work();
  } finally {
    // Should it stay, the next command finds that its owner is gone.
    await world.disk.removeFile(lock).catch(() => undefined);
  }
}

async function takeLock(world: World, lock: string, show: (path: string) => string): Promise<void> {
  const { disk, machine, runId } = world;
  const temporary = `${lock}.${runId}.tmp`;
  try {
    for (let tries = 0; tries < TRIES; tries++) {
      if (await placeLock(world, temporary, lock)) return;
      const taken = await disk.readFile(lock, MOST_BYTES).catch(ifMissing);
      if (taken !== undefined && isLeft(ownerOf(taken), machine) && (await breakLock(world, lock, taken))) {
        continue;
      }
      if (taken !== undefined) await machine.pause(PAUSE);
    }
  } catch (error) {
    throw new CommandFailure(
      EXIT.write,
      "cannot-write",
      `cannot write ${show(lock)}: ${describeSystemError(error)}`,
      "Nothing was stored. Make room on the disk, or the folder writable.",
      { file: show(lock) },
    );
  } finally {
    await disk.removeFile(temporary).catch(() => undefined);
  }
  throw await locked(world, lock, show);
}

/** Whether the lock is ours now. It appears with its owner's name in it, or not at all. */
async function placeLock({ disk, machine, runId }: World, temporary: string, lock: string): Promise<boolean> {
  const { host, processId } = machine;
  const content = new TextEncoder().encode(`${JSON.stringify({ host, processId, run: runId })}\n`);
  const place = async (step: () => Promise<void>): Promise<boolean> => {
    try {
      await step();
      return true;
    } catch (error) {
      if (systemCode(error) === "EEXIST") return false;
      throw error;
    }
  };
  if ((await disk.entry(temporary)) === "nothing") await disk.createFile(temporary, content);
  try {
    return await place(() => disk.link(temporary, lock));
  } catch (error) {
    // Some file systems (FAT, some network shares) have no links.
    if (!["EPERM", "ENOTSUP", "ENOSYS", "EOPNOTSUPP", "EMLINK"].includes(systemCode(error) ?? ""))
      throw error;
    return await place(() => disk.createFile(lock, content));
  }
}

/**
 * Takes away a lock whose owner is gone, and no other: of several that try, one at a time may, and only while the lock is
 * still the one that was looked at.
 *
 * @returns whether it was taken away.
 */
async function breakLock({ disk }: World, lock: string, left: Uint8Array): Promise<boolean> {
  const token = breakingPathOf(lock);
  try {
    await disk.createFile(token, left);
  } catch (error) {
    if (systemCode(error) === "EEXIST") return false;
    throw error;
  }
  try {
    const now = await disk.readFile(lock, MOST_BYTES).catch(ifMissing);
    if (now !== undefined && textOf(now) === textOf(left)) await disk.removeFile(lock);
    return true;
  } finally {
    await disk.removeFile(token).catch(() => undefined);
  }
}

const breakingPathOf = (lock: string): string => `${lock}.breaking`;

/** Temporary files of commands that were killed. Of the file itself only the holder of the lock has any. */
async function removeLeftovers({ disk, machine, runId }: World, path: string): Promise<void> {
  const folder = dirname(path);
  const [file, lock] = [`.${basename(path)}.`, `${basename(lockPathOf(path))}.`];
  const names = await disk.list(folder).catch(() => []);
  for (const name of names) {
    if (!name.startsWith(file) || !name.endsWith(".tmp") || name.includes(runId)) continue;
    const at = join(folder, name);
    // Others that wait for the lock have the name of their own ready.
    const left = name.startsWith(lock)
      ? isLeft(ownerOf(await disk.readFile(at, MOST_BYTES).catch(() => new Uint8Array())), machine)
      : true;
    if (left) await disk.removeFile(at).catch(() => undefined);
  }
}

const textOf = (bytes: Uint8Array): string => new TextDecoder().decode(bytes);

function ownerOf(bytes: Uint8Array): Owner | undefined {
  try {
    const read: unknown = JSON.parse(textOf(bytes));
    if (typeof read !== "object" || read === null || !("host" in read) || !("processId" in read))
      return undefined;
    const { host, processId } = read;
    return typeof host === "string" && typeof processId === "number" ? { host, processId } : undefined;
  } catch {
    return undefined;
  }
}

/** Whether the owner is known to be gone; of another computer nobody knows. */
const isLeft = (owner: Owner | undefined, machine: World["machine"]): boolean =>
  owner !== undefined && owner.host === machine.host && !machine.isRunning(owner.processId);

async function locked(
  { disk, machine }: World,
  lock: string,
  show: (path: string) => string,
): Promise<CommandFailure> {
  const owner = ownerOf(await disk.readFile(lock, MOST_BYTES).catch(() => new Uint8Array()));
  const breaking = (await disk.entry(breakingPathOf(lock)).catch(() => "nothing")) !== "nothing";
  const files = [lock, ...(breaking ? [breakingPathOf(lock)] : [])].map(show).join(" and ");
  const who =
    owner === undefined
      ? "nobody knows which"
      : `process ${owner.processId}${owner.host === machine.host ? "" : ` on the computer ${owner.host}`}`;
  return new CommandFailure(
    EXIT.write,
    "locked",
    `another command holds ${show(lock)}: ${who}; nothing was stored`,
    `Try again when it is done. If none is running any more, remove ${files} and try again.`,
    { file: show(lock) },
  );
}

/** Undefined for a file that went away in the meantime. */
function ifMissing(error: unknown): undefined {
  if (systemCode(error) === "ENOENT") return undefined;
  throw error;
}
