import { expect, test } from "vitest";
import { mixedBars } from "../../../src/stock/mixed/mixed-bars.js";
import type { CladSpec, PatternWeldedSpec } from "../../../src/stock/mixed/spec.js";
import { rackFindings } from "../../../src/stock/mixed/weld-findings.js";
import type { RackBar } from "../../../src/stock/shop.js";

const CLAD: CladSpec = {
  kind: "clad",
  core: { steel: { name: "1095" }, thickness: 3 },
  cladding: { steel: { name: "1020" }, thickness: 4 },
  width: 35,
};
const bar = (steel: string, thickness: number, changes: Partial<RackBar> = {}): RackBar => ({
  name: `${steel} ${thickness}`,
  steel,
  thickness,
  width: 35,
  ...changes,
});
const layered = (...layers: readonly (readonly [string, number])[]): PatternWeldedSpec => ({
  kind: "pattern-welded",
  layers: layers.map(([name, thickness]) => ({ steel: { name }, thickness })),
  width: 35,
  restacks: [],
});
const KERF = 2;

test("pieces come from all bars of one stock together, as in a search for bars of one steel", () => {
  // Two of 100 are wanted, and neither bar gives more than one.
  const rack = [bar("1020", 4, { length: 150 }), bar("1020", 4, { length: 120 }), bar("1095", 3)];
  const bars = mixedBars(CLAD, 100, rack, KERF);
  expect(bars.map(({ enough }) => enough)).toEqual([true, true]);
  expect(rackFindings(bars)).toEqual([]);
  // One millimetre more and the shorter gives none.
  expect(mixedBars(CLAD, 121, rack, KERF)[0]?.enough).toBe(false);
  const turned = rack.map(({ width, thickness, ...rest }) => ({
    ...rest,
    width: thickness,
    thickness: width,
  }));
  expect(mixedBars(CLAD, 100, turned, KERF)[0]?.enough).toBe(true);
});

test("a leftover that holds no piece is not what they are sawn from", () => {
  const rack = [bar("1020", 4, { name: "stub", length: 60 }), bar("1020", 4, { name: "whole", length: 900 })];
  expect(mixedBars(CLAD, 100, rack, KERF)[0]).toMatchObject({
    rackIndex: 1,
    bar: { name: "whole" },
    enough: true,
  });
  const stub = mixedBars(CLAD, 100, rack.slice(0, 1), KERF);
  expect(stub[0]).toMatchObject({ rackIndex: 0, enough: false });
  expect(rackFindings(stub)[0]?.code).toBe("stack-bar-short");
});

test("two thicknesses near each other are two kinds of bar, each with its own mass", () => {
  const stack = layered(["1084", 1.55], ["15N20", 3], ["1084", 1.6]);
  const bars = mixedBars(stack, 200, [bar("1084", 1.6), bar("1084", 1.55)], KERF);
  expect(
    bars.map(({ steel, thickness, pieces, rackIndex }) => [steel, thickness, pieces, rackIndex]),
  ).toEqual([
    ["1084", 1.55, 1, 1],
    ["15N20", 3, 1, undefined],
    ["1084", 1.6, 1, 0],
  ]);
  const density = (bars[0]?.mass ?? 0) / (1.55 * 35 * 200);
  expect((bars[0]?.mass ?? 0) + (bars[2]?.mass ?? 0)).toBeCloseTo(3.15 * 35 * 200 * density, 9);
  // The same size in inches is one kind.
  const inch = layered(["1084", 25.4 / 8], ["15N20", 3], ["1084", 3.175]);
  expect(mixedBars(inch, 200, [], KERF).map(({ pieces }) => pieces)).toEqual([2, 1]);
});

test("one bar is not given away twice to two thicknesses that both round to it", () => {
  const stack = layered(["1084", 1.55], ["15N20", 3], ["1084", 1.6]);
  const rack = (count: number) => [bar("1084", 1.57, { length: 205, count }), bar("15N20", 3)];
  expect(mixedBars(stack, 200, rack(1), KERF).map(({ enough }) => enough)).toEqual([true, true, false]);
  expect(mixedBars(stack, 200, rack(2), KERF).map(({ enough }) => enough)).toEqual([true, true, true]);
});
