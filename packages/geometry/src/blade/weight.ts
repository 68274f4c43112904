import { type Moments, VOLUME, X, XX, XY, Y, YY, YZ, Z, ZX, ZZ } from "./moments.js";

/** A mass centre in the blade's frame, mm: x toward the tip, y toward the spine, z to the right-hand face. */
export interface Centre {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/**
 * Inertia about the mass centre, g·mm², axes parallel to the blade's. `xx` is the moment about the x axis, ∫ρ(y² + z²);
 * `xy` is the product ∫ρxy (the tensor's off-diagonal element is its negative), likewise `yz`, `zx`.
 */
export interface Inertia {
  readonly xx: number;
  readonly yy: number;
  readonly zz: number;
  readonly xy: number;
  readonly yz: number;
  readonly zx: number;
}

/** A piece of one material: mm³, g, mm, g·mm². */
export interface SolidWeight {
  readonly volume: number;
  readonly mass: number;
  readonly centre: Centre;
  readonly inertia: Inertia;
  /** Estimated relative error: the greatest of the volume's and of ∭ x², y², z² dV's, from which centre and inertia follow. */
  readonly relativeError: number;
}

/**
 * Mass, centre and inertia from volume integrals and a density in g/mm³.
 *
 * @example
 * weighMoments(measureBody(knife.body("finished")), 0.00785).mass; // g
 */
export function weighMoments(moments: Moments, density: number): SolidWeight {
  const m = moments.value;
  const volume = m[VOLUME] as number;
  const at = (i: number): number => m[i] as number;
  const cx = volume === 0 ? 0 : at(X) / volume;
  const cy = volume === 0 ? 0 : at(Y) / volume;
  const xx = at(XX) - volume * cx * cx;
  const yy = at(YY) - volume * cy * cy;
  const cz = volume === 0 ? 0 : at(Z) / volume;
  const zz = at(ZZ) - volume * cz * cz;
  const xy = at(XY) - volume * cx * cy;
  return {
    volume,
    mass: volume * density,
    centre: { x: cx, y: cy, z: cz },
    inertia: {
      xx: density * (yy + zz),
      yy: density * (xx + zz),
      zz: density * (xx + yy),
      xy: density * xy,
      yz: density * (at(YZ) - volume * cy * cz),
      zx: density * (at(ZX) - volume * cz * cx),
    },
    relativeError: Math.max(...[VOLUME, XX, YY, ZZ].map((i) => shareOf(moments.error[i] as number, at(i)))),
  };
}

const shareOf = (error: number, value: number): number => (value === 0 ? 0 : error / Math.abs(value));
