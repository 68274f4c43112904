import { describe, expect, test } from "vitest";
import { flat, wideLines } from "../support/answer.js";
import { DEMO_FILES, DEMO_KNIFE } from "../support/demo.js";
import { codes, gate, gateJson, needOf } from "../support/gate.js";

const FILE = "harvest.knife.yaml";

const known = (await gateJson(["--stage", "billet", "--mass", "900g", "--tare", "0g"])).found;
const billet = needOf(known, "billet");

describe("spare or short", () => {
  test("what is needed falls from stage to stage; the sum adds up, the handling bar taken off", async () => {
    const needs = known.targets.map(({ neededG }) => neededG);
    expect(known.targets.map(({ stage }) => stage)).toEqual(["cut", "billet", "forged", "ready", "finished"]);
    expect(needs).toEqual([...needs].sort((a, b) => b - a));
    const mass = billet.neededHighG + 5;
    const { code, found } = await gateJson([
      "--stage",
      "billet",
      "--mass",
      `${mass + 210}g`,
      "--tare",
      "210g",
    ]);
    expect(code).toBe(0);
    expect(found.schema).toBe("scantling/gate/1");
    expect(found.verdict).toBe("enough");
    expect(found.spareG).toBeCloseTo(mass - billet.neededG, 8);
    expect(found.netG).toBeCloseTo(mass, 8);
    expect(found.extraHeats?.count).toBeGreaterThan(0);
    expect(codes(found)).not.toContain("steel-short");
  });

  test("enough at the usual losses only: exit code 0 and a warning at the billet", async () => {
    const mass = (billet.neededG + billet.neededHighG) / 2;
    const { code, found } = await gateJson(["--stage", "billet", "--mass", `${mass}g`, "--tare", "0g"]);
    expect(code).toBe(0);
    expect(found.verdict).toBe("enough-at-usual-losses");
    expect(found.findings.find((one) => one.code === "steel-only-just")?.severity).toBe("warn");
  });

  test("as text: one page, sum and verdict first, no line too wide", async () => {
    const { code, out } = await gate([
      "--stage",
      "billet",
      "--mass",
      `${billet.neededHighG + 20}g`,
      "--tare",
      "0g",
    ]);
    expect(code).toBe(0);
    expect(out).toMatch(/^WEIGHED: dressed billet$/mu);
    expect(out).toMatch(/^ENOUGH: \d+ g to spare \(band [−+]\d+ g to \+\d+ g\)$/mu);
    expect(out).toMatch(/^> dressed billet/mu);
    expect(wideLines(out)).toEqual([]);
  });

  test("a finished blade a little lighter than drawn is within its own band, and told so", async () => {
    const mass = needOf(known, "finished").neededG - 1;
    const { code, out } = await gate(["--stage", "finished", "--mass", `${mass}g`]);
    expect(code).toBe(0);
    expect(out).toMatch(/^ENOUGH: 1\.0 g less than drawn/mu);
    expect(flat(out)).toContain("within the knife's own band");
  });

  test.each(["24.8 oz", "1 lb 8.8 oz", "703.068g"])("--mass %s is one and the same", async (mass) => {
    const { found } = await gateJson(["--stage", "billet", "--mass", mass, "--tare", "0g"]);
    expect(found.netG).toBeCloseTo(703.068, 3);
  });

  test("without any bars the blade's own stages still work, and billets count as one solid bar", async () => {
    const files = { [FILE]: DEMO_KNIFE };
    const forged = await gateJson(["--stage", "forged", "--mass", "2 kg", "--tare", "0g"], files);
    expect(forged.found.verdict).toBe("enough");
    const solid = await gateJson(["--stage", "billet", "--mass", "2 kg", "--tare", "0g"], files);
    expect(codes(solid.found)).toContain("counted-as-solid-bar");
    const { neededG } = needOf(solid.found, "billet");
    // Nine heats at 1.2 %.
    expect(neededG).toBeCloseTo(needOf(solid.found, "forged").neededG / 0.988 ** 9, 6);
  });
});

describe("short", async () => {
  const forged = needOf(known, "forged").neededG;
  const { code, found } = await gateJson([
    "--stage",
    "forged",
    "--mass",
    `${0.97 * forged}g`,
    "--tare",
    "0g",
  ]);

  test("exit code 4, a warning past the billet, and the way it is told", async () => {
    expect(code).toBe(4);
    expect(found.verdict).toBe("short");
    expect(found.spareG).toBeCloseTo(-0.03 * forged, 8);
    expect(found.findings.find((one) => one.code === "steel-short")?.severity).toBe("warn");
  });

  test("each smaller knife needs just what is in hand and says what it costs", () => {
    const possible = found.similar.filter((one) => one.possible);
    expect(found.similar.map(({ change }) => change)).toEqual(["shorter", "lower", "thinner-tip"]);
    expect(possible.length).toBeGreaterThanOrEqual(2);
    for (const one of possible) {
      expect(Math.abs(one.neededG - 0.97 * forged), one.change).toBeLessThan(1e-6);
      expect(one.byMm).toBeCloseTo(one.fromMm - one.toMm, 12);
      expect(one.asks.map(({ ask }) => ask)).toEqual(["mass", "balance", "overallLength"]);
      for (const ask of one.asks) expect(["met", "at-risk", "not-met"]).toContain(ask.verdict);
    }
  });

  test("as text, with what can still be made", async () => {
    const { out, err } = await gate(["--stage", "forged", "--mass", `${0.97 * forged}g`, "--tare", "0g"]);
    expect(out).toMatch(/^SHORT: \d+ g short/mu);
    expect(out).toMatch(/^- Shorter: edge \d+\.\d mm, \d+\.\d mm less/mu);
    expect(flat(out)).toContain("knife ");
    expect(err).toContain("looking for the largest knives");
    expect(wideLines(out)).toEqual([]);
  });

  test("far too little: it is said why, and never a number that is none", async () => {
    const { found: little, code: four } = await gateJson([
      "--stage",
      "forged",
      "--mass",
      `${0.3 * forged}g`,
      "--tare",
      "0g",
    ]);
    expect(four).toBe(4);
    for (const one of little.similar.filter(({ possible }) => !possible))
      expect(one).toHaveProperty("message");
    expect(little.similar.some(({ possible }) => !possible)).toBe(true);
  });
});

describe("masses that are questioned", () => {
  test("more than 2 % up: not used, exit code 4", async () => {
    const { code, found } = await gateJson([
      "--stage",
      "forged",
      "--mass",
      "720g",
      "--tare",
      "0g",
      "--before",
      "billet=700g",
    ]);
    expect(code).toBe(4);
    expect(found).toMatchObject({ verdict: "questioned", usedG: null, spareG: null, similar: [] });
    expect(found.findings.find((one) => one.code === "mass-rose")?.severity).toBe("warn");
    const { out } = await gate([
      "--stage",
      "forged",
      "--mass",
      "720g",
      "--tare",
      "0g",
      "--before",
      "billet=700g",
    ]);
    expect(flat(out)).toContain("QUESTIONED: this mass is not used");
  });

  test("a little up: named, and the lower mass counts", async () => {
    const { found } = await gateJson([
      "--stage",
      "forged",
      "--mass",
      "703g",
      "--tare",
      "0g",
      "--before",
      "billet=700g,cut=760g",
    ]);
    expect(found.usedG).toBe(700);
    expect(found.findings.find((one) => one.code === "mass-rose")?.severity).toBe("note");
  });

  test.each([
    [0.0352739619495804, "oz"],
    [0.00220462262184878, "lb"],
    [0.001, "kg"],
    [28.349523125, "g"],
    [453.59237, "g"],
  ])("%d times what is needed: were %s meant?", async (factor, meant) => {
    const { code, found } = await gateJson([
      "--stage",
      "billet",
      "--mass",
      `${factor * billet.neededG}g`,
      "--tare",
      "0g",
    ]);
    expect(code).toBe(4);
    expect(found.verdict).toBe("questioned");
    const slip = found.findings.find((one) => one.code === "mass-unit-slip");
    expect(slip?.message).toContain(`${meant} meant, not`);
  });

  test("a tare that is missing", async () => {
    const { found } = await gateJson(["--stage", "billet", "--mass", "900g"]);
    expect(codes(found)).toContain("tare-missing");
    expect(codes(known)).not.toContain("tare-missing");
  });
});

describe("caliper readings", () => {
  const enough = ["--stage", "forged", "--mass", "1200g", "--tare", "0g"];

  test("what is left to take off each face", async () => {
    const { found } = await gateJson([...enough, "--at", "heel=5.8 mm", "--at", "60 %=4.6,tip=3.2"]);
    // 4.6, 3.6 and 2.2 mm finished.
    expect(found.readings.map(({ finishedMm }) => finishedMm)).toEqual([4.6, 3.6, 2.2]);
    expect(found.readings[0]?.leftPerFaceMm).toBeCloseTo(0.6, 9);
    expect(found.readings[1]?.leftPerFaceMm).toBeCloseTo(0.5, 9);
    expect(codes(found)).not.toContain("reading-under-finished");
  });

  test("under size: named, with what it costs, and told as text", async () => {
    const { found } = await gateJson([...enough, "--at", "60 %=2.9 mm"]);
    expect(found.findings.find((one) => one.code === "reading-under-finished")?.severity).toBe("warn");
    expect(found.readings[0]).toHaveProperty("asks");
    const { out } = await gate([...enough, "--at", "60 %=2.9 mm"]);
    expect(out).toContain("CALIPER: left to take off each face");
    expect(flat(out)).toContain("the blade comes out as:");
    expect(wideLines(out)).toEqual([]);
  });
});

describe("wrong use is exit code 2 and says what to write", () => {
  test.each([
    [["--stage", "billet", "--mass", "heavy"], "--mass"],
    [["--stage", "billet", "--mass", "0g"], "more than nothing"],
    [["--stage", "billet", "--mass", "700g ± 5 g"], "tolerance"],
    [["--stage", "billet", "--mass", "700g", "--tare", "700g"], "leaves no steel"],
    [["--stage", "billet", "--mass", "700g", "--before", "forged=700g"], "does not come before"],
    [["--stage", "forged", "--mass", "700g", "--before", "bilet=700g"], "did you mean billet"],
    [["--stage", "forged", "--mass", "700g", "--before", "700g"], "STAGE=MASS"],
    [["--stage", "billet", "--mass", "700g", "--at", "heel=5"], "does not have yet"],
    [["--stage", "forged", "--mass", "700g", "--at", "hel=5"], "did you mean heel"],
    [["--stage", "forged", "--mass", "700g", "--at", "900 mm=5"], "lies beside the knife"],
    [["--stage", "forged", "--mass", "700g", "--at", "mid=5"], "Write PLACE=THICKNESS"],
    [["--stage", "forged", "--mass", "700g", "--plan", "99"], "there is no plan 99"],
    [["--stage", "anvil", "--mass", "700g"], "anvil"],
    [["--stage", "billet"], "--mass"],
    [["--mass", "700g"], "--stage"],
  ])("%j", async (argv, said) => {
    const { code, err } = await gate(argv);
    expect(code).toBe(2);
    expect(flat(err)).toContain(said);
  });
});

test("the shop's own limits are read", async () => {
  const shop = `${DEMO_FILES["shop.yaml"]}\ngates: { massRise: 5 %, leastSimilar: 80 % }\n`;
  const files = { ...DEMO_FILES, "shop.yaml": shop };
  const { found } = await gateJson(
    ["--stage", "forged", "--mass", "720g", "--tare", "0g", "--before", "billet=700g"],
    files,
  );
  expect(found.usedG).toBe(700);
});
