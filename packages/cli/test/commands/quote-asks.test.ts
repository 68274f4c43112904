import { readFileSync } from "node:fs";
import type { CustomerFigure } from "@scantling/render";
import { describe, expect, it } from "vitest";
import { EXIT } from "../../src/exit-code.js";
import type { ASK_KINDS } from "../../src/file/index.js";
import { loadJob } from "../../src/load.js";
import { measure } from "../../src/measure.js";
import { makeCustomerModel } from "../../src/models/customer-model.js";
import { makeQuote } from "../../src/quote/quote.js";
import { planBars } from "../../src/stock-report.js";
import { answer, flat } from "../support/answer.js";
import { DEMO_FILES, DEMO_KNIFE, demoWith } from "../support/demo.js";
import { fakeIo } from "../support/fake-io.js";

const FILE = "harvest.knife.yaml";

/** The demo with other asks. */
const asking = (asks: string): string =>
  DEMO_KNIFE.replace(/^ {2}asks:[\s\S]*?(?=^\S)/mu, `  asks: ${asks}\n\n`);

async function figuresOf(
  knife: string,
  shop: string = DEMO_FILES["shop.yaml"],
): Promise<readonly CustomerFigure[]> {
  const io = fakeIo({ files: { [FILE]: knife, "shop.yaml": shop } });
  const measured = measure(await loadJob(io, FILE, {}));
  const wishes = { madeDay: 20_787, beginDay: 20_787 };
  return makeCustomerModel(makeQuote(measured, planBars(measured), wishes)).figures;
}

const exampleFile = (folder: string, name: string): string =>
  readFileSync(new URL(`../../../../examples/${folder}/${name}`, import.meta.url), "utf8");

const rowsOf = (figures: readonly CustomerFigure[], what: RegExp) =>
  figures.filter((figure) => what.test(figure.what));

describe("what was asked for on the customer's sheet", () => {
  it("is put to its own place: a thickness at the tip is none at the heel", async () => {
    const figures = await figuresOf(asking("{ thickness: { at: tip, below: 2.5 mm } }"));
    const [heel] = rowsOf(figures, /^Spine at the heel$/u);
    expect(heel).not.toHaveProperty("asked");
    expect(heel).not.toHaveProperty("differs");
    expect(rowsOf(figures, /^Spine at the tip$/u)).toEqual([
      expect.objectContaining({ asked: "below 2.5 mm" }),
    ]);
  });

  it("has a row for each of several asks of one kind, at one place or at several", async () => {
    const figures = await figuresOf(
      asking(
        "{ thickness: [{ below: 5 mm }, { above: 4 mm }, { at: 50 %, below: 1 mm }, { at: 60 mm, below: 1 mm }] }",
      ),
    );
    expect(rowsOf(figures, /^Spine/u).map(({ what, asked, differs }) => [what, asked, differs])).toEqual([
      ["Spine at the heel", "below 5.0 mm", undefined],
      ["Spine half way", "below 1.0 mm", true],
      ["Spine 10 mm behind the tip", undefined, undefined],
      ["Spine at the heel", "above 4.0 mm", undefined],
      ["Spine at 60.0 mm from the heel", "below 1.0 mm", true],
    ]);
  });

  it("never has its limits the wrong way round, and ends them at every limit that is met", async () => {
    const figures = await figuresOf(
      asking("{ thickness: [{ below: 4.7 mm }, { above: 4.5 mm }, { at: tip, below: 2.5 mm }] }"),
    );
    expect(rowsOf(figures, /^Spine at the heel$/u).map(({ within }) => within)).toEqual([
      "4.5 mm to 4.7 mm",
      "4.5 mm to 4.7 mm",
    ]);
    for (const { what, within } of figures) {
      const ends = [...(within ?? "").matchAll(/(\d+(?:\.\d+)?) (?:mm|g)\b/gu)].map(([, end]) => Number(end));
      const [low = 0, high = low] = ends;
      expect(low, what).toBeLessThanOrEqual(high);
    }
  });
});

/** Every ask that there is, so that it is missed: of the demo, of a stack of layers, of a core with cladding. */
const MISSED: Readonly<Record<keyof typeof ASK_KINDS, string>> = {
  mass: "{ below: 100 g }",
  balance: "{ above: 300 mm }",
  overallLength: "{ below: 100 mm }",
  edgeLength: "{ below: 50 mm }",
  heelHeight: "{ below: 5 mm }",
  handleLength: "{ below: 10 mm }",
  thickness: "{ at: 30 %, below: 0.5 mm }",
  behindEdge: "{ up: 2 mm, above: 9 mm }",
  bevelAngle: "{ above: 40 deg }",
  sharpeningAngle: "{ above: 40 deg }",
  layers: "{ above: 100000 }",
  coreLine: "{ between: [60 mm, 70 mm] }",
};
const OTHER_FILES: Readonly<Record<string, readonly [folder: string, knife: string]>> = {
  layers: ["pattern-welded-bowie", "pattern-welded-bowie.knife.yaml"],
  coreLine: ["three-layer-petty", "three-layer-petty.knife.yaml"],
};

describe("not met as drawn", () => {
  it.each(Object.entries(MISSED))("is marked: %s", async (name, test) => {
    const [folder, file] = OTHER_FILES[name] ?? [];
    const knife = folder === undefined ? DEMO_KNIFE : exampleFile(folder, file ?? "");
    const shop = folder === undefined ? DEMO_FILES["shop.yaml"] : exampleFile(folder, "shop.yaml");
    const asks = `  asks: { ${name}: ${test} }\n`;
    const figures = await figuresOf(knife.replace(/^ {2}asks:[\s\S]*?(?=^\S)/mu, `${asks}\n`), shop);
    const missed = figures.filter(({ differs }) => differs === true);
    expect(missed).toHaveLength(1);
    expect(missed[0]?.asked).toMatch(/^(?:above |below |)\d/u);
  });

  it("is no row less where every ask is met: one for each", async () => {
    const figures = await figuresOf(DEMO_KNIFE);
    const measured = measure(await loadJob(fakeIo({ files: DEMO_FILES }), FILE, {}));
    expect(figures.filter(({ asked }) => asked !== undefined)).toHaveLength(measured.answers.length);
  });

  it("is told of a hardness that no temper leaves, and of one that is to be tested it says so", async () => {
    const [hard] = rowsOf(await figuresOf(asking("{ hardness: { above: 68 } }")), /^Hardness$/u);
    expect(hard).toMatchObject({ asked: "above 68 HRC", differs: true });
    const bare = `${DEMO_FILES["shop.yaml"]}`.replace(/^recipes:[\s\S]*?(?=^\S)/mu, "");
    const [soft] = rowsOf(await figuresOf(asking("{ hardness: { about: 59 ± 2 } }"), bare), /^Hardness$/u);
    expect(soft).toMatchObject({ asked: "57 to 61 HRC" });
    expect(soft).not.toHaveProperty("differs");
  });

  it("ends with exit code 4, as check does, and says what", async () => {
    const files = { ...DEMO_FILES, [FILE]: demoWith(["below: 600 g", "below: 500 g"]) };
    const { code, out, io } = await answer(["quote", FILE, "--out", "offer"], { files });
    expect(code).toBe(EXIT.notMet);
    expect(flat(out)).toContain("NOT MET as drawn: mass. The customer's sheet marks it.");
    expect(io.disk.text("/shop/offer/harvest.quote.html")).toContain("<strong>NOT MET</strong>");
  });

  it("says what is at risk of not coming out as it is promised", async () => {
    const files = { ...DEMO_FILES, [FILE]: demoWith(["below: 600 g", "below: 580 g"]) };
    const { code, out } = await answer(["quote", FILE], { files });
    expect(code).toBe(EXIT.done);
    expect(flat(out)).toContain("At risk: mass. The sheet promises the limit");
    expect(out).not.toContain("NOT MET");
  });

  it("ends with exit code 4 where a finding says stop, whoever it comes from", async () => {
    const shop = `${DEMO_FILES["shop.yaml"]}\noven: { length: 100 mm }\n`;
    const files = { [FILE]: DEMO_KNIFE, "shop.yaml": shop };
    const checked = await answer(["check", FILE], { files });
    const quoted = await answer(["quote", FILE], { files });
    expect([checked.code, quoted.code]).toEqual([EXIT.notMet, EXIT.notMet]);
    expect(quoted.err).toContain("1 STOP");
  });
});
