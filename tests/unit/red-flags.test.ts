import { SHOP_BASIS } from "@scantling/geometry";
import { describe, expect, test } from "vitest";
import { BRACKETS } from "../red-flags/brackets.js";
import { LIMIT_CASES } from "../red-flags/cases.js";
import { FORGE_CASES } from "../red-flags/forge-cases.js";
import { needsOf, STEEL_CASES } from "../red-flags/steel-cases.js";
import { atScale, find, findingsOf, merged } from "../red-flags/world.js";

const ALL_CASES = [...LIMIT_CASES, ...FORGE_CASES];

const withLimits = <T extends { readonly shop?: object }>(one: T, limits: object): T => ({
  ...one,
  shop: merged({ ...one.shop }, { limits }),
});

test("the knife of the cases has nothing against it, but that no bars are known", async () => {
  expect((await findingsOf({})).map(({ code }) => code)).toEqual(["rack-empty"]);
});

describe("just over a limit it is told, just under it is not", () => {
  test.each(ALL_CASES)("$flag: $code", async ({ code, severity, over, under, moved, fixed }) => {
    const finding = await find(over, code, severity);
    expect(finding?.basis).toBeDefined();
    expect(finding?.basis).not.toContain(SHOP_BASIS);
    // A tare is missing whatever the numbers.
    if (code !== "tare-missing") expect(Object.keys(finding?.values ?? {}).length).toBeGreaterThan(0);
    expect(await find(under, code, severity)).toBeUndefined();
    // Where no limit of the shop's moves it, there is a reason.
    expect((moved === undefined) !== (fixed === undefined)).toBe(true);
  });
});

describe("the shop's own limit decides", () => {
  test.each(ALL_CASES.filter(({ moved }) => moved !== undefined))(
    "$flag: $code",
    async ({ code, severity, over, under, moved }) => {
      const { limits = {}, shop = {}, turns } = moved ?? {};
      const one = turns === "over" ? over : under;
      const found = await find(
        withLimits({ ...one, shop: merged({ ...one.shop }, shop) }, limits),
        code,
        severity,
      );
      if (turns === "over") expect(found).toBeUndefined();
      else expect(found?.basis).toContain(SHOP_BASIS);
    },
  );
});

describe("laid to either side of the number, the limit decides", () => {
  test.each(BRACKETS)("$flag: $code", async ({ code, one, told, number, limits, by, above }) => {
    const finding = await find(withLimits(one, told), code);
    if (finding === undefined) throw new Error(`${code} is not told at all`);
    const value = number(finding);
    expect(value).toBeGreaterThan(0);
    const [trips, passes] = above ? [value - by, value + by] : [value + by, value - by];
    const found = await find(withLimits(one, limits(trips)), code);
    expect(found?.basis).toBeDefined();
    expect(await find(withLimits(one, limits(passes)), code)).toBeUndefined();
  });
});

describe("steel on the scale, just under the need and just over it", () => {
  test.each(STEEL_CASES)("R4 at $stage: $code", async ({ code, stage, need, more }) => {
    const needed = (await needsOf({ stage }))[need];
    expect(needed).toBeGreaterThan(50);
    expect(await find(atScale(stage, needed - 0.01), code)).toBeDefined();
    expect(await find(atScale(stage, needed + 0.01), code)).toBeUndefined();
    // What decides is the ledger: with the shop's own losses that are higher, so much is no longer enough.
    const greedy = { ...atScale(stage, needed + 0.01), shop: { losses: more } };
    const found = await find(greedy, code);
    expect(found?.basis).toContain("the shop's own losses");
  });
});
