import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { PRESS_LIMITS } from "../../../src/limits/press-limits.js";
import { endStop, type Squeeze } from "../../../src/stock/forge/end-stop.js";
import { pressWork, weldWork } from "../../../src/stock/forge/press-defaults.js";
import { type PressPasses, pressPasses, pressStop } from "../../../src/stock/forge/press-steps.js";
import { shoulderPressing } from "../../../src/stock/forge/shoulder-stops.js";
import { taperFindings } from "../../../src/stock/forge/taper-findings.js";
import type { PressSpec } from "../../../src/stock/shop.js";
import { describeIssue } from "../../../src/units/describe-issue.js";

const SEED = 20261204;
const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** 1 + elongation by EN 1993-1-2: 2·10⁻⁵ θ − 6.2·10⁻³ above 860 °C. */
const AT_1180 = 1.0174;
const AT_950 = 1.0128;

/** A shop with a gap between 16 + all shims and 20. */
const SHOP: PressSpec = {
  stopBlocks: [4, 6, 8, 10, 13, 16, 20, 25],
  shims: [0.1, 0.2, 0.5, 0.5, 1],
  stopOffset: 0.3,
  maxReduction: 0.15,
  temperature: 950,
  weldingTemperature: 1180,
};

const weldOf = (from: number, press: PressSpec) =>
  pressPasses({ name: "weld", from, to: from * 0.7, across: 45 }, press, weldWork(press));
const texts = ({ findings }: Pick<PressPasses, "findings">): readonly string[] =>
  findings.map((finding) => describeIssue(finding, "mm"));

describe("the last stop of a weld", () => {
  test("four bars of 7 mm: the nearest stop is above, so the next one below is taken", () => {
    // 26.8 to 18.76 wants 18.7864 at 1180 °C with the offset; in hand are 18.3 and 20.
    const { passes, ends, findings } = weldOf(26.8, SHOP);
    expect(passes.at(-1)?.stop).toMatchObject({ block: 16, height: expect.closeTo(18.3, 9) });
    expect(ends).toBeCloseTo(18.6 / AT_1180, 9);
    expect(1 - ends / 26.8).toBeGreaterThan(0.3);
    expect(findings).toEqual([]);
  });

  test("a stop that is a tenth of a millimetre too tall is not taken either", () => {
    // 14.14 mm wants 14.086; 14.1 would leave 29.9 %.
    const { passes, ends } = weldOf(20.2, SHOP);
    expect(passes.at(-1)?.stop?.height).toBeCloseTo(14, 9);
    expect(ends).toBeLessThanOrEqual(20.2 * 0.7);
  });

  test("whatever the stops: never less than the least, and not 5 % of the stack more", () => {
    const press = fc.record({
      stopBlocks: fc.array(number(3, 40), { minLength: 1, maxLength: 6 }),
      shims: fc.array(number(0.1, 5), { maxLength: 4 }),
      stopOffset: number(-0.5, 0.5),
    });
    let made = 0;
    fc.assert(
      fc.property(number(10, 50), press, (from, shop) => {
        const { passes, ends, to, findings } = weldOf(from, shop);
        const last = passes.at(-1);
        expect(1 - ends / from).toBeGreaterThan(0.3 - 1e-9);
        expect(1 - ends / from).toBeLessThan(0.35 + 1e-9);
        if (last?.stop !== undefined) return;
        made++;
        expect(last?.make).toBeCloseTo(to * 1.0168 - shop.stopOffset, 9);
        expect(findings.some(({ code }) => /^no-stop/u.test(code))).toBe(true);
      }),
      { seed: SEED, numRuns: 400 },
    );
    expect(made).toBeGreaterThan(20);
    expect(made).toBeLessThan(380);
  });

  test("blocks of 30 and 40 mm: the heights are told, with the block to make", () => {
    const done = weldOf(20.2, { ...SHOP, stopBlocks: [30, 40], shims: [] });
    const { passes } = done;
    expect(passes).toHaveLength(3);
    expect(passes.map(({ stop }) => stop)).toEqual([undefined, undefined, undefined]);
    expect(passes.map(({ make }) => make)).toEqual([
      undefined,
      undefined,
      expect.closeTo(14.14 * AT_1180 - 0.3, 9),
    ]);
    expect(texts(done)).toEqual([
      "Weld, pass 3: no stop in hand is low enough: make a block of 14.09 mm or a little less.",
    ]);
  });

  test("a stop far below is not offered: the billet would not be the one that is planned", () => {
    const done = weldOf(20.2, { ...SHOP, stopBlocks: [10, 20], shims: [] });
    // 10.3 hot is 10.124 cold, 49.9 % of 20.2.
    expect(texts(done)).toEqual([
      "Weld, pass 3: no stop in hand comes near: the next lower one squeezes the weld by 49.9 %, where 30 % is planned. Make a block of 14.09 mm or a little less.",
    ]);
  });
});

describe("the last stop of the blade", () => {
  const blade = (to: number, press: PressSpec, from = 9.5) =>
    pressPasses({ name: "blade", from, to, across: 40 }, press, pressWork(press));

  test("within half a millimetre it is offered, with what comes out of it", () => {
    const done = blade(3.8, { stopBlocks: [4, 5, 6, 8], shims: [0.5], stopOffset: 0.3 });
    const last = done.passes.at(-1);
    expect(last?.stop?.block).toBe(4);
    expect(last?.out?.hot).toBeCloseTo(4.3, 9);
    expect(last?.out?.cold).toBeCloseTo(4.3 / AT_950, 9);
    expect(done.ends).toBe(last?.out?.cold);
    // Even the lowest block is too tall: no shim helps.
    expect(texts(done)).toEqual([
      "Blade, pass 5: it comes out 4.25 mm, 0.45 mm thicker than wanted. Grind the rest off, or make a lower block of 3.55 mm.",
    ]);
  });

  test("a stop that is too low says to press by the caliper", () => {
    const done = blade(6.1, { stopBlocks: [6, 7.5] }, 9);
    expect(texts(done)).toEqual([
      "Blade, pass 2: it comes out 5.92 mm, 0.18 mm thinner than wanted. Press to 6.18 mm hot by the caliper, or make a block of 6.18 mm.",
    ]);
  });

  test("the other passes keep their stops where only the last block is missing", () => {
    const { passes, findings } = blade(6, { stopBlocks: [7.6], shims: [] }, 9.3);
    expect(passes.map(({ stop, make }) => stop?.block ?? make)).toEqual([7.6, expect.closeTo(6 * AT_950, 9)]);
    expect(findings.map(({ code }) => code)).toEqual(["no-stop-low-enough"]);
  });

  test("a stop that is not lower than the piece is none", () => {
    const squeeze: Squeeze = { name: "blade", from: 6.2, to: 6, across: 40 };
    const work = { ...pressWork({}), stops: { blocks: [6.4], shims: [] } };
    expect(endStop(squeeze, work)).toBeUndefined();
    expect(endStop({ ...squeeze, from: 7 }, work)?.height).toBe(6.4);
  });

  test("an offset larger than the piece asks for no block of less than nothing", () => {
    const done = blade(4, { stopBlocks: [6], stopOffset: 5 });
    expect(done.passes.at(-1)).not.toHaveProperty("make");
    expect(done.findings.map(({ code }) => code)).toEqual(["no-stop-low-enough"]);
    expect(texts(done)[0]).toContain("Measure stopOffset again");
  });
});

describe("stops of the distal taper", () => {
  const work = pressWork({ stopBlocks: [4, 5], shims: [], stopOffset: 0 });
  const said = (...cold: number[]): readonly string[] =>
    taperFindings(
      cold.map((each) => pressStop(each, work)),
      work,
    ).map((finding) => `${finding.severity}: ${describeIssue(finding, "mm")}`);

  test("farther off than half a millimetre there is no stop, but a block to make", () => {
    expect(pressStop(3, work)).not.toHaveProperty("stop");
    expect(pressStop(3, work).make).toBeCloseTo(3 * AT_950, 12);
    expect(PRESS_LIMITS.stopFar.value).toBe(0.5);
  });

  test("every error above a tenth is told", () => {
    expect(said(5 / AT_950, 4 / AT_950)).toEqual([]);
    expect(said(3.65)).toEqual(["note: Distal taper: it comes out up to 0.3 mm too thick: grind that off."]);
    expect(said(4.2)).toEqual([
      "warn: Distal taper: it comes out up to 0.25 mm too thin: press by the caliper there.",
    ]);
    expect(said(2.5)[0]).toContain("no stop in hand comes near 2.53 mm: make such a block");
    expect(said(2.5, 3)[0]).toContain("near 2 of the heights");
  });

  test("without stops there is nothing to say", () => {
    expect(taperFindings([pressStop(3, pressWork({}))], pressWork({}))).toEqual([]);
  });
});

describe("the handle's thickness beside the fuller", () => {
  test("every pass of the press once, in order, the last with the last; the thickness never grows", () => {
    fc.assert(
      fc.property(number(8, 20), number(0.2, 0.9), fc.integer({ min: 1, max: 9 }), (from, part, fullers) => {
        const to = from * part;
        const { passes } = pressPasses({ name: "handle", from, to, across: 40 }, {}, pressWork({}));
        const shoulder = Array.from({ length: fullers }, (_, k) => ({
          thickness: from - ((from - to) * (k + 1)) / fullers,
        }));
        const shared = shoulderPressing(shoulder, passes, from);
        expect(shared.flatMap((each) => each.passes)).toEqual(passes);
        expect(shared.at(-1)?.passes.at(-1)).toBe(passes.at(-1));
        expect(shared.at(-1)?.thickness).toBeCloseTo(to, 12);
        const thick = [from, ...shared.map(({ thickness }) => thickness)];
        expect([...thick].sort((a, b) => b - a)).toEqual(thick);
      }),
      { seed: SEED },
    );
  });
});
