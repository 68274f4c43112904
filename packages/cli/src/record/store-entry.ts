import { EXIT } from "../exit-code.js";
import { CommandFailure } from "../failure.js";
import { isJsonLike } from "../file/edit-yaml.js";
import { MAX_FILE_BYTES, markOf, showText } from "../file/index.js";
import { changeFile } from "../io/change-file.js";
import type { Io } from "../io/io.js";
import { showPath } from "../read-input.js";
import { entryLine, knifeNameProblem, newRecordText, type RecordHead, withEntry } from "./entry-text.js";
import type { FoundRecord } from "./find-record.js";

/** What is to be stored: an entry without its number, and with the first one the snapshot of the plan. */
export interface NewEntry {
  readonly head: RecordHead;
  readonly entry: object;
  readonly planned?: object | undefined;
}

/** The number that the next entry of a record has. */
export const nextRevision = ({ existing }: FoundRecord): number => (existing?.file.entries.length ?? 0) + 1;

/**
 * Stores one entry. Once it resolves with `stored`, the entry is on the disk for good; `changed` where the record is no
 * longer what was read.
 *
 * @throws {CommandFailure} exit code 5 where it cannot be stored: nothing is written then.
 */
export async function storeEntry(
  io: Io,
  record: FoundRecord,
  { head, entry, planned }: NewEntry,
): Promise<"stored" | "changed"> {
  const numbered = { revision: nextRevision(record), ...entry };
  const { existing, path, shown } = record;
  const addition = { planned, entry: numbered };
  if (existing === undefined) refuseKnifeName(head.knife);
  const text = existing === undefined ? newRecordText(head, addition) : withEntry(existing.text, addition);
  if (text === undefined) {
    throw new CommandFailure(
      EXIT.write,
      "cannot-add",
      `${shown} is laid out in a way that nothing can be added to; nothing was stored`,
      isJsonLike(existing?.text ?? "")
        ? `Put this behind the last of "entries" yourself: ${JSON.stringify(numbered)}`
        : `Make entries a list with one entry a line; this is the one to add: - ${entryLine(numbered)}`,
      { file: shown },
    );
  }
  const content = markOf(existing?.bytes) + text;
  const size = new TextEncoder().encode(content).length;
  if (size > MAX_FILE_BYTES) {
    throw new CommandFailure(
      EXIT.write,
      "record-too-large",
      `${shown} would be larger than a record can be (1 MB); nothing was stored`,
      "Give the record a new name to keep it, and begin another.",
      { file: shown },
    );
  }
  const show = (each: string): string => showPath(io, each);
  return changeFile(io, { path, seen: existing?.bytes, content }, show);
}

/** A record has to be able to name its knife. */
function refuseKnifeName(knife: string): void {
  const problem = knifeNameProblem(knife);
  if (problem === undefined) return;
  throw new CommandFailure(
    EXIT.usage,
    "knife-name",
    `the name of the knife file ${problem}; nothing was stored`,
    "Give it another name, and enter it again.",
    { file: showText(knife, 60) },
  );
}
