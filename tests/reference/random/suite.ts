// The same test over a range of random knives; the ranges are files of their own, so that they run side by side.
import { MOMENTS, measureBody } from "@scantling/geometry";
import { describe, expect, test } from "vitest";
import { sumStrips } from "../strips/strips.js";
import { type RandomKnife, randomKnife, SEED } from "./knives.js";

/** Greatest relative error of any integral: without a ridge of the distance to the edge inside the steel, and with one. */
const WITHOUT_RIDGE = 1e-9;
const WITH_RIDGE = 1e-6;

/** What the strips are asked for, and what they may be off at most by their own estimate: far finer than either limit. */
const ASKED = 1e-12;
const LEAST_SURE = WITHOUT_RIDGE / 20;

/** Rounding of two sums of many terms, against the size of the sum. */
const ROUNDING = 1e-14;

const NAMES = ["1", "x", "y", "x²", "y²", "z²", "xy", "z", "yz", "zx"];

const BLOCK = 10;

/** Every knife from one index up to before another, in blocks. */
export function randomBodies(from: number, to: number): void {
  describe(`random knives ${from} to ${to - 1} (seed ${SEED})`, () => {
    const blocks = Array.from({ length: Math.ceil((to - from) / BLOCK) }, (_, i) => from + i * BLOCK);
    test.each(blocks)("from %i on: all integrals, and the estimate covers them", (start) => {
      const faults: string[] = [];
      for (let i = start; i < Math.min(to, start + BLOCK); i++) faults.push(...faultsOf(randomKnife(i)));
      expect(faults).toEqual([]);
    });
  });
}

/** What is wrong with the kernel's integrals of a knife; with the description, so that it can be built again. */
export function faultsOf({ index, kind, spec, knife }: RandomKnife): string[] {
  const { value, error, scale, ridged } = sumStrips(spec, knife.outline, ASKED);
  const own = measureBody(knife.body("finished"));
  const limit = ridged ? WITH_RIDGE : WITHOUT_RIDGE;
  const faults: string[] = [];
  for (let i = 0; i < MOMENTS; i++) {
    const [size = 0, sure = 0, found = 0, said = 0] = [scale[i], error[i], own.value[i], own.error[i]];
    const off = Math.abs(found - (value[i] ?? 0));
    const what = `∫${NAMES[i]}: off by ${share(off, size)}`;
    if (!(sure <= LEAST_SURE * size))
      faults.push(`${what}, but the strips are sure of ${share(sure, size)} only`);
    if (!(off <= limit * size)) faults.push(`${what}, more than ${limit}`);
    if (!(off <= said + sure + ROUNDING * size)) {
      faults.push(`${what}, not covered by ${share(said, size)} and ${share(sure, size)} of the strips`);
    }
  }
  if (faults.length === 0) return [];
  return [`seed ${SEED}, knife ${index} (${kind}): ${faults.join("; ")}\n${JSON.stringify(spec)}`];
}

const share = (error: number, size: number): string => (size > 0 ? error / size : error).toExponential(1);
