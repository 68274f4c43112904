import { randomUUID } from "node:crypto";
import {
  access,
  constants,
  type FileHandle,
  link,
  lstat,
  mkdir,
  open,
  readdir,
  realpath,
  rename,
  rmdir,
  stat,
  unlink,
} from "node:fs/promises";
import { hostname } from "node:os";
import { dirname } from "node:path";
import type { Readable, Writable } from "node:stream";
import { setTimeout } from "node:timers/promises";
import type { Access, Disk, Entry, Io, Machine, OutStream } from "./io.js";
import { lineReader } from "./line-reader.js";
import { systemCode } from "./system-code.js";

const READ_CHUNK = 64 * 1024;

async function readFile(path: string, atMost: number): Promise<Uint8Array> {
  const handle = await open(path, "r");
  try {
    const chunks: Uint8Array[] = [];
    let total = 0;
    // Read piece by piece: the path may be a pipe or a device that never ends.
    while (total < atMost) {
      const chunk = new Uint8Array(Math.min(READ_CHUNK, atMost - total));
      const { bytesRead } = await handle.read(chunk, 0, chunk.length, null);
      if (bytesRead === 0) break;
      chunks.push(chunk.subarray(0, bytesRead));
      total += bytesRead;
    }
    return Buffer.concat(chunks);
  } finally {
    await handle.close();
  }
}

async function entry(path: string): Promise<Entry> {
  try {
    return (await stat(path)).isDirectory() ? "folder" : "file";
  } catch (error) {
    const code = systemCode(error);
    if (code === "ENOENT" || code === "ENOTDIR") return "nothing";
    throw error;
  }
}

/**
 * One folder at a time: asked to make all of them at once, Node goes round for ever where a folder answers that it does
 * not exist although the one above it does (/proc).
 */
async function makeFolder(path: string): Promise<string | undefined> {
  const missing: string[] = [];
  for (let folder = path; (await entry(folder)) === "nothing"; folder = dirname(folder)) {
    missing.unshift(folder);
    if (folder === dirname(folder)) break;
  }
  if (missing.length === 0 && (await entry(path)) === "file") {
    throw Object.assign(new Error(`${path} is a file`), { code: "EEXIST" });
  }
  const made: string[] = [];
  try {
    for (const folder of missing) if (await makeOne(folder)) made.push(folder);
  } catch (error) {
    for (const folder of made.reverse()) await rmdir(folder).catch(() => undefined);
    throw error;
  }
  return made[0];
}

/** Whether it had to be made: someone else may have been faster. */
async function makeOne(folder: string): Promise<boolean> {
  try {
    await mkdir(folder);
    return true;
  } catch (error) {
    if (systemCode(error) === "EEXIST" && (await entry(folder)) === "folder") return false;
    throw error;
  }
}

async function createFile(path: string, bytes: Uint8Array, like?: Access): Promise<void> {
  // Until it has the rights of the other file nobody else may look into it.
  const handle = await open(path, "wx", like === undefined ? ANYONE : OWNER_ALONE);
  try {
    if (like !== undefined) await giveAccess(handle, like);
    await handle.writeFile(bytes);
    await handle.sync();
  } finally {
    await handle.close();
  }
}

/** Rights of a new file, less what the system takes away from all of them, and those of one that is not shown yet. */
const ANYONE = 0o666;
const OWNER_ALONE = 0o600;

/** What file systems without owners or rights answer, and the system to one who may not give a file away. */
const NO_ACCESS_CHANGE: readonly (string | undefined)[] = ["EPERM", "EINVAL", "ENOTSUP", "ENOSYS"];

/** The owner first: a change of it takes rights away. */
async function giveAccess(handle: FileHandle, { mode, user, group }: Access): Promise<void> {
  const now = await handle.stat();
  const steps = [
    // Who may not give a file away may still give it to a group of his own.
    ...(now.gid === group ? [] : [() => handle.chown(now.uid, group)]),
    ...(now.uid === user ? [] : [() => handle.chown(user, group)]),
    async () => {
      // A group that is another may not have what that one had.
      const { gid } = await handle.stat();
      await handle.chmod(gid === group ? mode : mode & ~GROUP);
    },
  ];
  for (const step of steps) {
    await step().catch((error: unknown) => {
      if (!NO_ACCESS_CHANGE.includes(systemCode(error))) throw error;
    });
  }
}

const PERMISSIONS = 0o7777;
const GROUP = 0o070;
const ANY_WRITE = 0o222;

async function accessOf(path: string): Promise<Access> {
  const { mode, uid, gid } = await stat(path);
  return { mode: mode & PERMISSIONS, user: uid, group: gid };
}

async function isWritable(path: string): Promise<boolean> {
  const found = await stat(path);
  // The administrator may write anything; a file that nobody is to write is protected all the same.
  if (found.isFile() && (found.mode & ANY_WRITE) === 0) return false;
  try {
    await access(path, constants.W_OK);
    return true;
  } catch (error) {
    if (["EACCES", "EPERM", "EROFS"].includes(systemCode(error) ?? "")) return false;
    throw error;
  }
}

async function isLink(path: string): Promise<boolean> {
  try {
    return (await lstat(path)).isSymbolicLink();
  } catch (error) {
    const code = systemCode(error);
    if (code === "ENOENT" || code === "ENOTDIR") return false;
    throw error;
  }
}

/** What systems and file systems answer that cannot sync a folder: there a rename is as good as it gets. */
const NO_FOLDER_SYNC: readonly (string | undefined)[] = ["EISDIR", "EPERM", "EINVAL", "ENOTSUP", "ENOSYS"];

async function syncFolder(path: string): Promise<void> {
  try {
    const handle = await open(path, "r");
    try {
      await handle.sync();
    } finally {
      await handle.close();
    }
  } catch (error) {
    if (!NO_FOLDER_SYNC.includes(systemCode(error))) throw error;
  }
}

/** The machine's own disk. */
export const nodeDisk: Disk = {
  readFile,
  entry,
  list: (folder) => readdir(folder),
  makeFolder,
  createFile,
  accessOf,
  isWritable,
  isLink,
  link,
  rename,
  removeFile: unlink,
  removeFolder: rmdir,
  syncFolder,
  realPath: (path) => realpath(path),
};

/** This process among those of its computer. */
export const nodeMachine: Machine = {
  host: hostname(),
  processId: process.pid,
  isRunning(processId) {
    try {
      // Signal 0 only asks.
      return process.kill(processId, 0);
    } catch (error) {
      // Somebody else's process may not be signalled, but it is there.
      return systemCode(error) === "EPERM";
    }
  },
  pause: (milliseconds) => setTimeout(milliseconds),
};

/** A day as its own place writes it: not that of Greenwich. */
function localDay(date: Date): string {
  const [month, day] = [date.getMonth() + 1, date.getDate()].map((part) => String(part).padStart(2, "0"));
  return `${String(date.getFullYear()).padStart(4, "0")}-${month}-${day}`;
}

/** The first `atMost` bytes of a stream. */
export async function readStream(stream: Readable, atMost: number): Promise<Uint8Array> {
  const chunks: Uint8Array[] = [];
  let total = 0;
  for await (const chunk of stream) {
    const bytes = Buffer.from(chunk);
    chunks.push(bytes);
    total += bytes.length;
    if (total >= atMost) break;
  }
  return Buffer.concat(chunks).subarray(0, atMost);
}

/** One of this process's streams, or any other that writes text. */
export function outStream(
  stream: Writable & { readonly columns?: number; readonly isTTY?: boolean },
): OutStream {
  let failed: Error | undefined;
  // A reader that has seen enough (`| head`) closes the pipe; that is not a failure of ours.
  stream.on("error", (error) => {
    if (systemCode(error) !== "EPIPE") failed ??= error;
  });
  return {
    columns: stream.columns,
    isTTY: stream.isTTY === true,
    write: (text) => void stream.write(text),
    async flush() {
      await new Promise((resolve) => stream.write("", resolve));
      if (failed !== undefined) throw failed;
    },
  };
}

/** The real world: this process's streams and the machine's disk. */
export function nodeIo(): Io {
  return {
    stdout: outStream(process.stdout),
    stderr: outStream(process.stderr),
    readStdin: (atMost) => readStream(process.stdin, atMost),
    stdinIsTTY: process.stdin.isTTY === true,
    openLines: () => lineReader(process.stdin, process.stderr, process.stdin.isTTY === true),
    disk: nodeDisk,
    cwd: process.cwd(),
    env: process.env,
    runId: `${process.pid}-${randomUUID().slice(0, 8)}`,
    machine: nodeMachine,
    today: () => localDay(new Date()),
  };
}
