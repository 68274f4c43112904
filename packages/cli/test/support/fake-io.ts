import { dirname, join, resolve } from "node:path";
import type { Access, Disk, Entry, Io, LineReader } from "../../src/io/io.js";

function systemError(code: string, path: string): Error {
  return Object.assign(new Error(`${code}: ${path}`), { code });
}

/** A step of the disk that a test makes fail: the step's name, which call of it (from 0), and the system's code. */
export interface Fault {
  readonly step: keyof Disk;
  readonly call?: number;
  readonly code: string;
  /** Only for paths that contain this. */
  readonly path?: string;
}

const USUAL_MODE = 0o644;
const ANY_WRITE = 0o222;

/** A disk in memory. A file that cannot be completed is left cut short, as a real one would be. */
export class MemoryDisk implements Disk {
  readonly files = new Map<string, Uint8Array>();
  readonly folders = new Set<string>(["/"]);
  /** Paths that lead to others; read and replaced through, as the system does. One may lead to what is not there. */
  readonly links = new Map<string, string>();
  /** Permission bits of files and folders that do not have the usual ones. */
  readonly modes = new Map<string, number>();
  readonly faults: Fault[] = [];
  readonly #calls = new Map<string, number>();

  constructor(files: Readonly<Record<string, string | Uint8Array>> = {}) {
    for (const [path, content] of Object.entries(files)) {
      this.#addFolders(dirname(path));
      this.files.set(path, typeof content === "string" ? new TextEncoder().encode(content) : content);
    }
  }

  /** Paths of all files, sorted. */
  paths(): string[] {
    return [...this.files.keys()].sort();
  }

  text(path: string): string {
    const bytes = this.files.get(path);
    if (bytes === undefined) throw new Error(`no ${path} among: ${this.paths().join(", ")}`);
    return new TextDecoder().decode(bytes);
  }

  async readFile(path: string, atMost: number): Promise<Uint8Array> {
    this.#fail("readFile", path);
    const real = this.#follow(path);
    if (this.folders.has(real)) throw systemError("EISDIR", path);
    const bytes = this.files.get(real);
    if (bytes === undefined) throw systemError("ENOENT", path);
    return bytes.slice(0, atMost);
  }

  async entry(path: string): Promise<Entry> {
    this.#fail("entry", path);
    const real = this.#follow(path);
    if (this.folders.has(real)) return "folder";
    return this.files.has(real) ? "file" : "nothing";
  }

  async list(folder: string): Promise<readonly string[]> {
    this.#fail("list", folder);
    if (!this.folders.has(folder)) throw systemError("ENOENT", folder);
    return [...new Set([...this.files.keys(), ...this.links.keys(), ...this.folders])]
      .filter((path) => path !== folder && dirname(path) === folder)
      .map((path) => path.slice(join(folder, "/").length));
  }

  async makeFolder(path: string): Promise<string | undefined> {
    this.#fail("makeFolder", path);
    if (this.files.has(path)) throw systemError("EEXIST", path);
    return this.#addFolders(path);
  }

  async createFile(path: string, bytes: Uint8Array, access?: Access): Promise<void> {
    if (this.files.has(path) || this.links.has(path)) throw systemError("EEXIST", path);
    if (!this.folders.has(dirname(path))) throw systemError("ENOENT", path);
    this.files.set(path, bytes.slice(0, Math.floor(bytes.length / 2)));
    this.#fail("createFile", path);
    this.files.set(path, bytes.slice());
    if (access !== undefined) this.modes.set(path, access.mode);
  }

  async accessOf(path: string): Promise<Access> {
    this.#fail("accessOf", path);
    const real = this.#follow(path);
    if (!this.files.has(real) && !this.folders.has(real)) throw systemError("ENOENT", path);
    return { mode: this.modes.get(real) ?? USUAL_MODE, user: 1000, group: 1000 };
  }

  async isWritable(path: string): Promise<boolean> {
    return ((await this.accessOf(path)).mode & ANY_WRITE) !== 0;
  }

  async isLink(path: string): Promise<boolean> {
    this.#fail("isLink", path);
    return this.links.has(path);
  }

  async link(from: string, to: string): Promise<void> {
    this.#fail("link", to);
    if (this.files.has(to) || this.folders.has(to) || this.links.has(to)) throw systemError("EEXIST", to);
    this.files.set(to, this.#get(from));
    this.#moveMode(from, to);
  }

  async rename(from: string, to: string): Promise<void> {
    this.#fail("rename", to);
    if (this.folders.has(to)) throw systemError("EISDIR", to);
    this.files.set(to, this.#get(from));
    this.files.delete(from);
    // A name is given: what it led to before stays.
    this.links.delete(to);
    this.#moveMode(from, to);
  }

  async removeFile(path: string): Promise<void> {
    this.#fail("removeFile", path);
    if (!this.files.delete(path)) throw systemError("ENOENT", path);
  }

  async removeFolder(path: string): Promise<void> {
    this.#fail("removeFolder", path);
    if ((await this.list(path)).length > 0) throw systemError("ENOTEMPTY", path);
    this.folders.delete(path);
  }

  async syncFolder(path: string): Promise<void> {
    this.#fail("syncFolder", path);
    if (!this.folders.has(path)) throw systemError("ENOENT", path);
  }

  async realPath(path: string): Promise<string> {
    this.#fail("realPath", path);
    const target = this.#follow(path);
    if (!this.files.has(target) && !this.folders.has(target)) throw systemError("ENOENT", path);
    return target;
  }

  #follow = (path: string): string => this.links.get(path) ?? path;

  #moveMode(from: string, to: string): void {
    const mode = this.modes.get(from);
    if (mode === undefined) this.modes.delete(to);
    else this.modes.set(to, mode);
  }

  #get(path: string): Uint8Array {
    const bytes = this.files.get(path);
    if (bytes === undefined) throw systemError("ENOENT", path);
    return bytes;
  }

  #addFolders(path: string): string | undefined {
    let topmost: string | undefined;
    for (let folder = path; !this.folders.has(folder); folder = dirname(folder)) {
      if (this.files.has(folder)) throw systemError("ENOTDIR", path);
      topmost = folder;
    }
    if (topmost !== undefined) {
      for (let folder = path; ; folder = dirname(folder)) {
        this.folders.add(folder);
        if (folder === topmost) break;
      }
    }
    return topmost;
  }

  #fail(step: keyof Disk, path: string): void {
    const call = this.#calls.get(step) ?? 0;
    this.#calls.set(step, call + 1);
    const fault = this.faults.find(
      (each) =>
        each.step === step &&
        (each.call === undefined || each.call === call) &&
        (each.path === undefined || path.includes(each.path)),
    );
    if (fault !== undefined) throw systemError(fault.code, path);
  }
}

export interface FakeIo extends Io {
  readonly disk: MemoryDisk;
  /** What has been written so far. */
  out(): string;
  err(): string;
}

export interface FakeIoOptions {
  readonly files?: Readonly<Record<string, string | Uint8Array>>;
  readonly stdin?: string | Uint8Array;
  /** Width of the terminal; none by default. */
  readonly columns?: number;
  /** Both streams out, and what is typed, are a terminal: these lines are typed, then it ends as by Ctrl-C. */
  readonly typed?: readonly string[];
  readonly env?: Readonly<Record<string, string>>;
  readonly cwd?: string;
  /** Standard output cannot be written to the end. */
  readonly stdoutFails?: string;
  /** Left out: 2026-11-28. */
  readonly today?: string;
  /** Processes that run beside this one, number 1. */
  readonly running?: readonly number[];
  /** Called wherever the command waits. */
  readonly onPause?: () => void;
}

/** A world in memory; paths in `files` are absolute or meant from `/shop`, the current folder. */
export function fakeIo(options: FakeIoOptions = {}): FakeIo {
  const cwd = options.cwd ?? "/shop";
  const files = Object.fromEntries(
    Object.entries(options.files ?? {}).map(([path, content]) => [resolve(cwd, path), content]),
  );
  const disk = new MemoryDisk(files);
  for (let folder = cwd; !disk.folders.has(folder); folder = dirname(folder)) disk.folders.add(folder);
  const texts = { out: "", err: "" };
  const stream = (key: "out" | "err", fails?: string) => ({
    columns: options.columns ?? (options.typed === undefined ? undefined : 80),
    isTTY: options.typed !== undefined,
    write: (text: string) => {
      texts[key] += text;
    },
    flush: async () => {
      if (fails !== undefined) throw systemError(fails, "standard output");
    },
  });
  const openLines = (): LineReader => {
    const lines = [...(options.typed ?? [])];
    return {
      ask: async (prompt) => {
        const line = lines.shift();
        texts.err += `${prompt}${line === undefined ? "" : `${line}\n`}`;
        return line;
      },
      close: () => undefined,
    };
  };
  return {
    openLines,
    stdout: stream("out", options.stdoutFails),
    stderr: stream("err"),
    stdinIsTTY: options.stdin === undefined,
    readStdin: async (atMost) => {
      const given = options.stdin ?? "";
      return (typeof given === "string" ? new TextEncoder().encode(given) : given).slice(0, atMost);
    },
    disk,
    cwd,
    env: options.env ?? {},
    runId: "run",
    machine: {
      host: "bench",
      processId: 1,
      isRunning: (id) => id === 1 || (options.running ?? []).includes(id),
      pause: async () => options.onPause?.(),
    },
    today: () => options.today ?? "2026-11-28",
    out: () => texts.out,
    err: () => texts.err,
  };
}
