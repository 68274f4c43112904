import { basename, dirname, join } from "node:path";
import { EXIT } from "../exit-code.js";
import { CommandFailure } from "../failure.js";
import { hiddenName, processOfTemporary } from "./hidden-name.js";
import type { Io } from "./io.js";
import { describeSystemError } from "./system-code.js";

/** How often, and how far apart, a lock that is held is looked at again: 5 s in all. */
const TRIES = 100;
const PAUSE = 50;

type World = Pick<Io, "disk" | "machine" | "runId">;

/** How paths are shown to the person. */
type Show = (path: string) => string;

/**
 * Runs `work` while no other command does that locks the same file.
 *
 * Everyone puts a file of their own beside it, empty, whose name says whose it is, and only then looks for those of others:
 * of two, the one that looks last sees the other. Of several that wait, the first by name stays and the others step back. What
 * a command that was killed on this computer left is taken away; nobody else ever makes a file of that name, so that is safe.
 * One that is held is waited for, five seconds at most.
 *
 * Limits: a folder on a network must show a new file to other computers at once; a process number that another program got
 * after a power cut looks as if its command still ran, and is told.
 *
 * @param path - The file that is locked, absolute; its folder must exist.
 * @throws {CommandFailure} exit code 5: `locked`, with what to do, or `cannot-write`.
 */
export async function withLock<T>(
  world: World,
  path: string,
  show: Show,
  work: () => Promise<T>,
): Promise<T> {
  const lock = lockPathOf(path, world);
  await takeLock(world, path, lock, show);
  try {
    await removeLeftovers(world, path);
    return await work();
  } finally {
    // Should it stay, the next command finds that its owner is gone.
    await world.disk.removeFile(lock).catch(() => undefined);
  }
}

/** Beside the file, out of sight; before its owner. */
const prefixOf = (path: string): string => `${hiddenName(basename(path))}.lock.`;

const plainHost = (host: string): string => host.replace(/[^A-Za-z0-9-]+/gu, "-");

/** The lock of one command on a file. */
export function lockPathOf(path: string, { machine, runId }: Pick<World, "machine" | "runId">): string {
  const { host, processId } = machine;
  return join(dirname(path), `${prefixOf(path)}${plainHost(host)}.${processId}.${runId}`);
}

async function takeLock(world: World, path: string, lock: string, show: Show): Promise<void> {
  const { disk, machine } = world;
  const own = basename(lock);
  let placed = false;
  let held: readonly string[] = [];
  try {
    for (let tries = 0; tries < TRIES; tries++) {
      if (!placed) await disk.createFile(lock, new Uint8Array());
      placed = true;
      held = await othersHolding(world, path, own);
      if (held.length === 0) return;
      if (held.some((name) => name < own)) {
        await disk.removeFile(lock);
        placed = false;
      }
      await machine.pause(PAUSE);
    }
  } catch (error) {
    await disk.removeFile(lock).catch(() => undefined);
    throw new CommandFailure(
      EXIT.write,
      "cannot-write",
      `cannot lock ${show(path)}: ${describeSystemError(error)}`,
      "Nothing was stored. Make room on the disk, or the folder writable, and try again.",
      { file: show(path) },
    );
  }
  if (placed) await disk.removeFile(lock).catch(() => undefined);
  throw locked(world, path, held, show);
}

/** Names of locks whose owners are there, or may be; what is left of others is taken away. */
async function othersHolding({ disk, machine }: World, path: string, own: string): Promise<string[]> {
  const folder = dirname(path);
  const names = (await disk.list(folder)).filter((name) => name.startsWith(prefixOf(path)) && name !== own);
  const left = names.filter((name) => isLeft(name, path, machine));
  for (const name of left) await disk.removeFile(join(folder, name)).catch(() => undefined);
  return names.filter((name) => !left.includes(name)).sort();
}

/** Who holds a lock, as its name says; undefined for a name that no command of ours gives. */
function ownerOf(
  name: string,
  path: string,
): { readonly host: string; readonly processId: number } | undefined {
  const [host, processId, ...run] = name.slice(prefixOf(path).length).split(".");
  if (host === undefined || processId === undefined || run.length !== 1) return undefined;
  return /^\d+$/u.test(processId) ? { host, processId: Number(processId) } : undefined;
}

/** Whether the owner is known to be gone; of another computer nobody knows. */
function isLeft(name: string, path: string, machine: World["machine"]): boolean {
  const owner = ownerOf(name, path);
  return owner !== undefined && owner.host === plainHost(machine.host) && !machine.isRunning(owner.processId);
}

/** Temporary files that commands left which were killed; other files, however much alike, are somebody's own. */
async function removeLeftovers({ disk, machine }: World, path: string): Promise<void> {
  const names = await disk.list(dirname(path)).catch(() => []);
  const left = names.filter((name) => {
    const processId = processOfTemporary(name, basename(path));
    return processId !== undefined && !machine.isRunning(processId);
  });
  for (const name of left) await disk.removeFile(join(dirname(path), name)).catch(() => undefined);
}

function locked({ machine }: World, path: string, held: readonly string[], show: Show): CommandFailure {
  const who = held.map((name) => {
    const owner = ownerOf(name, path);
    if (owner === undefined) return "nobody knows which";
    const elsewhere = owner.host === plainHost(machine.host) ? "" : ` on the computer ${owner.host}`;
    return `process ${owner.processId}${elsewhere}`;
  });
  const files = held.map((name) => show(join(dirname(path), name))).join(" and ");
  return new CommandFailure(
    EXIT.write,
    "locked",
    `another command holds ${show(path)}: ${who.join(", ")}; nothing was stored`,
    `Try again when it is done. If none is running any more, remove ${files} and try again.`,
    { file: show(path) },
  );
}
