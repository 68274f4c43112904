import { CrestLaw, crestReach } from "./crest.js";
import type { HalfSection } from "./half-section.js";
import type { SectionSource } from "./section-law.js";
import type { SteelBody } from "./steel-body.js";

export type Side = "right" | "left";

/** Where a face lies at a point, and which smooth piece of it that is. */
export interface FacePoint {
  /** Distance of the face from the centre plane, grooves not cut, mm. */
  half: number;
  /** The section's piece, or −1 and less for the crest's. */
  piece: number;
}

/** Both faces of a body at one station, in objects of its own: several stations can be held side by side. */
export class FaceStation {
  readonly body: SteelBody;
  x = Number.NaN;
  /** Half the slab's thickness, mm, and how far the bevels have come in. */
  slab = 0;
  share = 0;
  /** The section on either face; only where the bevels have begun. */
  right: HalfSection;
  left: HalfSection;
  /** What is taken off along the spine here, and the height it is counted down from, mm. */
  crest: HalfSection | undefined;
  top = 0;
  private readonly section: SectionSource;
  private readonly crestLaw: CrestLaw | undefined;
  private readonly point: FacePoint = { half: 0, piece: 0 };

  constructor(body: SteelBody) {
    this.body = body;
    this.section = body.section.copy();
    this.right = this.section.half;
    this.left = this.section.left ?? this.section.half;
    this.crestLaw = body.input.crest === undefined ? undefined : new CrestLaw(body.input.crest.input);
  }

  /** Whether both faces are the same. */
  get isSymmetric(): boolean {
    return this.right === this.left;
  }

  at(x: number): this {
    if (x === this.x) return this;
    const { body } = this;
    this.x = x;
    this.slab = body.slab.thicknessAt(x) / 2;
    this.share = body.plungeShareAt(x);
    if (this.share > 0) this.section.at(x, body.spineDistanceAt(x));
    this.crest = this.crestLaw?.at(x);
    if (this.crest !== undefined) this.top = body.footprint.topAt(x) ?? 0;
    return this;
  }

  of(side: Side): HalfSection {
    return side === "right" ? this.right : this.left;
  }

  /** Half-thickness that belongs to a value of the section, the plunge eased in, mm. */
  eased(half: number): number {
    return this.slab - this.share * (this.slab - half);
  }

  /**
   * A face at a point of the station; the object is filled again by the next call.
   *
   * @param v - distance from the edge, mm; not asked for where no bevel has begun.
   * @param y - height from which the depth below the spine is counted, mm.
   */
  faceAt(side: Side, v: number, y: number): FacePoint {
    const { point, crest, share } = this;
    point.half = this.slab;
    point.piece = 0;
    if (share > 0) {
      const section = this.of(side);
      point.piece = section.pieceAt(v);
      point.half = this.eased(section.pieceValue(point.piece, v));
    }
    if (crest === undefined) return point;
    const depth = Math.max(0, this.top - y);
    if (depth >= crestReach(crest)) return point;
    const piece = crest.pieceAt(depth);
    const half = crest.pieceValue(piece, depth);
    if (half < point.half) {
      point.half = half;
      point.piece = -1 - piece;
    }
    return point;
  }
}
