import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { GeometryError } from "../../../src/errors/errors.js";
import { PRESS_LIMITS } from "../../../src/limits/press-limits.js";
import { evenHeights, passHeights } from "../../../src/stock/forge/pass-heights.js";
import { passStops, type StoppedPasses } from "../../../src/stock/forge/pass-stops.js";
import { pressWork, type StopWork } from "../../../src/stock/forge/press-defaults.js";
import { passFindings } from "../../../src/stock/forge/press-findings.js";
import { nearestStop, type StopSet } from "../../../src/stock/forge/stop-blocks.js";

const SEED = 20261127;
const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const SLACK = PRESS_LIMITS.passSlack.value;

describe("pass heights", () => {
  test("fall in one ratio: 12.5 to 6.4 in three passes of a fifth", () => {
    const passes = passHeights(12.5, 6.4, 0.2);
    [10, 8, 6.4].forEach((height, k) => {
      expect(passes[k]?.height).toBeCloseTo(height, 12);
      expect(passes[k]?.reduction).toBeCloseTo(0.2, 12);
    });
    expect(passes).toHaveLength(3);
  });

  test("one pass more as soon as the end is a hair lower", () => {
    expect(passHeights(12.5, 6.399, 0.2)).toHaveLength(4);
    // ln 0.7 over ln 0.7 is a little more than 1 in binary.
    expect(passHeights(10, 7, 0.3)).toHaveLength(1);
    expect(passHeights(30, 9.8304, 0.2)).toHaveLength(5);
    expect(passHeights(30, 30, 0.2)).toEqual([]);
    expect(passHeights(30, 29.9, 0.2)).toHaveLength(1);
  });

  test("none is deeper than the limit, one fewer would be, and they multiply to the whole", () => {
    fc.assert(
      fc.property(number(5, 120), number(0.05, 0.999), number(0.02, 0.6), (start, part, limit) => {
        const end = start * part;
        const passes = passHeights(start, end, limit);
        expect(passes.at(-1)?.height).toBe(end);
        for (const { reduction } of passes) expect(reduction).toBeLessThan(limit + 1e-8);
        const left = passes.reduce((kept, { reduction }) => kept * (1 - reduction), 1);
        expect(left).toBeCloseTo(part, 12);
        expect(1 - part ** (1 / Math.max(1, passes.length - 1)) > limit || passes.length === 1).toBe(true);
      }),
      { seed: SEED },
    );
  });

  test.each([
    [10, 12, 0.2],
    [10, 0, 0.2],
    [10, Number.NaN, 0.2],
    [Number.POSITIVE_INFINITY, 5, 0.2],
    [10, 5, 0],
    [10, 5, 1],
  ])("refuses %d to %d by %d", (start, end, limit) => {
    expect(() => passHeights(start, end, limit)).toThrow(GeometryError);
  });
});

const TEMPERATURE = 1000;
/** 1 + elongation at 1000 °C, EN 1993-1-2. */
const GROWTH = 1.0138;

interface Sum {
  readonly height: number;
}

const everySum = ({ blocks, shims }: StopSet): Sum[] =>
  blocks.flatMap((block) =>
    Array.from({ length: 2 ** shims.length }, (_, mask) => ({
      height: shims.reduce((sum, shim, i) => sum + (((mask >> i) & 1) === 1 ? shim : 0), block),
    })),
  );

/** The least deepest pass with `count` passes, by trying the stops on both sides of every even height. */
function leastDeep(start: number, end: number, count: number, work: StopWork): number {
  const sums = everySum(work.stops).map(({ height }) => height);
  let ways: { readonly at: number; readonly deepest: number }[] = [{ at: start, deepest: 0 }];
  evenHeights(start, end, count).forEach(({ height }, k) => {
    const wanted = height * GROWTH - work.stopOffset;
    const stops =
      k + 1 === count
        ? [nearestStop(wanted, work.stops).height]
        : [
            Math.min(...sums.filter((sum) => sum > wanted - 1e-9)),
            Math.max(...sums.filter((sum) => sum < wanted + 1e-9)),
          ];
    ways = ways.flatMap(({ at, deepest }) =>
      stops.filter(Number.isFinite).flatMap((stop) => {
        const next = (stop + work.stopOffset) / GROWTH;
        return next > 0 && next < at - 1e-9 ? [{ at: next, deepest: Math.max(deepest, 1 - next / at) }] : [];
      }),
    );
  });
  return Math.min(Number.POSITIVE_INFINITY, ...ways.map(({ deepest }) => deepest));
}

/** The least deepest pass with whatever stops, however many: from the last one up, the best way down from each. */
function leastDeepOfAll(start: number, end: number, { stops, stopOffset }: StopWork): number {
  const last = nearestStop(end * GROWTH - stopOffset, stops).height;
  const heights = everySum(stops)
    .map(({ height }) => height)
    .filter((sum) => sum > last + 1e-6 && (sum + stopOffset) / GROWTH < start)
    .sort((a, b) => a - b);
  const known = [{ at: (last + stopOffset) / GROWTH, deepest: 0 }];
  const from = (at: number): number =>
    Math.min(...known.map((lower) => Math.max(lower.deepest, 1 - lower.at / at)));
  for (const sum of heights) {
    const at = (sum + stopOffset) / GROWTH;
    known.push({ at, deepest: from(at) });
  }
  return from(start);
}

const deepestOf = ({ passes }: StoppedPasses): number =>
  Math.max(0, ...passes.map(({ pressed }) => pressed.reduction));

describe("passes with the shop's own stops", () => {
  const work = fc
    .record({
      stops: fc.record({
        blocks: fc.array(number(2, 60), { minLength: 1, maxLength: 6 }),
        shims: fc.array(number(0.2, 6), { maxLength: 3 }),
      }),
      stopOffset: number(-0.5, 0.5),
      maxReduction: number(0.12, 0.4),
    })
    .map((given): StopWork => ({ ...given, temperature: TEMPERATURE }));

  test("fall strictly, end at the nearest stop, and say truly by how much one is too deep", () => {
    fc.assert(
      fc.property(number(8, 60), number(0.2, 0.95), work, (start, part, press) => {
        const end = start * part;
        const done = passStops(start, end, press);
        let before = start;
        for (const { pressed, stop, height, hotHeight, stopHeight } of done.passes) {
          expect(pressed.height).toBeLessThan(before);
          expect(pressed.reduction).toBeCloseTo(1 - pressed.height / before, 12);
          expect(pressed.height * GROWTH).toBeCloseTo(stop.height + press.stopOffset, 10);
          expect(hotHeight).toBeCloseTo(height * GROWTH, 10);
          expect(stopHeight).toBeCloseTo(hotHeight - press.stopOffset, 10);
          before = pressed.height;
        }
        const last = nearestStop(end * GROWTH - press.stopOffset, press.stops);
        if (done.reached) expect(done.passes.at(-1)?.stop.height).toBeCloseTo(last.height, 8);
        else
          expect(
            (last.height + press.stopOffset) / GROWTH >= start || last.height + press.stopOffset <= 0,
          ).toBe(true);
        expect(done.over).toBeCloseTo(Math.max(0, deepestOf(done) - press.maxReduction), 12);
      }),
      { seed: SEED, numRuns: 300 },
    );
  });

  test("are the fewest that keep to the limit, or the least deep that any of the stops allow", () => {
    let tooDeep = 0;
    fc.assert(
      fc.property(number(8, 60), number(0.2, 0.95), work, (start, part, press) => {
        const end = start * part;
        const done = passStops(start, end, press);
        if (!done.reached) return;
        const fewest = passHeights(start, end, press.maxReduction).length;
        const allowed = press.maxReduction + SLACK;
        const first = [0, 1, 2, 3]
          .map((extra) => fewest + extra)
          .find((count) => leastDeep(start, end, count, press) <= allowed);
        if (first !== undefined) {
          expect(done.passes).toHaveLength(first);
          expect(done.over).toBeLessThanOrEqual(SLACK);
          return;
        }
        tooDeep++;
        const least = Math.max(leastDeepOfAll(start, end, press), press.maxReduction);
        expect(Math.abs(done.over - (least - press.maxReduction))).toBeLessThan(1e-6);
      }),
      { seed: SEED, numRuns: 300 },
    );
    expect(tooDeep).toBeGreaterThan(20);
  });

  test("where the limit leaves room every stop is the nearest", () => {
    const stops = { blocks: [6, 10, 20, 40], shims: [0.1, 0.2, 0.4, 0.8, 1.6, 3.2, 6.4] };
    const { passes, over } = passStops(38, 7.35, {
      temperature: 950,
      stopOffset: 0.2,
      maxReduction: 0.2,
      stops,
    });
    expect(passes).toHaveLength(8);
    expect(over).toBeLessThanOrEqual(SLACK);
    for (const { stop } of passes) expect(Math.abs(stop.error)).toBeLessThan(0.0501);
    // 7.35 cold is 7.444 hot at 950 °C; the press leaves 0.2 more than the stop.
    expect(passes.at(-1)?.stopHeight).toBeCloseTo(7.24408, 10);
    expect(passes.at(-1)?.stop.height).toBeCloseTo(7.2, 10);
  });

  test("nothing to press is no pass", () => {
    const stops = { blocks: [6], shims: [] };
    expect(passStops(8, 8, { temperature: 950, stopOffset: 0, maxReduction: 0.2, stops })).toEqual({
      passes: [],
      reached: true,
      over: 0,
    });
  });
});

describe("findings of passes", () => {
  const codes = (start: number, end: number, press: Parameters<typeof pressWork>[0]): string[] => {
    const { stops = { blocks: [1], shims: [] }, ...work } = pressWork(press);
    const owned = { ...work, stops };
    return passFindings(passStops(start, end, owned), "blade", owned).map(({ code }) => code);
  };

  test.each([
    ["stops that fit", { stopBlocks: [6.08, 7.6, 9.5] }, []],
    ["one block for a long way down", { stopBlocks: [6.08] }, ["pass-over-limit"]],
    ["a last stop too tall", { stopBlocks: [6.3, 7.6, 9.5] }, ["stop-far-off"]],
    ["a limit beyond the textbook's", { stopBlocks: [6.08, 8], maxReduction: 0.25 }, ["pass-limit-deep"]],
    ["a limit just within it", { stopBlocks: [6.08, 7.6, 9.5], maxReduction: 0.23 }, []],
  ])("%s", (_, press, expected) => {
    expect(codes(10, 6, press)).toEqual(expected);
  });

  test("the limit of the shop is named as its own", () => {
    const press = pressWork({ stopBlocks: [6.08], maxReduction: 0.15 });
    const stops = press.stops ?? { blocks: [], shims: [] };
    const owned = { ...press, stops };
    const [finding] = passFindings(passStops(10, 6, owned), "blade", owned);
    expect(finding?.basis).toBe("the shop's own limit");
    // 10 to 6.003 in one pass is 39.97 %.
    expect(finding?.values).toMatchObject({
      over: {
        quantity: "share",
        value: expect.closeTo(1 - 6.08 / 10.128 - 0.15, 9),
      },
    });
  });
});
