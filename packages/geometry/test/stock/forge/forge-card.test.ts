import { describe, expect, test } from "vitest";
import { makeKnife } from "../../../src/blade/knife.js";
import { ledgerBodies } from "../../../src/blade/ledger-bodies.js";
import { DEFAULT_SHOP } from "../../../src/stock/defaults.js";
import { type CardStack, forgeCard, taperPlaces } from "../../../src/stock/forge/forge-card.js";
import { pressWork } from "../../../src/stock/forge/press-defaults.js";
import { pressPasses, pressStop } from "../../../src/stock/forge/press-steps.js";
import { FULL, HIDDEN } from "./forge-knife.js";

const knife = makeKnife(FULL);
const bodies = ledgerBodies(knife);
const flat: CardStack = { bars: 4, width: 50, thickness: 6, cutLength: 160, layers: "flat" };

describe("forge card", () => {
  test("a stack on edge lies the other way round: its height becomes the blade's height", () => {
    const lying = forgeCard(knife, bodies, DEFAULT_SHOP, flat);
    const standing = forgeCard(knife, bodies, DEFAULT_SHOP, { ...flat, layers: "on-edge" });
    expect(standing.billet.height).toBe(lying.billet.thickness);
    expect(standing.billet.thickness).toBe(lying.billet.height);
    expect(standing.marks).toEqual(lying.marks);
  });

  test("the weld is squeezed from the cleaned stack by the least reduction: 4 × 6 mm, six faces of 0.2 mm", () => {
    const { weld, billet } = forgeCard(knife, bodies, DEFAULT_SHOP, flat);
    expect(weld?.passes.from).toBeCloseTo(24 - 1.2, 12);
    expect(weld?.passes.to).toBeCloseTo(22.8 * 0.7, 12);
    expect(weld?.width).toBeCloseTo(50 * 0.7 ** -0.3, 12);
    expect(billet.height).toBeCloseTo(50 * 0.7 ** -0.3 - 3, 12);
    const solid = forgeCard(knife, bodies, DEFAULT_SHOP, { ...flat, bars: 1 });
    expect(solid.weld).toBeUndefined();
    expect(solid.billet).toMatchObject({ height: 50, thickness: 6, length: 160 });
  });

  test("the preform starts at the shoulder and is as thick there as the forged spine", () => {
    const { preform, thickness, tang } = forgeCard(knife, bodies, DEFAULT_SHOP, flat);
    const spine = knife.body("forged").slab.thicknessAt(0);
    expect(preform[0]?.at).toBe(0);
    expect(preform[0]?.x).toBeCloseTo(0, 6);
    expect(preform[0]?.thickness).toBeCloseTo(spine, 6);
    expect(thickness.to).toBeCloseTo(spine, 6);
    // Handle 110, neck 10, and what the butt is drawn on by.
    expect(tang.length).toBeCloseTo(120 + knife.allowances.butt, 6);
  });

  test("high losses eat more and leave fewer heats; the mark is set for them", () => {
    const { marks, heats } = forgeCard(knife, bodies, DEFAULT_SHOP, flat);
    expect(marks.high.tang).toBeGreaterThan(marks.usual.tang);
    expect(marks.at).toBe(marks.high.tang);
    expect(heats.high.more).toBeLessThan(heats.usual.more);
  });

  test("taper: the stations of the file, or quarters where there are fewer than three", () => {
    expect(taperPlaces(knife)).toEqual([0, 45, 90, 135, 180]);
    const stations = makeKnife({
      ...HIDDEN,
      blade: {
        ...HIDDEN.blade,
        thickness: [
          { at: { kind: "heel" }, is: 4 },
          { at: { kind: "distance", mm: 70 }, is: 3 },
          { at: { kind: "tip" }, is: 1.8 },
        ],
      },
    });
    expect(taperPlaces(stations)).toEqual([0, 70, 120]);
  });
});

describe("passes with and without stops", () => {
  const bare = pressWork({ temperature: 950 });
  const owned = pressWork({ temperature: 950, stopBlocks: [5, 8], shims: [1, 0.5, 0.2, 0.1] });

  test("hot and cold sizes of one stop, by hand: 6 mm at 950 °C is 6.0768 mm", () => {
    expect(pressStop(6, bare)).toMatchObject({ cold: 6 });
    expect(pressStop(6, bare).hot).toBeCloseTo(6.0768, 9);
    expect(pressStop(6, bare).stop).toBeUndefined();
    // 5 + 1 + 0.1 is 0.0232 over, 5 + 1 0.0768 under.
    expect(pressStop(6, owned).stop).toMatchObject({ block: 5, shims: [1, 0.1] });
    const offset = pressWork({ temperature: 950, stopOffset: 0.3 });
    expect(pressStop(6, offset).wanted).toBeCloseTo(5.7768, 9);
  });

  test("both end at the height that is wanted; nothing is pressed upward", () => {
    for (const work of [bare, owned]) {
      const { passes } = pressPasses(9.5, 6, 40, {}, work);
      expect(passes.at(-1)?.cold).toBe(6);
      expect(pressPasses(6, 6, 40, {}, work).passes).toEqual([]);
      expect(pressPasses(5, 6, 40, {}, work).passes).toEqual([]);
    }
    const plain = pressPasses(9.5, 6, 40, {}, bare).passes;
    const kept = plain.reduce((all, { reduction }) => all * (1 - reduction), 1);
    expect(kept).toBeCloseTo(6 / 9.5, 12);
  });

  test("a press that is too weak for its die is told, where the shop gives both", () => {
    const die = { length: 60, width: 80 };
    const codes = (forceKn: number): string[] =>
      pressPasses(9.5, 6, 50, { die, forceKn }, bare).findings.map(({ code }) => code);
    expect(codes(100)).toEqual(["press-too-weak"]);
    expect(codes(100_000)).toEqual([]);
  });
});
