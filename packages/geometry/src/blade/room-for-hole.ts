import { wallAroundSlot } from "../plane/slot.js";
import type { Vec2 } from "../plane/vec2.js";
import type { Knife } from "./knife.js";
import type { HoleSpec } from "./spec.js";

/** Where the steel is too low over and under a hole for it to lie far enough from both sides. mm. */
export interface TooLow {
  /** Of the steel there. */
  readonly height: number;
  /** From the middle of that height to the nearest side. */
  readonly half: number;
  /** The nearest place of the tang that has room; left out where there is none. */
  readonly place?: Vec2;
}

/** How finely places along the tang are looked at, mm. */
const STEP = 0.5;
/** What a place has over, so that rounding it to a rule does not take its room away, mm. */
const TO_SPARE = 0.5;

/**
 * Whether a hole has no place at all between the sides of its tang where it stands, and where the tang is high enough. To move
 * it away from one side then only brings it nearer to the other.
 *
 * @param least - From the hole's centre to the side, mm.
 * @param good - What is good there: a place that has it goes before one that only has the least, mm.
 * @returns undefined where there is a place at its height, and for slots.
 *
 * @example
 * // 12 mm wanted on both sides of a pin: the tang is too low in its middle
 * tooLowForHole(knife, { kind: "pin", at: { x: -62.5, y: 18 }, diameter: 8 }, 12)?.height; // 20
 */
export function tooLowForHole(knife: Knife, hole: HoleSpec, least: number, good = least): TooLow | undefined {
  if (hole.to !== undefined) return undefined;
  const here = middleAt(knife, hole.at);
  if (here === undefined || here.height >= 2 * least) return undefined;
  const { height, half } = here;
  const place = placeWith(knife, hole.at, good) ?? placeWith(knife, hole.at, least);
  return { height, half, ...(place === undefined ? {} : { place }) };
}

/** The nearest place along the tang with so much steel on all sides. */
function placeWith(knife: Knife, { x, y }: Vec2, wanted: number): Vec2 | undefined {
  const { butt, handleFront } = knife.outline;
  const steps = Math.ceil((handleFront - butt) / STEP);
  for (let i = 1; i <= steps; i++) {
    // Forward first: there a pin holds more.
    for (const there of [x + i * STEP, x - i * STEP]) {
      if (there < butt || there > handleFront) continue;
      const found = middleAt(knife, { x: there, y });
      if (found !== undefined && found.half >= wanted + TO_SPARE) return found.middle;
    }
  }
  return undefined;
}

/** The middle of the steel over and under a place, and how far from there to any side. */
function middleAt(
  { outline, body }: Knife,
  { x, y }: Vec2,
): { height: number; half: number; middle: Vec2 } | undefined {
  const span = body("finished")
    .footprint.spansAt(x)
    .find(([low, high]) => y >= low && y <= high);
  if (span === undefined) return undefined;
  const middle = { x, y: (span[0] + span[1]) / 2 };
  const { wall } = wallAroundSlot({ from: middle, to: middle, radius: 0 }, outline.path);
  return { height: span[1] - span[0], half: wall, middle };
}
