import { deliverDone, deliverFirst, deliverReport, type ReportFile, refuseOutput } from "../deliver.js";
import { EXIT, type ExitCode } from "../exit-code.js";
import { CommandFailure } from "../failure.js";
import type { RecordEntry, RecordFile } from "../file/record-file.js";
import { refuseIdle } from "../idle-options.js";
import type { Io } from "../io/io.js";
import { loadJob } from "../load.js";
import { type Measured, measure } from "../measure.js";
import type { RecordOptions } from "../options.js";
import { answerEntry } from "../record/enter.js";
import { isEntering, readEntryOptions } from "../record/entry-options.js";
import { type FoundRecord, findRecord } from "../record/find-record.js";
import { textsOf } from "../record/job-then.js";
import { plannedData, plannedOf } from "../record/planned.js";
import { nextRevision, storeEntry } from "../record/store-entry.js";
import { jsonText, reportText } from "../report/documents.js";
import { failureText } from "../report/failure-report.js";
import { headingLines } from "../report/heading.js";
import { wrap } from "../report/layout.js";
import { recordJson } from "../report/record-json.js";
import { type EnteredReport, enteredText, recordText } from "../report/record-text.js";
import { commandLine, commandLines } from "../shell-words.js";
import { version } from "../version.js";

/** How often an entry is begun anew because another command stored one in the meantime. */
const TRIES = 20;

/**
 * `scantling record FILE`: what was measured, added to the knife's record, and what it means; without anything to enter, what
 * is in the record. Exit code 4 where an entry is doubted and therefore not stored, 5 where it cannot be stored. That steel is
 * short is said, and is no failure of this command.
 */
export async function record(io: Io, file: string, options: RecordOptions): Promise<ExitCode> {
  if (!isEntering(options)) refuseIdleInList(options);
  if (!isEntering(options)) return list(io, await findRecord(io, file), { ...options, file });
  for (let tries = 0; tries < TRIES; tries++) {
    const entered = await enter(io, await findRecord(io, file), options);
    if (entered === "changed") continue;
    return tell(io, entered, options);
  }
  throw new CommandFailure(
    EXIT.write,
    "locked",
    "other commands store one entry after the other in this record; nothing was stored",
    "Try again when they are done.",
  );
}

/** What the entry means, where it is stored; else why it is not. */
async function tell(io: Io, { report, measured, found }: Entered, options: RecordOptions): Promise<ExitCode> {
  const make = (): ReportFile => ({
    name: copyName(found, options),
    content: options.json
      ? jsonText(recordJson(recordOf(found, report), report))
      : reportText([
          ...(measured === undefined ? [] : [...headingLines(measured), ""]),
          ...enteredText(report),
        ]),
  });
  if (report.stored) {
    const is = `the entry IS stored, as revision ${report.entry.revision} in ${found.shown}`;
    const todo = `Do not enter it again. What is entered is listed by: ${commandLine(["scantling", "record", found.shown])}`;
    return deliverDone(io, { is, todo }, make, options);
  }
  const failure = await deliverFirst(io, make(), options);
  if (failure !== undefined) io.stderr.write(failureText(failure));
  return EXIT.notMet;
}

/** After its knife, for several share a folder; never a name that a record itself could have. */
const copyName = ({ name }: FoundRecord, { json }: RecordOptions): string =>
  `${name}.recorded.${json ? "json" : "txt"}`;

/** Of an entry, and none is made. */
function refuseIdleInList({ plan, sure, shop }: RecordOptions): void {
  const todo = "Leave it out, or add what is to be entered, such as --stage cut --mass 1215g.";
  refuseIdle({
    given: { "--plan": plan, "--sure": sure, "--shop": shop },
    says: (option) =>
      `${option} goes with an entry, and nothing is entered here: what is in the record is listed`,
    todo,
  });
}

async function list(
  io: Io,
  found: FoundRecord,
  { file, ...options }: RecordOptions & { readonly file: string },
): Promise<ExitCode> {
  const { existing, knife, knifeName, shown } = found;
  // Where there is no record, the knife file at least must be one.
  const units = options.units ?? existing?.file.units ?? (await loadJob(io, knife, options)).units;
  const nothing = { fileName: shown, knife: knifeName, planned: undefined, entries: [] };
  const report = {
    name: copyName(found, options),
    content: options.json
      ? jsonText(recordJson(existing?.file ?? nothing))
      : reportText(
          existing === undefined
            ? [
                ...wrap(`There is no ${shown} yet. Begin it with the first weighing:`),
                ...commandLines(["scantling", "record", file, "--stage", "cut", "--mass", "1215g"]),
              ]
            : recordText(existing.file, units),
        ),
  };
  await deliverReport(io, report, options);
  return EXIT.done;
}

interface Entered {
  readonly report: EnteredReport;
  readonly measured: Measured | undefined;
  readonly found: FoundRecord;
}

/** `changed` where the record is no longer the one that was read. */
async function enter(io: Io, found: FoundRecord, options: RecordOptions): Promise<Entered | "changed"> {
  const { existing } = found;
  const entries = existing?.file.entries ?? [];
  const isFirst = entries.length === 0 && existing?.file.planned === undefined;
  const measured =
    isFirst || isHeldAgainstKnife(options) ? measure(await loadJob(io, found.knife, options)) : undefined;
  const units = existing?.file.units ?? measured?.job.knife.units ?? "mm";
  const { written, entry: read } = readEntryOptions(options, units, { today: io.today(), entries });
  refuseCorrection(read, entries);
  if (measured === undefined) {
    refuseIdle({
      given: { "--shop": options.shop },
      says: (option) =>
        `${option} changes nothing: this entry is of no stage and no hardness, so it is held against no shop`,
      todo: "Leave it out.",
    });
  }
  refusePlan(options, isFirst);

  const snapshot =
    isFirst && measured !== undefined
      ? plannedOf(
          measured,
          { on: io.today(), program: version(), files: textsOf(measured.job) },
          options.plan,
        )
      : undefined;
  const planned = snapshot ?? existing?.file.planned;
  const entry: RecordEntry = { ...read, revision: nextRevision(found) };
  const looking = (): void =>
    io.stderr.write("Short: looking for the largest knives that can still be made.\n");
  const answered = answerEntry(entry, { record: found, planned, measured, options, looking });

  const doubted = answered.doubts.length > 0;
  const confirmed = doubted && options.sure === true ? { confirmed: true } : {};
  const shown = { ...entry, ...confirmed };
  const report = {
    file: found.shown,
    entry: shown,
    entries: [...entries, shown],
    answered,
    units: options.units ?? units,
    snapshot,
    planned,
  };
  if (doubted && options.sure !== true) return { report: { ...report, stored: false }, measured, found };
  await refuseCopy(io, found, options);
  const outcome = await storeEntry(io, found, {
    head: { knife: found.knifeName, units, command: commandLine(["scantling", "record", found.knifeName]) },
    entry: { ...written, ...confirmed },
    planned: snapshot === undefined ? undefined : plannedData(snapshot),
  });
  return outcome === "changed" ? "changed" : { report: { ...report, stored: true }, measured, found };
}

/** An entry of which the copy cannot be written is not stored: entered again under another name it would be there twice. */
async function refuseCopy(io: Io, found: FoundRecord, options: RecordOptions): Promise<void> {
  try {
    await refuseOutput(io, [copyName(found, options)], options);
  } catch (error) {
    if (!(error instanceof CommandFailure)) throw error;
    const { exitCode, code, message, todo, details } = error;
    throw new CommandFailure(exitCode, code, message, `The entry is not stored either. ${todo}`, details);
  }
}

/** Whether today's knife says whether an entry can be. */
const isHeldAgainstKnife = ({ stage, hardness, files }: RecordOptions): boolean =>
  stage !== undefined || hardness !== undefined || files !== undefined;

/** The record as it is now. */
function recordOf(
  found: FoundRecord,
  report: EnteredReport,
): Pick<RecordFile, "fileName" | "knife" | "planned" | "entries"> {
  const { existing, shown, knifeName } = found;
  return {
    fileName: shown,
    knife: existing?.file.knife ?? knifeName,
    planned: report.stored ? report.planned : existing?.file.planned,
    entries: report.stored ? report.entries : (existing?.file.entries ?? []),
  };
}

function refuseCorrection(
  { correctsRevision: corrects }: RecordEntry,
  entries: readonly RecordEntry[],
): void {
  if (corrects === undefined) return;
  const by = entries.find(({ correctsRevision }) => correctsRevision === corrects)?.revision;
  const last = entries.length;
  if (corrects <= last && by === undefined) return;
  throw new CommandFailure(
    EXIT.usage,
    by === undefined ? "corrects-nothing" : "corrected-already",
    by === undefined
      ? `--corrects ${corrects}: there is no such entry; ${last === 0 ? "nothing is entered yet" : `the last one is ${last}`}`
      : `--corrects ${corrects}: it is corrected by revision ${by} already`,
    by === undefined ? "scantling record FILE lists what is entered." : `Correct that one: --corrects ${by}.`,
  );
}

function refusePlan({ plan }: RecordOptions, isFirst: boolean): void {
  if (plan === undefined || isFirst) return;
  throw new CommandFailure(
    EXIT.usage,
    "plan-kept",
    "--plan goes with the first entry only: the plan that was cut by then is kept with it",
    "Leave --plan out.",
  );
}
