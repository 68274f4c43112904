import { invariant } from "../../errors/errors.js";
import { findingLimit } from "../../limits/finding-limits.js";
import { heightUnder, leastDeepStops, type Pressing } from "./coarse-stops.js";
import { evenHeights, type PassHeight, passHeights } from "./pass-heights.js";
import type { StopWork } from "./press-defaults.js";
import { nearestStop, type StopChoice, stopFinder } from "./stop-blocks.js";
import { stopHeight } from "./stop-height.js";
import { hotSize } from "./thermal-elongation.js";

/** One pass with the stop that makes it. `height` and `reduction` are the even ones that were aimed at. */
export interface StoppedPass extends PassHeight {
  /** `height` at the temperature of the squeeze, mm. */
  readonly hotHeight: number;
  /** Stop that would make exactly `height`: hot height less the press's offset, mm. */
  readonly stopHeight: number;
  /** What the shop lays in; its error is against `stopHeight`. */
  readonly stop: StopChoice;
  /** What comes out with it: the height at 20 °C and the share really taken off. */
  readonly pressed: PassHeight;
}

/** Passes that the shop's own stops can make. */
export interface StoppedPasses {
  /** In order, every stop lower than the one before. Empty where no stop in hand is lower than the piece. */
  readonly passes: readonly StoppedPass[];
  /** Whether the last stop presses the piece: false where none in hand is low enough. */
  readonly reached: boolean;
  /** What the deepest pass takes over the limit, as a share; 0 where none does. */
  readonly over: number;
}

/** More passes than the fewest are tried up to this many, where rounding to real stops makes one too deep. */
const EXTRA_PASSES = 3;

/**
 * The passes from one height to another with the stops of this shop: the fewest whose stops, rounded to what the shop
 * owns, stay within the limit of a pass to {@link FINDING_LIMITS}`.passSlack`. The last stop is the one given, or the
 * one nearest to the end height; the others are those on either side of the even heights which keep the deepest pass least deep, and
 * are nearest after that. Where up to three more passes do not help, the stops in hand are too few: then any of them
 * may be used, so that the deepest pass is the least deep that they allow, and `over` says by how much it is over.
 *
 * @param start - Height before the first pass, mm at 20 °C.
 * @param end - Height after the last, mm at 20 °C; not above `start`.
 * @param last - Stop of the last pass; left out: the nearest in hand.
 * @throws {GeometryError} as {@link passHeights}, {@link nearestStop} and {@link hotSize}.
 *
 * @example
 * const stops = { blocks: [6, 8, 10], shims: [0.2, 0.1] };
 * passStops(12.5, 6.4, { temperature: 950, stopOffset: 0, maxReduction: 0.2, stops }).passes.length; // 3
 */
export function passStops(
  start: number,
  end: number,
  work: StopWork,
  last: StopChoice = nearestStop(stopHeight(end, work.temperature, work.stopOffset), work.stops),
): StoppedPasses {
  const press: Pressing = { ...work, find: stopFinder(work.stops) };
  const fewest = passHeights(start, end, work.maxReduction).length;
  const most = work.maxReduction + findingLimit("passSlack", work.given).value;
  for (let count = fewest; count <= fewest + EXTRA_PASSES; count++) {
    const layers = evenHeights(start, end, count).map((height, k) =>
      k + 1 === count ? choiceOf(height, last, work) : besides(height, press),
    );
    const way = nearestDown(start, layers, work);
    if (way !== undefined && way.deepest <= most) return told(way, work);
  }
  const stops = leastDeepStops(start, last, press);
  if (stops === undefined) return { passes: [], reached: false, over: 0 };
  const heights = evenHeights(start, end, stops.length);
  const layers = stops.map((stop, k) =>
    heights.slice(k, k + 1).flatMap((height) => choiceOf(height, stop, work)),
  );
  const way = nearestDown(start, layers, work);
  invariant(way !== undefined, "stops that were found to fall do fall");
  return told(way, work);
}

const told = ({ passes, deepest }: Way, { maxReduction }: StopWork): StoppedPasses => ({
  passes,
  reached: true,
  over: Math.max(0, deepest - maxReduction),
});

type Choice = Omit<StoppedPass, "pressed"> & { readonly comesOut: number };

/** A way to come down to one stop: its deepest pass, how far off its stops are together, and its passes. */
interface Way {
  readonly deepest: number;
  readonly off: number;
  readonly passes: readonly StoppedPass[];
}

/** Through one choice of every layer, the deepest pass least deep; undefined where no choice falls every time. */
function nearestDown(
  start: number,
  layers: readonly (readonly Choice[])[],
  { maxReduction }: StopWork,
): Way | undefined {
  // Twice: how deep the deepest pass has to be, then the nearest stops that let none be deeper.
  const shallow = walkDown(start, layers, Number.POSITIVE_INFINITY, ({ deepest }) =>
    Math.max(deepest, maxReduction),
  );
  if (shallow === undefined) return undefined;
  return walkDown(start, layers, Math.max(shallow.deepest, maxReduction), ({ off }) => off);
}

/** The way through one choice of every layer that costs least, no pass of it deeper than `limit`. */
function walkDown(
  start: number,
  layers: readonly (readonly Choice[])[],
  limit: number,
  cost: (way: Way) => number,
): Way | undefined {
  let ways: readonly Way[] = [{ deepest: 0, off: 0, passes: [] }];
  for (const layer of layers)
    ways = layer.flatMap((choice) => {
      const here = ways.flatMap((way) => {
        const before = way.passes.at(-1)?.pressed.height ?? start;
        const reduction = 1 - choice.comesOut / before;
        return reduction > 0 && reduction <= limit ? [extend(way, choice, reduction)] : [];
      });
      const best = cheapest(here, cost);
      return best === undefined ? [] : [best];
    });
  return cheapest(ways, cost);
}

function extend(way: Way, { comesOut, ...pass }: Choice, reduction: number): Way {
  return {
    deepest: Math.max(way.deepest, reduction),
    off: way.off + Math.abs(pass.stop.error),
    passes: [...way.passes, { ...pass, pressed: { height: comesOut, reduction } }],
  };
}

function cheapest(ways: readonly Way[], cost: (way: Way) => number): Way | undefined {
  const [first, ...others] = ways;
  return others.reduce((best, way) => (best === undefined || cost(way) < cost(best) ? way : best), first);
}

/** The stops on both sides of a height. */
function besides(height: PassHeight, work: Pressing): Choice[] {
  const wanted = stopHeight(height.height, work.temperature, work.stopOffset);
  return [work.find(wanted, "above"), work.find(wanted, "below")].flatMap((stop) =>
    stop === undefined ? [] : choiceOf(height, stop, work),
  );
}

/** A stop for a pass, its error against that pass; none where nothing would be left of the piece. */
function choiceOf({ height, reduction }: PassHeight, stop: StopChoice, work: StopWork): Choice[] {
  const { temperature, stopOffset } = work;
  const comesOut = heightUnder(stop, work);
  if (comesOut <= 0) return [];
  const hotHeight = hotSize(height, temperature);
  const wanted = stopHeight(height, temperature, stopOffset);
  return [
    {
      height,
      reduction,
      hotHeight,
      stopHeight: wanted,
      stop: { ...stop, error: stop.height - wanted },
      comesOut,
    },
  ];
}
