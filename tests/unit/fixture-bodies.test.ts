import { MOMENTS, makeKnife, measureBody } from "@scantling/geometry";
import { describe, expect, test } from "vitest";
import { hardKnives } from "../reference/hard-blades.js";
import { steelKnives } from "../reference/steel-knives.js";
import { sumStrips } from "../reference/strips/strips.js";

// Bodies with straight and gently curved edges, every form of bevel and everything cut into one, against strips square to x
// taken to the last digits.
const PROMISED = 1e-12;

/** The strips' own estimate of what they are off; they agree with closed forms to 1e-14 (reference-strips.test.ts). */
const SURE = 1e-13;

/** Rounding of two sums of many terms, against the size of the sum. */
const ROUNDING = 1e-14;

describe.each([...steelKnives(), ...hardKnives()])("$name", ({ spec, outline }) => {
  const { value, error, scale } = sumStrips(spec, outline, 5e-15);
  const own = measureBody(makeKnife(spec).body("finished"));
  const each = Array.from({ length: MOMENTS }, (_, i) => i).filter((i) => (scale[i] ?? 0) > 0);
  const off = (i: number): number => Math.abs((own.value[i] ?? Number.NaN) - (value[i] ?? Number.NaN));

  test("the strips are sure to far more digits than are asked", () => {
    expect(Math.max(...each.map((i) => (error[i] ?? Number.NaN) / (scale[i] ?? 0)))).toBeLessThan(SURE);
  });

  test("volume and all moments to 1e-12", () => {
    for (const i of each) expect(off(i) / (scale[i] ?? 0), `integral ${i}`).toBeLessThan(PROMISED);
  });

  test("the estimate that comes with them covers what they are off", () => {
    for (const i of each) {
      const covered = (own.error[i] ?? 0) + (error[i] ?? 0) + ROUNDING * (scale[i] ?? 0);
      expect(off(i), `integral ${i}`).toBeLessThanOrEqual(covered);
    }
  });
});
