import { describe, expect, it } from "vitest";
import {
  type AskedWindow,
  clashingBevel,
  clashingLengths,
  clashingWindows,
  type PlainConflict,
} from "../../src/fitting/plain-conflict.js";

const window = (name: string, low: number, high: number, isOpen = false): AskedWindow => ({
  name,
  low,
  high,
  isOpen,
});
const from = (name: string, low: number): AskedWindow => window(name, low, Number.POSITIVE_INFINITY);
const upTo = (name: string, high: number): AskedWindow => window(name, Number.NEGATIVE_INFINITY, high);
const relaxed = ([conflict]: readonly PlainConflict[]) =>
  Object.fromEntries((conflict?.relaxations ?? []).map(({ name, to }) => [name, to]));

describe("two windows of one figure", () => {
  it("clash where they have nothing in common, and either can give way up to the other", () => {
    const found = clashingWindows([from("thick", 4), upTo("thin", 3)]);
    expect(found.map(({ names }) => names)).toEqual([["thick", "thin"]]);
    expect(found[0]?.relaxations).toEqual([
      { name: "thick", limit: "atLeast", from: 4, to: 3 },
      { name: "thin", limit: "atMost", from: 3, to: 4 },
    ]);
  });

  it("do not where they touch, unless a limit itself is not allowed", () => {
    expect(clashingWindows([window("a", 1, 3), window("b", 3, 5)])).toEqual([]);
    expect(clashingWindows([window("a", 1, 3, true), window("b", 3, 5)])).toHaveLength(1);
    expect(clashingWindows([window("a", 1, 3), window("b", 2.9, 5)])).toEqual([]);
  });

  it("are the only way in which several clash: where every two overlap, a grid finds what meets all", () => {
    const grid = Array.from({ length: 101 }, (_, i) => i / 10);
    for (let seed = 0; seed < 200; seed++) {
      const at = (k: number): number => Math.round(50 + 49 * Math.sin(12.9898 * (seed * 7 + k))) / 10;
      const windows = [0, 1, 2].map((k) => window(`${k}`, at(k), at(k) + Math.abs(at(k + 3)) / 2));
      const meets = grid.some((value) =>
        windows.every(({ low, high }) => value >= low && value <= high + 1e-9),
      );
      const found = clashingWindows(windows);
      if (meets) expect(found).toEqual([]);
      // The grid is as fine as the least of the windows' ends, so what it does not meet is not there.
      else if (windows.every(({ high }) => Math.abs(high * 10 - Math.round(high * 10)) < 1e-9))
        expect(found.length).toBeGreaterThan(0);
    }
  });
});

describe("lengths that add up", () => {
  // 200 of edge, 10 of ricasso and 110 of handle are 320.
  const sum = (whole: AskedWindow, edge: AskedWindow, handle?: AskedWindow) =>
    clashingLengths({ whole, parts: [edge, handle], rest: 10 });

  it("clash where the least is too long, by hand", () => {
    const found = sum(upTo("overall", 300), from("edge", 200), from("handle", 110));
    expect(found[0]?.names).toEqual(["overall", "edge", "handle"]);
    expect(relaxed(found)).toEqual({ overall: 320, edge: 180, handle: 90 });
  });

  it("clash where the most is too short", () => {
    const found = sum(from("overall", 330), upTo("edge", 200), upTo("handle", 110));
    expect(relaxed(found)).toEqual({ overall: 320, edge: 210, handle: 120 });
  });

  it("hold at the limit itself, and once any one has given way", () => {
    expect(sum(upTo("overall", 320), from("edge", 200), from("handle", 110))).toEqual([]);
    expect(sum(upTo("overall", 300), from("edge", 180), from("handle", 110))).toEqual([]);
    expect(sum(upTo("overall", 300), from("edge", 180.1), from("handle", 110))).toHaveLength(1);
    expect(clashingLengths({ parts: [from("edge", 200)], rest: 10 })).toEqual([]);
  });

  it("name no length that would have to be nothing", () => {
    const found = sum(upTo("overall", 150), from("edge", 200), from("handle", 20));
    expect(relaxed(found)).toEqual({ overall: 230, edge: 120 });
  });

  it("need both parts for the whole to be too long for them", () => {
    expect(sum(from("overall", 500), upTo("edge", 200))).toEqual([]);
  });
});

describe("a bevel that has to be steeper than it may be", () => {
  // T = 4, h = 30, e = 0.4: atan(3.6/60) = 0.0599 rad = 3.43°.
  const asked = {
    angle: upTo("angle", 0.05),
    thickness: from("thickness", 4),
    height: upTo("height", 30),
    drawnEdge: 0.4,
  };

  it("is found by hand, with what each would have to be", () => {
    const found = clashingBevel(asked);
    const by = relaxed(found);
    expect(by["angle"]).toBeCloseTo(Math.atan(3.6 / 60), 12);
    expect(by["thickness"]).toBeCloseTo(0.4 + 60 * Math.tan(0.05), 12);
    expect(by["height"]).toBeCloseTo(3.6 / (2 * Math.tan(0.05)), 12);
    expect(found[0]?.names).toEqual(["angle", "thickness", "height"]);
  });

  it("goes by the edge that is asked for, where one is", () => {
    const behindEdge = upTo("edge", 0.2);
    const found = clashingBevel({ ...asked, behindEdge });
    expect(relaxed(found)["angle"]).toBeCloseTo(Math.atan(3.8 / 60), 12);
    expect(relaxed(found)["edge"]).toBeCloseTo(4 - 60 * Math.tan(0.05), 12);
  });

  it("takes off the spine what flats that taper may lose", () => {
    const by = relaxed(clashingBevel({ ...asked, flankTaper: 0.3 }));
    expect(by["angle"]).toBeCloseTo(Math.atan(3.3 / 60), 12);
    expect(by["thickness"]).toBeCloseTo(0.7 + 60 * Math.tan(0.05), 12);
    expect(by["height"]).toBeCloseTo(3.3 / (2 * Math.tan(0.05)), 12);
  });

  it("agrees with a grid of all blades that are asked for: none has the angle, and one does once any gives way", () => {
    const steps = (low: number, high: number) =>
      Array.from({ length: 41 }, (_, i) => low + ((high - low) * i) / 40);
    const isMet = ({ angle, thickness, height }: typeof asked): boolean =>
      steps(thickness.low, thickness.low + 3).some((spine) =>
        steps(height.high / 4, height.high).some(
          (high) => Math.atan2(spine - asked.drawnEdge, 2 * high) <= angle.high + 1e-12,
        ),
      );
    expect(isMet(asked)).toBe(false);
    for (const [share, expected] of [
      [1.000001, true],
      [0.9, false],
    ] as const)
      for (const { name, from: was, to } of clashingBevel(asked)[0]?.relaxations ?? []) {
        const limit = was + (to - was) * share;
        const change =
          name === "thickness" ? { thickness: from(name, limit) } : { [name]: upTo(name, limit) };
        expect(isMet({ ...asked, ...change }), `${name} ${limit}`).toBe(expected);
      }
  });

  it("says nothing where one of the three is not asked for, or the angle is enough", () => {
    expect(clashingBevel({ ...asked, angle: upTo("angle", 0.06) })).toEqual([]);
    const { height: _height, ...without } = asked;
    expect(clashingBevel(without)).toEqual([]);
  });
});
