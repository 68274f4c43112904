import { basename, dirname, join, resolve } from "node:path";
import { EXIT } from "../exit-code.js";
import { CommandFailure } from "../failure.js";
import { decodeFile, type RecordFile, readRecordFile } from "../file/index.js";
import { type Io, MOST_BYTES } from "../io/io.js";
import { describeSystemError, systemCode } from "../io/system-code.js";
import { STDIN, showPath } from "../read-input.js";

/** The record of a knife, or where it will be. */
export interface FoundRecord {
  /** Absolute, and as the person sees it. */
  readonly path: string;
  readonly shown: string;
  /** The knife file, as it is to be given to whatever reads it, and its name beside the record. */
  readonly knife: string;
  readonly knifeName: string;
  /** Undefined where there is no record yet. */
  readonly existing:
    | { readonly bytes: Uint8Array; readonly text: string; readonly file: RecordFile }
    | undefined;
}

const RECORD_NAME = /\.record\.(?:ya?ml|json)$/iu;
const ENDINGS = ["yaml", "yml", "json"] as const;

/**
 * The record beside a knife file; or the record itself, where that is what was named.
 *
 * @throws {FileError} with all problems of the record.
 * @throws {CommandFailure} exit code 2 for standard input, 3 where the record cannot be read.
 */
export async function findRecord(io: Io, given: string): Promise<FoundRecord> {
  if (given === STDIN) {
    throw new CommandFailure(
      EXIT.usage,
      "no-file-for-record",
      "a record lies beside its knife file, and standard input has no place",
      "Name the knife file.",
    );
  }
  const path = resolve(io.cwd, given);
  if (RECORD_NAME.test(path)) {
    const existing = await readExisting(io, path);
    if (existing === undefined) {
      throw new CommandFailure(
        EXIT.file,
        "cannot-read",
        `there is no ${showPath(io, path)}`,
        "Name the knife file: its record is begun with the first entry.",
        { file: showPath(io, path) },
      );
    }
    const knife = resolve(dirname(path), existing.file.knife);
    return { path, shown: showPath(io, path), knife, knifeName: existing.file.knife, existing };
  }
  const stem = join(dirname(path), basename(path).replace(/(?:\.knife)?\.(?:ya?ml|json)$/iu, ""));
  const names = ENDINGS.map((ending) => `${stem}.record.${ending}`);
  for (const each of names) {
    const existing = await readExisting(io, each);
    if (existing === undefined) continue;
    // A name without its ending finds the record: that knows its knife file.
    const isFile = (await io.disk.entry(path).catch(() => "nothing")) === "file";
    const [knife, knifeName] = isFile
      ? [given, basename(path)]
      : [resolve(dirname(each), existing.file.knife), existing.file.knife];
    return { path: each, shown: showPath(io, each), knife, knifeName, existing };
  }
  const [first = ""] = names;
  return {
    path: first,
    shown: showPath(io, first),
    knife: given,
    knifeName: basename(path),
    existing: undefined,
  };
}

async function readExisting(io: Io, path: string): Promise<FoundRecord["existing"]> {
  const shown = showPath(io, path);
  let bytes: Uint8Array;
  try {
    bytes = await io.disk.readFile(path, MOST_BYTES);
  } catch (error) {
    const code = systemCode(error);
    if (code === undefined) throw error;
    if (code === "ENOENT" || code === "ENOTDIR") return undefined;
    throw new CommandFailure(
      EXIT.file,
      "cannot-read",
      `cannot read ${shown}: ${describeSystemError(error)}`,
      "Check the path, and that you may read it.",
      { file: shown },
    );
  }
  const text = decodeFile(bytes, shown, "a record in YAML");
  return { bytes, text, file: readRecordFile(text, shown) };
}
