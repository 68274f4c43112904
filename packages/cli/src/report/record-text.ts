import { type GateStage, STAGE_WORDS, TASK_WORDS } from "@scantling/geometry";
import { describeIssue, type FileUnits, formatNumber } from "@scantling/geometry/units";
import type { Planned, RecordEntry, RecordFile } from "../file/record-file.js";
import type { Answered } from "../record/enter.js";
import { hoursByTask, type LossSince, lossesIn, lossTo, spreadOf } from "../record/meaning.js";
import { weighingsOf } from "../record/weighings.js";
import { entryWords, hoursText } from "./entry-words.js";
import { fineMassText, percentText } from "./figures.js";
import { bySeverity, findingLines } from "./findings.js";
import { gateText, readingLines } from "./gate-text.js";
import { heldHardness } from "./hardness-text.js";
import { item, layOutTable, spread, wrap } from "./layout.js";

/** An entry that was stored, or that was not. */
export interface EnteredReport {
  readonly file: string;
  readonly entry: RecordEntry;
  /** All entries that stand in the record with this one. */
  readonly entries: readonly RecordEntry[];
  readonly stored: boolean;
  readonly answered: Answered;
  readonly units: FileUnits;
  /** Kept with this entry, the first one; else undefined. */
  readonly snapshot: Planned | undefined;
  readonly planned: Planned | undefined;
}

/** What was stored, and straight away what it means. */
export function enteredText(report: EnteredReport): string[] {
  const { gate, noGate, readings } = report.answered;
  return [
    ...(report.stored ? storedLines(report) : refusedLines(report)),
    ...meaningLines(report),
    ...(report.stored ? hardnessLines(report.answered) : []),
    ...(noGate === undefined ? [] : wrap(`Steel to spare: not told, for ${noGate}.`)),
    // What is doubted has been told, and its sums are worth nothing.
    ...(gate === undefined || !report.stored ? [] : ["", ...gateText(gate.report, gate.measured.job)]),
    ...(readings === undefined || !report.stored ? [] : ["", ...sizeLines(readings)]),
  ];
}

const hardnessLines = ({ hardness }: Answered): string[] =>
  hardness === undefined ? [] : wrap(heldHardness(hardness));

function sizeLines({ reports, measured: { job } }: NonNullable<Answered["readings"]>): string[] {
  const findings = bySeverity(reports.flatMap((one) => one.findings));
  return [
    ...readingLines(reports, job),
    ...(findings.length === 0 ? [] : ["", "FOUND"]),
    ...findings.flatMap((finding) => findingLines(finding, job, { basis: true })),
  ];
}

function storedLines({ file, entry, units, snapshot }: EnteredReport): string[] {
  return [
    `STORED: revision ${entry.revision} in ${file}`,
    ...item(`  ${entry.on}  `, entryWords(entry, units)),
    ...(snapshot === undefined
      ? []
      : wrap(
          "  With it what plan says today, to be held against when it is made again: scantling reorder FILE.",
          undefined,
          "  ",
        )),
  ];
}

function refusedLines({ entry, answered, units }: EnteredReport): string[] {
  return [
    "NOT STORED: this cannot well be. Measure again, and enter what you find then.",
    ...item(`  ${entry.on}  `, entryWords(entry, units)),
    ...answered.doubts.flatMap((doubt) => item("- ", describeIssue(doubt, units))),
    "If it stands, enter it again with --sure.",
  ];
}

function meaningLines({ entry, entries, stored, planned, units }: EnteredReport): string[] {
  if (!stored) return [];
  const loss =
    entry.stage === undefined || entry.mass === undefined ? undefined : lossTo(entries, entry.stage);
  const hours = entry.task === undefined ? undefined : hoursByTask(entries).get(entry.task);
  return [
    ...(loss === undefined ? [] : wrap(lossWords(loss, planned, units), undefined, "  ")),
    ...(entry.drawn === undefined ? [] : wrap(spreadWords(spreadOf(entry.drawn)), undefined, "  ")),
    ...(hours === undefined || hours === entry.hours || entry.task === undefined
      ? []
      : wrap(`In all ${hoursText(hours)} of ${TASK_WORDS[entry.task]} by now.`)),
  ];
}

/** `a share of itself`, to a hundredth of a per cent. */
const fine = (share: number): string => `${formatNumber(share * 100, 0.01)} %`;

const SINCE: Readonly<Record<GateStage, string>> = {
  cut: "since the bars were cut",
  billet: "since the billet was dressed",
  forged: "since the blade was forged",
  ready: "since it was ready to harden",
  finished: "since it was finished",
};

function lossWords(
  { from, mass, share, perHeat, to }: LossSince,
  planned: Planned | undefined,
  units: FileUnits,
): string {
  const since = SINCE[from.stage];
  if (mass < 0) return `Heavier by ${fineMassText(-mass, units)} ${since}.`;
  const counted = planned?.losses.scaleModel === "fraction" ? planned.losses.scalePerHeat?.value : undefined;
  const heat =
    perHeat === undefined
      ? ""
      : `: ${fine(perHeat)} in each of ${to.heats} heats${counted === undefined ? "" : `, where ${fine(counted)} was counted on`}`;
  return `Lost ${since}: ${fineMassText(mass, units)}, ${percentText(share)} of it${heat}.`;
}

const spreadWords = (spread: number): string =>
  `Of this thinning ${percentText(Math.max(0, spread))} went into height; the rest made it longer.`;

/** What is in a record, for people. */
export function recordText(record: RecordFile, units: FileUnits): string[] {
  const { entries, planned, fileName, knife } = record;
  const corrected = new Map(
    entries.flatMap(({ revision, correctsRevision }) =>
      correctsRevision === undefined ? [] : [[correctsRevision, revision]],
    ),
  );
  return [
    ...spread(`RECORD of ${knife}`, fileName),
    ...(planned === undefined
      ? wrap("No plan is kept in it: it was begun by hand.")
      : wrap(`Planned ${planned.on} with scantling ${planned.program}.`)),
    ...(entries.length === 0 ? ["Nothing is entered yet."] : []),
    ...weighedLines(record, units),
    ...hoursLines(entries),
    ...(entries.length === 0 ? [] : ["", "ENTERED"]),
    ...entries.flatMap((entry) => {
      const by = corrected.get(entry.revision);
      const mark = `${String(entry.revision).padStart(3)}  ${entry.on}  `;
      return item(
        mark,
        `${by === undefined ? "" : `(corrected by revision ${by}) `}${entryWords(entry, units)}`,
      );
    }),
  ];
}

function weighedLines({ entries, planned }: RecordFile, units: FileUnits): string[] {
  const weighings = weighingsOf(entries);
  if (weighings.length === 0) return [];
  const losses = lossesIn(entries);
  const known = (value: number | undefined, show: (is: number) => string): string =>
    value === undefined ? "–" : show(value);
  const grams = (value: number): string => fineMassText(value, units);
  const rows = weighings.map(({ stage, steel, heats, weldingHeats }) => {
    const loss = losses.find(({ to }) => to.stage === stage);
    return [
      STAGE_WORDS[stage],
      grams(steel),
      known(planned?.needed[stage]?.usual, grams),
      known(loss?.mass, grams),
      known(weldingHeats, String),
      known(heats, String),
      known(loss?.perHeat, fine),
    ];
  });
  return [
    "",
    ...layOutTable(
      [["WEIGHED", "steel", "needed", "lost since", "welds", "heats", "each heat"], ...rows],
      ["left", "right", "right", "right", "right", "right", "right"],
    ),
  ];
}

function hoursLines(entries: readonly RecordEntry[]): string[] {
  const hours = hoursByTask(entries);
  if (hours.size === 0) return [];
  const sum = [...hours.values()].reduce((a, b) => a + b, 0);
  const rows = [...hours].map(([task, spent]) => [TASK_WORDS[task], hoursText(spent)]);
  return [
    "",
    ...layOutTable(
      [["HOURS", ""], ...rows, ...(rows.length > 1 ? [["in all", hoursText(sum)]] : [])],
      ["left", "right"],
    ),
  ];
}
