import { describe, expect, it } from "vitest";
import { EXIT } from "../../src/exit-code.js";
import { answer, flat, wideLines } from "../support/answer.js";
import { DEMO_FILES, DEMO_KNIFE, demoWith } from "../support/demo.js";

const FILE = "harvest.knife.yaml";
const check = (text: string, ...options: readonly string[]) =>
  answer(["check", FILE, ...options], { files: { ...DEMO_FILES, [FILE]: text } });

/** The demo with another ask for its mass, in g. */
const massAsk = (condition: string): string => demoWith(["mass: { below: 600 g }", `mass: { ${condition} }`]);

async function massAnswer(text: string) {
  const { out, code } = await check(text, "--json");
  const report = JSON.parse(out);
  const mass = report.asks.find(({ ask }: { ask: string }) => ask === "mass");
  return { code, report, mass };
}

describe("asks, one by one", () => {
  it("meets all asks of the demo", async () => {
    const { code, out, err } = await check(DEMO_KNIFE);
    expect(err).toBe("");
    expect(code).toBe(EXIT.done);
    expect(wideLines(out)).toEqual([]);
    for (const name of ["mass", "balance", "overall length"])
      expect(out).toMatch(new RegExp(`^${name} .* met (?:in band )?by `, "m"));
  });

  it("answers 4 where an ask is not met, and says by how much", async () => {
    const { code, out } = await check(massAsk("below: 100 g"));
    expect(code).toBe(EXIT.notMet);
    expect(out).toMatch(/^mass +below 100 g .*NOT MET by \d+ g$/m);
  });

  it("says where sizes that meet what is asked are looked for, and only where that is open", async () => {
    const NEXT = "To look for sizes that meet what is asked: scantling fit harvest.knife.yaml";
    expect(flat((await check(massAsk("below: 500 g"))).out)).toContain(NEXT);
    // Two asks of one place that no knife meets are told as such.
    const twice = "thickness: [{ above: 5 mm }, { at: heel, below: 4 mm }]";
    const contradicting = demoWith(["mass: { below: 600 g }", twice]);
    for (const text of [DEMO_KNIFE, massAsk("below: 500 g, should: true"), contradicting]) {
      expect((await check(text)).out).not.toContain("scantling fit harvest");
    }
  });

  it("answers 0 with a warning where the limit lies within the band", async () => {
    const { mass } = await massAnswer(DEMO_KNIFE);
    const limit = (mass.valueG + mass.intervalG[1]) / 2;
    const atRisk = await check(massAsk(`below: ${limit.toFixed(1)} g`));
    expect(atRisk.code).toBe(EXIT.done);
    expect(atRisk.out).toMatch(/^mass .*at risk: \d+ g$/m);
    expect(flat(atRisk.out)).toContain(
      "At risk: computed inside, but the limit lies within the band of mass.",
    );
  });

  it("fails no order for a wish", async () => {
    const { code, out } = await check(massAsk("below: 100 g, should: true"));
    expect(code).toBe(EXIT.done);
    expect(out).toMatch(/^mass\* .*NOT MET/m);
    expect(out).toContain("* wished for, not required");
  });

  it("says so where nothing was asked", async () => {
    const text = DEMO_KNIFE.replace(/ {2}asks:[\s\S]*?(?=^units)/m, "");
    const { code, out } = await check(text);
    expect(code).toBe(EXIT.done);
    expect(out).toContain("Nothing was asked for");
  });

  it("holds sizes against the outline: 225 mm edge, 10 mm ricasso and 128 mm tang are 363 mm", async () => {
    const { report } = await massAnswer(DEMO_KNIFE);
    const length = report.asks.find(({ ask }: { ask: string }) => ask === "overallLength");
    expect(length.valueMm).toBeCloseTo(363, 9);
    expect(length.marginMm).toBeCloseTo(7, 9);
  });
});

describe("scantling/check/1", () => {
  it("has stable keys with units in them", async () => {
    const { report, mass } = await massAnswer(DEMO_KNIFE);
    expect(Object.keys(report)).toEqual([
      "schema",
      "verdict",
      "asks",
      "conflicts",
      "outOfReach",
      "conflictSearch",
      "conflictChanges",
      "materials",
      "findings",
    ]);
    expect(report).toMatchObject({ schema: "scantling/check/1", verdict: "met" });
    expect(Object.keys(mass)).toEqual([
      "ask",
      "verdict",
      "should",
      "valueG",
      "intervalG",
      "atLeastG",
      "atMostG",
      "marginG",
      "bandG",
      "limitInBand",
      "standing",
    ]);
    expect(mass).toMatchObject({ atLeastG: null, atMostG: 600, verdict: "met" });
  });

  it("parts what is met into with room and within the band, beside the old word", async () => {
    const { report, mass } = await massAnswer(DEMO_KNIFE);
    // 600 − 567 g is more than the band of 31 g, and less than twice that.
    expect(mass).toMatchObject({ verdict: "met", standing: "met-within-band" });
    const length = report.asks.find(({ ask }: { ask: string }) => ask === "overallLength");
    expect(length).toMatchObject({ verdict: "met", standing: "met" });
    const { out } = await check(DEMO_KNIFE);
    expect(flat(out)).toContain("Met in band: mass, as long as every size keeps to its tolerance.");
  });

  it("says where the mass is where it is not met", async () => {
    const { mass } = await massAnswer(massAsk("below: 100 g"));
    const sum = mass.parts.reduce((whole: number, part: { massG: number }) => whole + part.massG, 0);
    expect(mass.parts.map(({ name }: { name: string }) => name)).toEqual(["blade", "tang", "slabs", "pins"]);
    expect(sum).toBeCloseTo(mass.valueG, 9);
    expect((await check(massAsk("below: 100 g"))).out).toMatch(/\nWHERE THE MASS IS\nblade +\d+ g +\d+ %\n/);
  });

  it("answers 4 in JSON too", async () => {
    const { code, report } = await massAnswer(massAsk("below: 100 g"));
    expect(code).toBe(EXIT.notMet);
    expect(report.verdict).toBe("not-met");
  });
});

describe("findings", () => {
  it("stops where nothing on the rack can become the blade", async () => {
    const shop = "scantling: 1\nunits: mm\nrack:\n  - { size: 3 x 20 mm }\n";
    const { code, out } = await answer(["check", FILE], { files: { ...DEMO_FILES, "shop.yaml": shop } });
    expect(code).toBe(EXIT.notMet);
    expect(out).toContain("STOP: Nothing on the rack can become this blade.");
  });

  it("only notes that no rack is known", async () => {
    const { code, out } = await answer(["check", FILE], { files: { [FILE]: DEMO_KNIFE } });
    expect(code).toBe(EXIT.done);
    expect(flat(out)).toContain("note: No bars are known, so none can be planned.");
  });

  it("names for each finding where its limit comes from", async () => {
    const { out } = await check(DEMO_KNIFE, "--json");
    for (const finding of JSON.parse(out).findings) {
      expect(Object.keys(finding)).toEqual([
        "severity",
        "code",
        "path",
        "file",
        "line",
        "column",
        "message",
        "basis",
        "values",
      ]);
      expect(finding.basis).not.toBe("");
      expect(finding.message).not.toMatch(/[{}]/);
    }
  });
});

describe("a knife that breaks rules: exit 3 at its line", () => {
  it("finds a hole outside the steel", async () => {
    const { code, err } = await check(demoWith(["at: [-26, 76]", "at: [-26, 20]"]));
    expect(code).toBe(EXIT.file);
    const line = DEMO_KNIFE.slice(0, DEMO_KNIFE.indexOf("at: [-26, 76]")).split("\n").length;
    expect(err).toContain(`${FILE}:${line}:`);
  });

  it("finds an edge that is thicker than the blade at the bevel line", async () => {
    const { code, err } = await check(demoWith(["edgeThickness: 0.5", "edgeThickness: 6"]));
    expect(code).toBe(EXIT.file);
    expect(err).toContain("edgeThickness");
  });
});
