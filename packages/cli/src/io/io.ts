/** One of the two ways out: standard output carries results, standard error carries talk. */
export interface OutStream {
  /** Width of the terminal in characters; undefined where there is none. */
  readonly columns: number | undefined;
  /** Whether a person reads it on a terminal. */
  readonly isTTY: boolean;
  write(text: string): void;
  /** Resolves when all is written; rejects with the system's error where it could not be. A reader that left is no error. */
  flush(): Promise<void>;
}

/** What stands at a path. */
export type Entry = "file" | "folder" | "nothing";

/** Who may do what with a file, as the system keeps it. */
export interface Access {
  /** Its permission bits: 0o644. */
  readonly mode: number;
  readonly user: number;
  readonly group: number;
}

/** Far beyond any file of a shop, yet an end to a device that has none: no more than this is read. */
export const MOST_BYTES = 64 * 1024 * 1024;

/**
 * The few things that the command does on a disk. Each rejects with an error that carries the system's own `code`
 * (`ENOENT`, `EACCES`, `ENOSPC` …). Paths are absolute.
 */
export interface Disk {
  /** The first `atMost` bytes of a file, pipe or device. */
  readFile(path: string, atMost: number): Promise<Uint8Array>;
  entry(path: string): Promise<Entry>;
  /** Names in a folder. */
  list(folder: string): Promise<readonly string[]>;
  /** Makes a folder and those above it; returns the topmost one that it had to make. */
  makeFolder(path: string): Promise<string | undefined>;
  /**
   * Makes a file that must not exist yet, and returns once its bytes are on the disk (fsync).
   *
   * @param access - Of the file that it is to stand in place of; the owner as far as the system lets it.
   */
  createFile(path: string, bytes: Uint8Array, access?: Access): Promise<void>;
  accessOf(path: string): Promise<Access>;
  /** Whether a file or folder may be written to: not where it is write-protected, even for one who could go through that. */
  isWritable(path: string): Promise<boolean>;
  /** Whether a link stands at a path, though it lead nowhere. */
  isLink(path: string): Promise<boolean>;
  /** Gives a file a second name; fails with `EEXIST` where that name is taken. */
  link(from: string, to: string): Promise<void>;
  /** Moves a file over whatever stands at `to`, in one step. */
  rename(from: string, to: string): Promise<void>;
  removeFile(path: string): Promise<void>;
  /** Removes an empty folder. */
  removeFolder(path: string): Promise<void>;
  /** Returns once the names in a folder are on the disk as they stand (fsync), where the system can promise that. */
  syncFolder(path: string): Promise<void>;
  /** Where a path leads once all links on it are followed; fails with `ENOENT` where nothing stands. */
  realPath(path: string): Promise<string>;
}

/** Who runs the command, so that others that run at the same time can be told from it. */
export interface Machine {
  /** Name of the computer. */
  readonly host: string;
  /** Number of this process on it. */
  readonly processId: number;
  /** Whether a process of this computer is still there. */
  isRunning(processId: number): boolean;
  pause(milliseconds: number): Promise<void>;
}

/** Answers that are typed on a terminal, a line at a time. */
export interface LineReader {
  /** Shows what is asked on standard error, and waits for a line; undefined where there is none any more: Ctrl-C, or the end of input. */
  ask(prompt: string): Promise<string | undefined>;
  close(): void;
}

/** Everything that the command knows of the world outside; tests give one that lives in memory. */
export interface Io {
  readonly stdout: OutStream;
  readonly stderr: OutStream;
  /** The first `atMost` bytes of standard input. */
  readStdin(atMost: number): Promise<Uint8Array>;
  readonly stdinIsTTY: boolean;
  /** Begins to read what is typed on the terminal; close it again. */
  openLines(): LineReader;
  readonly disk: Disk;
  readonly cwd: string;
  readonly env: Readonly<Record<string, string | undefined>>;
  /** A word that no other running command has: names the temporary files. */
  readonly runId: string;
  readonly machine: Machine;
  /** The day where the command runs, `2026-11-28`. */
  today(): string;
}
