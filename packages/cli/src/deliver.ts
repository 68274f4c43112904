import { resolve } from "node:path";
import { EXIT, type ExitCode } from "./exit-code.js";
import { CommandFailure } from "./failure.js";
import type { Io } from "./io/io.js";
import { systemCode } from "./io/system-code.js";
import { type NewFile, refuseToWrite, writeWhole } from "./io/write-whole.js";
import type { CommonOptions } from "./options.js";
import { showPath } from "./read-input.js";
import { failureText } from "./report/failure-report.js";

/** A file to write into the output folder. */
export interface OutputFile {
  /** From the output folder; one that begins at the root stands by itself. */
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
    path: resolve(io.cwd, folder, name),
    content,
  }));
  const show = (path: string): string => showPath(io, path);
  await writeWhole(io.disk, placed, { force: options.force === true, runId: io.runId, show });
  return placed.map(({ path }) => show(path));
}

/** The report goes to standard output; with `--out` a copy of it goes into that folder. */
export async function deliverReport(io: Io, file: ReportFile, options: CommonOptions): Promise<void> {
  await writeCopy(io, file, options);
  io.stdout.write(file.content);
}

async function writeCopy(io: Io, file: ReportFile, options: CommonOptions): Promise<void> {
  if (options.out === undefined) return;
  const paths = await writeOutput(io, options.out, [file], options);
  io.stderr.write(paths.map((path) => `Wrote ${path}\n`).join(""));
}

/**
 * Before anything that must not be done twice, or that takes long: refuses names in the folder of `--out` that could not be
 * written.
 *
 * @throws {CommandFailure} exit code 5.
 */
export async function refuseOutput(
  io: Io,
  names: readonly string[],
  { out, force }: Pick<CommonOptions, "out" | "force">,
): Promise<void> {
  if (out === undefined) return;
  const files = names.map((name) => ({ path: resolve(io.cwd, out, name) }));
  await refuseToWrite(io.disk, files, { force: force === true, show: (path) => showPath(io, path) });
}

/** The report on standard output, whatever becomes of its copy; answers why there is none, or nothing. */
export async function deliverFirst(
  io: Io,
  file: ReportFile,
  options: CommonOptions,
): Promise<CommandFailure | undefined> {
  io.stdout.write(file.content);
  try {
    await writeCopy(io, file, options);
    return undefined;
  } catch (error) {
    if (error instanceof CommandFailure) return error;
    throw error;
  }
}

/** What is done and stays so, and what to do where its report fails: not the same once more. */
export interface Done {
  readonly is: string;
  readonly todo: string;
}

/**
 * The report of something that is done: whatever fails now, standard error says that it is.
 *
 * @param make - Makes the report; that may fail too.
 * @returns Exit code 5 where the report or its copy is missing.
 */
export async function deliverDone(
  io: Io,
  { is, todo }: Done,
  make: () => ReportFile,
  options: CommonOptions,
): Promise<ExitCode> {
  const say = (why: string, code: string): void => {
    io.stderr.write(failureText(new CommandFailure(EXIT.write, code, `${is}${why}`, todo)));
  };
  try {
    const failure = await deliverFirst(io, make(), options);
    if (failure !== undefined) {
      const reason = failure.message.replace("; nothing was written", "");
      say(`; only the copy of the report is missing: ${reason}`, failure.code);
    }
    await io.stdout.flush();
    return failure === undefined ? EXIT.done : EXIT.write;
  } catch (error) {
    say("; its report is missing", "no-report");
    // Why standard output cannot be written is said where every command ends.
    if (systemCode(error) === undefined) throw error;
    return EXIT.write;
  }
}
