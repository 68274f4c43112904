import type { Path } from "@scantling/geometry";
import type { OrderHead } from "./order-head.js";

/** A section of the blade's preform that is laid off with a rule; mm, cold. */
export interface PreformMark {
  /** Distance along the preform from its shoulder. */
  readonly fromShoulder: number;
  readonly height: number;
  readonly thickness: number;
}

/** A section of the handle as it is drawn out; mm, cold. */
export interface PreformEnd {
  readonly height: number;
  readonly thickness: number;
}

/**
 * Everything that a preform sheet shows: the bar before its bevels are hammered in, from its butt end along x, the spine
 * side at the heel at y = 0. Sizes in mm and cold, that is at 20 °C.
 */
export interface PreformModel extends OrderHead {
  readonly steel: string;
  /** Through every section that is reckoned with: far more of them than the marks, between which it may be curved. */
  readonly outline: Path;
  readonly length: number;
  /** Where the handle ends and the blade begins, from the butt end. */
  readonly shoulder: number;
  /** The section that becomes the heel; left out where that is the shoulder. */
  readonly heel?: number;
  /** Thickness is straight between them and the places of the forge card's taper; the height follows the outline. */
  readonly marks: readonly PreformMark[];
  readonly handle: {
    /** At the shoulder, beside the fillets in its corners. */
    readonly front: PreformEnd;
    /** Half way; left out where that is in line with both ends. */
    readonly middle?: PreformEnd;
    readonly butt: PreformEnd;
    /** Radius in the corners of the shoulder. */
    readonly fillet?: number;
  };
  /** How far the spine side of the end lies below that of the heel; negative above. */
  readonly pointDrop: number;
  /** Steel at the last squeeze of a heat, °C, and by what share every size is greater then. */
  readonly temperature: number;
  readonly elongation: number;
  /** How far the point is bent down before the bevels go in; left out where the shop has not measured a blade. */
  readonly bendDown?: number;
  /** Where to punch the billet before the handle is drawn, from its butt end. */
  readonly billetMark: number;
}
