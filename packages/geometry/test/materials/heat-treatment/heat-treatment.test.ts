import { describe, expect, it } from "vitest";
import {
  HARDENING_RANGES,
  HEAT_STEPS,
  heatRecipe,
  loneHardnesses,
  recipeFor,
  STEELS_WITH_RECIPE,
  TEMPER_TABLES,
  temperFor,
} from "../../../src/index.js";
import { describeIssue, formatTemperature } from "../../../src/units/index.js";

// °F of the cited sources; the identity C = (F − 32) / 1.8 is exact.
const celsius = (fahrenheit: number): number => (fahrenheit - 32) / 1.8;

describe("recipes", () => {
  it("give every figure a source, and say where it is from memory", () => {
    for (const steel of STEELS_WITH_RECIPE) {
      for (const step of heatRecipe(steel)?.steps ?? []) {
        expect(step.source, `${steel} ${step.step}`).not.toBe("");
        if (/from memory|no source/.test(step.source)) expect(step.mark).toBe("from memory");
        expect(step.low).toBeLessThanOrEqual(step.high);
        expect(step.low).toBeGreaterThan(100);
        expect(step.high).toBeLessThan(1200);
      }
    }
  });

  it("stand in the order of the work", () => {
    for (const steel of STEELS_WITH_RECIPE) {
      const places = heatRecipe(steel)?.steps.map(({ step }) => HEAT_STEPS.indexOf(step)) ?? [];
      expect(places).toEqual([...places].sort((a, b) => a - b));
    }
  });

  it("harden within the range that stacks of two steels are held against", () => {
    for (const { steel, low, high } of HARDENING_RANGES) {
      if (low === undefined || high === undefined) continue;
      const steps = heatRecipe(steel)?.steps.filter(({ step }) => step === "harden") ?? [];
      expect(steps, steel).not.toEqual([]);
      expect(
        steps.some((step) => step.low <= high && step.high >= low),
        steel,
      ).toBe(true);
    }
  });

  it("take the figures that sources print in °F", () => {
    const hardening = (steel: string): number | undefined =>
      heatRecipe(steel)?.steps.find(({ step }) => step === "harden")?.low;
    // 1095: 1475 °F; 5160: 1525 °F; W2: 1450 °F (the pages named beside the rows).
    for (const [steel, fahrenheit] of [
      ["1095", 1475],
      ["5160", 1525],
      ["W2", 1450],
    ] as const) {
      expect(hardening(steel), steel).toBeCloseTo(celsius(fahrenheit), 9);
      expect(formatTemperature(hardening(steel) ?? 0, "in"), steel).toBe(`${fahrenheit} °F`);
    }
    // Common practice, no source: 80CrV2 from 1525 °F, tempered at 425 °F to about 60 or 61 HRC.
    const steps = heatRecipe("80CrV2")?.steps ?? [];
    expect(steps.some(({ step, low }) => step === "harden" && Math.abs(low - celsius(1525)) < 1e-9)).toBe(
      true,
    );
    const temper = steps.find(({ step }) => step === "temper");
    expect(temper?.low).toBeCloseTo(celsius(425), 9);
    // What it is cooled in and what comes of it are two things.
    expect([temper?.cooling, temper?.result]).toEqual(["air", "gives about 60 or 61 HRC"]);
    const normalised = steps.filter(
      ({ step, source }) => step === "normalise" && source.startsWith("common"),
    );
    for (const [index, fahrenheit] of [1650, 1500, 1400].entries()) {
      expect(normalised[index]?.low).toBeCloseTo(celsius(fahrenheit), 9);
    }
  });

  it("and the words of their cooling, in the reader's units: 50 °F are 28 K, 1200 °F are 649 °C", () => {
    const cooling = heatRecipe("1095")?.steps.find(({ step }) => step === "anneal")?.cooling;
    if (cooling === undefined || typeof cooling === "string") throw new Error("words with temperatures");
    expect(describeIssue(cooling, "mm")).toBe("at most 28 °C an hour to 649 °C");
    expect(describeIssue(cooling, "in")).toBe("at most 50 °F an hour to 1200 °F");
    // The same of the others whose hardening is told in °F: 1300 °F, 20 °F; 150 °F; 40 °F; 10 °F.
    const said = (steel: string, name: string): string =>
      (heatRecipe(steel)?.steps ?? [])
        .filter(({ step }) => step === name)
        .map(({ cooling }) => (typeof cooling === "object" ? describeIssue(cooling, "in") : ""))
        .join();
    expect(said("5160", "anneal")).toBe("fast to 1300 °F, then at most 20 °F an hour to 1200 °F");
    expect(said("O1", "harden")).toBe("oil, down to 150 °F");
    expect(said("O1", "anneal")).toBe("at most 40 °F an hour");
    expect(said("52100", "anneal")).toContain("at most 10 °F an hour");
  });

  it("let the shop's own recipe go before every other source", () => {
    const own = {
      steel: "5160",
      steps: [{ step: "harden", low: 840, high: 840, source: "own tests", mark: "looked up" }],
    } as const;
    const steps = recipeFor("5160", [own])?.steps ?? [];
    expect(steps.filter(({ step }) => step === "harden")).toEqual(own.steps);
    expect(steps.some(({ step }) => step === "normalise")).toBe(true);
    expect(recipeFor("5160", [])).toEqual(heatRecipe("5160"));
  });

  it("say what not to do, unless the shop has its own way", () => {
    expect(heatRecipe("D2")?.notes).toEqual([
      expect.objectContaining({ text: "Do not normalise.", mark: "from memory" }),
    ]);
    const own = (step: "normalise" | "harden") =>
      recipeFor("D2", [
        { steel: "D2", steps: [{ step, low: 900, high: 900, source: "own tests", mark: "looked up" }] },
      ])?.notes?.length ?? 0;
    expect([own("harden"), own("normalise")]).toEqual([1, 0]);
    expect(heatRecipe("5160")?.notes).toBeUndefined();
  });

  it("find a steel by its other names", () => {
    expect(heatRecipe("75Ni8")?.steel).toBe("15N20");
    expect(heatRecipe("nothing known")).toBeUndefined();
  });
});

describe("tempering", () => {
  it("is told by tables that fall", () => {
    for (const { steel, points } of TEMPER_TABLES) {
      const middles = points.map(({ low, high }) => (low + high) / 2);
      expect(middles, steel).toEqual([...middles].sort((a, b) => b - a));
      const temperatures = points.map(({ temperature }) => temperature);
      expect(temperatures).toEqual([...temperatures].sort((a, b) => a - b));
    }
  });

  it("gives the rows of a table back, and straight lines between them", () => {
    // O1 of a distributor's sheet: 400 °F 62 HRC, 450 °F 61 HRC, 500 °F 59 HRC.
    const [first] = temperFor("O1", 62);
    expect(first?.temperature).toBeCloseTo(celsius(400), 9);
    expect(temperFor("O1", 60)[0]?.temperature).toBeCloseTo(celsius(475), 9);
  });

  it("draws no line over a leap: D2 is known at 204 and 537 °C only", () => {
    const temperature = (hardness: number) => temperFor("D2", hardness).map((choice) => choice.temperature);
    expect([61, 54].map(temperature)).toEqual([[204], [537]]);
    for (const hardness of [60.9, 60, 58, 56, 54.1]) expect(temperature(hardness)).toEqual([undefined]);
    expect(loneHardnesses("D2")).toEqual([61, 54]);
    for (const steel of ["1095", "5160", "O1", "W2", "52100"]) expect(loneHardnesses(steel)).toEqual([]);
  });

  it("says where a source does not reach", () => {
    expect(temperFor("5160", 66).map(({ temperature }) => temperature)).toEqual([undefined]);
    expect(temperFor("5160", 66)[0]?.reach.high).toBe(63);
    expect(temperFor("unknown", 60)).toEqual([]);
  });

  it("shows that the two tables of 1095 disagree", () => {
    const [a, b] = temperFor("1095", 60).map(({ temperature }) => temperature ?? 0);
    expect((a ?? 0) - (b ?? 0)).toBeGreaterThan(40);
  });

  it("brings 80CrV2 to 60 or 61 HRC at 425 °F", () => {
    expect(temperFor("80CrV2", 60.5)[0]?.temperature).toBeCloseTo(celsius(425), 9);
  });
});
