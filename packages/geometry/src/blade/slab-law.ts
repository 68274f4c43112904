import type { Law } from "../numeric/law.js";

/** Full thickness across the flats along the whole knife, where nothing is ground into it; mm. */
export class SlabLaw {
  readonly spine: Law;
  /** Tang law by distance behind the handle front; undefined: the tang keeps the thickness at the handle front. */
  readonly tang: Law | undefined;
  readonly handleFront: number;
  /** Steel still on both faces together, on the flats and on the tang. */
  readonly onFlats: number;
  readonly onTang: number;
  /** Places at which the thickness is not smooth, or steps. */
  readonly breaks: readonly number[];

  constructor(input: {
    readonly spine: Law;
    readonly tang: Law | undefined;
    readonly handleFront: number;
    readonly onFlats: number;
    readonly onTang: number;
  }) {
    this.spine = input.spine;
    this.tang = input.tang;
    this.handleFront = input.handleFront;
    this.onFlats = input.onFlats;
    this.onTang = input.onTang;
    const ofTang = this.tang?.breaks.map((d) => this.handleFront - d) ?? [];
    this.breaks = [this.handleFront, 0, ...this.spine.breaks.filter((x) => x > 0), ...ofTang];
  }

  thicknessAt(x: number): number {
    if (x >= this.handleFront) return this.spine.valueAt(Math.max(0, x)) + this.onFlats;
    return this.tangThicknessAt(x);
  }

  /** Thickness on the tang's side of the handle front. */
  tangThicknessAt(x: number): number {
    const tang = this.tang === undefined ? this.spine.valueAt(0) : this.tang.valueAt(this.handleFront - x);
    return tang + this.onTang;
  }

  slopeAt(x: number): number {
    if (x >= 0) return this.spine.slopeAt(x);
    if (x >= this.handleFront) return 0;
    return this.tang === undefined ? 0 : -this.tang.slopeAt(this.handleFront - x);
  }

  /** Whether the thickness is straight between its breaks. */
  get isStraight(): boolean {
    return this.spine.isStraight && (this.tang?.isStraight ?? true);
  }
}
