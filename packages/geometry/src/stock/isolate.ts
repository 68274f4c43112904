import { GeometryError } from "../errors/errors.js";
import type { ForgedStation } from "./blade-states.js";

/**
 * Length of dressed billet that goes into the part of the forged blade behind `x`: where to mark the billet before the
 * tang is set off. Every part loses the same share to scale, so the billet divides as the forged volume does.
 *
 * @param stations - In order of x; areas straight between them.
 * @param x - Where the part ends, mm from the heel; the handle front is at minus the ricasso.
 * @param dressedLength - Length of the dressed billet, mm.
 * @returns mm from the butt end of the billet.
 * @throws {GeometryError} `stations-too-few` with less than two stations or without volume.
 *
 * @example
 * const stations = [{ x: -100, height: 20, area: 60 }, { x: 100, height: 20, area: 60 }];
 * billetLengthBehind(stations, 0, 150); // 75
 */
export function billetLengthBehind(
  stations: readonly ForgedStation[],
  x: number,
  dressedLength: number,
): number {
  let behind = 0;
  let whole = 0;
  for (let i = 1; i < stations.length; i++) {
    const a = stations[i - 1];
    const b = stations[i];
    if (a === undefined || b === undefined) continue;
    const span = b.x - a.x;
    const slice = (span * (a.area + b.area)) / 2;
    whole += slice;
    if (x >= b.x) behind += slice;
    else if (x > a.x) {
      const part = x - a.x;
      behind += part * (a.area + ((b.area - a.area) * part) / (2 * span));
    }
  }
  if (whole <= 0)
    throw new GeometryError("stations-too-few", "the forged blade has no volume between its stations");
  return (behind / whole) * dressedLength;
}
