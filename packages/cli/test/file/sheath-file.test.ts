import { describe, expect, it } from "vitest";
import { EXIT } from "../../src/exit-code.js";
import { readKnifeFile, readShopFile } from "../../src/file/index.js";
import { makeSheathModel } from "../../src/models/sheath-model.js";
import { answer, flat } from "../support/answer.js";
import { DEMO_KNIFE, DEMO_SHOP } from "../support/demo.js";
import { measured } from "../support/sample-job.js";
import { inShort, knifeProblems, SMALL, shopProblems } from "./files.js";

const ASKED = "sheath: { leather: 3.2 mm, welt: 1/2 in, stitchInset: 5 }\n";

describe("the sheath of a knife file", () => {
  it("is read in mm, is no part of the knife, and is empty where nothing is asked for", () => {
    const file = readKnifeFile(`${SMALL}${ASKED}`, "knife.yaml");
    expect(file.sheath).toEqual({ leather: 3.2, welt: 12.7, stitchInset: 5 });
    expect(file.spec).toEqual(readKnifeFile(SMALL, "knife.yaml").spec);
    expect(readKnifeFile(SMALL, "knife.yaml").sheath).toEqual({});
    expect(readShopFile("units: in\nsheath: { leather: 1/8 }\n", "shop.yaml").sheath).toEqual({
      leather: 3.175,
    });
  });

  it("is drawn as asked: 92 high, half of 4.6 thick, a welt of 15 and 3 to trim", async () => {
    const knife = await measured(`${DEMO_KNIFE}sheath: { welt: 15, trim: 3, leather: 5 }\n`);
    const { sheath } = makeSheathModel(knife);
    expect(sheath.halfWidth).toBeCloseTo(92 + 2.3 + 15 + 3, 9);
    // A layer of 5 is thicker than the blade.
    expect(sheath.weltLayers).toBe(1);
  });

  it("goes before the shop's, and that before the usual sizes", async () => {
    const files = {
      "harvest.knife.yaml": `${DEMO_KNIFE}sheath: { leather: 2 }\n`,
      "shop.yaml": `${DEMO_SHOP}sheath: { leather: 4, welt: 20 }\n`,
    };
    const { code, io } = await answer(["pattern", "harvest.knife.yaml", "--sheet", "sheath"], { files });
    expect(code).toBe(EXIT.done);
    const svg = io.disk.text("/shop/harvest.sheath.svg");
    // 4.6 of blade take three layers of 2.
    expect(svg).toContain("WELT: cut 3, glue together");
    expect(svg).toContain(">20 mm [");
  });

  it.each([
    ["sheath: 3", "wrong-type | sheath needs a group of keys"],
    [
      "sheath: { leather: 40 mm }",
      'out-of-range | sheath.leather: "40 mm" must be 10 mm or less, for example 3.2 mm',
    ],
    [
      "sheath: { stiches: 4 mm }",
      "unknown-key | sheath.stiches is not a key here; the keys are leather, welt, trim, stitchInset, stitchPitch",
    ],
    [
      "sheath: { welt: 12 ± 1 mm }",
      'tolerance-not-taken | sheath.welt: "12 ± 1 mm" has a tolerance; none can be given here',
    ],
  ])("%s is a mistake, in either file", (text, problem) => {
    for (const problems of [knifeProblems(`${SMALL}${text}\n`), shopProblems(`${text}\n`)]) {
      expect(inShort(problems)).toEqual([expect.stringMatching(/^\d+:\d+ /u)]);
      expect(inShort(problems)[0]?.replace(/^\d+:\d+ /u, "")).toBe(problem);
    }
  });

  it("is told its limits in the units that were written, whatever the file's", () => {
    for (const [text, problem] of [
      ["units: in\nsheath: { leather: 25 mm }\n", '"25 mm" must be 10 mm or less, for example 3.2 mm'],
      ["units: in\nsheath: { leather: 1 }\n", '"1" must be 0.394" or less, for example 0.126"'],
      ["units: mm\nsheath: { leather: 1 in }\n", '"1 in" must be 0.394" or less, for example 0.126"'],
      ["units: mm\nsheath: { leather: 25 }\n", '"25" must be 10 mm or less, for example 3.2 mm'],
    ] as const) {
      expect(inShort(shopProblems(text))[0]).toContain(`sheath.leather: ${problem}`);
    }
  });

  it("that leaves no seam is told with its line in the file that says so, whatever is done with the knife", async () => {
    // 7 − 5 is less than half of 4.6.
    const knife = `${DEMO_KNIFE}sheath: { welt: 7 mm, stitchInset: 5 mm }\n`;
    const line = knife.split("\n").length - 1;
    for (const command of ["weigh", "check"]) {
      const { code, err } = await answer([command, "harvest.knife.yaml"], {
        files: { "harvest.knife.yaml": knife, "shop.yaml": DEMO_SHOP },
      });
      expect(code).toBe(EXIT.file);
      expect(err.replaceAll(/\s+/gu, " ")).toContain(
        `harvest.knife.yaml:${line}:17 sheath.welt: A welt of 7 mm with stitches 5 mm in leaves 2 mm beside a blade 4.6 mm thick: the seam needs more than 2.3 mm.`,
      );
    }
    const shop = `${DEMO_SHOP}sheath: { welt: 7 mm, stitchInset: 5 mm }\n`;
    const files = { "harvest.knife.yaml": DEMO_KNIFE, "shop.yaml": shop };
    const drawn = await answer(["pattern", "harvest.knife.yaml", "--sheet", "sheath"], { files });
    expect(drawn.code).toBe(EXIT.file);
    expect(drawn.err).toMatch(/^shop\.yaml:\d+:17/mu);
    expect((await answer(["weigh", "harvest.knife.yaml"], { files })).code).toBe(EXIT.done);
  });

  it("of the shop leaves no sheath among other sheets, and is no mistake of the order", async () => {
    const why =
      "a welt of 6 mm with stitches 4 mm in leaves 2 mm beside a blade 4.6 mm thick: the seam needs more than 2.3 mm. Make the welt wider, or set the stitches less far in";
    for (const own of ["", "sheath: { leather: 3 mm }\n"]) {
      const files = {
        "harvest.knife.yaml": `${DEMO_KNIFE}${own}`,
        "shop.yaml": `${DEMO_SHOP}sheath: { welt: 6 mm }\n`,
      };
      const drawn = await answer(["pattern", "harvest.knife.yaml", "--sheet", "pattern,sheath"], { files });
      expect(drawn).toMatchObject({ code: EXIT.done, written: ["/shop/harvest.pattern.svg"] });
      expect(flat(drawn.err)).toContain(`No sheath sheet: ${why}.`);
      const planned = await answer(["plan", "harvest.knife.yaml", "--json"], { files });
      expect(planned.code).toBe(EXIT.done);
      expect(JSON.parse(planned.out).pattern.missing).toEqual([{ sheet: "sheath", reason: why }]);
      expect(flat(planned.err)).toContain(`No sheath sheet: ${why}.`);
    }
  });

  it("puts a seam that fails down to the knife's own key where the shop's would do without it", async () => {
    const files = {
      "harvest.knife.yaml": `${DEMO_KNIFE}sheath: { stitchInset: 11 mm }\n`,
      "shop.yaml": `${DEMO_SHOP}sheath: { welt: 12 mm }\n`,
    };
    const { code, err } = await answer(["plan", "harvest.knife.yaml"], { files });
    expect(code).toBe(EXIT.file);
    expect(err).toMatch(/^harvest\.knife\.yaml:\d+:\d+ +sheath\.stitchInset:/mu);
  });
});
