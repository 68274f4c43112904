import { randomUUID } from "node:crypto";
import { link, mkdir, open, readdir, rename, rmdir, stat, unlink } from "node:fs/promises";
import { dirname } from "node:path";
import type { Readable, Writable } from "node:stream";
import type { Disk, Entry, Io, OutStream } from "./io.js";
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

async function createFile(path: string, bytes: Uint8Array): Promise<void> {
  const handle = await open(path, "wx");
  try {
    await handle.writeFile(bytes);
    await handle.sync();
  } finally {
    await handle.close();
  }
}

/** The machine's own disk. */
export const nodeDisk: Disk = {
  readFile,
  entry,
  list: (folder) => readdir(folder),
  makeFolder,
  createFile,
  link,
  rename,
  removeFile: unlink,
  removeFolder: rmdir,
};

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
export function outStream(stream: Writable & { readonly columns?: number }): OutStream {
  let failed: Error | undefined;
  // A reader that has seen enough (`| head`) closes the pipe; that is not a failure of ours.
  stream.on("error", (error) => {
    if (systemCode(error) !== "EPIPE") failed ??= error;
  });
  return {
    columns: stream.columns,
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
    disk: nodeDisk,
    cwd: process.cwd(),
    env: process.env,
    runId: `${process.pid}-${randomUUID().slice(0, 8)}`,
    today: () => dateText(new Date()),
  };
}

/** The date on the wall: of this machine's own time zone. */
function dateText(now: Date): string {
  const digits = (value: number, count: number): string => String(value).padStart(count, "0");
  return [digits(now.getFullYear(), 4), digits(now.getMonth() + 1, 2), digits(now.getDate(), 2)].join("-");
}
