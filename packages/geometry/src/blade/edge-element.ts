/** Slack in mm within which a foot just past the end of an element still counts as on it. */
export const END_SLACK = 1e-9;

/**
 * One piece of the edge run, as the distance to it is measured: a straight piece (or an endless ray past heel or tip),
 * an arc, a cubic, or a corner point. Curves are monotone in x, so that the distance is monotone along a station
 * wherever this element is the nearest one.
 */
export interface EdgeElement {
  /** Greatest curvature, 1/mm; positive where the edge curls toward the blade. Infinite for no element. */
  readonly maxCurvature: number;
  readonly minCurvature: number;
  /**
   * Distance from (x, y) to this element, mm, or infinity where the nearest point is past one of its ends.
   * `hint` is a parameter near which to look first; NaN for a full search. The parameter found is in `foot`.
   */
  distance(x: number, y: number, hint: number): number;
  /** The same for a point that is known to have its nearest point on this element: its ends are not looked at. */
  distanceInside(x: number, y: number, hint: number): number;
  /** Parameters of its first and last point. */
  readonly footAtStart: number;
  readonly footAtEnd: number;
  /** Parameter of the last foot found. */
  foot: number;
  /** Unit normal (toward the blade) and curvature at the last foot. */
  frame(x: number, y: number, out: FootFrame): void;
  /**
   * y, between y0 and y1, at which a point of the station x is v from the element. The last foot found must be that of y0;
   * `footAt1` is that of y1.
   */
  heightAtDistance(
    x: number,
    v: number,
    y0: number,
    v0: number,
    y1: number,
    v1: number,
    footAt1: number,
  ): number;
  /** Way to the focal point at the last foot from the nearer of two distances (infinite for straight pieces), mm. */
  focalDistance(va: number, vb: number): number;
}

export interface FootFrame {
  normalX: number;
  normalY: number;
}
