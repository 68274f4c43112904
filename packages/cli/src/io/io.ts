/** One of the two ways out: standard output carries results, standard error carries talk. */
export interface OutStream {
  /** Width of the terminal in characters; undefined where there is none. */
  readonly columns: number | undefined;
  write(text: string): void;
  /** Resolves when all is written; rejects with the system's error where it could not be. A reader that left is no error. */
  flush(): Promise<void>;
}

/** What stands at a path. */
export type Entry = "file" | "folder" | "nothing";

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
  /** Makes a file that must not exist yet, and returns once its bytes are on the disk (fsync). */
  createFile(path: string, bytes: Uint8Array): Promise<void>;
  /** Gives a file a second name; fails with `EEXIST` where that name is taken. */
  link(from: string, to: string): Promise<void>;
  /** Moves a file over whatever stands at `to`, in one step. */
  rename(from: string, to: string): Promise<void>;
  removeFile(path: string): Promise<void>;
  /** Removes an empty folder. */
  removeFolder(path: string): Promise<void>;
}

/** Everything that the command knows of the world outside; tests give one that lives in memory. */
export interface Io {
  readonly stdout: OutStream;
  readonly stderr: OutStream;
  /** The first `atMost` bytes of standard input. */
  readStdin(atMost: number): Promise<Uint8Array>;
  readonly stdinIsTTY: boolean;
  readonly disk: Disk;
  readonly cwd: string;
  readonly env: Readonly<Record<string, string | undefined>>;
  /** A word that no other running command has: names the temporary files. */
  readonly runId: string;
  /** Today's date by the machine's own clock, as `2026-12-20`. */
  readonly today: () => string;
}
