import {
  bladeStation,
  CALIPER_STATES,
  count,
  type Finding,
  type FindingCode,
  GATE_STAGES,
  type GateLimits,
  type GateStage,
  gateLimits,
  type Knife,
  length,
  PIECE_WORDS,
  questionHardness,
  questionRises,
  type StageMass,
  share,
  TASK_WORDS,
} from "@scantling/geometry";
import { formatNumber } from "@scantling/geometry/units";
import type { MeasuredSize, Planned, RecordEntry } from "../file/record-file.js";
import { isCaliperStage } from "../gate-input.js";
import { bracketOf } from "./hardness-held.js";
import { standingEntries } from "./weighings.js";

/** More hours than a day has are those of several days, or a point put wrong. */
const HOURS_OF_A_DAY = 24;

/** Heats this many times as planned are a slip of the hand, and so many in all besides. */
const MANY_HEATS = { times: 4, least: 20 } as const;

/** A height or thickness this many times what is drawn, or less than its inverse, is a slip; as for a caliper. */
const SLIP_FACTOR = 2;

/** Steel weighed at a stage or at one before it, each time that it was, as far as it holds. */
export function weighedUpTo(entries: readonly RecordEntry[], stage: GateStage): readonly StageMass[] {
  return weighed(entries).filter((one) => GATE_STAGES.indexOf(one.stage) <= GATE_STAGES.indexOf(stage));
}

function weighed(entries: readonly RecordEntry[]): readonly StageMass[] {
  return standingEntries(entries).flatMap(({ stage, mass, tare = 0 }) =>
    stage === undefined || mass === undefined ? [] : [{ stage, mass: mass - tare }],
  );
}

/** What an entry is held against, as far as it is known. */
export interface DoubtContext {
  /** The entries before it, without the one that it corrects. */
  readonly before: readonly RecordEntry[];
  readonly planned: Planned | undefined;
  readonly limits?: Partial<GateLimits> | undefined;
  /** Where the entry is of a stage. */
  readonly knife?: Knife | undefined;
  /** That of the edge, where the entry has a hardness. */
  readonly steel?: string | undefined;
}

/**
 * What cannot well be true of an entry, beside what the scale itself says at its gate: to be measured again, not stored
 * without a word.
 */
export function doubtsOf(
  entry: RecordEntry,
  { before, planned, limits, knife, steel }: DoubtContext,
): readonly Finding[] {
  return [
    ...laterDoubts(entry, before, gateLimits(limits)),
    ...dateDoubts(entry, before),
    ...(knife === undefined ? [] : (entry.sizes ?? []).flatMap((size) => sizeDoubts(entry, size, knife))),
    ...heatDoubts(entry, planned),
    ...drawnDoubts(entry),
    ...hourDoubts(entry),
    ...(entry.hardness === undefined || steel === undefined
      ? []
      : questionHardness(bracketOf(entry.hardness), steel)),
  ];
}

const doubt = (
  code: FindingCode,
  text: string,
  values: NonNullable<Finding["values"]>,
  basis: string,
): Finding => ({ code, severity: "warn", path: "", text, values, basis });

/** Steel that is less than what was weighed of it later on. */
function laterDoubts(
  { stage, mass, tare = 0 }: RecordEntry,
  before: readonly RecordEntry[],
  limits: GateLimits,
): Finding[] {
  if (stage === undefined || mass === undefined) return [];
  const now = { stage, mass: mass - tare };
  const later = weighed(before).filter((one) => GATE_STAGES.indexOf(one.stage) > GATE_STAGES.indexOf(stage));
  return later.flatMap((one) =>
    questionRises(one, [now], limits).findings.filter(({ severity }) => severity === "warn"),
  );
}

/** A stage that is dated before one that comes before it, or after one that comes after it: a slip in the year or the month. */
function dateDoubts({ stage, on }: RecordEntry, before: readonly RecordEntry[]): Finding[] {
  if (stage === undefined) return [];
  const place = GATE_STAGES.indexOf(stage);
  const wrong = standingEntries(before).find((other) => {
    if (other.stage === undefined) return false;
    const otherPlace = GATE_STAGES.indexOf(other.stage);
    // Days as they are written sort as they follow one another.
    return (otherPlace < place && other.on > on) || (otherPlace > place && other.on < on);
  });
  if (wrong?.stage === undefined) return [];
  return [
    doubt(
      "dates-out-of-order",
      "The {stage} is dated {on}, and the {other} {otherOn}: that is the wrong way round. Write the right day with --on.",
      { stage: PIECE_WORDS[stage], on, other: PIECE_WORDS[wrong.stage], otherOn: wrong.on },
      "the order of the work",
    ),
  ];
}

function sizeDoubts({ stage }: RecordEntry, { at, height }: MeasuredSize, knife: Knife): Finding[] {
  if (stage === undefined || !isCaliperStage(stage)) return [];
  const x = bladeStation(at, knife.outline);
  const { minX, maxX } = knife.body("forged").footprint;
  if (x < minX || x > maxX) {
    return [
      doubt(
        "size-outside",
        "{place} ahead of the heel lies beside the knife, which reaches from {from} to {to}. Behind the heel distances are negative.",
        { place: length(x), from: length(minX), to: length(maxX) },
        "the knife file",
      ),
    ];
  }
  if (height === undefined) return [];
  const target = knife.body(CALIPER_STATES[stage]).footprint.heightAt(x);
  if (height <= SLIP_FACTOR * target && height >= target / SLIP_FACTOR) return [];
  return [
    doubt(
      "height-questioned",
      "{is} high {place} ahead of the heel is far off the {target} that are drawn there. Measure again, and mind the point and the unit.",
      { is: length(height), place: length(x), target: length(target) },
      "common practice, no source: no forging comes out twice or half as high as meant",
    ),
  ];
}

function heatDoubts({ heats, weldingHeats }: RecordEntry, planned: Planned | undefined): Finding[] {
  const one = (name: string, is: number | undefined, meant: number | undefined): Finding[] => {
    if (is === undefined || meant === undefined) return [];
    if (is <= MANY_HEATS.least || is <= MANY_HEATS.times * meant) return [];
    return [
      doubt(
        "heats-questioned",
        `{is} ${name} are many more than the {meant} that were planned. Count again.`,
        { is: count(is), meant: count(meant) },
        "common practice, no source",
      ),
    ];
  };
  return [
    ...one("heats", heats, planned?.heats),
    ...one("welding heats", weldingHeats, planned?.weldingHeats),
  ];
}

/** A section that is drawn out gets longer, so its area falls: more than the slip of a rule can make of it is no steel. */
function drawnDoubts({ drawn }: RecordEntry): Finding[] {
  if (drawn === undefined) return [];
  const { from, to } = drawn;
  const rise = (to.height * to.thickness) / (from.height * from.thickness) - 1;
  if (rise <= AREA_RISE) return [];
  return [
    doubt(
      "area-rose",
      "The section grew by {share}, from {fromHeight} x {fromThickness} to {toHeight} x {toThickness}; drawn out it gets longer, so it must get smaller. Measure again, height first.",
      {
        share: share(rise),
        fromHeight: length(from.height),
        fromThickness: length(from.thickness),
        toHeight: length(to.height),
        toThickness: length(to.thickness),
      },
      "steel does not grow; more than 2 % is no slip of a rule",
    ),
  ];
}

/** As for masses. Basis: common practice, no source. */
const AREA_RISE = 0.02;

function hourDoubts({ task, hours }: RecordEntry): Finding[] {
  if (task === undefined || hours === undefined || hours <= HOURS_OF_A_DAY) return [];
  return [
    doubt(
      "hours-questioned",
      "{is} hours of {task} are more than a day has. Were {as} meant, the point put wrong?",
      { is: formatNumber(hours, 0.01), task: TASK_WORDS[task], as: formatNumber(hours / 10, 0.01) },
      "a day has 24 hours",
    ),
  ];
}
