import { MOMENTS, VOLUME, X, XX, XY, Y, YY, ZZ } from "./moments.js";

/** What a quarter circle of radius r takes off both faces of a station, summed point by point. */
export class RoundedSums {
  readonly value = new Float64Array(MOMENTS);
  private readonly radius: number;
  private x = 0;
  private half = 0;

  constructor(radius: number) {
    this.radius = radius;
  }

  /** @param half - half-thickness before rounding, mm. */
  begin(x: number, half: number): void {
    this.x = x;
    this.half = half;
    this.value.fill(0);
  }

  /**
   * Adds a piece of the station.
   *
   * @param v - its distance from the edge, mm.
   * @param width - its width along y, mm.
   */
  add(y: number, v: number, width: number): void {
    const { value, radius: r, x, half } = this;
    if (v >= r) return;
    const lost = r - Math.sqrt(v * (2 * r - v));
    const two = 2 * width * lost;
    // (half³ − (half − lost)³)/3, without the cancellation.
    const cubes = lost * (half * (half - lost) + (lost * lost) / 3);
    value[VOLUME] = (value[VOLUME] as number) + two;
    value[X] = (value[X] as number) + two * x;
    value[Y] = (value[Y] as number) + two * y;
    value[XX] = (value[XX] as number) + two * x * x;
    value[YY] = (value[YY] as number) + two * y * y;
    value[ZZ] = (value[ZZ] as number) + 2 * width * cubes;
    value[XY] = (value[XY] as number) + two * x * y;
  }
}
