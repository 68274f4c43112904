import { describe, expect, test } from "vitest";
import { makeKnife } from "../../../src/blade/knife.js";
import { ledgerBodies } from "../../../src/blade/ledger-bodies.js";
import { DEFAULT_SHOP } from "../../../src/stock/defaults.js";
import type { Squeeze } from "../../../src/stock/forge/end-stop.js";
import { type CardStack, forgeCard, taperPlaces } from "../../../src/stock/forge/forge-card.js";
import { pressWork } from "../../../src/stock/forge/press-defaults.js";
import { pressPasses, pressStop } from "../../../src/stock/forge/press-steps.js";
import { describeIssue } from "../../../src/units/describe-issue.js";
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

  test("marks and sizes are those of the billet that the stops leave, of the same steel", () => {
    const press = { stopBlocks: [15.5], temperature: 950, weldingTemperature: 1150 };
    const planned = forgeCard(knife, bodies, DEFAULT_SHOP, flat);
    const { weld, billet, marks, thickness } = forgeCard(knife, bodies, { ...DEFAULT_SHOP, press }, flat);
    // 15.5 mm at 1150 °C, elongation 0.0168, is 15.2439 cold.
    expect(weld?.passes.ends).toBeCloseTo(15.5 / 1.0168, 9);
    expect(weld?.reduction).toBeCloseTo(1 - 15.5 / 1.0168 / 22.8, 12);
    expect(billet.thickness).toBeCloseTo(15.5 / 1.0168, 9);
    expect(thickness.from).toBe(billet.thickness);
    expect(marks.usual.tang / planned.marks.usual.tang).toBeCloseTo(
      (planned.billet.height * planned.billet.thickness) / (billet.height * billet.thickness),
      9,
    );
    expect(marks.usual.tang).toBeGreaterThan(planned.marks.usual.tang);
  });

  test("the handle is pressed by the stops of the blade where it is as thick; nothing is said twice", () => {
    const press = {
      stopBlocks: [4, 30],
      maxReduction: 0.25,
      temperature: 600,
      die: { length: 60, width: 90 },
    };
    const card = forgeCard(knife, bodies, { ...DEFAULT_SHOP, press }, flat);
    expect(card.handle.passes).toBe(card.thickness.passes);
    const said = card.findings.map((finding) => describeIssue(finding, "mm"));
    expect(new Set(said).size).toBe(said.length);
    const codes = card.findings.map(({ code }) => code);
    expect(codes.filter((code) => code === "pass-limit-deep")).toHaveLength(1);
    expect(codes).toContain("forging-heat-low");
    for (const text of said.filter((each) => /block of/u.test(each)))
      expect(text).toMatch(/^(?:Weld|Blade), pass \d: /u);
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
  const blade = (from: number, to: number): Squeeze => ({ name: "blade", from, to, across: 50 });
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
      const { passes } = pressPasses(blade(9.5, 6), {}, work);
      expect(passes.at(-1)?.cold).toBe(6);
      expect(pressPasses(blade(6, 6), {}, work).passes).toEqual([]);
      expect(pressPasses(blade(5, 6), {}, work).passes).toEqual([]);
    }
    const plain = pressPasses(blade(9.5, 6), {}, bare).passes;
    const kept = plain.reduce((all, { reduction }) => all * (1 - reduction), 1);
    expect(kept).toBeCloseTo(6 / 9.5, 12);
  });

  test("a press that is too weak for its die is told, where the shop gives both", () => {
    const die = { length: 60, width: 80 };
    const codes = (forceKn: number): string[] =>
      pressPasses(blade(9.5, 6), { die, forceKn }, bare).findings.map(({ code }) => code);
    expect(codes(100)).toEqual(["press-too-weak"]);
    expect(codes(100_000)).toEqual([]);
  });
});
