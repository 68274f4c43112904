import { describe, expect, it } from "vitest";
import { makeKnife } from "../../src/blade/knife.js";
import { patternGeometry } from "../../src/blade/pattern-geometry.js";
import { statePattern } from "../../src/blade/state-pattern.js";
import { pathBounds } from "../../src/plane/bounds.js";
import { expectWithin } from "../numeric/close.js";
import { boxKnife, p } from "./bodies.js";

const ALLOWANCES = {
  outline: 1.5,
  tip: 3,
  butt: 2,
  face: 0.5,
  afterHardening: 0.1,
  forgedEdge: 1.6,
} as const;
const knifeWith = (height: number | "full", forgedBevel: "line" | "full" | "none") =>
  makeKnife(
    boxKnife(
      { bevel: { form: "flat", height, edgeThickness: 0.4 } },
      {
        tang: { holes: [{ kind: "pin", at: p(-60, 20), diameter: 4 }] },
        allowances: { ...ALLOWANCES, forgedBevel },
      },
    ),
  );

describe("the pattern of a size state", () => {
  it("finished is the finished pattern", () => {
    const knife = knifeWith(12, "line");
    const { drawn, below, ...geometry } = statePattern(knife, "finished");
    expect(geometry).toEqual(patternGeometry(knife, "finished"));
    expect(drawn).toBe(knife.outline);
    expect(below).toBe(0);
  });

  it("ready to harden has the finished outline and holes, and what is still on the faces", () => {
    const { drawn, stations, holes } = statePattern(knifeWith(12, "line"), "ready");
    expect(drawn.edgeLength).toBe(120);
    expect(holes).toHaveLength(1);
    for (const { thickness } of stations) expectWithin(thickness, 4.2, 1e-12);
  });

  it("forged stands on its own heel, its allowances around the finished outline, nothing drilled", () => {
    const { outline, finished, holes, stations } = statePattern(knifeWith(12, "line"), "forged");
    expect(pathBounds(outline)).toEqual({ minX: -102, minY: 0, maxX: 123, maxY: 33 });
    expect(finished && pathBounds(finished)).toEqual({ minX: -100, minY: 1.5, maxX: 120, maxY: 31.5 });
    expect(holes).toEqual([]);
    for (const { x, top, bottom, thickness } of stations) {
      expectWithin(top, 33, 1e-12);
      expectWithin(bottom, x < 0 ? 10 : 0, 1e-12);
      // After hardening 0.1 a side, and 0.5 from the hammer.
      expectWithin(thickness, 5.2, 1e-12);
    }
  });

  it("draws the plunge across the strips, and the bevel line where it is hammered to it", () => {
    const [plunge, line] = statePattern(knifeWith(12, "line"), "forged").bevelLine;
    expect(plunge?.[0]?.from).toEqual(p(0, 0));
    expectWithin(plunge?.[0]?.to.y ?? 0, 13.5, 1e-6);
    for (const { from } of line ?? []) expectWithin(from.y, 13.5, 1e-6);
    const [whole, ...none] = statePattern(knifeWith("full", "line"), "forged").bevelLine;
    expectWithin(whole?.[0]?.to.y ?? 0, 33, 1e-6);
    expect(none).toEqual([]);
    expect(statePattern(knifeWith(12, "full"), "forged").bevelLine).toHaveLength(1);
    expect(statePattern(knifeWith(12, "none"), "forged").bevelLine).toEqual([]);
  });
});
