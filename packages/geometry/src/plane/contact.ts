import type { Vec2 } from "./vec2.js";

/** Curves that come this near to each other meet, mm: far above rounding, far below anything that can be made. */
export const MEETING_TOLERANCE = 1e-9;

/** A point that two segments have in common; t1 on the first, t2 on the second. */
export interface Contact {
  readonly t1: number;
  readonly t2: number;
  readonly point: Vec2;
}
