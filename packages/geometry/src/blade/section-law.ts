import { type FaceInput, FaceLaw } from "./face-law.js";
import type { HalfSection } from "./half-section.js";
import type { SignList } from "./sign-list.js";

/** Whatever can build the section at a station; {@link SectionLaw} for blades. */
export interface SectionSource {
  /** The last section built: its right-hand face. */
  readonly half: HalfSection;
  /** Its left-hand face, where that is not the same. */
  readonly left?: HalfSection | undefined;
  /** Bevel height at the last station, of the right-hand face, mm. */
  readonly bevelHeight: number;
  at(x: number, spineDistance: number): HalfSection;
  structureAt(x: number, spineDistance: number, out: SignList): void;
  readonly breaks: readonly number[];
  /** Whether its pieces may come and go where {@link structureAt} says nothing. */
  readonly isIntricate: boolean;
  /** Another of the same kind, with section objects of its own. */
  copy(): SectionSource;
}

/** Sections of a blade: one face for both sides, or one for each. */
export class SectionLaw implements SectionSource {
  readonly rightFace: FaceLaw;
  /** Undefined where both faces are the same. */
  readonly leftFace: FaceLaw | undefined;

  constructor(right: FaceInput, left?: FaceInput) {
    this.rightFace = new FaceLaw(right);
    this.leftFace = left === undefined ? undefined : new FaceLaw(left);
  }

  get half(): HalfSection {
    return this.rightFace.half;
  }

  get left(): HalfSection | undefined {
    return this.leftFace?.half;
  }

  get bevelHeight(): number {
    return this.rightFace.bevelHeight;
  }

  /** Full thickness at the bevel line and at the spine of the finished blade at the last station, mm. */
  get bevelLine(): number {
    return this.rightFace.bevelLine;
  }

  get spine(): number {
    return this.rightFace.spine;
  }

  at(x: number, spineDistance: number): HalfSection {
    this.leftFace?.at(x, spineDistance);
    return this.rightFace.at(x, spineDistance);
  }

  structureAt(x: number, spineDistance: number, out: SignList): void {
    this.rightFace.structureAt(x, spineDistance, out);
    this.leftFace?.structureAt(x, spineDistance, out);
  }

  get breaks(): readonly number[] {
    const { rightFace, leftFace } = this;
    return leftFace === undefined ? rightFace.breaks : [...rightFace.breaks, ...leftFace.breaks];
  }

  get isIntricate(): boolean {
    return this.leftFace !== undefined || this.rightFace.isIntricate;
  }

  copy(): SectionLaw {
    return new SectionLaw(this.rightFace.input, this.leftFace?.input);
  }
}
