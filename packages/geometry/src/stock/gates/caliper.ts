import type { Knife } from "../../blade/knife.js";
import type { SizeState } from "../../blade/size-states.js";
import type { KnifeSpec, StationSpec } from "../../blade/spec.js";
import { DEFAULT_TOLERANCES, type ToleranceDefaults } from "../../blade/tolerances.js";
import { count, type Finding, length } from "../../errors/issue.js";
import type { Limit } from "../../limits/limit.js";
import type { GateStage } from "./stage-need.js";
import { PIECE_WORDS } from "./stage-words.js";

/** Stages at which a caliper finds the blade's own thickness, and the size state that it is held against. */
export const CALIPER_STATES = {
  forged: "forged",
  ready: "ready",
  finished: "finished",
} as const satisfies Partial<Record<GateStage, SizeState>>;
/** A stage at which a caliper finds the blade's own thickness. */
export type CaliperStage = keyof typeof CALIPER_STATES;

/** What a caliper found at the spine, or across the tang, mm. */
export interface CaliperReading {
  /** mm ahead of the heel; negative in ricasso and tang. */
  readonly x: number;
  /** Full thickness as measured. */
  readonly thickness: number;
}

/** A reading held against the blade that it has to become; mm. */
export interface ReadingAnswer extends CaliperReading {
  readonly stage: CaliperStage;
  /** Full thickness that the stage is meant to have there, and the finished one. */
  readonly target: number;
  readonly finished: number;
  /** Whether the surface there is left from the hammer: nothing is to be taken off. */
  readonly kept: boolean;
  /**
   * Whether it is so far off what the stage is meant to have that it must be a slip: more than twice, or less than half of
   * it. Then nothing of the rest is to be used.
   */
  readonly questioned: boolean;
  /**
   * What is left to take off each face: in all, before hardening, and after it. Below nothing where it is under size. At a
   * stage past hardening nothing is left to be taken before.
   */
  readonly left: {
    readonly inAll: number;
    readonly beforeHardening: number;
    readonly afterHardening: number;
  };
  readonly findings: readonly Finding[];
}

/** Computed thicknesses carry the last digits of a double. */
const HAIR = 1e-9;
/** A face's share of half a thousandth of an inch, mm. */
const AS_TOLD = 0.0064;

/**
 * What is left to take off each face where a caliper was put on, the size that the stage is meant to have there, and what is
 * wrong with the reading.
 *
 * @example
 * // 3.2 mm at the heel when finished, 0.1 mm a face to be ground after hardening
 * const { left } = answerReading(knife, "forged", { x: 0, thickness: 4.2 });
 * left.inAll; // 0.5
 * left.beforeHardening; // 0.4
 */
export function answerReading(
  knife: Knife,
  stage: CaliperStage,
  reading: CaliperReading,
  tolerances: ToleranceDefaults = DEFAULT_TOLERANCES,
): ReadingAnswer {
  const { x, thickness } = reading;
  const slip = knife.limits.readingSlip;
  const at = (state: SizeState): number => knife.body(state).slab.thicknessAt(x);
  const finished = at("finished");
  const ready = at("ready");
  const kept = knife.finish.flats === "forged" && x >= knife.outline.handleFront;
  const inAll = (thickness - finished) / 2;
  const afterHardening = stage === "finished" ? inAll : Math.min(inAll, (ready - finished) / 2);
  const target = at(CALIPER_STATES[stage]);
  const answer = {
    x,
    thickness,
    stage,
    target,
    questioned: thickness > slip.value * target || thickness < target / slip.value,
    finished,
    kept,
    left: { inAll, afterHardening, beforeHardening: inAll - afterHardening },
  };
  if (answer.questioned) return { ...answer, findings: [questioned(answer, slip)] };
  const tolerance = kept ? tolerances.forgedThickness : tolerances.groundThickness;
  return { ...answer, findings: readingFindings(answer, (ready - finished) / 2, tolerance) };
}

function questioned({ x, thickness, target, stage }: Omit<ReadingAnswer, "findings">, slip: Limit): Finding {
  const twice = slip.value === 2;
  const far =
    thickness > target
      ? twice
        ? "more than twice"
        : "more than {times} times"
      : twice
        ? "less than half of"
        : "less than one part in {times} of";
  return {
    code: "reading-questioned",
    severity: "warn",
    path: "",
    text: `{is} thick {place} ahead of the heel is ${far} the {target} that the {stage} is meant to have there. The reading is not used: measure again, and mind the point and the unit.`,
    values: {
      is: length(thickness),
      place: length(x),
      target: length(target),
      stage: PIECE_WORDS[stage],
      times: count(slip.value),
    },
    basis: slip.basis,
  };
}

function readingFindings(
  answer: Omit<ReadingAnswer, "findings">,
  afterHardening: number,
  tolerance: number,
): Finding[] {
  const { thickness, finished, target, stage, left } = answer;
  const values = {
    is: length(thickness),
    place: length(answer.x),
    finished: length(finished),
    target: length(target),
    stage: PIECE_WORDS[stage],
    left: length(Math.max(0, left.inAll)),
    wanted: length(afterHardening),
    by: length(finished - thickness),
    tolerance: length(tolerance),
  };
  const basis = "the knife file and its allowances";
  if (left.inAll < -HAIR) {
    const within = finished - thickness <= tolerance + HAIR;
    return [
      {
        code: "reading-under-finished",
        severity: within ? "note" : "warn",
        path: "",
        text: within
          ? "{is} thick {place} ahead of the heel is {by} under the finished {finished}, within the tolerance of {tolerance}: take nothing more off there."
          : "{is} thick {place} ahead of the heel is {by} under the finished {finished}: nothing can be taken off there. Make the whole blade thinner to match, or leave it and tell the customer.",
        values,
        basis: "the finished thickness in the knife file, and the tolerance of a thickness",
      },
    ];
  }
  // The card tells sizes to the thousandth of an inch: who keeps to them is not warned of what it rounded.
  if (stage !== "finished" && left.inAll < afterHardening - AS_TOLD)
    return [
      {
        code: "reading-thin-for-hardening",
        severity: "warn",
        path: "",
        text: "{is} thick {place} ahead of the heel leaves {left} a face, and {wanted} is wanted after hardening for scale and warp. Take nothing off there before the quench.",
        values,
        basis,
      },
    ];
  if (stage === "forged" && thickness < target - HAIR)
    return [
      {
        code: "reading-under-target",
        severity: "note",
        path: "",
        text: "{is} thick {place} ahead of the heel where the {stage} is meant to have {target}: {left} a face is left for everything. Grind that place last.",
        values,
        basis,
      },
    ];
  return [];
}

/**
 * The knife as it becomes where it is as thick at a place as a caliper found: the law of thickness led through the reading, the
 * other stations as they were.
 *
 * @example
 * const thin = withReading(knife, { x: 0, thickness: 3 });
 * makeKnife(thin).laws.spine.valueAt(0); // 3
 */
export function withReading(knife: Knife, reading: CaliperReading): KnifeSpec {
  const { spec, outline, laws } = knife;
  const { x, thickness } = reading;
  if (x >= outline.handleFront) {
    const at = Math.max(0, x);
    const stations = through(laws.spine.points, at, thickness, outline.edgeLength, laws.spine.valueAt(at));
    return { ...spec, blade: { ...spec.blade, thickness: stations } };
  }
  const length = outline.handleFront - outline.butt;
  const front = laws.spine.valueAt(0);
  const points = laws.tang?.points ?? [
    { at: 0, is: front },
    { at: length, is: front },
  ];
  const at = outline.handleFront - x;
  const { buttThickness: _butt, ...tang } = spec.tang;
  const stations = through(points, at, thickness, length, laws.tang?.valueAt(at) ?? front);
  return { ...spec, tang: { ...tang, thickness: stations } };
}

/** A law's stations with one more, or with the one there moved; a law of one value gets its ends first. */
function through(
  points: readonly { readonly at: number; readonly is: number }[],
  at: number,
  is: number,
  length: number,
  before: number,
): StationSpec[] {
  const same = (one: { readonly at: number }): boolean => Math.abs(one.at - at) < HAIR;
  const [first, last] = [points[0], points.at(-1)];
  // Outside its stations a law holds its end value: it must go on doing so past the reading.
  const ends = [
    ...(first !== undefined && at < first.at && at > 0 ? [{ at: 0, is: before }] : []),
    ...(last !== undefined && at > last.at && at < length ? [{ at: length, is: before }] : []),
  ];
  return [...points, ...ends]
    .filter((one) => !same(one))
    .concat({ at, is })
    .sort((a, b) => a.at - b.at)
    .map((one) => ({ at: { kind: "distance", mm: one.at }, is: one.is }));
}
