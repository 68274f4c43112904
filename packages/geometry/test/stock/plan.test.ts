import { describe, expect, test } from "vitest";
import { STEEL_LIMITS } from "../../src/limits/steel-limits.js";
import { ledgerRow } from "../../src/stock/ledger.js";
import { planStock } from "../../src/stock/plan.js";
import { exactly, HARVEST, NO_LIMITS, NO_LOSSES, plainBodies, RACK, shopWith } from "./fixtures.js";

const FORGING = { heats: 9, weldingHeats: 3 };

/**
 * Invented orders: bar lengths worked by hand from the as-forged volume and 1.2 % a heat, a solid bar needing no
 * cropping. Volumes cm³, bars mm.
 */
describe("hand checks of solid bars", () => {
  test.each([
    ["slicer, 1/4 x 1 1/2", 28.9, 10, 38.1, 6.35, 135, 256],
    ["camp knife, 3/8 x 1 1/2", 68.5, 12, 38.1, 9.525, 218, 622],
    ["boning knife, 3/16 x 1", 15.3, 7, 25.4, 4.7625, 138, 131],
    ["nakiri, 1/4 x 1 1/2", 27.6, 9, 38.1, 6.35, 127, 241],
  ])("%s", (name, forged, heats, width, thickness, length, grams) => {
    const shop = shopWith({
      rack: [{ name, width, thickness }],
      losses: { ...NO_LOSSES, scalePerHeat: exactly(0.012) },
      limits: { ...NO_LIMITS, maxBars: 1 },
      cutStep: 0.1,
    });
    const [plan] = planStock(plainBodies(forged * 1000), shop, { heats, weldingHeats: 0 }).plans;
    expect(Math.abs((plan?.cutLength ?? 0) / length - 1)).toBeLessThan(0.02);
    expect(Math.abs((plan?.mass ?? 0) / grams - 1)).toBeLessThan(0.02);
  });
});

describe("the harvest knife", () => {
  const report = planStock(HARVEST, shopWith({}), FORGING);

  test("a forge-welded stack is proposed before a solid bar that only fullers would spread", () => {
    const [best] = report.plans;
    expect(best?.bars).toBeGreaterThan(1);
    expect(["easy", "flat dies"]).toContain(best?.reach.class);
    const firstHard = report.plans.findIndex((plan) => plan.reach.class === "fullers");
    if (firstHard >= 0)
      expect(report.plans.slice(firstHard).every((plan) => plan.reach.class === "fullers")).toBe(true);
  });

  test("everything that was tried is accounted for", () => {
    // 6 bars, each solid, and 11 stacks two ways.
    expect(report.considered).toBe(RACK.length * 23);
    const refused = report.rejected.reduce((sum, { count }) => sum + count, 0);
    expect(report.plans.length + report.superfluous + refused).toBe(report.considered);
  });

  test("a plan states both lengths, both ledgers and its billet", () => {
    for (const plan of report.plans) {
      expect(plan.cutLengthNominal).toBeLessThanOrEqual(plan.cutLength);
      expect(plan.shortestLength.nominal).toBeLessThanOrEqual(plan.shortestLength.high);
      expect(plan.mass).toBeCloseTo(ledgerRow(plan.ledger, "bars-as-cut").mass, 9);
      expect(plan.waste).toBeCloseTo(plan.mass - HARVEST.finished * HARVEST.density, 9);
      expect(ledgerRow(plan.ledgerHigh, "spare").volume).toBeLessThanOrEqual(
        ledgerRow(plan.ledger, "spare").volume,
      );
      expect(plan.billet.dressedLength).toBeGreaterThan(0);
      expect(plan.joints).toBe(plan.bars - 1);
      expect(plan.heats).toBe(plan.bars > 1 ? 12 : 9);
    }
  });

  test("each plan says why it stands there and what the next one is better in, with its numbers", () => {
    report.plans.forEach((plan, i) => {
      const codes = plan.why.map(({ code }) => code);
      expect(codes.length).toBeGreaterThan(0);
      if (i > 0) expect(codes.some((code) => code === "behind" || code === "needs-fullers")).toBe(true);
      if (i < report.plans.length - 1) expect(codes).toContain("next-is-better-in");
      for (const { text, values } of plan.why)
        for (const [, name = ""] of text.matchAll(/\{(\w+)\}/g)) expect(values, text).toHaveProperty(name);
    });
  });

  test("reach is shown with one bar fewer and one more: more bars never reach less when flat", () => {
    for (const { bars, layers, reach } of report.plans) {
      if (bars > 1) expect(reach.oneFewer).toBeDefined();
      else expect(reach).not.toHaveProperty("oneFewer");
      if (layers === "flat" && bars > 1) {
        expect(reach.oneMore).toBeLessThanOrEqual(reach.wholeShare);
        expect(reach.oneFewer).toBeGreaterThanOrEqual(reach.wholeShare);
      }
    }
  });

  test("cost is the price of what is sawn off the rack, kerf included", () => {
    for (const { bars, width, thickness, cutLength, bar, cost } of report.plans) {
      const kg = (bars * width * thickness * (cutLength + 1.5) * 0.00785) / 1000;
      // Kept to a millionth of the currency.
      expect(Math.abs((cost ?? 0) - kg * (bar.pricePerKg ?? 0))).toBeLessThanOrEqual(0.51e-6);
    }
  });

  test("being easier than easy is no advantage: at most one more bar than it takes to be easy is proposed", () => {
    for (const { bars, reach, bar, layers, waste } of report.plans.filter((p) => p.reach.class === "easy"))
      expect(
        report.plans.some(
          (other) =>
            other.bar === bar &&
            other.layers === layers &&
            other.bars < bars &&
            other.reach.class === "easy" &&
            other.waste < waste,
        ),
        `${bars} x ${bar.name}, ${reach.share}`,
      ).toBe(false);
  });

  test("no number is NaN anywhere in the report", () => {
    expect(JSON.stringify(report, (_, value) => (Number.isNaN(value) ? "NaN" : value))).not.toContain("NaN");
  });
});

describe("details", () => {
  test("a billet too short to hold is cut longer, and says so", () => {
    const shop = shopWith({
      rack: [{ name: "50 x 10", width: 50, thickness: 10 }],
      losses: NO_LOSSES,
      limits: { ...NO_LIMITS, maxBars: 1, minBilletLength: 72 },
    });
    const [plan] = planStock(plainBodies(20_000), shop, FORGING).plans;
    expect(plan?.cutLength).toBe(75);
    expect(plan?.why.map(({ code }) => code)).toContain("longer-to-hold");
  });

  test("a bar entered the other way round is the same bar", () => {
    const plansOf = (width: number, thickness: number) =>
      planStock(HARVEST, shopWith({ rack: [{ name: "bar", width, thickness }] }), FORGING).plans.map(
        ({ bars, cutLength, waste }) => ({ bars, cutLength, waste }),
      );
    expect(plansOf(8, 40)).toEqual(plansOf(40, 8));
    expect(plansOf(40, 8).length).toBeGreaterThan(0);
  });

  test("findings: a reach that is only just possible, joints squeezed less than wanted, steel not written down", () => {
    const shop = shopWith({
      rack: [
        { name: "60 x 9", width: 60, thickness: 9 },
        { name: "70 x 5", width: 70, thickness: 5 },
      ],
    });
    const codes = new Set(
      planStock(HARVEST, shop, { ...FORGING, steel: "1084" }).plans.flatMap(({ findings }) =>
        findings.map(({ code }) => code),
      ),
    );
    expect(codes).toEqual(new Set(["reach-only-just", "weld-reduction-low", "bar-steel-not-stated"]));
  });

  test("a reach is only just possible within 3 % of the height, whatever its class", () => {
    // 50 × 6 to a mean of 5.45: at 85 % of the thinning 50·1.1^0.85 = 54.22 is the most to be had.
    const found = (height: number) => {
      const mean = 6 / 1.1;
      const shop = shopWith({
        rack: [{ name: "50 x 6", width: 50, thickness: 6 }],
        losses: NO_LOSSES,
        limits: { ...NO_LIMITS, maxBars: 1, reach: { easy: 0.3, flatDies: 0.6, fullers: 0.85 } },
      });
      const blade = plainBodies(60_000, [{ x: 0, height, area: height * mean, thickness: mean }]);
      const [plan] = planStock(blade, shop, FORGING).plans;
      return [plan?.reach.class, ...(plan?.findings ?? []).map(({ code, basis }) => `${code}: ${basis}`)];
    };
    const most = 50 * 1.1 ** 0.85;
    expect(found(most / 1.031)).toEqual(["flat dies"]);
    expect(found(most / 1.029)).toEqual(["flat dies", `reach-only-just: ${STEEL_LIMITS.tightHeight.basis}`]);
  });

  test("a stack for which no welding heat is planned is warned of, a solid bar is not", () => {
    const { plans } = planStock(HARVEST, shopWith({}), { heats: 9, weldingHeats: 0 });
    expect(plans.some(({ bars }) => bars > 1)).toBe(true);
    for (const { joints, findings } of plans) {
      const found = findings.filter(({ code }) => code === "no-welding-heat");
      expect(found).toHaveLength(joints > 0 ? 1 : 0);
      if (joints > 0)
        expect(found[0]).toMatchObject({
          severity: "warn",
          path: "forging.weldingHeats",
          values: { joints: { value: joints }, heats: { value: 0 } },
        });
    }
    expect(
      planStock(HARVEST, shopWith({}), { heats: 9, weldingHeats: 1 }).plans.flatMap(({ findings }) =>
        findings.filter(({ code }) => code === "no-welding-heat"),
      ),
    ).toEqual([]);
  });

  test("the plan says how the pieces come out of the bars in hand", () => {
    const shop = shopWith({
      rack: [{ name: "50 x 6", width: 50, thickness: 6, length: 220, count: 3 }],
      losses: NO_LOSSES,
      limits: { ...NO_LIMITS, maxBars: 2, minWeldReduction: 0.3 },
    });
    const tall = plainBodies(60_000, [{ x: 0, height: 80, area: 200, thickness: 3 }]);
    const stack = planStock(tall, shop, FORGING).plans.find(({ bars }) => bars === 2);
    // Two of 100 mm and one cut, one more after the last piece.
    expect(stack?.cuts).toEqual([{ barIndex: 0, length: 220, pieces: 2, remainder: 220 - 2 * 101.5 }]);
  });
});
