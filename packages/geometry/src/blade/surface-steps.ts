import type { Piece } from "../numeric/adaptive.js";
import { cutoutPath } from "./cutout-path.js";
import { FaceStation, type Side } from "./face-station.js";
import { Footprint } from "./footprint.js";
import type { SteelBody } from "./steel-body.js";
import { knotsBetween } from "./surface-knots.js";
import { integrated, stepPlaces } from "./surface-rims.js";
import { type Surface, SurfaceSum } from "./surface-sum.js";

/** How far before and behind a station its two sides are looked at, mm. */
const BESIDE = 1e-9;
/** A step lower than this is none, mm. */
const STEP = 1e-6;
const PROBES = 24;

type Interval = readonly [low: number, high: number];

/**
 * Walls across the stations where a face steps: the start of a plunge of no length, a tang with a thickness of its own, the
 * ends of a swedge, an outline that steps so that the sections do. Only where there is steel on both sides; elsewhere the rim has it.
 */
export function stepWalls(body: SteelBody, tolerance: number): Surface {
  const sum = new SurfaceSum();
  const behind = new FaceStation(body);
  const ahead = new FaceStation(body);
  const sides: readonly Side[] = behind.isSymmetric ? ["right"] : ["right", "left"];
  for (const x of stepPlaces(body)) {
    const spans = sharedSpans(body, x);
    if (spans.length === 0) continue;
    behind.at(x - BESIDE);
    ahead.at(x + BESIDE);
    for (const [low, high] of spans) {
      for (const side of sides)
        sum.add(wall(body, behind, ahead, side, low, high, tolerance), 2 / sides.length);
    }
  }
  return sum;
}

function wall(
  body: SteelBody,
  behind: FaceStation,
  ahead: FaceStation,
  side: Side,
  low: number,
  high: number,
  tolerance: number,
): Surface {
  let mark = 0;
  const step = (y: number): number => {
    const a = behind.faceAt(side, distance(body, behind, y), y);
    const b = ahead.faceAt(side, distance(body, ahead, y), y);
    const by = b.half - a.half;
    mark = 64 * (64 * body.edgeRun.element + a.piece) + 2 * b.piece + (by > 0 ? 1 : 0);
    return Math.abs(by);
  };
  let highest = 0;
  for (let k = 0; k <= PROBES; k++) highest = Math.max(highest, step(low + ((high - low) * k) / PROBES));
  if (highest < STEP) return { area: 0, error: 0 };
  const knots = knotsBetween(low, high, (y) => {
    step(y);
    return mark;
  });
  const pieces: Piece[] = [];
  for (let k = 0; k + 1 < knots.length; k++) {
    pieces.push({ from: knots[k] as number, to: knots[k + 1] as number });
  }
  return integrated(step, pieces, true, tolerance);
}

const distance = (body: SteelBody, { share, x }: FaceStation, y: number): number =>
  share > 0 ? body.edgeRun.nearest(x, y) : 0;

/** Heights at x that have steel both behind and ahead, cut-outs left out. */
function sharedSpans({ footprint, input }: SteelBody, x: number): Interval[] {
  if (x - BESIDE <= footprint.minX || x + BESIDE >= footprint.maxX) return [];
  const ahead = footprint.spansAt(x + BESIDE);
  let spans: Interval[] = footprint
    .spansAt(x - BESIDE)
    .flatMap(([low, high]) =>
      ahead.map(([from, to]): Interval => [Math.max(low, from), Math.min(high, to)]).filter(isOpen),
    );
  for (const cutout of input.cutouts) {
    for (const [from, to] of new Footprint(cutoutPath(cutout)).spansAt(x)) {
      spans = spans.flatMap(([low, high]) =>
        (
          [
            [low, Math.min(high, from)],
            [Math.max(low, to), high],
          ] as const
        ).filter(isOpen),
      );
    }
  }
  return spans;
}

const isOpen = ([low, high]: Interval): boolean => high - low > BESIDE;
