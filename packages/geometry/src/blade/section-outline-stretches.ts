import { crestCrossing } from "./crest.js";
import type { EdgeElement } from "./edge-element.js";
import type { FaceStation, Side } from "./face-station.js";
import { HalfSection } from "./half-section.js";
import { StationZones } from "./station-zones.js";
import { StraightElement } from "./straight-element.js";

/**
 * A part of one face of a section over which it follows one law: the distance of the face from the centre plane over y,
 * grooves not cut; mm.
 */
export interface FaceStretch {
  /** Where it begins and ends; not always upward. */
  readonly from: number;
  readonly to: number;
  readonly half: (y: number) => number;
  /** What it is, where that is told without a fit: straight, or a circle of a radius that bulges (1) or caves in (−1). */
  readonly form: "straight" | { readonly radius: number; readonly bulge: 1 | -1 } | "curved";
  /** The circular piece of the section that it comes from, between two distances: points are spread by its angle. */
  readonly arc?: {
    readonly section: HalfSection;
    readonly piece: number;
    readonly va: number;
    readonly vb: number;
  };
}

/** An edge that leans by less is level: its sections keep their circles to rounding. */
const LEVEL = 1e-12;

/** The stretches of one face from low to high, in no order; the station stands already. */
export function faceStretches(station: FaceStation, side: Side, low: number, high: number): FaceStretch[] {
  const { body, x, crest, share, slab, top } = station;
  const section = station.of(side);
  const crossing = crest === undefined ? Number.POSITIVE_INFINITY : crestCrossing(body, section, x, top);
  const up = Math.min(high, crossing);
  const found: FaceStretch[] = [];
  if (up > low) {
    if (share > 0) found.push(...groundStretches(station, section, low, up));
    else found.push({ from: low, to: up, half: () => slab, form: "straight" });
  }
  if (crest !== undefined && high > crossing) {
    found.push(...crestStretches(crest, top, Math.max(low, crossing), high));
  }
  return found;
}

function groundStretches(
  station: FaceStation,
  section: HalfSection,
  low: number,
  high: number,
): FaceStretch[] {
  const { body, x, share } = station;
  const found: FaceStretch[] = [];
  const zones = new StationZones(body.edgeRun, new HalfSection());
  zones.walk(x, low, high, section, Number.NaN, (element, piece, ya, va, footA, yb, vb) => {
    const distanceAt = distances(element, x, { ya, va, footA, yb, vb });
    const half = (y: number): number => station.eased(section.pieceValue(piece, distanceAt(y)));
    const isStraightEdge = element instanceof StraightElement;
    const isArc = section.isArc(piece);
    const isLevel = isStraightEdge && Math.abs(Math.abs(element.tx) - 1) < LEVEL;
    const base = { from: ya, to: yb, half };
    if (!isArc && (isStraightEdge || section.b[piece] === 0)) found.push({ ...base, form: "straight" });
    else if (isArc && isLevel && share === 1) {
      const bulge = section.sigma[piece] === 1 ? 1 : -1;
      found.push({ ...base, form: { radius: section.radiusOf(piece), bulge } });
    } else if (isArc) found.push({ ...base, form: "curved", arc: { section, piece, va, vb } });
    else found.push({ ...base, form: "curved" });
  });
  return found;
}

/** Distance from the edge over y, in a zone in which one element of it is nearest. */
function distances(
  element: EdgeElement,
  x: number,
  zone: {
    readonly ya: number;
    readonly va: number;
    readonly footA: number;
    readonly yb: number;
    readonly vb: number;
  },
): (y: number) => number {
  const { ya, va, footA, yb, vb } = zone;
  let hint = footA;
  return (y) => {
    if (y === ya) return va;
    if (y === yb) return vb;
    const found = element.distance(x, y, hint);
    // Past an end of the element by rounding only.
    if (found === Number.POSITIVE_INFINITY) return va + ((vb - va) * (y - ya)) / (yb - ya);
    hint = element.foot;
    return found;
  };
}

function crestStretches(crest: HalfSection, top: number, low: number, high: number): FaceStretch[] {
  const found: FaceStretch[] = [];
  const deepest = top - low;
  let from = Math.max(0, top - high);
  for (let piece = crest.pieceAt(from); piece < crest.count && from < deepest; piece++) {
    const to = Math.min(deepest, crest.endOf(piece));
    const half = (y: number): number => crest.pieceValue(piece, top - y);
    const bulge = crest.sigma[piece] === 1 ? 1 : -1;
    found.push({
      from: top - from,
      to: top - to,
      half,
      form: crest.isArc(piece) ? { radius: crest.radiusOf(piece), bulge } : "straight",
    });
    from = to;
  }
  return found;
}
