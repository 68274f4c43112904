import { integrateAdaptive, type Piece } from "../numeric/adaptive.js";
import { parametersAtX } from "../plane/at-x.js";
import type { Path } from "../plane/path.js";
import { derivativeAt, pointAt, type Segment } from "../plane/segment.js";
import { FaceStation } from "./face-station.js";
import { distinct } from "./footprint.js";
import type { SteelBody } from "./steel-body.js";
import { knotsBetween } from "./surface-knots.js";
import { type Surface, SurfaceSum } from "./surface-sum.js";

/** How far inside the steel a rim's thickness is taken, mm: at the rim itself it may step. */
const INSIDE = 1e-9;
/** A segment that leans less than this stands upright. */
const UPRIGHT = 1e-9;
const MOST_PIECES = 60;

/** Walls square to the flats: the outline's, and those of cut-outs. */
export class Rims {
  private readonly body: SteelBody;
  private readonly station: FaceStation;
  private readonly breaks: readonly number[];

  constructor(body: SteelBody) {
    this.body = body;
    this.station = new FaceStation(body);
    this.breaks = distinct(stepPlaces(body).concat(body.slab.breaks, body.section.breaks));
  }

  /** @param side - 1: the steel lies on the left of the path, −1: on its right. */
  along(path: Path, side: 1 | -1, tolerance: number): Surface {
    const sum = new SurfaceSum();
    for (const segment of path.segments) sum.add(this.wall(segment, side, tolerance));
    return sum;
  }

  private wall(segment: Segment, side: 1 | -1, tolerance: number): Surface {
    const cuts = [0, 1];
    for (const x of this.breaks) cuts.push(...parametersAtX(segment, x));
    const sorted = distinct(cuts);
    const isUpright = Math.abs(segment.to.x - segment.from.x) < UPRIGHT && segment.kind === "line";
    const sum = new SurfaceSum();
    const thickness = (t: number): number => {
      this.stand(segment, t, side);
      return this.thick;
    };
    for (let i = 0; i + 1 < sorted.length; i++) {
      const a = sorted[i] as number;
      const b = sorted[i + 1] as number;
      const isPlain = pointAt(segment, (a + b) / 2).x < this.body.groundFrom;
      const knots = isPlain
        ? [a, b]
        : knotsBetween(a, b, (t) => {
            this.stand(segment, t, side);
            return this.mark;
          });
      const pieces: Piece[] = [];
      for (let k = 0; k + 1 < knots.length; k++) {
        pieces.push({ from: knots[k] as number, to: knots[k + 1] as number });
      }
      sum.add(
        integrated(
          (t) => {
            const d = derivativeAt(segment, t);
            return thickness(t) * Math.hypot(d.x, d.y);
          },
          pieces,
          isUpright && !isPlain,
          tolerance,
        ),
      );
    }
    return sum;
  }

  private thick = 0;
  private mark = 0;

  /** Thickness just inside the steel at a place of the rim, and a number for the pieces of both faces there. */
  private stand(segment: Segment, t: number, side: 1 | -1): void {
    const { station, body } = this;
    const point = pointAt(segment, t);
    const d = derivativeAt(segment, t);
    const isUpright = Math.abs(d.x) < UPRIGHT * Math.abs(d.y);
    const x = isUpright ? point.x - side * Math.sign(d.y) * INSIDE : point.x;
    const y = isUpright ? point.y : point.y + side * Math.sign(d.x) * INSIDE;
    station.at(x);
    const v = station.share > 0 ? body.edgeRun.nearest(x, y) : 0;
    const element = station.share > 0 ? body.edgeRun.element : 0;
    const right = station.faceAt("right", v, point.y);
    this.thick = right.half;
    this.mark = 64 * (64 * element + right.piece);
    const left = station.faceAt("left", v, point.y);
    this.thick += left.half;
    this.mark += left.piece;
  }
}

/** Stations at which the faces may step. */
export function stepPlaces({ footprint, slab, input }: SteelBody): number[] {
  const { plunge, crest } = input;
  return distinct([
    ...footprint.intervals.map(({ x0 }) => x0),
    slab.handleFront,
    plunge.at,
    plunge.at + plunge.length,
    ...(crest?.breaks ?? []),
  ]);
}

/** A sum over pieces; `drawn` draws the points together at the ends of each, where roots may be. */
export function integrated(
  f: (t: number) => number,
  pieces: readonly Piece[],
  drawn: boolean,
  tolerance: number,
): Surface {
  const sum = new SurfaceSum();
  const take = (g: (t: number) => number, over: readonly Piece[]): void => {
    const { value, error } = integrateAdaptive(
      (t, out) => {
        out[0] = g(t);
      },
      1,
      over,
      { tolerance: new Float64Array([tolerance]), maxPieces: MOST_PIECES },
    );
    sum.add({ area: value[0] as number, error: error[0] as number });
  };
  if (!drawn) take(f, pieces);
  else {
    for (const { from, to } of pieces) {
      const width = to - from;
      take(
        (u) =>
          f(from + width * Math.sin((Math.PI / 2) * u) ** 2) * width * (Math.PI / 2) * Math.sin(Math.PI * u),
        [{ from: 0, to: 1 }],
      );
    }
  }
  return sum;
}
