/**
 * The stock problem done forwards, heat by heat, from bars of a given length to the forged blade. It shares no formula
 * with the planner, which works backwards in closed form; implicit steps are found by bisection.
 */
import type { LossSpec } from "../../src/stock/shop.js";

export interface ForwardInput {
  readonly bars: number;
  readonly width: number;
  readonly thickness: number;
  readonly length: number;
  readonly losses: LossSpec;
  readonly side: "low" | "value" | "high";
  readonly heats: number;
  readonly weldingHeats: number;
  readonly reduction: number;
  readonly spread: number;
  readonly forgedSurface: number;
}

export interface ForwardResult {
  readonly barsAsCut: number;
  readonly cleaned: number;
  readonly welded: number;
  readonly dressed: number;
  readonly cropped: number;
  readonly forged: number;
}

function bisect(f: (v: number) => number, low: number, high: number): number {
  let a = low;
  let b = high;
  for (let i = 0; i < 60; i++) {
    const middle = (a + b) / 2;
    if (f(middle) > 0) b = middle;
    else a = middle;
  }
  return (a + b) / 2;
}

/** Takes a skin heat by heat while the surface goes evenly from the first to the last piece's. */
function loseSkin(volume: number, depth: number, heats: number, first: number, last: number): number {
  let left = volume;
  for (let k = 1; k <= heats; k++) left -= depth * (first + ((last - first) * (k - 0.5)) / heats);
  return left;
}

const surfaceOf = (w: number, t: number, volume: number): number => {
  const l = volume / (w * t);
  return 2 * w * t + 2 * w * l + 2 * t * l;
};

export function forgeForwards(input: ForwardInput): ForwardResult {
  const { bars, width, thickness, length, losses, side, heats, weldingHeats, reduction } = input;
  const skin = losses.scaleModel === "skin";
  const barsAsCut = bars * width * thickness * length;
  let height = bars * thickness;
  let across = width;
  let volume = barsAsCut;
  for (let joint = 1; joint < bars; joint++) {
    volume -= 2 * losses.cleaningPerFace[side] * width * length;
    height -= 2 * losses.cleaningPerFace[side];
  }
  const cleaned = volume;
  if (bars > 1) {
    const squeezed = height * (1 - reduction);
    const spread = width * (height / squeezed) ** input.spread;
    if (skin) {
      const depth = losses.skinPerWeldingHeat[side];
      const first = surfaceOf(width, height, volume);
      const before = volume;
      volume = bisect(
        (v) => v - loseSkin(before, depth, weldingHeats, first, surfaceOf(spread, squeezed, v)),
        0,
        before,
      );
    } else for (let k = 0; k < weldingHeats; k++) volume *= 1 - losses.scalePerWeldingHeat[side];
    height = squeezed;
    across = spread;
  }
  const welded = volume;
  if (bars > 1) {
    const billetLength = volume / (height * across);
    across -= 2 * losses.weldDressingPerSide[side];
    volume = height * across * billetLength;
  }
  const dressed = volume;
  if (bars > 1) volume -= 2 * losses.cropPerEnd[side] * across * height;
  const cropped = volume;
  if (skin) {
    const first = surfaceOf(across, height, volume);
    volume = loseSkin(volume, losses.skinPerHeat[side], heats, first, input.forgedSurface);
  } else for (let k = 0; k < heats; k++) volume *= 1 - losses.scalePerHeat[side];
  return { barsAsCut, cleaned, welded, dressed, cropped, forged: volume };
}
