import { heightBesideFillets, type Knife, makeKnife, pathBounds, signedArea } from "@scantling/geometry";
import {
  checkLayout,
  type Drawing,
  flattenItems,
  layOutSheet,
  type PaperName,
  paperNamed,
  type SectionsModel,
  sectionsContents,
} from "@scantling/render";
import { describe, expect, test } from "vitest";
import { nodeIo } from "../../packages/cli/src/io/node-io.js";
import { loadJob } from "../../packages/cli/src/load.js";
import { measure } from "../../packages/cli/src/measure.js";
import { sectionPlaces } from "../../packages/cli/src/models/section-places.js";
import { makeSectionsModel, sectionStations } from "../../packages/cli/src/models/sections-model.js";
import { wholeTable } from "../../packages/render/src/sheets/sections/tables.js";
import { familyKnives } from "../reference/family-knives.js";
import { formKnives } from "../reference/form-blades.js";
import { randomKnife } from "../reference/random/knives.js";
import { filesBelow, ROOT } from "./repository.js";

const EXAMPLES = filesBelow("examples", ".knife.yaml");
const RANDOM = 60;

const exampleModel = async (file: string, at?: string): Promise<SectionsModel> =>
  makeSectionsModel(measure(await loadJob(nodeIo(), `${ROOT}/${file}`, {})), at);

const modelOf = (knife: Knife, units: "mm" | "in", texts: Partial<SectionsModel> = {}): SectionsModel => ({
  code: "S-1",
  title: "Sections",
  steel: "1084",
  outline: knife.outline.path,
  stations: sectionStations(knife, sectionPlaces(knife, units)),
  units,
  ...texts,
});

/** Letters of the stations in the order in which they are drawn, page by page. */
const lettersOn = (pages: readonly Drawing[]): string[][] =>
  pages.map(({ items }) =>
    items.flatMap((item) =>
      item.kind === "group" && item.name?.startsWith("section-") === true ? [item.name.slice(8)] : [],
    ),
  );

const pagesOf = (model: SectionsModel, paper: PaperName): Drawing[] =>
  layOutSheet(sectionsContents(model), { kind: "paper", paper: paperNamed(paper) });

const faultsOf = (pages: readonly Drawing[]) => pages.flatMap((page) => checkLayout(page));

const textsOf = (pages: readonly Drawing[]): string[] =>
  pages.flatMap(({ items }) =>
    flattenItems(items).flatMap((item) => (item.kind === "text" ? [item.text] : [])),
  );

describe.each(EXAMPLES)("sections of %s", (file) => {
  test("can be read on A4, Letter and A3", async () => {
    const model = await exampleModel(file);
    for (const paper of ["A4", "Letter", "A3"] as const)
      expect(faultsOf(pagesOf(model, paper)), paper).toEqual([]);
  });
});

describe("sections of every form", () => {
  test.each(formKnives().map((reference) => [reference.name, reference] as const))("%s", (_, { spec }) => {
    const knife = makeKnife(spec);
    expect(faultsOf(pagesOf(modelOf(knife, "mm"), "A4"))).toEqual([]);
    expect(faultsOf(pagesOf(modelOf(knife, "in"), "Letter"))).toEqual([]);
  });

  test(`of ${RANDOM} random knives`, () => {
    for (let i = 0; i < RANDOM; i++) {
      const { knife, kind } = randomKnife(i);
      const units = i % 2 === 0 ? "mm" : "in";
      const faults = faultsOf(pagesOf(modelOf(knife, units), units === "mm" ? "A4" : "Letter"));
      expect(faults, `${i} ${kind}`).toEqual([]);
    }
  }, 300_000);

  test("with hostile texts", () => {
    const { knife } = randomKnife(3);
    for (const text of [
      "",
      "<script>alert(1)</script>",
      "\u202egnp.exe",
      "W".repeat(200),
      "鍛冶屋の包丁".repeat(9),
    ]) {
      const model = modelOf(knife, "mm", { code: text, title: text, steel: text, revision: text });
      expect(faultsOf(pagesOf(model, "A4"))).toEqual([]);
    }
  });
});

describe("what the sheet of the market garden knife shows", () => {
  const FILE = EXAMPLES.find((file) => file.includes("market-garden")) ?? "";

  test("each drawn station at true size: the outline of the part has the section's own size", async () => {
    const model = await exampleModel(FILE);
    const outlines = pagesOf(model, "A4").flatMap(({ items }) =>
      flattenItems(items).flatMap((item) => (item.kind === "path" && item.role === "outline" ? [item] : [])),
    );
    expect(model.stations.filter(({ drawn }) => drawn)).toHaveLength(6);
    for (const { drawn, finished, area } of model.stations) {
      if (!drawn) continue;
      const sizes = finished.map(pathBounds);
      const same = outlines.filter(({ paths }) =>
        paths.every((path, i) => {
          const [drawn, own] = [pathBounds(path), sizes[i]];
          return (
            own !== undefined &&
            Math.abs(drawn.maxX - drawn.minX - (own.maxX - own.minX)) < 1e-9 &&
            Math.abs(drawn.maxY - drawn.minY - (own.maxY - own.minY)) < 1e-9
          );
        }),
      );
      expect(same.length).toBeGreaterThanOrEqual(1);
      const closed = same[0]?.paths ?? [];
      expect(closed.reduce((sum, path) => sum + signedArea(path), 0)).toBeCloseTo(area, 5);
    }
  });

  test("the tang's ends, the heel, the middle and three quarters of the edge and the tip are drawn, in order on three pages of A4", async () => {
    const model = await exampleModel(FILE);
    const places = model.stations.flatMap(({ drawn, place }) => (drawn ? [place] : []));
    expect(places).toEqual([
      "tang, butt",
      "tang, front",
      "heel",
      "50 % of the edge",
      "75 % of the edge",
      "10 mm behind the tip",
    ]);
    const letters = lettersOn(pagesOf(model, "A4"));
    expect(letters).toHaveLength(3);
    expect(letters.flat()).toEqual(["A", "B", "C", "E", "G", "I"]);
  });

  test("every station stands in the table, drawn or not", async () => {
    const model = await exampleModel(FILE);
    const texts = textsOf(pagesOf(model, "A4"));
    expect(model.stations.some(({ drawn }) => !drawn)).toBe(true);
    for (const { x, area } of model.stations) {
      expect(texts).toContain(x.toFixed(2).replace("-", "−"));
      expect(texts).toContain(area.toFixed(1));
    }
  });

  test("ratios, thicknesses, the bevel and the edge, with the asked place among them", async () => {
    const texts = textsOf(pagesOf(await exampleModel(FILE, "40 mm"), "A4"));
    for (const text of ["1 : 1", "2 : 1", "C: heel", "C: edge, 20 : 1", "D: at 40 mm, as asked"]) {
      expect(texts).toContain(text);
    }
    expect(texts.some((text) => /^48 mm \[1\.890?"\]$/.test(text))).toBe(true);
    // Hand sums: the bevel rises (4.6 − 0.3 − 0.5) / 2 over 48 mm at the heel; the 16° plane meets it where
    // 0.25 + 1.9 / 48 · v = v · tan 16°.
    expect(texts).toContain("flat, 2.3° per side");
    const v = 0.25 / (Math.tan((16 * Math.PI) / 180) - 1.9 / 48);
    const behind = 2 * v * Math.tan((16 * Math.PI) / 180);
    expect(texts.some((text) => text.startsWith(`${Number(behind.toFixed(2))} mm [`))).toBe(true);
  });
});

describe("the table's figures", () => {
  test.each(EXAMPLES)("%s: a column has the same digits in all its rows", async (file) => {
    const { rows } = wholeTable(await exampleModel(file));
    for (let column = 1; column < (rows[0]?.length ?? 0); column++) {
      for (const other of [false, true]) {
        const cells = rows
          .map((row) => row[column] ?? "")
          .filter((cell) => /\d/.test(cell) && cell.startsWith("[") === other);
        const decimals = cells.map((cell) => /\.(\d+)/.exec(cell)?.[1]?.length ?? 0);
        expect([...new Set(decimals)].length, cells.join(" ")).toBeLessThan(2);
      }
    }
  });

  test("one size that was taken a hair beside its place is rounded one way", async () => {
    const model = await exampleModel(EXAMPLES[0] ?? "");
    // 1 1/16 in, as it is and as it comes out a millionth of a mm beside a corner.
    const heights = [26.9875, 26.9875 - 4e-7, 26.9875 + 4e-7];
    const stations = model.stations.slice(0, 3).map((station, index) => ({
      ...station,
      height: heights[index] ?? 0,
    }));
    const { header, rows } = wholeTable({ ...model, units: "in", stations });
    const column = header.indexOf("Height");
    expect(rows.flatMap((row) => (row[0] === "" ? [] : [row[column]]))).toEqual(["1.063", "1.063", "1.063"]);
  });
});

describe("a tang with a radius in the corners of its shoulders", () => {
  test("is cut behind it, where it is as high as the pattern says", () => {
    const found = familyKnives().find(({ spec: { tang } }) => tang.shoulderRadius !== undefined);
    if (found === undefined) throw new Error("a knife with fillets");
    const knife = makeKnife(found.spec);
    const station = modelOf(knife, "mm").stations.find(({ place }) => place === "tang, behind the radius");
    const front = heightBesideFillets(knife.outline);
    if (station === undefined || front === undefined) throw new Error("a tang with shoulders");
    expect(station.x).toBeLessThan(knife.outline.handleFront);
    expect(station.x).toBeGreaterThan(knife.outline.handleFront - 6);
    // The tang narrows a little over the length of the radius.
    expect(Math.abs(station.height - (front.high - front.low))).toBeLessThan(0.5);
  });
});

describe("heights above the edge", () => {
  test("are 5, 10 and 20 mm in a shop of mm, and fractions of an inch in one of inches", async () => {
    const file = `${ROOT}/examples/camp-knife/camp-knife.knife.yaml`;
    const ladder = async (units: "mm" | "in") => {
      const model = makeSectionsModel(measure(await loadJob(nodeIo(), file, { units })));
      const texts = textsOf(pagesOf(model, "A4"));
      return {
        heights: [
          ...new Set(model.stations.flatMap(({ aboveEdge }) => aboveEdge.map(({ above }) => above))),
        ].sort((a, b) => a - b),
        heads: texts.filter((text) => / up$/.test(text)),
        words: texts.find((text) => text.includes(" up: ")),
      };
    };
    expect(await ladder("mm")).toEqual({
      heights: [5, 10, 20],
      heads: ["5 up", "10 up", "20 up"],
      words: "5, 10, 20 up: thickness so many mm above the edge.",
    });
    const { heights, heads, words } = await ladder("in");
    for (const [index, inches] of [3 / 16, 3 / 8, 3 / 4].entries())
      expect(heights[index]).toBeCloseTo(inches * 25.4, 12);
    expect(heads).toEqual(["3/16 up", "3/8 up", "3/4 up"]);
    expect(words).toBe("3/16, 3/8, 3/4 up: thickness, inches above the edge.");
  });
});
