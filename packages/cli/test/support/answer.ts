import type { ExitCode } from "../../src/exit-code.js";
import { run } from "../../src/run.js";
import { type FakeIo, type FakeIoOptions, fakeIo } from "./fake-io.js";

export interface Answer {
  readonly code: ExitCode;
  readonly out: string;
  readonly err: string;
  /** Paths that were not there before. */
  readonly written: readonly string[];
  readonly io: FakeIo;
}

/** Runs one command line in a world in memory. */
export async function answer(argv: readonly string[], world: FakeIoOptions | FakeIo = {}): Promise<Answer> {
  const io = "disk" in world ? world : fakeIo(world);
  const [before, outBefore, errBefore] = [io.disk.paths(), io.out().length, io.err().length];
  const code = await run(argv, io);
  return {
    code,
    out: io.out().slice(outBefore),
    err: io.err().slice(errBefore),
    written: io.disk.paths().filter((path) => !before.includes(path)),
    io,
  };
}

/** All blanks and line ends as one blank, so that a test need not know where lines are broken. */
export function flat(text: string): string {
  return text.replace(/\s+/g, " ");
}

/** Lines that are wider than a report may be. */
export function wideLines(text: string): string[] {
  return text.split("\n").filter((line) => line.length > 80);
}
