import { describe, expect, it } from "vitest";
import { makeKnife } from "../../src/blade/knife.js";
import { ledgerBodies } from "../../src/blade/ledger-bodies.js";
import type { KnifeSpec } from "../../src/blade/spec.js";
import { DEFAULT_TOLERANCES } from "../../src/blade/tolerances.js";
import { fitFigureInterval } from "../../src/fitting/figure-interval.js";
import { knifeFigure } from "../../src/fitting/figures.js";
import { fitKnife } from "../../src/fitting/fit-knife.js";
import { DEFAULT_SHOP } from "../../src/stock/defaults.js";
import { ledgerRow, makeLedger } from "../../src/stock/ledger.js";
import { makeSteelChain } from "../../src/stock/steel-chain.js";
import { boxKnife } from "../blade/bodies.js";
import { SLAB_KNIFE } from "../blade/interval-knives.js";
import { heel } from "../blade/random-knives.js";
import { expectRelative, expectWithin } from "../numeric/close.js";
import { dimension } from "./grid.js";

const [T, E, B, H] = [4, 0.5, 15, 30];

/** A straight blade 30 high and 4 thick; its bevel to 15, or to the spine. */
const straight = (height: number | "full", edgeAngle = 0.3): KnifeSpec =>
  boxKnife({ thickness: [heel(T)], bevel: { form: "flat", height, edgeThickness: E }, edgeAngle });

const ANGLE = { kind: "bevel-angle", side: "right" } as const;
const behind = (above: number) => ({ kind: "behind-edge", above }) as const;

describe("figures of the shape, by hand", () => {
  it("are angle and thickness of a flat bevel", () => {
    const knife = makeKnife(straight(B));
    expectWithin(knifeFigure(ANGLE, knife), Math.atan((T - E) / 2 / B), 1e-12);
    // 5 mm up the plane of sharpening is left behind: 2 · 5 · tan 0.3 is more than 0.5 + 3.5/3.
    expectWithin(knifeFigure(behind(5), knife), E + ((T - E) * 5) / B, 1e-9);
    // 0.5 mm up it is still on the sharpened plane.
    expectWithin(knifeFigure(behind(0.5), knife), 2 * 0.5 * Math.tan(0.3), 1e-9);
    expectWithin(
      knifeFigure({ ...ANGLE, at: { kind: "fraction", share: 0.5 } }, knife),
      Math.atan((T - E) / 2 / B),
      1e-12,
    );
  });

  it("are none where there is no steel that high", () => {
    expect(knifeFigure(behind(31), makeKnife(straight(B)))).toBeNaN();
  });
});

describe("intervals of figures, by hand", () => {
  /** Limits of the inputs: thickness, edge, height. */
  const { groundThickness, edgeThickness, outline } = DEFAULT_TOLERANCES;
  const angleOf = (t: number, e: number, b: number): number => Math.atan((t - e) / 2 / b);

  function squares(of: (t: number, e: number, b: number) => number, b: number): readonly [number, number] {
    const middle = of(T, E, b);
    const ends = [groundThickness, -groundThickness].map((by) => of(T + by, E, b) - middle);
    const edges = [edgeThickness, -edgeThickness].map((by) => of(T, E + by, b) - middle);
    const heights = [2 * outline, -2 * outline].map((by) => of(T, E, b + by) - middle);
    const side = (way: 1 | -1): number =>
      Math.hypot(...[ends, edges, heights].map((each) => Math.max(0, ...each.map((by) => way * by))));
    return [middle - side(-1), middle + side(1)];
  }

  it("are those of thickness, edge and bevel line", () => {
    const [low, high] = fitFigureInterval(straight(B), ANGLE);
    const [lowest, highest] = squares(angleOf, B);
    expectWithin(low, lowest, 1e-9);
    expectWithin(high, highest, 1e-9);
  });

  it("take the sides of the outline where the bevel runs to the spine", () => {
    const [low, high] = fitFigureInterval(straight("full"), ANGLE);
    const [lowest, highest] = squares(angleOf, H);
    expectWithin(low, lowest, 1e-6);
    expectWithin(high, highest, 1e-6);
  });

  it("are those of the thickness 5 mm above the edge", () => {
    const [low, high] = fitFigureInterval(straight(B), behind(5));
    const [lowest, highest] = squares((t, e, b) => e + ((t - e) * 5) / b, B);
    expectWithin(low, lowest, 1e-8);
    expectWithin(high, highest, 1e-8);
  });

  it("follow the tolerances of the file", () => {
    const given = [
      { path: "blade.thickness", plus: 0.3, minus: 0.1 },
      { path: "blade.bevel.edgeThickness", plus: 0, minus: 0 },
      { path: "blade.bevel.height", plus: 0, minus: 0 },
    ];
    const [low, high] = fitFigureInterval(straight(B), ANGLE, given);
    expectWithin(low, angleOf(T - 0.1, E, B), 1e-9);
    expectWithin(high, angleOf(T + 0.3, E, B), 1e-9);
  });
});

describe("steel to cut", () => {
  const { losses, limits } = DEFAULT_SHOP;
  const knife = makeKnife(SLAB_KNIFE);
  const stack = { bars: 2, width: 32, thickness: 6 };
  const figure = { kind: "steel", route: { losses, limits, forging: knife.forging, stack } } as const;

  it("is what the ledger has in the bars without their spare", () => {
    const bodies = ledgerBodies(knife);
    const chain = makeSteelChain(bodies, losses, limits, knife.forging, "value");
    const ledger = makeLedger(bodies, chain, { ...stack, cutLength: 400 });
    const need = ledgerRow(ledger, "bars-as-cut").mass - ledgerRow(ledger, "spare").mass;
    expectRelative(knifeFigure(figure, knife), need, 1e-7);
  });

  it("has low and high losses for its band", () => {
    const [low, high] = fitFigureInterval(SLAB_KNIFE, figure);
    expect(low).toBeLessThan(knifeFigure(figure, knife));
    expect(high).toBeGreaterThan(knifeFigure(figure, knife));
  });

  it("can be asked for", () => {
    const most = 0.95 * knifeFigure(figure, knife);
    const answer = fitKnife({
      spec: SLAB_KNIFE,
      dimensions: [
        dimension(SLAB_KNIFE, "blade.thickness[0].is", 3, 5),
        dimension(SLAB_KNIFE, "tang.buttThickness", 2, 4),
      ],
      asks: [{ name: "steel", figure, atMost: most, scale: 3 }],
    });
    expect(answer?.isMet).toBe(true);
    const found = knifeFigure(figure, makeKnife(answer?.knife.spec ?? SLAB_KNIFE));
    expectRelative(answer?.knife.figures[0] ?? 0, found, 1e-9);
    expect(found).toBeLessThanOrEqual(most);
  });
});
