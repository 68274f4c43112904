import { expect } from "vitest";
import { measureBody } from "../../src/blade/measure-body.js";
import { VOLUME } from "../../src/blade/moments.js";
import type { SteelBody } from "../../src/blade/steel-body.js";
import { expectRelative } from "../numeric/close.js";

/** Sections are straight or circular and everything is exact along x: rounding is what is left. */
export const EXACT = 1e-12;

export const volume = (body: SteelBody): number => measureBody(body).value[VOLUME] as number;

/** Compares all seven integrals; an integral near nothing against the size of its terms. */
export function expectMoments(
  body: SteelBody,
  expected: readonly (number | undefined)[],
  share = EXACT,
): void {
  const { value, error } = measureBody(body);
  expected.forEach((truth, i) => {
    if (truth === undefined) return;
    expectRelative(value[i] as number, truth, share, `integral ${i}`);
    const off = Math.abs((value[i] as number) - truth);
    expect(off).toBeLessThanOrEqual((error[i] as number) + 1e-13 * Math.abs(truth));
  });
}
