import { describe, expect, test } from "vitest";
import { planStock } from "../../src/stock/plan.js";
import type { RackBar } from "../../src/stock/shop.js";
import { exactly, HARVEST, NO_LIMITS, NO_LOSSES, plainBodies, shopWith } from "./fixtures.js";

const FORGING = { heats: 9, weldingHeats: 3 };

describe("refusals", () => {
  const bar: RackBar = { name: "50 x 6", width: 50, thickness: 6 };
  const tall = plainBodies(60_000, [{ x: 0, height: 80, area: 200, thickness: 3 }]);
  const refusals = (changes: Parameters<typeof shopWith>[0], bodies = tall, steel?: string) => {
    const shop = shopWith({ rack: [bar], losses: NO_LOSSES, limits: NO_LIMITS, ...changes });
    return planStock(bodies, shop, { ...FORGING, ...(steel === undefined ? {} : { steel }) }).rejected;
  };
  const count = (list: ReturnType<typeof refusals>, reason: string): number =>
    list.find((refusal) => refusal.reason === reason)?.count ?? 0;

  test("wrong steel, by name or alias; a bar without a name is not refused", () => {
    const rack = [bar, { ...bar, steel: "1095" }, { ...bar, steel: "100Cr6" }];
    expect(count(refusals({ rack }, tall, "52100"), "wrong-steel")).toBe(23);
    expect(count(refusals({ rack }, tall), "wrong-steel")).toBe(0);
  });

  test("taller than the press opens: nine and more bars of 6 under 50 mm, either way up", () => {
    const list = refusals({ press: { opening: 50 } });
    expect(count(list, "too-tall-for-press")).toBe(8);
    // The nearest miss is the lowest of them.
    expect(list.find(({ reason }) => reason === "too-tall-for-press")?.example).toMatchObject({
      bars: 9,
      value: { quantity: "length", value: 54 },
      limit: { quantity: "length", value: 50 },
    });
  });

  test("weld reduction: a stack of two that must stay 10 thick can lose 1/6, not 0.3", () => {
    const thick = plainBodies(60_000, [{ x: 0, height: 40, area: 320, thickness: 10 }]);
    const list = refusals({ limits: { ...NO_LIMITS, minWeldReduction: 0.3 } }, thick);
    expect(count(list, "weld-reduction-too-small")).toBe(1);
    const example = list.find(({ reason }) => reason === "weld-reduction-too-small")?.example;
    expect(example?.bars).toBe(2);
    expect(example?.value?.value).toBeCloseTo(1 / 6, 12);
  });

  test("a solid bar that is thinner than the blade", () => {
    const thick = plainBodies(60_000, [{ x: 0, height: 40, area: 200, thickness: 6.5 }]);
    expect(count(refusals({ limits: { ...NO_LIMITS, maxBars: 1 } }, thick), "too-thin")).toBe(1);
  });

  test("a bar exactly as thick as the blade leaves nothing to spread", () => {
    const slab = plainBodies(60_000, [{ x: 0, height: 60, area: 360 }]);
    const list = refusals({ limits: { ...NO_LIMITS, maxBars: 1 } }, slab);
    expect(count(list, "too-thin")).toBe(1);
  });

  test("out of reach: 50 x 6 to 80 high at 2.5 mean needs 0.537", () => {
    const reach = { easy: 0.1, flatDies: 0.2, fullers: 0.5 };
    const list = refusals({ limits: { ...NO_LIMITS, maxBars: 1, reach } });
    expect(count(list, "out-of-reach")).toBe(1);
    expect(list[0]?.example.value?.value).toBeCloseTo(Math.log(80 / 50) / Math.log(6 / 2.5), 12);
  });

  test("too slender: a stack four times as high as wide; too high: a bar far wider than the blade", () => {
    const low = plainBodies(60_000, [{ x: 0, height: 20, area: 60, thickness: 3 }]);
    const limits = { ...NO_LIMITS, maxSlenderness: 3, mostNarrowing: 0.3 };
    const [high] = refusals({ limits: { ...limits, maxBars: 1 } }, low);
    expect(high).toMatchObject({ reason: "too-high", count: 1 });
    // 30 of 50 mm would have to be driven in.
    expect(high?.example.value?.value).toBeCloseTo(0.6, 12);
    expect(high?.example.limit?.value).toBe(0.3);
    const rack = [{ name: "10 x 8", width: 10, thickness: 8 }];
    expect(count(refusals({ rack, limits }, low), "too-slender")).toBeGreaterThanOrEqual(8);
    // A tenth narrower is light work: 50 to 46 passes.
    const nearly = plainBodies(60_000, [{ x: 0, height: 46, area: 150, thickness: 4 }]);
    const none = { ...limits, maxBars: 1, mostNarrowing: 0 };
    expect(count(refusals({ limits: none }, nearly), "too-high")).toBe(0);
  });

  test("longer than the forge, and longer than the bars in hand", () => {
    // 60 000 mm³ from 50 x 6 is 200 mm solid and 100 mm as two.
    expect(count(refusals({ press: { forgeLength: 150 } }), "longer-than-forge")).toBe(1);
    const rack = [{ ...bar, length: 190 }];
    const list = refusals({ rack, limits: { ...NO_LIMITS, maxBars: 1 } });
    expect(list).toEqual([
      {
        reason: "bar-too-short",
        count: 1,
        text: expect.any(String),
        example: {
          bar: rack[0],
          bars: 1,
          layers: "flat",
          cutLength: 200,
          value: { quantity: "count", value: 1 },
          limit: { quantity: "count", value: 0 },
        },
      },
    ]);
    expect(count(refusals({ rack: [{ ...bar, length: 200 }] }), "bar-too-short")).toBe(11 * 2);
    expect(count(refusals({ rack: [{ ...bar, length: 200, count: 12 }] }), "bar-too-short")).toBe(0);
  });

  test("shown is a single bar that misses by little before a stack that misses by less", () => {
    // To 80 high at 2.5 mean: 50 x 6 needs 0.537, two of 40 x 4.68 need ln 2 / ln (9.36/2.5) = 0.525.
    const rack = [{ name: "40 x 4.68", width: 40, thickness: 4.68 }, bar];
    const reach = { easy: 0.1, flatDies: 0.2, fullers: 0.52 };
    const list = refusals({ rack, limits: { ...NO_LIMITS, maxBars: 2, reach } });
    const example = list.find(({ reason }) => reason === "out-of-reach")?.example;
    expect(example).toMatchObject({ bars: 1, bar: { name: "50 x 6" } });
    // At 0.45 a bar fails by a fifth: then the nearest is shown, whatever is to be welded.
    const strict = { ...NO_LIMITS, maxBars: 2, reach: { ...reach, fullers: 0.45 } };
    const nearest = refusals({ rack, limits: strict }).find(({ reason }) => reason === "out-of-reach");
    expect(nearest?.example).toMatchObject({ bars: 2, bar: { name: "40 x 4.68" } });
  });

  test("shown is the nearest miss where none misses by little, and of equals the one of fewer bars", () => {
    const low = [{ x: 0, height: 200, area: 1000, thickness: 5 }];
    const limits = { ...NO_LIMITS, reach: { easy: 0.1, flatDies: 0.2, fullers: 0.3 } };
    const list = refusals({ limits }, plainBodies(60_000, low));
    const { example, count: stacks } = list.find(({ reason }) => reason === "out-of-reach") ?? {};
    expect(stacks).toBeGreaterThan(3);
    const share = (bars: number): number => Math.log(200 / 50) / Math.log((bars * 6) / 5);
    // Lying flat the share falls with every bar, on edge only the height rises: the best of all is looked for by hand.
    const onEdge = (bars: number): number =>
      bars * 6 >= 200 ? 0 : Math.log(200 / (bars * 6)) / Math.log(50 / 5);
    const all = Array.from({ length: 12 }, (_, i) => [
      share(i + 1),
      i === 0 ? Infinity : onEdge(i + 1),
    ]).flat();
    expect(example?.value?.value).toBeCloseTo(Math.min(...all.filter((s) => s > 0.3)), 12);
  });

  test("where only steel is lacking, shown is what would be planned from longer bars, and its length", () => {
    const long = shopWith({ rack: [{ ...bar, width: 60, thickness: 9 }] });
    const [best] = planStock(HARVEST, long, FORGING).plans;
    const shop = shopWith({ rack: [{ ...bar, width: 60, thickness: 9, length: 80 }] });
    const { plans, rejected } = planStock(HARVEST, shop, FORGING);
    expect(plans).toEqual([]);
    const example = rejected.find(({ reason }) => reason === "bar-too-short")?.example;
    expect(example?.cutLength).toBeGreaterThan(80);
    expect(example).toMatchObject({ bars: best?.bars, layers: best?.layers, cutLength: best?.cutLength });
  });

  test("a stack that is ground or burnt away has no length", () => {
    const losses = { ...NO_LOSSES, cleaningPerFace: exactly(4) };
    expect(count(refusals({ losses }), "lost-to-scale")).toBeGreaterThan(0);
    const burning = { ...NO_LOSSES, scaleModel: "skin" as const, skinPerHeat: exactly(1) };
    expect(count(refusals({ losses: burning, limits: { ...NO_LIMITS, maxBars: 1 } }), "lost-to-scale")).toBe(
      1,
    );
  });

  test("an empty rack is an empty report", () => {
    expect(planStock(tall, shopWith({ rack: [] }), FORGING)).toEqual({
      plans: [],
      rejected: [],
      considered: 0,
      superfluous: 0,
    });
  });
});
