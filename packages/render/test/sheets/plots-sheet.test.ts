import { pathBounds } from "@scantling/geometry";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { boxOfItems } from "../../src/box.js";
import { checkLayout } from "../../src/check-layout.js";
import { type Drawing, type DrawingItem, flattenItems, type PathItem } from "../../src/drawing.js";
import { layOutSheet } from "../../src/lay-out/lay-out-sheet.js";
import type { PlotsModel } from "../../src/models/plots-model.js";
import { paperNamed } from "../../src/paper.js";
import { stackRows } from "../../src/sheets/plots/ledger.js";
import { plotsContents } from "../../src/sheets/plots-sheet.js";
import { toSvg } from "../../src/svg/to-svg.js";
import { harvestPlots, randomPlots } from "../plots-fixture.js";

const pagesOf = (model: PlotsModel): Drawing[] =>
  layOutSheet(plotsContents(model), {
    kind: "paper",
    paper: paperNamed(model.units === "mm" ? "A4" : "Letter"),
  });

function partOf(model: PlotsModel, name: string): DrawingItem[] {
  const part = plotsContents(model)[0]?.parts.find((each) => each.name === name);
  if (part === undefined) throw new Error(`no ${name}`);
  return part.items({ x: 0, y: 0 });
}
const textsIn = (items: readonly DrawingItem[]): string[] =>
  flattenItems(items).flatMap((item) => (item.kind === "text" ? [item.text] : []));
const framesIn = (
  items: readonly DrawingItem[],
): { from: number; to: number; bottom: number; height: number }[] =>
  items
    .filter(
      (item): item is PathItem => item.kind === "path" && item.role === "thin" && item.fill === undefined,
    )
    .flatMap(({ paths }) => paths.filter(({ closed }) => closed).map(pathBounds))
    .map(({ minX, maxX, minY, maxY }) => ({ from: minX, to: maxX, bottom: minY, height: maxY - minY }));

describe("the sheet of plots", () => {
  it("has five plots of 80 mm, lettering of 2.5 mm at least, and can be read", () => {
    const [content] = plotsContents(harvestPlots());
    expect(content?.trueSize).toBe(false);
    expect(content?.parts.map(({ name }) => name).sort()).toEqual(
      ["plot-area", "plot-ledger", "plot-mass", "plot-plans", "plot-thickness"].sort(),
    );
    for (const part of content?.parts ?? []) {
      const items = part.items({ x: 10, y: 20 });
      const box = boxOfItems(items);
      if (box === undefined) throw new Error("nothing drawn");
      expect(box.minX).toBeGreaterThanOrEqual(10);
      expect(box.minY).toBeGreaterThanOrEqual(20);
      expect(box.maxX).toBeLessThanOrEqual(10 + part.width);
      expect(box.maxY).toBeLessThanOrEqual(20 + part.height);
      expect(part.width).toBe(82);
      for (const item of flattenItems(items))
        if (item.kind === "text") expect(item.height).toBeGreaterThanOrEqual(2.5);
    }
    for (const page of pagesOf(harvestPlots())) expect(checkLayout(page)).toEqual([]);
  });

  it.each(["A4", "Letter"] as const)("is one page of %s", (paper) => {
    expect(
      layOutSheet(plotsContents(harvestPlots()), { kind: "paper", paper: paperNamed(paper) }),
    ).toHaveLength(1);
  });

  it("can be read with any figures and any names", () => {
    fc.assert(
      fc.property(randomPlots, (model) => {
        for (const page of pagesOf(model)) expect(checkLayout(page)).toEqual([]);
      }),
      { seed: 44, numRuns: 60 },
    );
  });

  it("is drawn wider where more width is asked for", () => {
    const [content] = plotsContents(harvestPlots(), 120);
    expect(content?.parts.every(({ width }) => width === 122)).toBe(true);
  });

  it("is the golden drawing", async () => {
    const pages = layOutSheet(plotsContents(harvestPlots()), { kind: "paper", paper: paperNamed("A3") });
    expect(pages).toHaveLength(1);
    const [page] = pages;
    if (page === undefined) throw new Error("no page");
    await expect(await toSvg(page)).toMatchFileSnapshot("../golden/plots-mg-14.svg");
  });
});

describe("the plot of steel along the blade", () => {
  it("draws areas that are to one another as the volumes", () => {
    const { area } = harvestPlots();
    const drawnArea = (name: string): number => {
      const found = partOf(harvestPlots(), "plot-area").find(
        (item) => item.kind === "path" && item.name === name,
      );
      if (found?.kind !== "path") throw new Error(`no ${name}`);
      const [path] = found.paths;
      return (path?.segments ?? []).reduce(
        (sum, { from, to }) => sum + ((from.y + to.y) / 2 - baseOf(found)) * (to.x - from.x),
        0,
      );
    };
    const baseOf = ({ paths }: PathItem): number => Math.min(...paths.map((path) => pathBounds(path).minY));
    const sumOf = (points: readonly { x: number; y: number }[]): number =>
      points.slice(1).reduce((sum, to, i) => {
        const from = points[i] ?? to;
        return sum + ((from.y + to.y) / 2) * (to.x - from.x);
      }, 0);
    const billet = area.billet;
    if (billet === undefined) throw new Error("no billet");
    const scale = drawnArea("area-billet") / (billet.area * billet.length);
    expect(drawnArea("area-finished") / scale).toBeCloseTo(sumOf(area.finished), 3);
    expect(drawnArea("area-forged") / scale).toBeCloseTo(sumOf(area.forged), 3);
  });

  it("says the same in both units", () => {
    expect(textsIn(partOf(harvestPlots(), "plot-area"))).toContain("67.4 cm³ [4.11 in³]");
    expect(textsIn(partOf({ ...harvestPlots(), units: "in" }, "plot-area"))).toContain("4.11 in³ [67.4 cm³]");
  });
});

describe("words of the plots", () => {
  it("say that the billet is told without its spare, which the bar as cut has", () => {
    const texts = textsIn(partOf(harvestPlots(), "plot-area"));
    expect(texts).toContain("welded billet without spare");
    expect(texts).toContain("length without spare");
  });

  it("tell the height above the edge in the sheet's own unit first", () => {
    const labelOf = (units: "mm" | "in"): string | undefined =>
      textsIn(partOf({ ...harvestPlots(), units }, "plot-thickness")).find((text) => /above edge/.test(text));
    expect(labelOf("mm")).toBe("finished, 1 mm above edge");
    expect(labelOf("in")).toBe('finished, 0.039" [1 mm] above edge');
  });

  it("say where the spine steps because of a swedge", () => {
    const model = harvestPlots();
    const swedged = { ...model, thickness: { ...model.thickness, swedge: { from: 140, to: 210 } } };
    const wordsOf = (of: PlotsModel): string => textsIn(partOf(of, "plot-thickness")).join(" ");
    expect(wordsOf(swedged)).toContain("Steps: ends of the swedge, 140 mm and 210 mm");
    expect(wordsOf(model)).not.toContain("swedge");
  });
});

describe("the ledger as a stacked bar", () => {
  it("begins every row where the one before it ended, and ends with the bars", () => {
    const rows = stackRows(harvestPlots().ledger);
    const added = rows.filter(({ total }) => !total);
    for (const [index, row] of added.entries()) {
      expect(row.from).toBeCloseTo(added[index - 1]?.to ?? 528, 9);
      expect(row.to - row.from).toBeCloseTo(row.mass, 9);
    }
    expect(added.at(-1)?.to).toBeCloseTo(1215, 9);
    // A state of the steel reaches as far as the rows before it.
    for (const [index, row] of rows.entries()) {
      if (row.total && index > 0) expect(row.to).toBeCloseTo(rows[index - 1]?.to ?? Number.NaN, 9);
    }
  });

  it("draws each row as long as its mass, and all of them again in the last bar", () => {
    const model = harvestPlots();
    const frames = framesIn(partOf(model, "plot-ledger"));
    const lastBar = Math.min(...frames.map(({ bottom }) => bottom));
    const single = frames.filter(({ bottom }) => bottom !== lastBar);
    const scale = 80 / 1215;
    expect(single).toHaveLength(model.ledger.length - 1);
    for (const [index, frame] of single.entries()) {
      expect(frame.to - frame.from).toBeCloseTo((model.ledger[index]?.mass ?? 0) * scale, 9);
    }
    const parts = frames.filter(({ bottom }) => bottom === lastBar);
    expect(parts.reduce((sum, { from, to }) => sum + to - from, 0)).toBeCloseTo(80, 9);
    for (const [index, part] of parts.entries())
      expect(part.from).toBeCloseTo(parts[index - 1]?.to ?? part.from, 9);
  });

  it("labels every row with its mass and its share", () => {
    const texts = textsIn(partOf(harvestPlots(), "plot-ledger"));
    for (const words of [
      "finished blade",
      "528 g",
      "43 %",
      "+ sharpening",
      "0.4 g",
      "<0.1 %",
      "bars as cut",
      "100 %",
    ]) {
      expect(texts).toContain(words);
    }
  });

  it("says why there is none", () => {
    const model = {
      ...harvestPlots(),
      ledger: [],
      plans: [],
      noLedger: "No bars are known.",
      noPlans: "None fit.",
    };
    expect(textsIn(partOf(model, "plot-ledger"))).toEqual(["Steel ledger", "No bars are known."]);
    expect(textsIn(partOf(model, "plot-plans"))).toEqual(["Plans", "None fit."]);
    for (const page of pagesOf(model)) expect(checkLayout(page)).toEqual([]);
  });
});

describe("the plots of mass and plans", () => {
  it("draws the interval, what was asked, and the causes to scale", () => {
    const items = partOf(harvestPlots(), "plot-mass");
    const [interval, asked, ...causes] = framesIn(items);
    if (interval === undefined || asked === undefined) throw new Error("no bars");
    const perGram = (interval.to - interval.from) / (598 - 536);
    // Both end where their upper limits are: 600 g lies 2 g beyond 598 g.
    expect(asked.to - interval.to).toBeCloseTo(2 * perGram, 9);
    const lengths = causes.map(({ from, to }) => to - from);
    expect(lengths.map((length) => length / (lengths[0] ?? 1))).toEqual(
      [1, 2 / 7, 1 / 7].map((n) => expect.closeTo(n, 9)),
    );
    const texts = textsIn(items);
    expect(texts).toContain("567 g [1 lb 4 oz]; 95 in 100: 536 g to 598 g");
    expect(texts).toContain("asked: 600 g or less");
  });

  it("draws the plans' figures to one scale each, and says where one has no price", () => {
    const items = partOf(harvestPlots(), "plot-plans");
    const texts = textsIn(items);
    expect(texts.filter((text) => text === "no price")).toHaveLength(1);
    expect(texts).toContain("10.92 EUR");
    const bars = framesIn(items).map(({ from, to }) => to - from);
    expect((bars[0] ?? 0) / (bars[2] ?? 1)).toBeCloseTo(1215 / 1320, 9);
    // Three of the bars, three of the reach, two of the costs.
    expect(bars).toHaveLength(8);
    // Joints are few: they are told, not drawn.
    expect(texts.filter((text) => /, \d joints?$/.test(text))).toHaveLength(2);
  });
});
