import { type Issue, length } from "../errors/issue.js";
import { TASK_WORDS, type TaskName } from "../job/task-names.js";
import type { CaliperStage } from "../stock/gates/caliper.js";
import { STAGE_WORDS } from "../stock/gates/stage-words.js";
import { type Candidate, type Outcome, propagated } from "./candidate.js";
import type { FigurePath } from "./figures.js";
import type { JobDrawn, JobRecord, JobSize } from "./job-record.js";
import { hoursReading, type Reading } from "./reading.js";
import { NORMAL_LIMIT } from "./student.js";

/** A caliper on a hot-forged or belt-ground face is off by this, mm, 95 times of 100. Basis: common practice, no source. */
const CALIPER_ERROR = 0.05 / NORMAL_LIMIT;
/** Two readings no farther apart are of one place, mm. */
const SAME_PLACE = 2;

/**
 * What the sections of a job, measured before and after they were drawn out, say of the share of the thinning that goes into
 * height: `ln(h₁/h₀) / ln(t₀/t₁)`. At welding heat it is that of the weld, else that of forging. Fullers laid along the bar
 * spread it as nothing else does and are left aside.
 *
 * @example
 * const written = { mass: { unit: 1, mixUps: [] }, length: { unit: 1, mixUps: [] } };
 * const drawn = [{
 *   from: { height: 40, thickness: 30 }, to: { height: 48, thickness: 20 }, welding: false, fullers: false, on: "2026-11-28",
 * }];
 * const record = { file: "a.record.yaml", weighings: [], sizes: [], drawn, hours: [], written };
 * spreadCandidates(record)[0]?.compute([40, 30, 48, 20]); // { value: 0.4497…
 */
export function spreadCandidates(record: JobRecord): Candidate[] {
  return record.drawn.flatMap((drawn) => (drawn.fullers ? [] : [spreadCandidate(record, drawn)]));
}

function spreadCandidate(record: JobRecord, { from, to, welding, on }: JobDrawn): Candidate {
  const values = [from.height, from.thickness, to.height, to.thickness];
  const names = ["height before", "thickness before", "height after", "thickness after"];
  const compute = ([h0 = 0, t0 = 0, h1 = 0, t1 = 0]: readonly number[]): Outcome => {
    const value = Math.log(h1 / h0) / Math.log(t0 / t1);
    if (t0 > t1 && value >= LEAST_SHARE && value <= MOST_SHARE) return { value };
    const lengths = { h0: length(h0), h1: length(h1), t0: length(t0), t1: length(t1) };
    return {
      impossible: {
        code: "spread-impossible",
        text: "from {h0} × {t0} to {h1} × {t1} no steel is drawn: more than all of the thinning went into height, or height was lost",
        values: lengths,
      },
    };
  };
  return {
    of: welding ? "limits.weldSpreadShare" : "limits.forge.bevelSpreadShare",
    ...placeOf(record, on),
    readings: values.map((value, index) => sizeReading(record, value, names[index] ?? "")),
    compute,
    error: propagated(
      values,
      values.map(() => CALIPER_ERROR),
      compute,
    ),
  };
}

/** A little below nothing a caliper makes of no spread at all; all of the thinning into height is 1. */
const LEAST_SHARE = -0.1;
const MOST_SHARE = 1.1;

/**
 * What the thicknesses of a job, read at the same places before and after grinding, say of what is taken off each face.
 * Places on flats that keep the hammer's face, and in the tang with its own taper, say nothing.
 *
 * @example
 * const written = { mass: { unit: 1, mixUps: [] }, length: { unit: 1, mixUps: [] } };
 * const sizes = [
 *   { stage: "forged", x: 0, thickness: 5.6, on: "2026-11-28" }, { stage: "ready", x: 0, thickness: 4.8, on: "2026-12-01" },
 * ] as const;
 * const record = { file: "a.record.yaml", weighings: [], sizes, drawn: [], hours: [], written };
 * grindingCandidates(record)[0]?.compute([5.6, 4.8]); // { value: 0.4 }
 */
export function grindingCandidates(record: JobRecord): Candidate[] {
  if (record.plan?.flatsKept === true) return [];
  return [
    ...facesBetween(record, "allowances.face", "forged", "ready"),
    ...facesBetween(record, "allowances.afterHardening", "ready", "finished"),
  ];
}

function facesBetween(
  record: JobRecord,
  of: FigurePath,
  earlier: CaliperStage,
  later: CaliperStage,
): Candidate[] {
  const inBlade = record.sizes.filter(({ x }) => x >= 0);
  const before = inBlade.filter(({ stage }) => stage === earlier);
  const after = inBlade.filter(({ stage }) => stage === later);
  const partners = pairedOff(before, after);
  return after.flatMap((size) => {
    const partner = partners.get(size);
    return partner === undefined ? [] : [faceCandidate(record, of, partner, size)];
  });
}

/** The earlier reading of each later one, nearest pairs first: each serves once, or it would count twice. */
function pairedOff(before: readonly JobSize[], after: readonly JobSize[]): ReadonlyMap<JobSize, JobSize> {
  const pairs = after
    .flatMap((later) => before.map((earlier) => ({ earlier, later, apart: Math.abs(earlier.x - later.x) })))
    .filter(({ apart }) => apart <= SAME_PLACE)
    .sort((a, b) => a.apart - b.apart);
  const partners = new Map<JobSize, JobSize>();
  const taken = new Set<JobSize>();
  for (const { earlier, later } of pairs) {
    if (partners.has(later) || taken.has(earlier)) continue;
    partners.set(later, earlier);
    taken.add(earlier);
  }
  return partners;
}

function faceCandidate(record: JobRecord, of: FigurePath, before: JobSize, after: JobSize): Candidate {
  const values = [before.thickness, after.thickness];
  const compute = ([thick = 0, thin = 0]: readonly number[]): Outcome =>
    thick > thin
      ? { value: (thick - thin) / 2 }
      : {
          impossible: {
            code: "not-ground",
            text: "{place} ahead of the heel {is} ({after}) is no thinner than {was} ({before})",
            values: {
              place: length(after.x),
              is: length(thin),
              was: length(thick),
              before: STAGE_WORDS[before.stage],
              after: STAGE_WORDS[after.stage],
            },
          },
        };
  return {
    of,
    ...placeOf(record, after.on),
    readings: [before, after].map(({ thickness, stage }) =>
      sizeReading(record, thickness, `thickness of the ${STAGE_WORDS[stage]}`),
    ),
    compute,
    error: propagated(
      values,
      values.map(() => CALIPER_ERROR),
      compute,
    ),
  };
}

/** A task that took no time was not done. */
const NO_HOURS: Omit<Issue, "path"> = { code: "no-hours", text: "no hours are written down" };

/**
 * Hours that a job took, task by task, all entries of a task together; of a task that was done several times, each time.
 *
 * @example
 * const written = { mass: { unit: 1, mixUps: [] }, length: { unit: 1, mixUps: [] } };
 * const hours = [{ task: "forge", hours: 2, on: "2026-11-28" }, { task: "forge", hours: 1.5, on: "2026-11-29" }] as const;
 * const record = { file: "a.record.yaml", weighings: [], sizes: [], drawn: [], hours, written };
 * hoursCandidates(record)[0]?.compute([2, 1.5]); // { value: 3.5 }
 */
export function hoursCandidates(record: JobRecord): Candidate[] {
  const tasks = [...new Set(record.hours.map(({ task }) => task))];
  return tasks.map((task): Candidate => {
    const entries = record.hours.filter((entry) => entry.task === task);
    const times = Math.max(1, record.timesDone?.[task] ?? 1);
    return {
      of: `work.hours.${task satisfies TaskName}`,
      ...placeOf(
        record,
        entries
          .map(({ on }) => on)
          .sort()
          .at(-1) ?? "",
      ),
      readings: entries.map(({ hours }) => hoursReading(hours, TASK_WORDS[task])),
      compute: (values) => {
        const value = values.reduce((total, one) => total + one, 0) / times;
        return value > 0 ? { value } : { impossible: NO_HOURS };
      },
      error: 0,
    };
  });
}

const placeOf = ({ file, steel }: JobRecord, on: string) => ({
  file,
  on,
  ...(steel === undefined ? {} : { steel }),
});

const sizeReading = ({ written }: JobRecord, value: number, of: string): Reading => ({
  kind: "length",
  value,
  of,
  written: written.length,
});
