import { describe, expect, test } from "vitest";
import { checkShop } from "../../src/stock/check-shop.js";
import { DEFAULT_SHOP, LIMIT_DEFAULTS, LOSS_DEFAULTS, SAW_DEFAULTS } from "../../src/stock/defaults.js";
import { billetLengthBehind } from "../../src/stock/forge/marks.js";
import { piecesFromBar } from "../../src/stock/nesting.js";
import type { ShopSpec } from "../../src/stock/shop.js";
import { exactly } from "./fixtures.js";

describe("defaults", () => {
  test("every one says where it comes from, and bands hold their value", () => {
    const tables = { ...LOSS_DEFAULTS, ...LIMIT_DEFAULTS, ...SAW_DEFAULTS };
    for (const [name, entry] of Object.entries(tables)) expect(entry.basis.length, name).toBeGreaterThan(10);
    for (const [name, { low, value, high }] of Object.entries(LOSS_DEFAULTS)) {
      expect(low, name).toBeLessThan(value);
      expect(value, name).toBeLessThan(high);
    }
  });

  test("the default shop passes its own rules", () => {
    expect(checkShop(DEFAULT_SHOP)).toEqual([]);
  });
});

describe("checking a shop", () => {
  test("all problems at once, each at its place", () => {
    const issues = checkShop({
      ...DEFAULT_SHOP,
      rack: [
        { name: "bad", width: -40, thickness: Number.NaN, length: 0, count: 1.5, pricePerKg: -1 },
        { name: "good", width: 40, thickness: 6 },
      ],
      losses: {
        ...DEFAULT_SHOP.losses,
        scalePerHeat: exactly(1),
        cropPerEnd: { value: 4, low: 5, high: 12 },
        cleaningPerFace: exactly(-0.1),
      },
      press: { opening: 0 },
      limits: {
        ...DEFAULT_SHOP.limits,
        maxBars: 0,
        minWeldReduction: 1,
        minBilletLength: -1,
        maxSlenderness: 0,
        mostNarrowing: 1,
        reach: { easy: 0.5, flatDies: 0.4, fullers: 0.85 },
      },
      cutStep: 0,
      kerf: -1,
    });
    expect(issues.map(({ code, path }) => `${path}: ${code}`)).toEqual([
      "rack[0].width: not-positive",
      "rack[0].thickness: not-positive",
      "rack[0].length: not-positive",
      "rack[0].count: not-a-count",
      "rack[0].pricePerKg: price-negative",
      "losses.scalePerHeat: loss-out-of-range",
      "losses.cropPerEnd: loss-band-disordered",
      "losses.cleaningPerFace: loss-out-of-range",
      "press.opening: not-positive",
      "limits.maxBars: not-a-count",
      "limits.minWeldReduction: share-out-of-range",
      "limits.minBilletLength: length-negative",
      "limits.maxSlenderness: not-positive",
      "limits.mostNarrowing: share-out-of-range",
      "limits.reach: reach-limits-disordered",
      "cutStep: not-positive",
      "kerf: length-negative",
    ]);
  });
});

describe("limits at the gates and of stacks", () => {
  const places = (gates: NonNullable<ShopSpec["gates"]>, mixed: NonNullable<ShopSpec["limits"]["mixed"]>) =>
    checkShop({ ...DEFAULT_SHOP, gates, limits: { ...DEFAULT_SHOP.limits, mixed } }).map(({ path }) => path);

  test.each([Number.NaN, -0.1, Number.POSITIVE_INFINITY])("%d is none of them", (wrong) => {
    const all = places(
      { massRise: wrong, leastSimilar: wrong },
      { coreCentring: wrong, minLayerThickness: wrong, maxGrooveDepth: wrong },
    );
    expect(all).toEqual([
      "limits.mixed.coreCentring",
      "limits.mixed.minLayerThickness",
      "limits.mixed.maxGrooveDepth",
      "gates.massRise",
      "gates.leastSimilar",
    ]);
  });

  test("a knife of no size, or of all of it, is not looked for; a groove may go through", () => {
    expect(places({ leastSimilar: 0 }, {})).toEqual(["gates.leastSimilar"]);
    expect(places({ leastSimilar: 1 }, {})).toEqual(["gates.leastSimilar"]);
    expect(places({ leastSimilar: 0.7, massRise: 0.01 }, { maxGrooveDepth: 1, coreCentring: 0.2 })).toEqual(
      [],
    );
    expect(places({}, { maxGrooveDepth: 1.1 })).toEqual(["limits.mixed.maxGrooveDepth"]);
  });
});

describe("nesting", () => {
  test("three pieces of 99 and two cuts of 1.5 are exactly 300", () => {
    expect(piecesFromBar(300, 99, 1.5)).toBe(3);
    expect(piecesFromBar(299.9, 99, 1.5)).toBe(2);
    expect(piecesFromBar(98, 99, 1.5)).toBe(0);
  });
});

describe("mark for the handle", () => {
  const stations = [
    { x: -100, height: 20, area: 60 },
    { x: 0, height: 20, area: 100 },
    { x: 200, height: 40, area: 0 },
  ];

  test("the billet divides as the forged volume does", () => {
    // Behind the heel (60 + 100)/2·100 = 8000, ahead 10 000: 8/18 of the billet.
    expect(billetLengthBehind(stations, 0, 180)).toBeCloseTo(80, 9);
    expect(billetLengthBehind(stations, 200, 180)).toBeCloseTo(180, 9);
    expect(billetLengthBehind(stations, -100, 180)).toBe(0);
    // To the middle of the tang: (60 + 80)/2·50 = 3500.
    expect(billetLengthBehind(stations, -50, 180)).toBeCloseTo(35, 9);
  });

  /**
   * Invented camp knife, full tang forged parallel: 7.35 thick, heights 33 / 29 / 33 / 31 at 0 / 60 / 110 / 127 and
   * 3 mm more at the butt; billet 362.9 mm² from 68.5 cm³ forged with 12 heats of 1.2 %. By hand 95 mm for the tang.
   */
  test("camp knife: 95 mm of 218 for the tang", () => {
    const tang = [-130, -127, -110, -60, 0].map((x, i) => {
      const height = [31, 31, 33, 29, 33][i] ?? 0;
      return { x, height, area: height * 7.35 };
    });
    const tangVolume = tang.slice(1).reduce((sum, b, i) => {
      const a = tang[i];
      return a === undefined ? sum : sum + ((b.x - a.x) * (a.area + b.area)) / 2;
    }, 0);
    // The blade stands in as a straight taper that holds the rest of the volume.
    const blade = [
      { x: 1e-9, height: 44, area: (2 * (68_500 - tangVolume)) / 241.3 },
      { x: 241.3, height: 3, area: 0 },
    ];
    const length = 68_500 / 0.988 ** 12 / (38.1 * 9.525);
    expect(Math.abs(length / 218 - 1)).toBeLessThan(0.02);
    expect(Math.abs(billetLengthBehind([...tang, ...blade], 0, length) / 95 - 1)).toBeLessThan(0.02);
  });

  test("without stations there is nothing to divide", () => {
    expect(() => billetLengthBehind([], 0, 100)).toThrow(
      expect.objectContaining({ code: "stations-too-few" }),
    );
  });
});
