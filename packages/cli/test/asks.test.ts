import { describe, expect, it } from "vitest";
import { answerAsk, isFailed } from "../src/asks.js";
import type { Ask, AskTest } from "../src/file/ask-fields.js";

const ask = (test: AskTest, should = false): Ask => ({ name: "mass", test, should, path: "order.asks.mass" });
const below600 = ask({ kind: "below", limit: 600 });
const between = ask({ kind: "between", low: 45, high: 65 });

describe("one ask against one figure", () => {
  const cases: readonly (readonly [string, Ask, number, [number, number] | undefined, string])[] = [
    ["whole interval inside", below600, 550, [530, 570], "met"],
    ["value inside, interval over the limit", below600, 590, [560, 620], "at-risk"],
    ["value outside, interval reaching in", below600, 610, [580, 640], "not-met"],
    ["whole interval outside", below600, 700, [680, 720], "not-met"],
    ["on the limit of below", below600, 600, undefined, "not-met"],
    ["just under the limit of below", below600, 599.9, undefined, "met"],
    ["above", ask({ kind: "above", limit: 10 }), 12, [11, 13], "met"],
    ["above, on the limit", ask({ kind: "above", limit: 10 }), 10, undefined, "not-met"],
    ["between, on its limit with the last digit of a double over it", between, 65 + 1e-12, undefined, "met"],
    ["between, under it", between, 40, [35, 44], "not-met"],
    ["between, interval over both ends", between, 55, [40, 70], "at-risk"],
    ["about, uneven tolerance", ask({ kind: "about", value: 100, plus: 1, minus: 5 }), 96, undefined, "met"],
    [
      "about, above its plus",
      ask({ kind: "about", value: 100, plus: 1, minus: 5 }),
      102,
      undefined,
      "not-met",
    ],
  ];
  for (const [name, asked, value, interval, verdict] of cases) {
    it(`${name}: ${verdict}`, () => {
      expect(answerAsk(asked, interval === undefined ? { value } : { value, interval }).verdict).toBe(
        verdict,
      );
    });
  }

  it("parts what is met at a band twice as wide", () => {
    const standing = (value: number, band: number): string =>
      answerAsk(below600, { value, interval: [value - band, value + band] }).standing;
    expect(standing(560, 19)).toBe("met");
    expect(standing(560, 21)).toBe("met-within-band");
    expect(standing(560, 39)).toBe("met-within-band");
    expect(standing(560, 41)).toBe("at-risk");
    expect(standing(601, 41)).toBe("not-met");
    // The old three words hold both kinds of met.
    expect(answerAsk(below600, { value: 560, interval: [521, 599] }).verdict).toBe("met");
    // Only the side on which the limit lies counts, and an exact figure has no band.
    expect(answerAsk(below600, { value: 590, interval: [300, 594] }).standing).toBe("met");
    expect(answerAsk(below600, { value: 599.9 }).standing).toBe("met");
  });

  it("gives the distance to the nearest limit, negative outside, beside half the interval", () => {
    expect(answerAsk(between, { value: 50, interval: [47, 53] })).toMatchObject({ margin: 5, band: 3 });
    expect(answerAsk(between, { value: 70, interval: [66, 74] })).toMatchObject({ margin: -5, band: 4 });
    expect(answerAsk(below600, { value: 590 })).toMatchObject({ margin: 10, band: 0 });
  });

  it("says where the finished knife may still fall on either side", () => {
    expect(answerAsk(below600, { value: 610, interval: [580, 640] }).limitInBand).toBe(true);
    expect(answerAsk(below600, { value: 700, interval: [680, 720] }).limitInBand).toBe(false);
  });

  it("does not fail an order for a wish", () => {
    expect(isFailed(answerAsk(ask({ kind: "below", limit: 600 }, true), { value: 700 }))).toBe(false);
    expect(isFailed(answerAsk(below600, { value: 700 }))).toBe(true);
  });
});
