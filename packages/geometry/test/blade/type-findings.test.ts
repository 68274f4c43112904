import { describe, expect, test } from "vitest";
import { makeKnife } from "../../src/blade/knife.js";
import type { FamilyName, KnifeSpec } from "../../src/blade/spec.js";
import { askedLengthFindings, type SizeSlips, typeFindings } from "../../src/blade/type-findings.js";
import {
  ANY_KNIFE,
  KNIFE_TYPE_NAMES,
  KNIFE_TYPES,
  type KnifeType,
  type KnifeTypeName,
  usualRanges,
} from "../../src/limits/type-ranges.js";

const spec = (family: FamilyName, edgeLength: number, heel = 3, angle = 0.27): KnifeSpec => ({
  steel: { name: "1084" },
  blade: {
    outline: { family, edgeLength, heelHeight: 48 },
    thickness: [
      { at: { kind: "heel" }, is: heel },
      { at: { kind: "tip" }, is: Math.min(heel, 1.8) },
    ],
    bevel: { form: "flat", height: "full", edgeThickness: 0.3 },
    edgeAngle: angle,
  },
  tang: { form: "full", length: 115 },
});

const SLIPS: SizeSlips = {
  length: [
    { times: 25.4, words: "inches, not mm" },
    { times: 1 / 2.54, words: "cm, not inches" },
    { times: 0.1, words: "the point" },
  ],
  angle: [{ times: 0.5, words: "both sides together" }],
};
const codes = (knife: KnifeSpec, type?: KnifeTypeName): string[] =>
  typeFindings(makeKnife(knife, type === undefined ? {} : { type }), {}, SLIPS).map(
    ({ code, path }) => `${code} ${path}`,
  );

describe("sizes that are not usual for the type", () => {
  test("a chef's knife of usual sizes has none", () => {
    expect(codes(spec("chefs", 210))).toEqual([]);
  });

  test("outside its range a note, unless one slip explains it", () => {
    expect(codes(spec("chefs", 150))).toEqual(["unusual-for-type blade.outline.edgeLength"]);
    expect(codes(spec("chefs", 8.25 * 2.54 * 25.4))).toEqual(["size-slip blade.outline.edgeLength"]);
    expect(codes(spec("chefs", 210, 3, 0.54))).toEqual(["size-slip blade.edgeAngle"]);
    // A spine that no knife has is told as that.
    expect(codes(spec("chefs", 210, 27))).toEqual([]);
  });

  test("a type that is stated goes before that of the family", () => {
    expect(codes(spec("chefs", 210), "hunter").length).toBeGreaterThan(1);
    expect(codes(spec("drop-point", 150))).toEqual([]);
  });

  test("without a type only what no knife has is questioned", () => {
    expect(codes(spec("drop-point", 2100))).toEqual(["size-slip blade.outline.edgeLength"]);
    // A sword is no slip of these.
    expect(codes(spec("drop-point", 950))).toEqual([]);
  });

  test("a type does not hide a size that no knife has", () => {
    // 152 mm written in a file in inches: no hunter's edge either way, but no knife's as it stands.
    const knife = makeKnife(spec("drop-point", 152 * 25.4), { type: "hunter" });
    const mmForInches: SizeSlips = { length: [{ times: 1 / 25.4, words: "mm, not inches" }] };
    const found = typeFindings(knife, {}, mmForInches).filter(({ path }) => path.endsWith("edgeLength"));
    expect(found.map(({ code }) => code)).toEqual(["size-slip"]);
    expect(found[0]?.text).toContain("is not that of a knife");
    expect(found[0]?.values?.["as0"]).toEqual({ quantity: "length", value: expect.closeTo(152, 9) });
  });

  test("mass and balance where they are given", () => {
    const knife = makeKnife(spec("chefs", 210));
    const found = typeFindings(knife, { mass: 500, balance: 90 }).map(({ text }) => text.split(" is ")[0]);
    expect(found).toEqual(["A mass of {value}", "A balance {value} ahead of the heel"]);
  });
});

describe("the table of types", () => {
  test("has ranges that rise, inside those of any knife, each with its basis", () => {
    for (const name of KNIFE_TYPE_NAMES) {
      const { usual }: KnifeType = KNIFE_TYPES[name];
      for (const [figure, { low, high, basis }] of Object.entries(usual ?? {})) {
        const any = ANY_KNIFE[figure as keyof typeof ANY_KNIFE];
        expect(low, `${name} ${figure}`).toBeLessThan(high);
        expect(low, `${name} ${figure}`).toBeGreaterThanOrEqual(any.low);
        expect(high, `${name} ${figure}`).toBeLessThanOrEqual(any.high);
        expect(basis).toMatch(/common practice, no source|sizes of Chinese cleavers|articles on machetes/u);
      }
    }
  });

  test("is the shop's where it says so", () => {
    expect(usualRanges("kitchen")).toEqual({});
    expect(usualRanges("chef", { chef: { spine: { low: 1, high: 9 } } }).spine).toEqual({
      low: 1,
      high: 9,
      basis: "the shop's own limit",
    });
  });
});

describe("lengths that were asked for", () => {
  const from = (low: number, high: number) => ({ low, high });
  const free = from(0, Number.POSITIVE_INFINITY);

  test("add up, or the order has to give way somewhere", () => {
    const asked = { overall: from(330, 340), edge: from(200, 210), handle: from(120, 130) };
    expect(askedLengthFindings(asked, 10)).toEqual([]);
    expect(askedLengthFindings({ ...asked, handle: from(131, 140) }, 10)).toMatchObject([
      { severity: "stop", values: { sum: { value: 341 }, whole: { value: 340 } } },
    ]);
    expect(askedLengthFindings({ ...asked, handle: from(100, 109) }, 10)).toMatchObject([
      { severity: "stop", values: { sum: { value: 329 }, whole: { value: 330 } } },
    ]);
    expect(askedLengthFindings({ ...asked, handle: free }, 10)).toEqual([]);
  });
});
