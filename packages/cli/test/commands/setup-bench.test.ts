import { describe, expect, it } from "vitest";
import { projectFile } from "../file/files.js";
import { answer, flat, wideLines } from "../support/answer.js";
import { DEMO_FILES } from "../support/demo.js";

const FILE = "knife.knife.yaml";
const orders: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  camp: {
    [FILE]: projectFile("examples/camp-knife/camp-knife.knife.yaml"),
    "shop.yaml": projectFile("examples/shop.yaml"),
  },
  boning: {
    [FILE]: projectFile("examples/boning-knife/boning-knife.knife.yaml"),
    "shop.yaml": projectFile("examples/shop.yaml"),
  },
  petty: {
    [FILE]: projectFile("examples/three-layer-petty/three-layer-petty.knife.yaml"),
    "shop.yaml": projectFile("examples/three-layer-petty/shop.yaml"),
  },
};

async function setup(name: string, more = "") {
  const files = { ...orders[name] };
  files["shop.yaml"] = `${files["shop.yaml"]}\n${more}`;
  const { out } = await answer(["setup", FILE, "--json"], { files });
  return JSON.parse(out);
}

async function text(name: string, more = "", argv: readonly string[] = []): Promise<string> {
  const files = { ...orders[name] };
  files["shop.yaml"] = `${files["shop.yaml"]}\n${more}`;
  return (await answer(["setup", FILE, ...argv], { files })).out;
}

describe("setup, at the bench", () => {
  it("tells everything that is set on a tool, in the order of the work, on 80 columns", async () => {
    const shop =
      "drills: [number, fraction]\nwedges: [20 deg, 11 deg, 5 deg]\njigLever: 150 mm\nquenchTank: { litres: 15, depth: 400 mm }\noven: { length: 500 mm }\n";
    for (const units of ["mm", "in"]) {
      const out = await text("camp", shop, ["--units", units]);
      expect(wideLines(out)).toEqual([]);
      expect(out).not.toMatch(/NaN|undefined|Infinity/u);
      const titles = [
        "Taper the tang",
        "Scribe the edge",
        "Grind the bevels",
        "Oven and tank",
        "Harden, 5160",
        "Temper",
        "Prove the hardness",
        "Finished blade",
        "Sharpen",
        "The knife as made",
      ];
      const places = titles.map((title) => out.indexOf(`\n${title}`));
      expect(places).toEqual([...places].sort((a, b) => a - b));
      expect(Math.min(...places)).toBeGreaterThan(0);
    }
  });

  // Half and full shim at the butt, by hand: (6.35 - 3.2) / 2 and 6.35 - 3.2; both faces 0.71°.
  it("shims the camp knife's tang as the hand does", async () => {
    const { tangTaper } = (await setup("camp")).bench;
    const last = tangTaper.shims.at(-1);
    expect(last.firstFaceMm).toBeCloseTo(1.575, 2);
    expect(last.secondFaceMm).toBeCloseTo(3.15, 2);
    expect(tangTaper.leanDeg).toBeCloseTo(0.71, 2);
  });

  // By hand: half shim (2.8 - 2.0) / 2, full shim 2.8 - 2.0.
  it("shims the boning knife's tang as the hand does", async () => {
    const { tangTaper } = (await setup("boning")).bench;
    expect(tangTaper.shims.at(-1)).toMatchObject({
      firstFaceMm: expect.closeTo(0.4, 2),
      secondFaceMm: expect.closeTo(0.8, 2),
    });
  });

  it("makes 20° per side of a 20° wedge, and says what wedges do not reach", async () => {
    const { edge } = (await setup("camp", "wedges: [20 deg, 11 deg]\n")).bench;
    expect(edge[0].wedges).toEqual({ addDeg: [20], subtractDeg: [], angleDeg: 20, errorDeg: 0 });
  });

  it("puts the blade beside oven and tank, hot, and tells what it warms the oil by", async () => {
    const shop = "quenchTank: { litres: 15, depth: 400 mm }\noven: { length: 500 mm, height: 120 mm }\n";
    const out = flat(await text("camp", shop));
    // EN 1993-1-2: 1.1 % from 750 to 860 °C.
    const long = Math.ceil((241.3 + 127) * 1.011);
    expect(out).toMatch(new RegExp(`at 850 °C, long: (${long}|${long + 1}) mm, of 500 mm inside`, "u"));
    expect(out).toMatch(/oil deep: \d+ mm, of 400 mm/u);
    expect(out).toMatch(/a blade warms the oil by: \d+ °C/u);
    const { quench } = (await setup("camp", shop)).bench;
    // m·0.65·(T − T_oil)/(V·0.87·2.0); heats from memory.
    const rise = ((quench.massG / 1000) * 0.65 * (quench.fromC - quench.oilC)) / (15 * 0.87 * 2);
    expect(quench.oilRiseK).toBeCloseTo(rise, 9);
  });

  it("soaks 1095 by its thickness, from the source that counts so, and other steels not", async () => {
    // 1.5 min a mm of 2.4 mm and 0.1 mm a face left for after hardening.
    const petty = flat(await text("petty"));
    expect(petty).toMatch(
      /Soak by thickness \(timer\): 1095, 2\.60 mm \(0\.102"\) thick: 4 min \(a kiln supplier's page/u,
    );
    expect(await text("camp")).not.toContain("Soak by thickness");
  });

  it("gives sources of every heat, and says from memory what is", async () => {
    const { heatTreatment } = await setup("camp");
    expect(heatTreatment).toHaveLength(1);
    const steps: { step: string; source: string; mark: string }[] = heatTreatment[0].steps;
    expect(steps.map(({ step }) => step)).toEqual(expect.arrayContaining(["normalise", "harden"]));
    for (const { source, mark } of steps) expect(`${source}${mark}`).not.toBe("");
    const { out } = await answer(["setup", "harvest.knife.yaml"], { files: DEMO_FILES });
    expect(flat(out)).toMatch(/harden: 816 °C \(1500 °F\) fast oil \[c\]/u);
    expect(flat(out)).toContain("[c] from memory, unconfirmed");
  });

  it("converts hardness by ASTM E140 and tells what files do", async () => {
    const out = await text("camp");
    expect(out).toMatch(/^ {2}60 +697 +skates +skates +barely skates +cuts$/mu);
    expect(out).toContain("60 barely skates and 65 cuts: 60 to 62 HRC.");
  });
});
