import type { RecordEntry } from "../file/index.js";
import type { RecordText } from "./find-records.js";

/** A record that holds what another one holds, and would be counted twice. */
export interface CopiedRecord {
  /** As the person sees them. */
  readonly file: string;
  readonly of: string;
}

/** Records that each tell of a job of their own, and copies of them. */
export interface RecordsApart {
  readonly records: readonly RecordText[];
  readonly copies: readonly CopiedRecord[];
}

/** Two knives may well take the same hours on the same day; not the same masses and sizes twice. */
const LEAST_MEASURED = 2;

/**
 * Parts copies from the records that they were made of: all entries of a copy stand in the other one too, from the first on, on
 * the same days. The longer one counts, for work went on in it; of two alike the one of
 * the shorter name, for copies are called so and so with something more.
 */
export function withoutCopies(found: readonly RecordText[]): RecordsApart {
  const copies: CopiedRecord[] = [];
  const longestFirst = found
    .map((record) => ({ record, entries: record.file.entries.map((entry) => JSON.stringify(entry)) }))
    .sort((a, b) => b.entries.length - a.entries.length || byName(a.record.path, b.record.path));
  const originals: typeof longestFirst = [];
  for (const one of longestFirst) {
    const original = isTelling(one.record.file.entries)
      ? originals.find(({ entries }) => one.entries.every((entry, index) => entry === entries[index]))
      : undefined;
    if (original === undefined) originals.push(one);
    else copies.push({ file: one.record.file.fileName, of: original.record.file.fileName });
  }
  const own = new Set(originals.map(({ record }) => record));
  return { records: found.filter((record) => own.has(record)), copies };
}

const byName = (a: string, b: string): number => a.length - b.length || (a < b ? -1 : 1);

const isTelling = (entries: readonly RecordEntry[]): boolean =>
  entries.filter(({ mass, sizes, drawn }) => (mass ?? sizes ?? drawn) !== undefined).length >= LEAST_MEASURED;
