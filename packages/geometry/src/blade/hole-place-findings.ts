import { type Finding, length } from "../errors/issue.js";
import { type Slot, wallBetweenSlots } from "../plane/slot.js";
import type { Knife } from "./knife.js";
import { namedHoles, slotOf } from "./named-holes.js";
import type { HoleSpec } from "./spec.js";

/** Rounding of stated places, mm. */
const ROUNDING = 1e-9;

/** What is unwise about where holes stand to one another and to changes of section. */
export function holePlaceFindings(knife: Knife): Finding[] {
  return [...pitch(knife), ...nearStep(knife)];
}

/** A pin or a lanyard pulls at these. */
const bears = ({ kind }: HoleSpec): boolean => kind === "pin" || kind === "thong";

/** Pins in a row weaken the tang along it. Where less than the least wall is left between two, that is told instead. */
function pitch({ spec, limits }: Knife): Finding[] {
  const holes = namedHoles(spec).filter(([, hole]) => bears(hole));
  const { holePitch, holeWall } = limits;
  return holes.flatMap(([path, hole], i) =>
    holes.slice(0, i).flatMap(([otherPath, other]): Finding[] => {
      const wall = wallBetweenSlots(slotOf(hole), slotOf(other));
      const apart = wall + (hole.diameter + other.diameter) / 2;
      const least = holePitch.value * Math.max(hole.diameter, other.diameter);
      if (wall < holeWall.value - ROUNDING || apart >= least - ROUNDING) return [];
      return [
        {
          code: "holes-pitch",
          severity: "warn",
          path: `${path}.at`,
          text: "The centres of this hole and {other} are {apart} apart; {least} is good. Move them apart, or drill smaller ones.",
          values: { apart: length(apart), other: otherPath, least: length(least) },
          basis: holePitch.basis,
        },
      ];
    }),
  );
}

/** Where the section of the steel changes at once: an upright line from the corner to the edge of what stands out. */
interface Step {
  readonly name: string;
  readonly x: number;
  readonly low: number;
  readonly high: number;
}

/** How far to either side of a place the outline is looked at, mm, and what is no step there, mm. */
const BESIDE = 0.01;
const LEAST_STEP = 1;

function stepsOf(knife: Knife): Step[] {
  const { outline, spec } = knife;
  const { footprint } = knife.body("finished");
  const rimsAt = (x: number): { low: number; high: number } | undefined => {
    const spans = footprint.spansAt(x);
    const [first, last] = [spans[0], spans.at(-1)];
    return first === undefined || last === undefined ? undefined : { low: first[0], high: last[1] };
  };
  const shoulders = [...new Set([outline.handleFront, 0])].flatMap((x): Step[] => {
    const [behind, ahead] = [rimsAt(x - BESIDE), rimsAt(x + BESIDE)];
    if (behind === undefined || ahead === undefined) return [];
    return [
      { name: "the shoulder", x, low: ahead.low, high: behind.low },
      { name: "the shoulder", x, low: behind.high, high: ahead.high },
    ].filter(({ low, high }) => high - low > LEAST_STEP);
  });
  const at = spec.blade.plunge?.at ?? 0;
  const rims = rimsAt(at + BESIDE);
  if (rims === undefined) return shoulders;
  const height = knife.laws.right.bevelHeight;
  const top = height === "full" ? rims.high : Math.min(rims.high, rims.low + height.valueAt(at));
  return [...shoulders, { name: "the plunge", x: at, low: rims.low, high: top }];
}

const lineOf = ({ x, low, high }: Step): Slot => ({ from: { x, y: low }, to: { x, y: high }, radius: 0 });

function nearStep(knife: Knife): Finding[] {
  const { holeStep } = knife.limits;
  const steps = stepsOf(knife);
  return namedHoles(knife.spec).flatMap(([path, hole]): Finding[] => {
    const least = holeStep.value * hole.diameter;
    const [nearest] = steps
      .map((step) => ({ step, wall: wallBetweenSlots(slotOf(hole), lineOf(step)) }))
      .sort((a, b) => a.wall - b.wall);
    if (nearest === undefined || nearest.wall >= least - ROUNDING) return [];
    return [
      {
        code: "hole-near-step",
        severity: "warn",
        path: `${path}.at`,
        text: "This {diameter} hole is {wall} from {step}; {least} is good, for cracks start at holes and at changes of section. Move it {move} away, or drill it after hardening with the tang drawn soft.",
        values: {
          diameter: length(hole.diameter),
          wall: length(Math.max(0, nearest.wall)),
          step: nearest.step.name,
          least: length(least),
          move: length(least - Math.max(0, nearest.wall)),
        },
        basis: holeStep.basis,
      },
    ];
  });
}
