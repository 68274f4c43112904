/** An area with the estimated error of its quadrature, mm². */
export interface Surface {
  readonly area: number;
  readonly error: number;
}

/** Adds up areas; errors add up whatever the sign. */
export class SurfaceSum implements Surface {
  area = 0;
  error = 0;

  add({ area, error }: Surface, factor = 1): void {
    this.area += factor * area;
    this.error += Math.abs(factor) * error;
  }
}
