import { describe, expect, test } from "vitest";
import { answer, flat, wideLines } from "../support/answer.js";
import { DEMO_FILES } from "../support/demo.js";
import { codes, gate, gateJson, needOf } from "../support/gate.js";

const FILE = "harvest.knife.yaml";

const known = (await gateJson(["--stage", "billet", "--mass", "900g", "--tare", "0g"])).found;

describe("a mass that rose by less than 2 %", async () => {
  // As much as the demo's forging needs and 3 g more, after a billet 7 g lighter than that.
  const need = needOf(known, "forged").neededG;
  const rise = [
    "--stage",
    "forged",
    "--mass",
    `${need + 10}g`,
    "--tare",
    "0g",
    "--before",
    `billet=${need + 3}g`,
  ];
  const { code, found } = await gateJson(rise);

  test("is enough only if it is no scale: not sure, exit code 0, a warning, and the span", async () => {
    expect(code).toBe(0);
    expect(found.verdict).toBe("not-sure");
    expect(found.usedG).toBeCloseTo(need + 3, 8);
    // 7 g of oxygen, 0.2227 of the scale.
    expect(found.usedLeastG).toBeCloseTo(need + 10 - 7 / 0.2227, 1);
    expect(found.spareLeastG).toBeCloseTo(10 - 7 / 0.2227, 1);
    expect(found.extraHeats).toBeNull();
    expect(found.similar).toEqual([]);
    expect(found.findings.find((one) => one.code === "steel-not-sure")?.severity).toBe("warn");
    const { out } = await gate(rise);
    expect(flat(out)).toMatch(
      /NOT SURE: ENOUGH only if \d+ g or more of it is steel\. It may be \d+ g to \d+ g/u,
    );
    expect(out).not.toMatch(/^ENOUGH/mu);
    expect(wideLines(out)).toEqual([]);
  });

  test("with plenty in hand it is enough all the same", async () => {
    const plenty = await gateJson([
      "--stage",
      "forged",
      "--mass",
      "1207g",
      "--tare",
      "0g",
      "--before",
      "billet=1200g",
    ]);
    expect(plenty.found.verdict).toBe("enough");
    expect(codes(plenty.found)).not.toContain("steel-not-sure");
  });
});

describe("a finished blade that is light", async () => {
  const need = needOf(known, "finished").neededG;
  const argv = ["--stage", "finished", "--mass", `${need - 40}g`];
  const { code, found } = await gateJson(argv);

  test("is told against the drawing, with its mass against the ask and nothing to shrink", async () => {
    expect(code).toBe(4);
    expect(found.verdict).toBe("short");
    expect(found.similar).toEqual([]);
    expect(found.asWeighed?.lightByG).toBeCloseTo(40, 8);
    expect(found.asWeighed?.mass?.valueG).toBeCloseTo(found.asWeighed?.knifeMassG ?? 0, 8);
    expect(found.asWeighed?.notTold.map(({ ask }) => ask)).toEqual(["balance", "overallLength"]);
    const { out, err } = await gate(argv);
    expect(out).toMatch(/^LIGHT: by 40 g against the drawing/mu);
    expect(flat(out)).toContain("AS WEIGHED - The knife comes to");
    expect(out).not.toContain("CAN STILL BE MADE");
    expect(err).not.toContain("looking for");
    expect(out.slice(out.indexOf("FOUND"))).not.toContain("high ones");
    expect(wideLines(out)).toEqual([]);
  });

  test("the mass that is asked for is held against what was weighed: 40 g lower", async () => {
    const { out } = await answer(["weigh", FILE, "--json"], { files: DEMO_FILES });
    const drawn = (JSON.parse(out) as { knife: { massG: number } }).knife.massG;
    expect(found.asWeighed?.knifeMassG).toBeCloseTo(drawn - 40, 6);
  });
});

/** A plain blade in inches: 5/32 in at the heel when finished. */
const INCH_KNIFE = `scantling: 1
order: { code: IN-1, title: Skinner }
units: in
steel: "1084"
blade:
  outline: { family: drop-point, edgeLength: 4, heelHeight: 1 1/8 }
  ricasso: 3/8
  thickness:
    - { at: heel, is: 5/32 }
    - { at: tip, is: 1/16 }
  bevel: { form: flat, height: full, edgeThickness: 0.015 }
  edgeAngle: 17 deg
tang: { form: full, length: 4 1/8, heights: { front: 7/8, middle: 3/4, butt: 1 } }
`;

describe("caliper readings that are slips", () => {
  const enough = ["--stage", "forged", "--mass", "1200g", "--tare", "0g"];
  // 5.6 mm is meant at the heel of the demo's forging.
  test.each([
    [["--at", "heel=56"], "Was 5.6 mm meant, the point put wrong?"],
    [["--at", "heel=0.56"], "Was 5.6 mm meant, the point put wrong?"],
    [["--at", "heel=0.22"], "Were 0.22 in meant, not mm? That is 5.59 mm. Write the unit: --at heel=0.22in."],
    [["--at", "heel=220"], "Were 220 thou meant, not mm?"],
    [["--at", "heel=14 mm"], "measure again, and mind the point and the unit"],
  ])("%j", async (argv, said) => {
    const { code, found } = await gateJson([...enough, ...argv]);
    expect(code).toBe(0);
    expect(found.readings[0]).toMatchObject({ questioned: true, leftPerFaceMm: null });
    expect(found.readings[0]).not.toHaveProperty("asks");
    const slip = found.findings.find((one) => one.code.startsWith("reading"));
    expect(slip?.severity).toBe("warn");
    expect(slip?.message).toContain(said);
    const { out } = await gate([...enough, ...argv]);
    expect(out).toMatch(/questioned$/mu);
    expect(wideLines(out)).toEqual([]);
  });

  test("a bare number in a file in inches that is meant in mm", async () => {
    const files = { [FILE]: INCH_KNIFE };
    const argv = ["--stage", "forged", "--mass", "40 oz", "--tare", "0g", "--at", "heel=4.6"];
    const { found } = await gateJson(argv, files);
    // 4.6 in are 116.84 mm.
    expect(found.readings[0]).toMatchObject({ thicknessMm: 116.84, questioned: true });
    expect(found.findings.find((one) => one.code === "reading-slip")?.message).toContain(
      "Were 4.6 mm meant, not in? That is 4.6 mm. Write the unit: --at heel=4.6mm.",
    );
    expect(wideLines((await gate(argv, files)).out)).toEqual([]);
  });

  test("with a unit that stands there the unit is not questioned", async () => {
    const { found } = await gateJson([...enough, "--at", "heel=0.22 mm"]);
    expect(codes(found)).toContain("reading-questioned");
  });
});

describe("caliper and smaller knives", () => {
  const short = ["--stage", "forged", "--mass", `${0.97 * needOf(known, "forged").neededG}g`, "--tare", "0g"];
  const LEFT_OUT = "The caliper is not in these";

  test("a reading under the drawing is said not to be in them", async () => {
    const { out } = await gate([...short, "--at", "heel=4.2"]);
    expect(flat(out)).toContain(
      `${LEFT_OUT}: they are as thick as drawn, and it found 4.20 mm at 0.0 mm (drawn 4.60 mm)`,
    );
    expect(flat(out)).toContain("the heel as drawn");
    expect(wideLines(out)).toEqual([]);
  });

  test("nothing of it where the steel is there, or the reading is a slip", async () => {
    expect(flat((await gate([...short, "--at", "heel=5.6"])).out)).not.toContain(LEFT_OUT);
    expect(flat((await gate([...short, "--at", "heel=0.56"])).out)).not.toContain(LEFT_OUT);
  });
});
