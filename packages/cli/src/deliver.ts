import { join, resolve } from "node:path";
import type { Io } from "./io/io.js";
import { type NewFile, writeWhole } from "./io/write-whole.js";
import type { CommonOptions } from "./options.js";
import { showPath } from "./read-input.js";

/** A file to write into the output folder. */
export interface OutputFile {
  readonly name: string;
  readonly content: string | Uint8Array;
}

/** A report: a file that standard output can carry. */
export interface ReportFile extends OutputFile {
  readonly content: string;
}

/**
 * Writes files into a folder, all of them or none; says on standard error where they are.
 *
 * @returns Their paths as the person sees them.
 */
export async function writeOutput(
  io: Io,
  folder: string,
  files: readonly OutputFile[],
  options: Pick<CommonOptions, "force">,
): Promise<string[]> {
  const placed: NewFile[] = files.map(({ name, content }) => ({
    path: join(resolve(io.cwd, folder), name),
    content,
  }));
  const show = (path: string): string => showPath(io, path);
  await writeWhole(io.disk, placed, { force: options.force === true, runId: io.runId, show });
  return placed.map(({ path }) => show(path));
}

/** The report goes to standard output; with `--out` a copy of it goes into that folder. */
export async function deliverReport(io: Io, file: ReportFile, options: CommonOptions): Promise<void> {
  if (options.out !== undefined) {
    const paths = await writeOutput(io, options.out, [file], options);
    io.stderr.write(paths.map((path) => `Wrote ${path}\n`).join(""));
  }
  io.stdout.write(file.content);
}
