import { basename, dirname, join, resolve } from "node:path";
import { EXIT } from "../exit-code.js";
import { CommandFailure } from "../failure.js";
import { decodeFile, type RecordFile, readRecordFile, showText } from "../file/index.js";
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
  /** What both are called, without their endings. */
  readonly name: string;
  /** Undefined where there is no record yet. */
  readonly existing:
    | { readonly bytes: Uint8Array; readonly text: string; readonly file: RecordFile }
    | undefined;
}

/** How a record is called. */
export const RECORD_NAME = /\.record\.(?:ya?ml|json)$/iu;
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
  return RECORD_NAME.test(path) ? namedRecord(io, path) : recordOfKnife(io, given, path);
}

const nameOf = (path: string): string => basename(path).replace(RECORD_NAME, "");

async function namedRecord(io: Io, path: string): Promise<FoundRecord> {
  const shown = showPath(io, path);
  const existing = await readExisting(io, path);
  if (existing === undefined) {
    throw new CommandFailure(
      EXIT.file,
      "cannot-read",
      `there is no ${shown}`,
      "Name the knife file: its record is begun with the first entry.",
      { file: shown },
    );
  }
  const knifeName = existing.file.knife;
  return { path, shown, knife: resolve(dirname(path), knifeName), knifeName, name: nameOf(path), existing };
}

async function recordOfKnife(io: Io, given: string, path: string): Promise<FoundRecord> {
  const stem = join(dirname(path), basename(path).replace(/(?:\.knife)?\.(?:ya?ml|json)$/iu, ""));
  const names = ENDINGS.map((ending) => `${stem}.record.${ending}`);
  const found: { readonly path: string; readonly real: string; readonly existing: Existing }[] = [];
  for (const each of names) {
    const existing = await readExisting(io, each);
    if (existing !== undefined) found.push({ path: each, real: await realPathOf(io, each), existing });
  }
  const [first, ...others] = found;
  const other = others.find(({ real }) => real !== first?.real);
  if (first !== undefined && other !== undefined)
    throw twoRecords(showPath(io, first.path), showPath(io, other.path));
  const place = first?.path ?? names[0] ?? "";
  const head = { path: place, shown: showPath(io, place), name: nameOf(place), existing: first?.existing };
  // A name without its ending finds the record: that knows its knife file.
  const isFile = (await io.disk.entry(path).catch(() => "nothing")) === "file";
  if (first === undefined) return { ...head, knife: given, knifeName: basename(path) };
  const { knife } = first.existing.file;
  const noted = resolve(dirname(place), knife);
  if (!isFile) return { ...head, knife: noted, knifeName: knife };
  // A record names its knife without blanks around.
  const isSame =
    knife === basename(path).trim() || (await realPathOf(io, noted)) === (await realPathOf(io, path));
  if (!isSame) throw otherKnife(head.shown, knife, showPath(io, path));
  return { ...head, knife: given, knifeName: basename(path) };
}

const realPathOf = (io: Io, path: string): Promise<string> => io.disk.realPath(path).catch(() => path);

const twoRecords = (one: string, other: string): CommandFailure =>
  new CommandFailure(
    EXIT.file,
    "two-records",
    `${one} and ${other} are both there, and only one can be the record of this knife`,
    "Move the one away that is not. Or name the one that is meant instead of the knife file.",
    { file: one },
  );

const otherKnife = (file: string, knife: string, named: string): CommandFailure =>
  new CommandFailure(
    EXIT.file,
    "other-knife",
    `${file} is the record of ${showText(knife, 300)}, not of ${named}`,
    `If the knife file was renamed, write its new name into ${file} behind knife:. Else move that record away.`,
    { file },
  );

type Existing = NonNullable<FoundRecord["existing"]>;

async function readExisting(io: Io, path: string): Promise<FoundRecord["existing"]> {
  const shown = showPath(io, path);
  let bytes: Uint8Array;
  try {
    bytes = await io.disk.readFile(path, MOST_BYTES);
  } catch (error) {
    const code = systemCode(error);
    if (code === undefined) throw error;
    if (code === "ENOENT" && (await io.disk.isLink(path).catch(() => false))) throw leadsNowhere(shown);
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

const leadsNowhere = (file: string): CommandFailure =>
  new CommandFailure(
    EXIT.file,
    "cannot-read",
    `${file} is a link, and what it leads to is not there`,
    "Bring back what it leads to: the entries are in there. Or remove the link, to begin a new record.",
    { file },
  );
