import { basename, dirname, join, resolve } from "node:path";
import { EXIT } from "../exit-code.js";
import { CommandFailure } from "../failure.js";
import { decodeFile, FileError, type Problem, type RecordFile, readRecordFile } from "../file/index.js";
import { type Io, MOST_BYTES } from "../io/io.js";
import { describeSystemError, systemCode } from "../io/system-code.js";
import { STDIN, showPath } from "../read-input.js";
import { RECORD_NAME } from "../record/find-record.js";

/** A record that was read, and where it lies. */
export interface RecordText {
  readonly file: RecordFile;
  /** Absolute. */
  readonly path: string;
}

/** Folders of tools and of what is hidden hold no records; what ends like a file is one. */
const NO_FOLDER = /^\.|^node_modules$|\.[a-z][a-z0-9]{0,5}$/iu;
/** Deeper than any shop sorts its orders. */
const DEEPEST = 12;

/**
 * The records that were named, or all of those below a folder; a folder that was named stands for all below it.
 *
 * @param folder - Where to look when nothing was named.
 * @throws {CommandFailure} exit code 3 with the problems of all records that cannot be read.
 */
export async function findRecords(
  io: Io,
  named: readonly string[],
  folder: string,
): Promise<readonly RecordText[]> {
  const paths =
    named.length === 0
      ? await below(io, folder, new Set())
      : (await each(named, (one) => pathsOf(io, one))).flat();
  const known = await eachOnce(io, [...new Set(paths)].sort());
  const problems: Problem[] = [];
  const records: RecordText[] = [];
  for (const path of known) {
    try {
      const text = decodeFile(
        await io.disk.readFile(path, MOST_BYTES),
        showPath(io, path),
        "a record in YAML",
      );
      records.push({ file: readRecordFile(text, showPath(io, path)), path });
    } catch (error) {
      problems.push(...problemsOf(error, showPath(io, path)));
    }
  }
  if (problems.length > 0) throw broken(problems);
  return records;
}

/** Of several names of one file, links that lead to it, only one: its own where that is among them. */
async function eachOnce(io: Io, paths: readonly string[]): Promise<readonly string[]> {
  const byFile = new Map<string, string>();
  for (const path of paths) {
    const real = await io.disk.realPath(path).catch(() => path);
    if (!byFile.has(real) || path === real) byFile.set(real, path);
  }
  return [...byFile.values()].sort();
}

async function pathsOf(io: Io, given: string): Promise<readonly string[]> {
  if (given === STDIN)
    throw new CommandFailure(
      EXIT.usage,
      "no-standard-input",
      "records are read from their files, not from standard input",
      "Name the records, or the folder that they are below.",
    );
  const path = resolve(io.cwd, given);
  const entry = await io.disk.entry(path).catch(() => "nothing" as const);
  if (entry === "folder") return below(io, path, new Set());
  if (entry === "file" && !RECORD_NAME.test(path))
    throw new CommandFailure(
      EXIT.usage,
      "no-record",
      `${showPath(io, path)} is no record`,
      `A record is called NAME.record.yaml${/\.knife\./u.test(basename(path)) ? " and lies beside its knife file" : ""}.`,
    );
  // What is not there is told with everything else that cannot be read.
  return [path];
}

async function below(io: Io, folder: string, seen: Set<string>, depth = 0): Promise<string[]> {
  const real = await io.disk.realPath(folder).catch(() => folder);
  if (seen.has(real) || depth > DEEPEST) return [];
  seen.add(real);
  // A folder that may not be looked into holds no records of this shop.
  const names = await io.disk.list(folder).catch(() => []);
  const found = await each(names, async (name): Promise<string[]> => {
    const path = join(folder, name);
    if (RECORD_NAME.test(name)) return (await isFile(io, path)) ? [path] : [];
    if (NO_FOLDER.test(name)) return [];
    const entry = await io.disk.entry(path).catch(() => "nothing" as const);
    return entry === "folder" ? below(io, path, seen, depth + 1) : [];
  });
  return found.flat();
}

const isFile = async (io: Io, path: string): Promise<boolean> =>
  (await io.disk.entry(path).catch(() => "nothing" as const)) === "file";

/** One after the other, for a folder is not to be walked twice. */
async function each<From, To>(items: readonly From[], make: (item: From) => Promise<To>): Promise<To[]> {
  const made: To[] = [];
  for (const item of items) made.push(await make(item));
  return made;
}

function problemsOf(error: unknown, file: string): readonly Problem[] {
  if (error instanceof FileError) return error.problems;
  if (systemCode(error) === undefined) throw error;
  const message = `cannot be read: ${describeSystemError(error)}`;
  return [{ code: "cannot-read", file, path: "", line: undefined, column: undefined, message }];
}

function broken(problems: readonly Problem[]): CommandFailure {
  const files = [...new Set(problems.map(({ file }) => file))];
  const many = files.length === 1 ? `${files[0]} cannot be used` : `${files.length} records cannot be used`;
  return new CommandFailure(
    EXIT.file,
    "file-errors",
    `${many}; nothing was learnt and nothing written`,
    "Mend them and try again, or name the records that are to be used.",
    { ...(files[0] === undefined ? {} : { file: files[0] }), problems },
  );
}

/**
 * The folder that records are looked for below: that of the shop file, or the current one.
 *
 * @param shop - Absolute; undefined where there is no shop file, or it came from standard input.
 */
export const folderOfRecords = (io: Io, shop: string | undefined): string =>
  shop === undefined ? io.cwd : dirname(shop);
