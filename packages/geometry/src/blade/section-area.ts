import type { BevelMoments } from "./bevel-moments.js";
import { MOMENTS, VOLUME } from "./moments.js";
import type { SteelBody } from "./steel-body.js";

/** Area of the section at x, cut-outs not counted, mm². */
export function sectionArea(body: SteelBody, bevels: BevelMoments, x: number): number {
  const height = body.footprint.heightAt(x);
  const slab = body.slab.thicknessAt(x) * height;
  const interval = body.footprint.intervalAt(x);
  if (x < body.groundFrom || interval === undefined) return slab;
  const missing = new Float64Array(MOMENTS);
  bevels.station(x, interval.spans, missing);
  return slab - (missing[VOLUME] as number);
}
