import type { Knife } from "../../blade/knife.js";
import { bladeStation } from "../../blade/knife-laws.js";
import {
  bandBudget,
  type CoreBudget,
  type CoreLines,
  coreBudget,
  coreLinesAt,
  coreShare,
} from "./core-line.js";
import type { CladSpec } from "./spec.js";

/** Where the core line is asked for: place and limits, mm from the heel and from the edge. */
export interface AskedCoreLine {
  readonly x: number;
  readonly low: number;
  readonly high: number;
  /** Wished for, not required: a miss is a warning. */
  readonly wished?: boolean;
}

/** Thickness of the core at a station and where it comes out on both faces, mm. */
export interface CoreAt {
  readonly core: number;
  readonly lines: CoreLines;
}

/** The core at one station, by three assumptions; mm. */
export interface CoreStation {
  /** mm from the heel. */
  readonly x: number;
  /** Forged thickness at the spine. */
  readonly forged: number;
  /** The core thins with the forging: all layers by the same share. */
  readonly thinning: CoreAt;
  /** The core stays as thick as at the heel all along. */
  readonly constant: CoreAt;
  /** As `thinning`, with all fire scale off the cladding: the most that the core can come to. */
  readonly lessScale: CoreAt;
  /** Of the core that thins. */
  readonly budget: CoreBudget;
}

/** The core line held against what is asked. */
export interface CoreAnswer extends AskedCoreLine {
  /** On the face that comes nearer to a limit or lies farther outside, core in the middle, mm. */
  readonly height: number;
  /** Heights with the core off the middle by the shop's limit, either way; both faces. */
  readonly interval: readonly [number, number];
  /** How far off the middle the core may lie, mm; negative where the line is outside already. */
  readonly budget: number;
  /** Half of the band around the middle of the asked one that the shop's limit needs, whole mm. */
  readonly neededBand: number;
  /** The height with all fire scale off the cladding. */
  readonly lessScale: number;
}

/** The place of a blade at which its core comes nearest to leaving the edge; mm. */
export interface LeastBudget {
  /** mm from the heel. */
  readonly x: number;
  /** Thickness of the core there, thinned with the forging. */
  readonly core: number;
  readonly budget: CoreBudget;
}

/** A core with cladding in the finished blade. */
export interface CoreReport {
  /** Share of the thickness that is core. */
  readonly share: number;
  /** From the heel to near the tip: for a table. */
  readonly stations: readonly CoreStation[];
  /** Where between heel and tip the core may lie off the middle by least. */
  readonly least: LeastBudget;
  readonly asked?: CoreAnswer;
}

/** What the core report is worked out from. */
export interface CoreInput {
  readonly knife: Knife;
  readonly stack: CladSpec;
  /** Ground off each face of a joint, mm. */
  readonly cleaning: number;
  /** Share of the steel's volume that welding and forging scale leave, 0 to 1. */
  readonly keptByScale: number;
  /** How far off the middle the core may be expected, mm. */
  readonly centring: number;
}

/** Places that the table always shows, as shares of the edge. */
const PLACES = [0, 0.25, 0.5, 0.75, 0.9] as const;
/** Stations closer together than this are one, mm. */
const APART = 0.5;

/**
 * Where the core comes out along the blade, and how true it has to lie.
 *
 * @param asked - The place that is asked for is a station too.
 *
 * @example
 * const [core, cladding] = [{ steel: { name: "1095" }, thickness: 2.54 }, { steel: { name: "1020" }, thickness: 3 }];
 * const stack = { kind: "clad", core, cladding, width: 30 } as const;
 * coreReport({ knife, stack, cleaning: 0, keptByScale: 1, centring: 0.1 }).stations[0]?.thinning.core; // 1.31 mm
 */
export function coreReport(input: CoreInput, asked?: AskedCoreLine): CoreReport {
  const { knife, stack, cleaning } = input;
  const share = coreShare(stack.core.thickness, stack.cladding.thickness, cleaning);
  const stations = stationsOf(knife, asked?.x).map((x) => coreStation(input, share, x));
  const least = leastBudget(knife, share);
  return { share, stations, least, ...(asked === undefined ? {} : { asked: answer(input, share, asked) }) };
}

function stationsOf(knife: Knife, asked: number | undefined): number[] {
  const { outline } = knife;
  const given = knife.spec.blade.thickness.map(({ at }) => bladeStation(at, outline));
  const xs = [...PLACES.map((place) => place * outline.edgeLength), ...given, asked ?? 0]
    .filter((x) => x >= 0 && x < outline.edgeLength - APART)
    .sort((a, b) => a - b);
  return xs.filter((x, i) => i === 0 || x - (xs[i - 1] ?? x) > APART);
}

/** How far apart the core is looked at between breaks of the laws, and on either side of one, mm. */
const SPACING = 1;
const BESIDE = 1e-6;

/**
 * Looks for the place between heel and tip at which the core may lie off the middle by least: every millimetre, the tip
 * itself, and both sides of every place where thickness or edge change. Where the apex itself leaves the core, that place.
 *
 * @param share - Of the forged thickness that is core.
 *
 * @example
 * leastBudget(knife, 0.3).x; // 100: the blade thins more than its edge, so the tip is the worst place
 */
export function leastBudget(knife: Knife, share: number): LeastBudget {
  const { edgeLength } = knife.outline;
  const { spine, edgeThickness } = knife.laws;
  const breaks = [...spine.breaks, ...edgeThickness.breaks].flatMap((x) => [x - BESIDE, x, x + BESIDE]);
  const whole = Array.from({ length: Math.ceil(edgeLength / SPACING) }, (_, i) => i * SPACING);
  const places = [...whole, ...breaks.filter((x) => x >= 0 && x < edgeLength), edgeLength].map(
    (x): LeastBudget => {
      const core = forgedThicknessAt(knife, x) * share;
      return { x, core, budget: coreBudget(knife, x, core) };
    },
  );
  const leastBy = (key: keyof CoreBudget): LeastBudget =>
    places.reduce((least, place) => (place.budget[key] < least.budget[key] ? place : least));
  const apex = leastBy("apex");
  return apex.budget.apex <= 0 ? apex : leastBy("edge");
}

/**
 * Forged thickness at the spine, mm.
 *
 * @param x - mm from the heel.
 *
 * @example
 * forgedThicknessAt(knife, 0); // 4.4
 */
export function forgedThicknessAt(knife: Knife, x: number): number {
  return knife.body("forged").slab.thicknessAt(x);
}

function coreStation(input: CoreInput, share: number, x: number): CoreStation {
  const { knife } = input;
  const forged = forgedThicknessAt(knife, x);
  const at = (core: number): CoreAt => ({ core, lines: coreLinesAt(knife, x, core) });
  return {
    x,
    forged,
    thinning: at(forged * share),
    constant: at(forgedThicknessAt(knife, 0) * share),
    lessScale: at(forged * lessScaleShare(input, share)),
    budget: coreBudget(knife, x, forged * share),
  };
}

/** All scale off the cladding leaves the core as it is in a stack that gets thinner. */
const lessScaleShare = ({ keptByScale }: CoreInput, share: number): number =>
  Math.min(1, share / keptByScale);

function answer(input: CoreInput, share: number, asked: AskedCoreLine): CoreAnswer {
  const { knife, centring } = input;
  const { x, low, high } = asked;
  const core = forgedThicknessAt(knife, x) * share;
  const spine = knife.body("finished").spineDistanceAt(x);
  const heights = (thickness: number, off: number): readonly number[] => {
    const { right, left } = coreLinesAt(knife, x, thickness, off);
    return [right ?? spine, left ?? spine];
  };
  const outermost = (candidates: readonly number[]): number =>
    candidates.reduce((worst, height) =>
      Math.min(height - low, high - height) < Math.min(worst - low, high - worst) ? height : worst,
    );
  const off = [...heights(core, centring), ...heights(core, -centring)];
  const interval = [Math.min(...off), Math.max(...off)] as const;
  const middle = (low + high) / 2;
  return {
    ...asked,
    height: outermost(heights(core, 0)),
    interval,
    budget: bandBudget(knife, x, core, asked),
    neededBand: Math.ceil(Math.max(interval[1] - middle, middle - interval[0]) - 1e-9),
    lessScale: outermost(heights(forgedThicknessAt(knife, x) * lessScaleShare(input, share), 0)),
  };
}
