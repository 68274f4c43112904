import { describeIssue } from "@scantling/geometry/units";
import { benchCard, checkLayout, paperNamed } from "@scantling/render";
import { describe, expect, it } from "vitest";
import { weighTable } from "../../src/report/setup-weights.js";
import { DEMO_KNIFE, DEMO_SHOP, demoWith } from "../support/demo.js";
import { cardOf, columnOf, figuresOf, panelOf, panelsOf, rowsOf, textOf } from "./card-of.js";

// A hunter of five ounces in a shop that thinks in inches.
const HUNTER = `scantling: 1
order: { code: HU-2, title: Small hunter }
units: in
steel: "1095"
blade:
  outline: { family: drop-point, edgeLength: 3 7/8, heelHeight: 1 1/8 }
  ricasso: 1/4
  thickness: [{ at: heel, is: 0.135 }, { at: tip, is: 0.050 }]
  bevel: { form: flat, height: full, edgeThickness: 0.015 }
  edgeAngle: 18 deg
tang: { form: hidden, length: 3 1/2 }
handle:
  guard: { material: brass, at: -1/4, length: 1/4, height: 1 1/4, width: 1/2 }
  block: { material: black walnut, section: oval, length: 4, height: 1 1/8, width: 7/8 }
`;
const INCH_SHOP = `scantling: 1
units: in
rack: [{ size: 1/4 x 1 1/4, steel: "1095", length: 24 }]
press: { stopBlocks: [1/8, 3/16, 1/4], shims: [0.005, 0.010, 0.020, 0.040], opening: 4 }
`;

/** A mass as setup tells it, as the number that stands under the unit of the card: `1 lb 2.3 oz` is 18.3. */
function underUnit(text: string): number {
  const [, pounds = "0", rest = "0"] = /^(?:(\d+) lb ?)?(?:([\d.]+) (?:oz|g))?$/u.exec(text.trim()) ?? [];
  return 16 * Number(pounds) + Number(rest);
}

describe("what is weighed", () => {
  it.each([
    ["a hunter", HUNTER, INCH_SHOP, "in"],
    ["a hunter", HUNTER, INCH_SHOP, "mm"],
    ["the demo", DEMO_KNIFE, DEMO_SHOP, "in"],
    ["the demo", DEMO_KNIFE, DEMO_SHOP, "mm"],
  ] as const)("is told as setup tells it: %s", async (_, knife, shop, units) => {
    const { card, setup } = await cardOf(knife, shop, units);
    const rows = rowsOf(panelOf(card, "Weigh")).map((row) => row.slice(1, 4).map(Number));
    const told = weighTable(setup, units)
      .slice(1)
      .map((line) =>
        line
          .match(/\d+ lb(?: [\d.]+ oz)?|[\d.]+ (?:oz|g)/gu)
          ?.slice(0, 3)
          .map(underUnit),
      );
    expect(rows.length).toBeGreaterThan(0);
    // Pounds and ounces add up to a tenth of an ounce.
    expect(rows.map((row) => row.map((n) => n.toFixed(2)))).toEqual(
      told.map((row) => row?.map((n) => n.toFixed(2))),
    );
  });

  it("can be decided by: three figures that differ where 0.1 oz would make them one", async () => {
    const { card, setup } = await cardOf(HUNTER, INCH_SHOP, "in");
    const forged = setup.masses.findIndex(({ stage }) => stage === "forged");
    const row = rowsOf(panelOf(card, "Weigh"))[forged]?.slice(1, 4) ?? [];
    for (const cell of row) expect(cell).toMatch(/^\d+\.\d\d$/u);
    expect(new Set(row).size).toBe(3);
  });
});

describe("heats", () => {
  it("keeps heats of one source one after the other, each with its own box", async () => {
    const { card } = await cardOf(demoWith(['steel: "1084"', 'steel: "80CrV2"']));
    const steps = panelOf(card, "Harden, 80CrV2").blocks.flatMap((block) =>
      block.kind === "figures" ? block.figures : [],
    );
    // 1650, 1500 and 1400 °F are 898.9, 815.6 and 760 °C.
    expect(
      steps
        .filter(({ label }) => label.includes("normalise"))
        .map(({ ticks = 0, label, figure }) => `${"☐".repeat(ticks)} ${label} ${figure}`.trim()),
    ).toEqual([
      "☐ normalise 870 to 900 °C",
      "☐ or normalise 899 °C",
      "☐ then normalise 816 °C",
      "☐ then normalise 760 °C",
    ]);
    expect(textOf(panelOf(card, "Temper"))).toContain("120 min, air, gives about 60 or 61 HRC");
  });
});

describe("pins", () => {
  it("that the nearest drill leaves loose are told beside it, and warned of", async () => {
    // Pins of 4 mm, and no drill nearer than 11/64 in, 4.366 mm: 0.37 mm of play.
    const { card, bench } = await cardOf(DEMO_KNIFE, `${DEMO_SHOP}\ndrills: [11/64 in, 6 mm]\n`);
    const told = "11/64 in, 0.37 mm large";
    expect(columnOf(panelOf(card, "Pins"), "drill handle")).toEqual([told, told]);
    const loose = bench.findings.filter(({ code }) => code === "pin-loose");
    expect(loose.map(({ severity, path }) => [severity, path])).toEqual([
      ["warn", "tang.holes[0]"],
      ["warn", "tang.holes[1]"],
    ]);
    // It says whose hole, and what to buy: #21 is 0.159 in, 4.039 mm, the nearest to a pin and 0.05 mm.
    const [first] = loose.map((finding) => describeIssue(finding, "mm"));
    expect(first).toContain(
      "to go through the handle for a pin of 4 mm is 11/64 in: the hole in the handle is",
    );
    expect(first).toContain("Buy a drill of #21, or a pin");
    // It is no matter of the fire.
    expect(textOf(panelOf(card, "Harden"))).not.toContain("drill");
    expect(benchCard(card, paperNamed("A4")).flatMap(checkLayout)).toEqual([]);
  });

  it("that fit are not: 0.15 mm and less", async () => {
    const { card, bench } = await cardOf(DEMO_KNIFE, `${DEMO_SHOP}\ndrills: [4.15, 6]\n`);
    expect(columnOf(panelOf(card, "Pins"), "drill handle")).toEqual(["4.15 mm", "4.15 mm"]);
    expect(bench.findings.map(({ code }) => code)).not.toContain("pin-loose");
  });
});

describe("sizes", () => {
  it("of shims in inches have the third place that they are bought by, fractions stay fractions", async () => {
    const { card } = await cardOf(HUNTER, INCH_SHOP, "in");
    const laid = panelsOf(card)
      .flatMap(({ blocks }) => blocks)
      .flatMap((block) => (block.kind === "table" ? block.rows.flat() : []))
      .flatMap((cell) => (typeof cell === "string" && cell.includes("+") ? cell.split(/[+,]/u) : []));
    const thousandths = laid.filter((part) => part.includes("."));
    expect(thousandths.length).toBeGreaterThan(0);
    for (const part of thousandths) expect(part).toMatch(/^(?:\d+×)?0\.\d{3}$/u);
  });

  it("of wood are rounded up, never down", async () => {
    const { card, bench } = await cardOf(HUNTER, INCH_SHOP, "in");
    const { length = 0, height = 0, thickness = 0 } = bench.blank ?? {};
    const told = figuresOf(panelOf(card, "Saw the block"))["long, high, across"] ?? "";
    const inches = told.split(" × ").map((size) =>
      size
        .replace('"', "")
        .split(" ")
        .map((part) => part.split("/").map(Number))
        .reduce((sum, [over = 0, under = 1]) => sum + over / under, 0),
    );
    for (const [index, mm] of [length, height, thickness].entries()) {
      const over = (inches[index] ?? 0) - mm / 25.4;
      expect(over, told).toBeGreaterThan(-1e-6);
      expect(over, told).toBeLessThan(1 / 16);
    }
  });

  it("of what is marked and drilled are told in words where a number would be read wrongly", async () => {
    const { card } = await cardOf(HUNTER, INCH_SHOP, "in");
    expect(columnOf(panelOf(card, "Drill the mortise"), "deep").at(-1)).toBe("at the mouth");
    expect(textOf(panelOf(card, "Mark the billet"))).not.toMatch(/ behind\./u);
  });
});
