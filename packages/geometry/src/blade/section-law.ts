import type { Law } from "../numeric/law.js";
import { type FaceAtStation, groundFace } from "./face-section.js";
import { HalfSection } from "./half-section.js";

/** How a face was left by the hammer, before the bevel is ground. */
export interface HammeredBevel {
  /** Full thickness at the edge as forged, mm. */
  readonly edge: number;
  /** Straight to the bevel line, straight to the spine, or no bevel forged. */
  readonly to: "line" | "full" | "none";
}

/** Everything that decides a (symmetric) section at a station of the bevelled length. Lengths in mm. */
export interface SectionInput {
  readonly spine: Law;
  readonly flankTaper: Law;
  readonly bevelHeight: Law | "full";
  readonly form: "flat" | "convex";
  /** Full thickness at the edge before sharpening, in this state. */
  readonly edge: Law;
  /** Convex: sagitta in mm, or as a share of the thickness gained over the bevel. */
  readonly crown?: { readonly kind: "mm" | "share"; readonly law: Law };
  /** Steel still on each face of bevel and flats in this state. */
  readonly onBevel: number;
  readonly onFlats: number;
  /** Steel still to be ground off after forging, on top of the hammered surface at the least. */
  readonly faceOnBevel: number;
  readonly faceOnFlats: number;
  readonly hammered?: HammeredBevel;
  /** tan of the sharpening angle per side; left out: no sharpening planes. */
  readonly sharpening?: number;
}

/** Whatever can build the section at a station; {@link SectionLaw} for blades. */
export interface SectionSource {
  /** The last section built. */
  readonly half: HalfSection;
  /** Bevel height at the last station, mm. */
  readonly bevelHeight: number;
  at(x: number, spineDistance: number): HalfSection;
  structureAt(x: number, spineDistance: number, out: number[]): void;
  readonly breaks: readonly number[];
  /** Another of the same kind, with a section object of its own. */
  copy(): SectionSource;
}

/** Builds sections: half-thickness over distance from the edge, given the station's own numbers. */
export class SectionLaw implements SectionSource {
  readonly input: SectionInput;
  /** The last section built. */
  readonly half = new HalfSection();
  /** Bevel height asked for, and B, stopped at the spine, at the last station, mm. */
  askedHeight = 0;
  bevelHeight = 0;
  /** Full thickness of the finished blade at the spine and at the bevel line at the last station, mm. */
  spine = 0;
  bevelLine = 0;
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
  };

  constructor(input: SectionInput) {
    this.input = input;
  }

  copy(): SectionLaw {
    return new SectionLaw(this.input);
  }

  /**
   * Builds the section at x.
   *
   * @param x - mm from the heel.
   * @param spineDistance - V, distance of the station's spine point from the edge, mm.
   */
  at(x: number, spineDistance: number): HalfSection {
    const input = this.input;
    this.stand(x, spineDistance);
    const { spine, bevelLine, bevelHeight: b } = this;
    const face = this.face;
    const onBevel = 2 * (input.onBevel + input.faceOnBevel);
    const onFlats = 2 * (input.onFlats + input.faceOnFlats);
    face.edge = input.edge.valueAt(x) + 2 * input.faceOnBevel;
    face.bevelHeight = b;
    face.bevelLineBelow = bevelLine + onBevel;
    face.bevelLineAbove = bevelLine + onFlats;
    face.spine = spine + onFlats;
    face.spineDistance = spineDistance;
    face.crown = this.crownAt(x, face);
    const sharpening = input.sharpening;
    const hammered = input.hammered;
    if (sharpening === undefined && hammered === undefined) {
      return groundFace(face, input.form, this.half);
    }
    groundFace(face, input.form, this.ground);
    if (hammered !== undefined) {
      this.hammeredFace(hammered, b, bevelLine, spine, spineDistance);
      if (sharpening === undefined) return this.half.combine(this.ground, this.partner, "larger");
      this.mixed.combine(this.ground, this.partner, "larger");
      this.partner.clear().addLine(0, 0, sharpening);
      return this.half.combine(this.mixed, this.partner, "smaller");
    }
    this.partner.clear().addLine(0, 0, sharpening as number);
    return this.half.combine(this.ground, this.partner, "smaller");
  }

  /** Sets the finished blade's own numbers at a station. */
  private stand(x: number, spineDistance: number): void {
    const { spine, bevelHeight, flankTaper } = this.input;
    this.spine = spine.valueAt(x);
    this.askedHeight = bevelHeight === "full" ? spineDistance : bevelHeight.valueAt(x);
    this.bevelHeight = Math.min(this.askedHeight, spineDistance);
    // The flank's taper dies out where the bevel reaches the spine: there is no flank to carry it.
    const carried =
      spineDistance > 0 ? Math.min(1, (4 * (spineDistance - this.bevelHeight)) / spineDistance) : 0;
    this.bevelLine = this.spine - flankTaper.valueAt(x) * carried;
  }

  private crownAt(x: number, face: FaceAtStation): number {
    const crown = this.input.crown;
    if (crown === undefined) return Number.NaN;
    const value = crown.law.valueAt(x);
    return crown.kind === "mm" ? value : value * (face.bevelLineBelow - face.edge);
  }

  private hammeredFace(
    hammered: HammeredBevel,
    b: number,
    bevelLine: number,
    spine: number,
    spineDistance: number,
  ): void {
    const onFlats = 2 * this.input.onFlats;
    const edge = hammered.edge / 2;
    const top = (spine + onFlats) / 2;
    const out = this.partner.clear();
    if (hammered.to === "none" || spineDistance <= 0) out.addLine(0, top, 0);
    else if (hammered.to === "full") {
      out.addLine(0, edge, (top - edge) / spineDistance).addLine(spineDistance, top, 0);
    } else {
      const line = (bevelLine + onFlats) / 2;
      if (b > 0) out.addLine(0, edge, (line - edge) / b);
      if (spineDistance > b) {
        const slope = (top - line) / (spineDistance - b);
        out.addLine(b, line - slope * b, slope).addLine(spineDistance, top, 0);
      } else out.addLine(b, top, 0);
    }
  }

  /**
   * Numbers whose change of sign along x means that the section's structure changes there: bevel line at the spine,
   * sharpening plane past the bevel line, past the spine.
   */
  structureAt(x: number, spineDistance: number, out: number[]): void {
    const input = this.input;
    this.stand(x, spineDistance);
    out.push(this.askedHeight - spineDistance, 4 * this.bevelHeight - 3 * spineDistance);
    if (input.sharpening !== undefined) {
      out.push(
        input.sharpening * this.bevelHeight - this.bevelLine / 2,
        input.sharpening * spineDistance - this.spine / 2,
      );
    }
    if (input.hammered !== undefined) {
      out.push(input.edge.valueAt(x) + 2 * input.faceOnBevel - input.hammered.edge);
    }
  }

  /** Places along x at which some law of the section is not smooth, mm from the heel. */
  get breaks(): number[] {
    const input = this.input;
    const laws = [input.spine, input.flankTaper, input.edge];
    if (input.bevelHeight !== "full") laws.push(input.bevelHeight);
    if (input.crown !== undefined) laws.push(input.crown.law);
    return laws.flatMap((law) => [...law.breaks]);
  }
}
