import { bladeStation, type Finding } from "@scantling/geometry";
import { EXIT } from "../exit-code.js";
import { CommandFailure } from "../failure.js";
import type { Planned, RecordEntry } from "../file/record-file.js";
import { type ReadingReport, readingReport } from "../gate-costs.js";
import { type GateReading, isCaliperStage } from "../gate-input.js";
import { type GateReport, weighAtGate } from "../gate-report.js";
import type { Measured } from "../measure.js";
import type { RecordOptions } from "../options.js";
import { edgeSteel } from "../order-findings.js";
import { doubtsOf, weighedUpTo } from "./doubts.js";
import type { FoundRecord } from "./find-record.js";
import { answerHardness, type HardnessAnswered } from "./hardness-held.js";
import { withBarsCut } from "./job-then.js";
import { standingEntries } from "./weighings.js";

/** What an entry says where it stands. */
export interface Answered {
  /** Where a mass was weighed and the stage's need is known. */
  readonly gate: { readonly report: GateReport; readonly measured: Measured } | undefined;
  /** Why there is no gate although a mass was weighed. */
  readonly noGate: string | undefined;
  /** Readings of a caliper that no mass came with. */
  readonly readings: { readonly reports: readonly ReadingReport[]; readonly measured: Measured } | undefined;
  /** Where a hardness was measured, and one was asked for. */
  readonly hardness: HardnessAnswered | undefined;
  /** Not to be stored without a word. */
  readonly doubts: readonly Finding[];
}

/** What a new entry is held against. */
export interface AnswerContext {
  readonly record: FoundRecord;
  readonly planned: Planned | undefined;
  /** Today's knife and shop; undefined where the entry is of no stage and has no hardness. */
  readonly measured: Measured | undefined;
  /** As typed: for words about readings. */
  readonly options: RecordOptions;
  readonly looking: () => void;
}

/** Holds a new entry against the gates, the caliper and what was recorded before. */
export function answerEntry(entry: RecordEntry, context: AnswerContext): Answered {
  const { record, planned, measured } = context;
  // What the corrected entry had put right itself does not come back by that.
  const before = standingEntries(record.existing?.file.entries ?? []).filter(
    ({ revision }) => revision !== entry.correctsRevision,
  );
  const doubts = doubtsOf(entry, {
    before,
    planned,
    limits: measured?.job.shop.gates,
    knife: measured?.knife,
    steel: measured === undefined ? undefined : edgeSteel(measured.job),
  });
  const hardness = answerHardness(entry, measured);
  const none = { gate: undefined, noGate: undefined, readings: undefined, hardness };
  const { stage } = entry;
  if (measured === undefined || stage === undefined) return { ...none, doubts };
  // Places that lie beside the knife have no thickness to be held against.
  const readings = doubts.some(({ code }) => code === "size-outside")
    ? []
    : readingsOf(entry, measured, context.options);
  if (entry.mass === undefined) {
    const reports = readings.flatMap((reading) => readingReport(measured, stage, reading) ?? []);
    return {
      ...none,
      readings: reports.length === 0 ? undefined : { reports, measured },
      doubts: [...doubts, ...questionedIn(reports)],
    };
  }
  try {
    const asCut = withBarsCut(measured, planned);
    const masses = { scale: entry.mass, tare: entry.tare, before: weighedUpTo(before, stage) };
    const question = { stage, masses, readings, plan: asCut.place ?? planned?.plan };
    const report = weighAtGate(asCut.measured, question, context.looking);
    return {
      ...none,
      gate: { report, measured: asCut.measured },
      doubts: [...doubts, ...massDoubts(report), ...questionedIn(report.readings)],
    };
  } catch (error) {
    // A stage whose need cannot be told may be weighed all the same.
    if (!(error instanceof CommandFailure) || error.exitCode !== EXIT.usage) throw error;
    return { ...none, noGate: error.message, doubts };
  }
}

/** What is wrong with a mass that the gate does not use. */
const massDoubts = ({ found, findings }: GateReport): readonly Finding[] =>
  found === undefined
    ? findings.filter(({ code, severity }) => severity === "warn" && MASS_DOUBTS.includes(code))
    : [];

const MASS_DOUBTS: readonly string[] = ["mass-rose", "mass-unit-slip"];

const questionedIn = (reports: readonly ReadingReport[]): readonly Finding[] =>
  reports.filter(({ questioned }) => questioned).flatMap(({ findings }) => findings);

function readingsOf(entry: RecordEntry, { knife }: Measured, options: RecordOptions): readonly GateReading[] {
  const { stage, sizes = [] } = entry;
  if (stage === undefined || !isCaliperStage(stage)) return [];
  return sizes.flatMap(({ at, thickness }, index): GateReading[] => {
    if (thickness === undefined) return [];
    const [place = "", typed = ""] = (options.size?.[index] ?? "").split("=").map((half) => half.trim());
    const bare = !/[^\d\s./,x×-]/u.test(typed);
    return [{ x: bladeStation(at, knife.outline), thickness, place, option: "--size", bare }];
  });
}
