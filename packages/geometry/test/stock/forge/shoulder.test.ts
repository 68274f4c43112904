import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { forgeLimits } from "../../../src/stock/forge/forge-limits.js";
import { planShoulder } from "../../../src/stock/forge/shoulder.js";

const SEED = 20261127;
const LIMITS = forgeLimits();
const BOTH = { spineSide: 10, edgeSide: 10 };
const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe("setting off the tang", () => {
  test("by hand: 40 × 8 to 20 × 6 with a fuller of 6, 5 mm a side and ratio 1.5 a pass", () => {
    // 320 to 120 mm² is 2.67, so two passes of one ratio would leave 1.63 each: three at least.
    const { depth, passes } = planShoulder(
      { height: 40, thickness: 8 },
      { height: 20, thickness: 6 },
      BOTH,
      [6],
      LIMITS,
    );
    expect(depth).toBe(20);
    expect(passes).toHaveLength(3);
    expect(passes.at(-1)).toMatchObject({ height: 20, thickness: 6 });
    for (const { spineSide, edgeSide } of passes) expect(spineSide + edgeSide).toBeCloseTo(20 / 3, 12);
    const ratios = passes.map(({ ratio }) => ratio);
    expect(ratios[0]).toBeCloseTo((40 * 8) / ((100 / 3) * (22 / 3)), 12);
    expect(Math.max(...ratios)).toBeLessThanOrEqual(1.5);
  });

  test("passes add up to the step, none is deeper than the fuller or more abrupt than the limit, one fewer would be", () => {
    const given = fc.record({
      height: number(15, 60),
      thickness: number(4, 15),
      lower: number(0.2, 1),
      thinner: number(0.3, 1),
      share: number(0, 1),
      fuller: number(3, 12),
    });
    fc.assert(
      fc.property(given, ({ height, thickness, lower, thinner, share, fuller }) => {
        fc.pre(lower < 0.99);
        const tang = { height: height * lower, thickness: thickness * thinner };
        const steps = { spineSide: share, edgeSide: 1 - share };
        const { depth, passes } = planShoulder({ height, thickness }, tang, steps, [fuller], LIMITS);
        const sum = passes.reduce((all, pass) => all + pass.spineSide + pass.edgeSide, 0);
        expect(Math.abs(sum / depth - 1)).toBeLessThan(1e-12);
        const product = passes.reduce((all, { ratio }) => all * ratio, 1);
        expect(product).toBeCloseTo(1 / (lower * thinner), 9);
        for (const pass of passes) {
          expect(Math.max(pass.spineSide, pass.edgeSide)).toBeLessThanOrEqual(fuller * (1 + 1e-9));
          expect(pass.ratio).toBeLessThanOrEqual(1.5 * (1 + 1e-9));
        }
        const fewer = passes.length - 1;
        if (fewer === 0) return;
        const each = (depth * Math.max(share, 1 - share)) / fewer;
        const last = (1 + (1 - lower) / lower / fewer) * (1 + (1 - thinner) / thinner / fewer);
        expect(each > fuller * (1 - 1e-9) || last > 1.5 * (1 - 1e-9)).toBe(true);
      }),
      { seed: SEED, numRuns: 300 },
    );
  });

  test("all on the side on which the blade stands out; evenly where it does on none", () => {
    const [billet, tang] = [
      { height: 40, thickness: 6 },
      { height: 30, thickness: 6 },
    ];
    const one = planShoulder(billet, tang, { spineSide: 0, edgeSide: 46 }, [12], LIMITS).passes;
    expect(one.map(({ spineSide, edgeSide }) => [spineSide, edgeSide])).toEqual([[0, 10]]);
    const even = planShoulder(billet, tang, { spineSide: 0, edgeSide: 0 }, [12], LIMITS).passes;
    expect(even.map(({ spineSide, edgeSide }) => [spineSide, edgeSide])).toEqual([[5, 5]]);
  });

  test("the large fuller first, the small one that still reaches for the corner", () => {
    const { passes } = planShoulder(
      { height: 50, thickness: 6 },
      { height: 20, thickness: 6 },
      BOTH,
      [3, 5, 10],
      LIMITS,
    );
    expect(passes.map(({ fuller }) => fuller)).toEqual([10, 10, 5]);
  });

  test("nothing to set in where the handle is as high as the billet", () => {
    const plan = planShoulder({ height: 20, thickness: 6 }, { height: 22, thickness: 5 }, BOTH, [6], LIMITS);
    expect(plan).toEqual({ depth: 0, passes: [], findings: [] });
  });

  test("too sharp a corner and too many passes are told, each with its limit", () => {
    const sharp = planShoulder({ height: 24, thickness: 6 }, { height: 20, thickness: 6 }, BOTH, [1], LIMITS);
    expect(sharp.findings.map(({ code, severity }) => [code, severity])).toEqual([
      ["shoulder-corner-sharp", "warn"],
    ]);
    const deep = planShoulder({ height: 70, thickness: 9 }, { height: 20, thickness: 5 }, BOTH, [2], LIMITS);
    expect(deep.passes.length).toBe(13);
    expect(deep.findings.map(({ code }) => code)).toEqual(["shoulder-too-abrupt"]);
    const own = forgeLimits({ shoulderPasses: 13 });
    expect(
      planShoulder({ height: 70, thickness: 9 }, { height: 20, thickness: 5 }, BOTH, [2], own).findings,
    ).toEqual([]);
    expect(deep.findings[0]?.basis).toBe("common practice, no source");
  });

  test("a shop without fullers is taken to have a round bar of 12 mm", () => {
    const { passes } = planShoulder(
      { height: 30, thickness: 6 },
      { height: 25, thickness: 6 },
      BOTH,
      [],
      LIMITS,
    );
    expect(passes.map(({ fuller }) => fuller)).toEqual([6]);
  });
});
