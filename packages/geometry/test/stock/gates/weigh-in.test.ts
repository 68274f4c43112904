import { describe, expect, test } from "vitest";
import { makeKnife } from "../../../src/blade/knife.js";
import { weighInterval } from "../../../src/blade/weigh-interval.js";
import { DEFAULT_LOSSES, DEFAULT_SHOP } from "../../../src/stock/defaults.js";
import { handlingBarFindings, steelFindings } from "../../../src/stock/gates/gate-findings.js";
import { gateLimits } from "../../../src/stock/gates/limits.js";
import { questionRises } from "../../../src/stock/gates/mass-rise.js";
import { steelBand } from "../../../src/stock/gates/steel-band.js";
import { weighIn } from "../../../src/stock/gates/weigh-in.js";
import { LANDMARKS } from "../../blade/similar-fixtures.js";
import { exactly } from "../fixtures.js";

const NEED = { low: 690, value: 702, high: 730 };
const NO_BAND = { sizes: { plus: 0, minus: 0 }, density: { plus: 0, minus: 0 } };
const BAND = { sizes: { plus: 6, minus: 8 }, density: { plus: 0.01, minus: 0.01 } };
const codes = (findings: readonly { readonly code: string }[]): string[] => findings.map(({ code }) => code);

describe("spare or short", () => {
  test.each([
    [720, "enough-at-usual-losses", 18],
    [730, "enough", 28],
    [702, "enough-at-usual-losses", 0],
    [671, "short", -31],
  ] as const)("%d g of 702 g (730 g at high losses): %s", (mass, verdict, spare) => {
    const found = weighIn("billet", mass, NEED, 1.1, NO_BAND);
    expect(found.verdict).toBe(verdict);
    expect(found.spare).toBe(spare);
    expect(found.spareBand).toEqual([mass - 730, mass - 690]);
  });

  test("the band is that of the losses and of the knife, in squares", () => {
    const { spareBand, knifeBand } = weighIn("billet", 720, NEED, 1.1, BAND);
    // 6 g of sizes grow to 6.6 g, 1 % of density is 7.02 g
    expect(knifeBand.plus).toBeCloseTo(Math.hypot(6.6, 7.02), 12);
    expect(spareBand[0]).toBeCloseTo(18 - Math.sqrt(28 ** 2 + 6.6 ** 2 + 7.02 ** 2), 12);
    expect(spareBand[1]).toBeCloseTo(18 + Math.sqrt(12 ** 2 + 8.8 ** 2 + 7.02 ** 2), 12);
  });

  test("a shaped blade that is lighter by less than its own band is as drawn; a forging is not", () => {
    const need = { low: 362, value: 362, high: 362 };
    expect(weighIn("finished", 358, need, 1, BAND).verdict).toBe("enough");
    expect(weighIn("finished", 350, need, 1, BAND).verdict).toBe("short");
    expect(weighIn("forged", 358, need, 1, BAND).verdict).toBe("short");
  });
});

describe("the knife's own band", () => {
  test("with the density's in squares it is that of the whole steel", () => {
    const { handle: _handle, ...steel } = LANDMARKS;
    const [low, high] = weighInterval(steel, []).massInterval;
    const { sizes, density } = steelBand(LANDMARKS);
    const middle = makeKnife(LANDMARKS);
    const finished = weighInterval(steel, [], { ...NO_TOLERANCE }).massInterval[0];
    expect(middle.steelDensity).toBe(0.00783);
    expect(density).toEqual({ plus: 0.01, minus: 0.01 });
    expect(Math.hypot(sizes.plus, 0.01 * finished)).toBeCloseTo(high - finished, 4);
    expect(Math.hypot(sizes.minus, 0.01 * finished)).toBeCloseTo(finished - low, 4);
  });

  test("a tolerance that the file gives to the density counts as its share", () => {
    const given = [{ path: "steel.density", plus: 0.0000783, minus: 0.0001566 }];
    expect(steelBand(LANDMARKS, given).density.plus).toBeCloseTo(0.01, 12);
    expect(steelBand(LANDMARKS, given).density.minus).toBeCloseTo(0.02, 12);
  });
});

const NO_TOLERANCE = {
  forgedThickness: 0,
  groundThickness: 0,
  edgeThickness: 0,
  outline: 0,
  steelDensity: 0,
  handleDensity: 0,
  moisture: 0,
  partMass: 0,
};

describe("a mass that rose a little", () => {
  // 745 g after 735 g: 10 g of oxygen are 0.2227 of 44.9 g of scale, which leaves 700.1 g of steel.
  const rise = questionRises({ stage: "forged", mass: 745 }, [{ stage: "billet", mass: 735 }], gateLimits());
  const at = (value: number, high = value) =>
    weighIn("forged", rise.usable ?? 0, { low: value, value, high }, 1.1, NO_BAND, rise.least);

  test("may be anything from what is left under the scale to the lower mass", () => {
    expect(rise.usable).toBe(735);
    expect(rise.least).toBeCloseTo(745 - 10 / 0.2227, 1);
  });

  test.each([
    [690, 700, "enough"],
    [690, 720, "enough-at-usual-losses"],
    [729, 731, "not-sure"],
    [736, 740, "short"],
  ] as const)("%d g needed, %d g at high losses: %s", (value, high, verdict) => {
    expect(at(value, high).verdict).toBe(verdict);
  });

  test("not sure is a warning with both ends; the band reaches from one to the other", () => {
    const found = at(729, 731);
    expect(found.spare).toBe(6);
    expect(found.leastSpare).toBeCloseTo(-28.9, 1);
    expect(found.spareBand[0]).toBeCloseTo(found.leastSpare - 2, 9);
    expect(found.spareBand[1]).toBe(6);
    const [finding] = steelFindings(found, DEFAULT_LOSSES);
    expect(finding).toMatchObject({ code: "steel-not-sure", severity: "warn" });
    expect(finding?.text).toContain("Enough only if at least {usual}");
    expect(finding?.values).toMatchObject({
      least: { value: found.least },
      by: { value: -found.leastSpare },
    });
  });

  test("a later mass under that of an earlier rise is bounded by what lay under the scale", () => {
    const before = [
      { stage: "cut", mass: 700 },
      { stage: "billet", mass: 705 },
    ] as const;
    const { usable, least } = questionRises({ stage: "forged", mass: 690 }, before, gateLimits());
    expect(usable).toBe(690);
    expect(least).toBeCloseTo(705 - 5 / 0.2227, 1);
    expect(questionRises({ stage: "forged", mass: 640 }, before, gateLimits()).least).toBe(640);
  });
});

test("a finished blade that is light is told against the drawing, with no losses", () => {
  const need = { low: 362, value: 362, high: 362 };
  const [found] = steelFindings(weighIn("finished", 340, need, 1, NO_BAND), DEFAULT_LOSSES);
  expect(found).toMatchObject({ code: "steel-short", severity: "warn" });
  expect(found?.text).toContain("lighter than");
  expect(found?.text).not.toContain("losses");
});

describe("what is said of it", () => {
  const at = (stage: "billet" | "forged", mass: number) =>
    steelFindings(weighIn(stage, mass, NEED, 1.1, NO_BAND), DEFAULT_LOSSES);

  test("short stops at the billet and warns later, with numbers and where they come from", () => {
    const [found] = at("billet", 671);
    expect(found).toMatchObject({ code: "steel-short", severity: "stop" });
    expect(found?.values).toMatchObject({
      have: { quantity: "mass", value: 671 },
      usual: { value: 702 },
      by: { value: 31 },
    });
    expect(found?.basis).toContain("common practice, no source");
    expect(at("forged", 671)[0]?.severity).toBe("warn");
  });

  test("only just: a warning at the billet, a note later; nothing where high losses are covered", () => {
    expect(at("billet", 720)[0]).toMatchObject({ code: "steel-only-just", severity: "warn" });
    expect(at("billet", 720)[0]?.values).toMatchObject({ by: { value: 10 } });
    expect(at("forged", 720)[0]?.severity).toBe("note");
    expect(at("billet", 730)).toEqual([]);
  });

  test("the shop's own losses are named as such", () => {
    const own = { ...DEFAULT_LOSSES, scalePerHeat: exactly(0.01) };
    const [found] = steelFindings(weighIn("billet", 671, NEED, 1.1, NO_BAND), own);
    expect(found?.basis).toBe("the steel ledger with the shop's own losses");
  });
});

describe("a mass that rose", () => {
  const limits = gateLimits();
  const before = [
    { stage: "billet", mass: 700 },
    { stage: "cut", mass: 760 },
  ] as const;

  test("falling all the way it is used, and nothing is said", () => {
    expect(questionRises({ stage: "forged", mass: 640 }, before, limits)).toEqual({
      usable: 640,
      least: 640,
      findings: [],
    });
  });

  test("a little: named, and the lower mass stands in", () => {
    const { usable, findings } = questionRises({ stage: "forged", mass: 713 }, before, limits);
    expect(usable).toBe(700);
    expect(findings).toMatchObject([{ code: "mass-rose", severity: "note" }]);
  });

  test("by more than 2 %: a warning, and nothing can be counted on", () => {
    const { usable, findings } = questionRises({ stage: "forged", mass: 714.1 }, before, limits);
    expect(usable).toBeUndefined();
    expect(findings).toMatchObject([{ code: "mass-rose", severity: "warn" }]);
    expect(findings[0]?.values).toMatchObject({ was: { value: 700 }, is: { value: 714.1 } });
  });

  test("by exactly 2 % it is still a little, a hundredth of a gram more is not", () => {
    const severity = (mass: number) =>
      questionRises({ stage: "forged", mass }, before, limits).findings.map((found) => found.severity);
    // 1.02 · 700, of which a double makes 2.0000000000000018 %.
    expect(severity(714)).toEqual(["note"]);
    expect(severity(714.01)).toEqual(["warn"]);
  });

  test("between two earlier stages it counts as well", () => {
    const risen = [
      { stage: "cut", mass: 600 },
      { stage: "billet", mass: 700 },
    ] as const;
    expect(questionRises({ stage: "forged", mass: 590 }, risen, limits).usable).toBeUndefined();
  });

  test("the shop's own limit decides, and is named", () => {
    const { findings } = questionRises(
      { stage: "forged", mass: 713 },
      before,
      gateLimits({ massRise: 0.01 }),
    );
    expect(findings[0]?.severity).toBe("warn");
    expect(findings[0]?.basis).toContain("1 %");
    expect(findings[0]?.basis).toContain("the shop's own limit");
  });
});

describe("the bar for holding", () => {
  const route = {
    losses: DEFAULT_LOSSES,
    limits: DEFAULT_SHOP.limits,
    forging: { heats: 9, weldingHeats: 3 },
  };
  const welded = { ...route, stack: { bars: 5, width: 40, thickness: 6 } };

  test("no tare: a warning for a stack, a note for a solid bar, nothing at the saw or at the grinder", () => {
    expect(handlingBarFindings("billet", welded, false)[0]?.severity).toBe("warn");
    expect(handlingBarFindings("forged", route, false)[0]?.severity).toBe("note");
    expect(handlingBarFindings("cut", welded, false)).toEqual([]);
    expect(handlingBarFindings("ready", welded, false)).toEqual([]);
    expect(handlingBarFindings("forged", welded, true)).toEqual([]);
  });

  test("ends that are hardly cropped keep the weld in the billet", () => {
    const crop = (mm: number) => ({ ...welded, losses: { ...DEFAULT_LOSSES, cropPerEnd: exactly(mm) } });
    expect(codes(handlingBarFindings("billet", crop(0), true))).toEqual(["handling-weld-left-in"]);
    expect(handlingBarFindings("billet", crop(0), true)[0]?.severity).toBe("warn");
    expect(handlingBarFindings("billet", crop(5), true)[0]?.severity).toBe("note");
    expect(codes(handlingBarFindings("billet", crop(8), true))).toEqual([]);
  });
});
