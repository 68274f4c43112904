import { alikePieces, ZONE_SLACK } from "./alike-pieces.js";
import { natureOf } from "./bevel-moments.js";
import { crestCrossing } from "./crest.js";
import { FaceStation } from "./face-station.js";
import { distinct, type Footprint, type FootprintInterval } from "./footprint.js";
import { HalfSection } from "./half-section.js";
import { stationPieces } from "./station-pieces.js";
import { StationZones, type ZoneVisitor } from "./station-zones.js";
import type { SteelBody } from "./steel-body.js";

/** Finds places along x between which every station of a body's faces consists of the same zones. */
export class FaceCuts {
  private readonly body: SteelBody;
  private readonly here: FaceStation;
  private readonly zones: StationZones;
  private mark = 0;

  constructor(body: SteelBody) {
    this.body = body;
    this.here = new FaceStation(body);
    this.zones = new StationZones(body.edgeRun, new HalfSection());
  }

  /** Ends of the pieces of a region's interval, ascending; `from` is where they begin. */
  of({ x0, x1, spans }: FootprintInterval, region: Footprint, from: number): number[] {
    const { slab, groundFrom, input, footprint } = this.body;
    const isPlain = region === footprint && natureOf(this.body) === "plain";
    const start = Math.max(x0, from);
    if (!(x1 > start)) return [];
    const breaks = [...slab.breaks, input.plunge.at, groundFrom].filter((x) => x > start && x < x1);
    const fixed = distinct([start, ...breaks, x1]);
    const cuts: number[] = [];
    for (let i = 0; i + 1 < fixed.length; i++) {
      const a = fixed[i] as number;
      const b = fixed[i + 1] as number;
      cuts.push(a, b);
      if ((a + b) / 2 < groundFrom) continue;
      const pieces = stationPieces(this.body, a, b, region);
      for (const { from: cut } of isPlain ? pieces : alikePieces(pieces, (x) => this.markAt(x, spans))) {
        cuts.push(cut);
      }
    }
    return distinct(cuts);
  }

  /** A number for the zones that a station consists of, on both faces. */
  private markAt(x: number, spans: FootprintInterval["spans"]): number {
    const here = this.here.at(x);
    this.mark = 1;
    for (const side of here.isSymmetric ? (["right"] as const) : (["right", "left"] as const)) {
      const section = here.of(side);
      const crossing =
        here.crest === undefined ? Number.POSITIVE_INFINITY : crestCrossing(this.body, section, x, here.top);
      for (const { lower, upper } of spans) {
        const low = lower.heightAt(x);
        const high = upper.heightAt(x);
        const up = Math.min(high, crossing);
        if (up > low && here.share > 0) this.zones.walk(x, low, up, section, Number.NaN, this.zone);
        if (here.crest !== undefined && high > crossing) {
          this.take(here.crest.pieceAt(here.top - Math.max(low, crossing)));
        }
      }
    }
    return this.mark;
  }

  private readonly zone: ZoneVisitor = (element, piece, ya, _va, _footA, yb) => {
    if (Math.abs(yb - ya) > ZONE_SLACK) this.take(64 * this.body.edgeRun.elements.indexOf(element) + piece);
  };

  private take(value: number): void {
    this.mark = (Math.imul(this.mark, 1_000_003) ^ value) | 0;
  }
}
