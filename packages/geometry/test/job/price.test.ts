import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  currencyDecimals,
  type JobTask,
  minorText,
  type PriceTerms,
  priceJob,
  scrapCosts,
  type TaskName,
  toMinor,
} from "../../src/index.js";

const task = (name: TaskName, value: number, low = value, high = value): JobTask => ({
  id: name,
  name,
  minutes: Math.ceil(value * 60),
  hours: { low, value, high },
  after: [],
});

const NO_TERMS: PriceTerms = {
  rate: 0,
  overhead: 0,
  profit: 0,
  waste: 0,
  consumables: 0,
  scrap: {},
  taxRate: 0,
  decimals: 2,
};

describe("what failures cost", () => {
  it("is C·p/(1 − p) for one stage, and the whole over 1 − p where the last one fails", () => {
    for (const scrapShare of [1, 1.2, -0.1, Number.NaN])
      expect(() => scrapCosts([{ cost: 10, scrapShare }])).toThrow(RangeError);
    const [, last] = scrapCosts([
      { cost: 300, scrapShare: 0 },
      { cost: 100, scrapShare: 0.2 },
    ]);
    expect(last?.expected).toBeCloseTo((400 * 0.2) / 0.8, 12);
    expect(400 + (last?.expected ?? 0)).toBeCloseTo(400 / (1 - 0.2), 12);
  });

  it("is what many tries cost on the average: each cost over all chances that follow", () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.tuple(
            fc.double({ min: 0, max: 500, noNaN: true }),
            fc.double({ min: 0, max: 0.6, noNaN: true }),
          ),
          {
            minLength: 1,
            maxLength: 8,
          },
        ),
        (stages) => {
          const risks = scrapCosts(stages.map(([cost, scrapShare]) => ({ cost, scrapShare })));
          const plain = stages.reduce((sum, [cost]) => sum + cost, 0);
          const expected = plain + risks.reduce((sum, risk) => sum + risk.expected, 0);
          // Second form: a cost is spent once for every try that gets there.
          const closed = stages.reduce(
            (sum, [cost], i) => sum + stages.slice(i).reduce((c, [, p]) => c / (1 - p), cost),
            0,
          );
          expect(Math.abs(expected - closed)).toBeLessThan(1e-9 * (1 + closed));
        },
      ),
      { seed: 1, numRuns: 200 },
    );
  });

  it("is what a simulated shop spends", () => {
    const stages = [
      { cost: 40, scrapShare: 0.05 },
      { cost: 120, scrapShare: 0.1 },
      { cost: 60, scrapShare: 0 },
      { cost: 30, scrapShare: 0.25 },
    ];
    const random = lcg(12_345);
    const runs = 60_000;
    let spent = 0;
    for (let run = 0; run < runs; run++) {
      for (let stage = 0; stage < stages.length; ) {
        const { cost, scrapShare } = stages[stage] ?? { cost: 0, scrapShare: 0 };
        spent += cost;
        stage = random() < scrapShare ? 0 : stage + 1;
      }
    }
    const risks = scrapCosts(stages);
    const expected = 250 + risks.reduce((sum, risk) => sum + risk.expected, 0);
    // The mean of 60 000 runs: its standard error is below 0.3 %.
    expect(Math.abs(spent / runs / expected - 1)).toBeLessThan(0.012);
  });
});

/** Numerical Recipes' quick generator: the same numbers everywhere (from memory). */
function lcg(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}

describe("a price", () => {
  // By hand: materials 30 + 10 % waste = 33, consumables 17; 10 h at 40 and 5 h... all lines below.
  const terms: PriceTerms = {
    rate: 40,
    overhead: 10,
    profit: 0.15,
    waste: 0.1,
    consumables: 17,
    scrap: { harden: 0.05 },
    taxRate: 0.19,
    decimals: 2,
  };
  const materials = [
    { label: "bar", for: "blade", cost: 20 },
    { label: "ash", for: "handle", cost: 10 },
  ] as const;
  const tasks = [task("design", 1), task("forge", 5, 4, 7), task("harden", 1), task("shape", 3)];
  const price = priceJob(materials, tasks, terms, { outsideWork: 25, sheath: 60, post: 12 });

  it("has every line, and they add up", () => {
    // Fails at hardening, 5 %: bar and waste 22, consumables 17, others' work 25, 6 h at 50 = 364; 364/19 = 19.157…
    expect(price.lines).toEqual([
      { line: "material", label: "bar", minor: 2000 },
      { line: "material", label: "ash", minor: 1000 },
      { line: "waste", minor: 300 },
      { line: "consumables", minor: 1700 },
      { line: "work", minor: 40_000 },
      { line: "overhead", minor: 10_000 },
      { line: "outside-work", minor: 2500 },
      { line: "scrap", minor: 1916 },
    ]);
    expect(price.costMinor).toBe(59_416);
    // 15 % of 594.16 is 89.124.
    expect(price.profitMinor).toBe(8912);
    expect(price.knifeMinor).toBe(68_328);
    expect(price.netMinor).toBe(68_328 + 6000 + 1200);
    // 19 % of 755.28 is 143.5032.
    expect(price.taxMinor).toBe(14_350);
    expect(price.totalMinor).toBe(75_528 + 14_350);
    expect(price.hours).toEqual({ low: 9, value: 10, high: 12 });
    expect(price.risks).toEqual([
      { id: "harden", name: "harden", scrapShare: 0.05, spent: 364, expected: (364 * 0.05) / 0.95 },
    ]);
  });

  it("is the formula of one chance at the end, where there is one", () => {
    // P = [M(1 + w) + C + Σh·r + h·o + S]/(1 − p)·(1 + profit): the trade's form, with all of it at stake.
    const all = [task("forge", 8), task("etch", 2)];
    const { totalMinor } = priceJob(
      [{ label: "bar", for: "blade", cost: 20 }],
      all,
      { ...terms, scrap: { etch: 0.1 }, taxRate: 0 },
      { outsideWork: 25 },
    );
    const formula = ((20 * 1.1 + 17 + 10 * 40 + 10 * 10 + 25) / (1 - 0.1)) * 1.15;
    // Lines are rounded one by one: a coin or two.
    expect(Math.abs(totalMinor - 100 * formula)).toBeLessThanOrEqual(2);
  });

  it("keeps the blade where the handle fails, and what is never done twice", () => {
    const risky = priceJob(materials, tasks, { ...terms, scrap: { shape: 0.5 } }, {});
    // Half of all handles fail: ash and waste 11, 3 h at 50 = 161, spent once more on the average.
    expect(risky.lines.find(({ line }) => line === "scrap")?.minor).toBe(16_100);
  });

  it("has its band from the shortest and the longest hours", () => {
    const plain = { ...NO_TERMS, rate: 50 };
    const { lowMinor, totalMinor, highMinor } = priceJob([], [task("forge", 2, 1, 4)], plain, {});
    expect([lowMinor, totalMinor, highMinor]).toEqual([5000, 10_000, 20_000]);
  });

  it("has a likely band: what each task moves the price by, in squares", () => {
    // 50 an hour: 3 h more and 4 h more are 150 and 200, together 250; 1 h less each: 70.71.
    const plain = { ...NO_TERMS, rate: 50 };
    const { bandMinor, totalMinor } = priceJob(
      [],
      [task("forge", 2, 1, 5), task("finish", 3, 2, 7)],
      plain,
      {},
    );
    expect(bandMinor).toEqual([totalMinor - 7071, totalMinor + 25_000]);
  });

  it("does not take what nobody has priced for nothing", () => {
    const unknown = priceJob(
      [
        { label: "bar", for: "blade" },
        { label: "ash", for: "handle", cost: 10 },
      ],
      [],
      NO_TERMS,
      {},
    );
    expect(unknown.unpriced).toEqual(["bar"]);
    expect(unknown.totalMinor).toBe(1000);
  });

  it("counts the hours of a sheath in the sheath's own price", () => {
    const { hours, totalMinor } = priceJob(
      [],
      [task("sheath", 3)],
      { ...NO_TERMS, rate: 50 },
      { sheath: 60 },
    );
    expect(hours.value).toBe(0);
    expect(totalMinor).toBe(6000);
  });

  it("that is asked is parted as the customer sees it", () => {
    const { asked } = priceJob(materials, tasks, terms, { sheath: 60, post: 12, asked: 900 });
    // 900/1.19 = 756.302…
    expect(asked).toMatchObject({
      totalMinor: 90_000,
      netMinor: 75_630,
      taxMinor: 14_370,
      knifeMinor: 68_430,
    });
    const cheap = priceJob(materials, tasks, terms, { asked: 500 });
    expect(cheap.asked?.overMinor).toBeLessThan(0);
    expect(cheap.asked?.overMinor).toBe(42_017 - cheap.netMinor);
  });

  it("adds up to the coin, whatever the figures", () => {
    const money = fc.double({ min: 0, max: 900, noNaN: true });
    const chance = fc.double({ min: 0, max: 0.5, noNaN: true });
    fc.assert(
      fc.property(
        money,
        money,
        money,
        chance,
        chance,
        fc.constantFrom(0, 2, 3),
        (a, b, c, p, q, decimals) => {
          const made = priceJob(
            [{ label: "bar", for: "blade", cost: a }],
            [task("forge", 3.7, 2, 6)],
            { ...terms, rate: b, overhead: c, scrap: { forge: p }, taxRate: q, decimals },
            { sheath: c, post: a },
          );
          expect(made.lines.reduce((sum, { minor }) => sum + minor, 0)).toBe(made.costMinor);
          expect(made.costMinor + made.profitMinor).toBe(made.knifeMinor);
          expect(made.knifeMinor + made.sheathMinor + made.postMinor).toBe(made.netMinor);
          expect(made.netMinor + made.taxMinor).toBe(made.totalMinor);
          expect(made.lowMinor).toBeLessThanOrEqual(made.totalMinor);
          expect(made.highMinor).toBeGreaterThanOrEqual(made.totalMinor);
          // With one task both bands are the same, but for a coin of rounding.
          expect(Math.abs(made.bandMinor[1] - made.highMinor)).toBeLessThanOrEqual(1);
          for (const value of [made.costMinor, made.taxMinor, made.totalMinor])
            expect(Number.isInteger(value)).toBe(true);
        },
      ),
      { seed: 2, numRuns: 200 },
    );
  });
});

describe("money", () => {
  it("is rounded to the smallest coin, halves up, last digits of doubles left out", () => {
    expect([12.344, 12.345, 1.005, 0.285, 2.675].map((amount) => toMinor(amount, 2))).toEqual([
      1234, 1235, 101, 29, 268,
    ]);
    expect(toMinor(12.5, 0)).toBe(13);
    expect(toMinor(-0.5, 2)).toBe(-50);
  });

  it("is written with the decimals of its currency", () => {
    expect(minorText(5, 2)).toBe("0.05");
    expect(minorText(-123_456, 2)).toBe("−1234.56");
    expect(minorText(1234, currencyDecimals("jpy"))).toBe("1234");
    expect(minorText(1234, currencyDecimals("KWD"))).toBe("1.234");
    expect(currencyDecimals(undefined)).toBe(2);
    expect(currencyDecimals("toString")).toBe(2);
  });
});
