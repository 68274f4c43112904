import type { Law } from "../numeric/law.js";
import { type FaceAtStation, type FaceForm, groundFace, limitOfForm } from "./face-section.js";
import { HalfSection } from "./half-section.js";
import type { SignList } from "./sign-list.js";

/** How a face was left by the hammer, before the bevel is ground. */
export interface HammeredBevel {
  /** Full thickness at the edge as forged, mm. */
  readonly edge: number;
  /** Straight to the bevel line, straight to the spine, or no bevel forged. */
  readonly to: "line" | "full" | "none";
}

/** Sharpening of one face: tan of the angle to the centre plane, and a steeper microbevel below a height (mm). */
export interface Sharpening {
  readonly tan: number;
  readonly micro?: { readonly height: number; readonly tan: number };
}

/** Everything that decides one face at a station of the bevelled length. Lengths in mm. */
export interface FaceInput {
  /** 1: the right-hand face, −1: the left. */
  readonly side: 1 | -1;
  readonly spine: Law;
  readonly flankTaper: Law;
  readonly bevelHeight: Law | "full";
  readonly form: FaceForm;
  /** Convex: sagitta in mm, or as a share of the thickness gained over the bevel. */
  readonly crown?: { readonly kind: "mm" | "share"; readonly law: Law };
  readonly wheelRadius?: number;
  /** Full thickness at the edge before sharpening, in this state. */
  readonly edge: Law;
  /** Where the apex lies, −1 on the left face to 1 on the right. */
  readonly apex: number;
  /** Steel still on the bevel and on the flats of this face in this state. */
  readonly onBevel: number;
  readonly onFlats: number;
  /** Steel still to be ground off after forging, on top of the hammered surface at the least. */
  readonly faceOnBevel: number;
  readonly faceOnFlats: number;
  readonly hammered?: HammeredBevel;
  /** Left out: no plane on this face. */
  readonly sharpening?: Sharpening;
}

/** Builds one face: distance from the centre plane over distance from the edge, given the station's own numbers. */
export class FaceLaw {
  readonly input: FaceInput;
  /** Places along x at which some law of the face is not smooth, mm from the heel. */
  readonly breaks: readonly number[];
  /** The last face built. */
  readonly half = new HalfSection();
  /** Bevel height asked for, and B, stopped at the spine, at the last station, mm. */
  askedHeight = 0;
  bevelHeight = 0;
  /** Full thickness of the finished blade at the spine and at the bevel line at the last station, mm. */
  spine = 0;
  bevelLine = 0;
  /** Distance of the apex from the centre plane toward this face at the last station, mm. */
  apex = 0;
  private readonly ground = new HalfSection();
  private readonly partner = new HalfSection();
  private readonly mixed = new HalfSection();
  private readonly face: FaceAtStation = {
    edge: 0,
    bevelHeight: 0,
    bevelLineBelow: 0,
    bevelLineAbove: 0,
    spine: 0,
    spineDistance: 0,
    crown: Number.NaN,
    wheelRadius: Number.POSITIVE_INFINITY,
  };

  constructor(input: FaceInput) {
    this.input = input;
    const { spine, flankTaper, edge, bevelHeight, crown } = input;
    this.breaks = [
      ...spine.breaks,
      ...flankTaper.breaks,
      ...edge.breaks,
      ...(bevelHeight === "full" ? [] : bevelHeight.breaks),
      ...(crown?.law.breaks ?? []),
    ];
  }

  /**
   * Builds the face at x.
   *
   * @param x - mm from the heel.
   * @param spineDistance - V, distance of the station's spine point from the edge, mm.
   */
  at(x: number, spineDistance: number): HalfSection {
    const { form, sharpening, hammered } = this.input;
    this.stand(x, spineDistance);
    const { face } = this;
    if (sharpening === undefined && hammered === undefined) return groundFace(face, form, this.half);
    groundFace(face, form, this.ground);
    if (hammered === undefined) return this.sharpen(this.ground, sharpening as Sharpening);
    this.hammeredFace(hammered, spineDistance);
    if (sharpening === undefined) return this.half.combine(this.ground, this.partner, "larger");
    this.mixed.combine(this.ground, this.partner, "larger");
    return this.sharpen(this.mixed, sharpening);
  }

  /** Whether more than one straight bevel, flank and sharpening plane can meet on this face. */
  get isIntricate(): boolean {
    const { form, hammered, sharpening } = this.input;
    return form !== "flat" || hammered !== undefined || sharpening?.micro !== undefined;
  }

  private sharpen(face: HalfSection, { tan, micro }: Sharpening): HalfSection {
    if (micro === undefined && this.half.cutFoot(face, this.apex, tan)) return this.half;
    const planes = this.partner.clear();
    if (micro === undefined) planes.addLine(0, this.apex, tan);
    else {
      planes.addLine(0, this.apex, micro.tan);
      planes.addLine(micro.height, this.apex + micro.height * (micro.tan - tan), tan);
    }
    return this.half.combine(face, planes, "smaller");
  }

  /** How far an unsharpened edge of this thickness reaches toward this face. */
  private edgeReach(edge: number): number {
    return this.apex + (edge * (1 - this.input.side * this.input.apex)) / 2;
  }

  /** Sets the finished blade's own numbers at a station, and those of the face in this state. */
  private stand(x: number, spineDistance: number): void {
    const { input, face } = this;
    const { bevelHeight, apex, side, onBevel, onFlats, faceOnBevel, faceOnFlats } = input;
    this.spine = input.spine.valueAt(x);
    this.askedHeight = bevelHeight === "full" ? spineDistance : bevelHeight.valueAt(x);
    this.bevelHeight = Math.min(this.askedHeight, spineDistance);
    // The flank's taper dies out where the bevel reaches the spine: there is no flank to carry it.
    const carried =
      spineDistance > 0 ? Math.min(1, (4 * (spineDistance - this.bevelHeight)) / spineDistance) : 0;
    this.bevelLine = this.spine - input.flankTaper.valueAt(x) * carried;
    this.apex = (side * apex * this.spine) / 2;
    face.edge = this.edgeReach(input.edge.valueAt(x) - 2 * onBevel) + onBevel + faceOnBevel;
    face.bevelHeight = this.bevelHeight;
    face.bevelLineBelow = this.bevelLine / 2 + onBevel + faceOnBevel;
    face.bevelLineAbove = this.bevelLine / 2 + onFlats + faceOnFlats;
    face.spine = this.spine / 2 + onFlats + faceOnFlats;
    face.spineDistance = spineDistance;
    face.crown = this.crownAt(x, face);
    face.wheelRadius = input.wheelRadius ?? Number.POSITIVE_INFINITY;
  }

  private crownAt(x: number, face: FaceAtStation): number {
    const crown = this.input.crown;
    if (crown === undefined) return Number.NaN;
    const value = crown.law.valueAt(x);
    return crown.kind === "mm" ? value : 2 * value * (face.bevelLineBelow - face.edge);
  }

  private hammeredFace(hammered: HammeredBevel, spineDistance: number): void {
    const { onFlats } = this.input;
    const b = this.bevelHeight;
    const edge = this.edgeReach(hammered.edge);
    const top = this.spine / 2 + onFlats;
    const out = this.partner.clear();
    if (hammered.to === "none" || spineDistance <= 0) out.addLine(0, top, 0);
    else if (hammered.to === "full") {
      out.addLine(0, edge, (top - edge) / spineDistance).addLine(spineDistance, top, 0);
    } else {
      const line = this.bevelLine / 2 + onFlats;
      if (b > 0) out.addLine(0, edge, (line - edge) / b);
      if (spineDistance > b) {
        const slope = (top - line) / (spineDistance - b);
        out.addLine(b, line - slope * b, slope).addLine(spineDistance, top, 0);
      } else out.addLine(b, top, 0);
    }
  }

  /**
   * Numbers whose change of sign along x means that the face's structure changes there: an arc that begins to be limited,
   * bevel line at the spine, sharpening plane past the bevel line, past the spine.
   */
  structureAt(x: number, spineDistance: number, out: SignList): void {
    const { form, sharpening, hammered, edge, faceOnBevel } = this.input;
    this.stand(x, spineDistance);
    out.push(limitOfForm(this.face, form));
    out.push(this.askedHeight - spineDistance);
    out.push(4 * this.bevelHeight - 3 * spineDistance);
    if (sharpening !== undefined) {
      const { tan } = sharpening;
      // Where the bevel is as steep as the plane they never meet: close to there the section changes fast.
      out.push(tan * this.bevelHeight - (this.bevelLine / 2 - this.edgeReach(edge.valueAt(x))));
      out.push(this.apex + tan * this.bevelHeight - this.bevelLine / 2);
      out.push(this.apex + tan * spineDistance - this.spine / 2);
    }
    if (hammered !== undefined) out.push(edge.valueAt(x) + 2 * faceOnBevel - hammered.edge);
  }
}
