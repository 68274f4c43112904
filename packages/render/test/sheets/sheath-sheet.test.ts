import { areaMoments, foldOverSheath, makeKnife, type Path, pathBounds } from "@scantling/geometry";
import { describe, expect, it } from "vitest";
import { hollow } from "../../../../tests/reference/form-blades.js";
import { checkLayout, flattenItems, layOutSheet, papersFor, sheathContents } from "../../src/index.js";
import { handledKnife } from "./random-handles.js";

const head = { code: "T-1", title: "A trial", units: "mm" as const };
const sheath = foldOverSheath(makeKnife(hollow().spec));
const pages = layOutSheet(sheathContents({ ...head, sheath }), { kind: "smallest", papers: papersFor("mm") });
const items = pages.flatMap((page) => flattenItems(page.items));
const pathsOf = (name: string): readonly Path[] =>
  items.flatMap((item) => (item.kind === "path" && item.name === name ? item.paths : []));

describe("a sheath on paper", () => {
  it("is the leather that the geometry cuts, and one layer of welt beside it", () => {
    const [leather] = pathsOf("sheath-cut");
    const [welt] = pathsOf("welt-cut");
    expect(leather).toEqual(sheath.blank);
    expect(areaMoments(welt ?? sheath.blank).area).toBeCloseTo(areaMoments(sheath.welt).area, 6);
    const [one, other] = [pathBounds(welt ?? sheath.blank), pathBounds(leather ?? sheath.blank)];
    const apart =
      one.maxY < other.minY || one.minY > other.maxY || one.maxX < other.minX || one.minX > other.maxX;
    expect(apart).toBe(true);
  });

  it("says how many layers of welt to cut, as many as its table reckons with", () => {
    const textsOf = (leather: number): string[] => {
      const made = foldOverSheath(makeKnife(hollow().spec), { leather });
      const drawn = layOutSheet(sheathContents({ ...head, sheath: made }), {
        kind: "smallest",
        papers: papersFor("mm"),
      });
      return drawn
        .flatMap((page) => flattenItems(page.items))
        .flatMap((item) => (item.kind === "text" ? [item.text] : []));
    };
    // Blade: 5 mm and a little less at its thickest; layers by hand.
    for (const leather of [1.2, 2.6, 6]) {
      const layers = Math.ceil(sheath.bladeThickness / leather);
      const words = layers === 1 ? "WELT: cut 1" : `WELT: cut ${layers}, glue together`;
      expect(textsOf(leather)).toContain(words);
      expect(textsOf(leather).some((text) => text.startsWith(`Welt, cut ${layers}`))).toBe(true);
    }
  });

  it("is the same on both sides of its fold, which is drawn from mouth to front", () => {
    const [fold] = pathsOf("sheath-fold");
    const box = pathBounds(sheath.blank);
    expect(fold?.segments).toMatchObject([
      { from: { x: sheath.mouth, y: sheath.fold }, to: { x: sheath.foldEnd, y: sheath.fold } },
    ]);
    expect(box.maxY - sheath.fold).toBeCloseTo(sheath.fold - box.minY, 9);
  });

  it("has every stitch on both halves, level with one another", () => {
    const pricks = items.filter(({ kind }) => kind === "circle");
    expect(pricks).toHaveLength(2 * sheath.stitches.length);
    const levels = pricks.flatMap((item) => (item.kind === "circle" ? [item.centre.y - sheath.fold] : []));
    expect(levels.reduce((sum, level) => sum + level, 0)).toBeCloseTo(0, 6);
  });

  it("keeps tip and mouth out of the overlaps of tiles", () => {
    const features = sheathContents({ ...head, sheath })[0]?.view?.features ?? [];
    expect(features).toHaveLength(2);
    expect(Math.max(...features.map(({ x }) => x))).toBeCloseTo(105, 6);
  });
});

it("nothing overlaps on the sheaths of 60 random knives", () => {
  for (let index = 0; index < 60; index++) {
    const { name, knife, head: words } = handledKnife(index);
    const contents = sheathContents({ ...words, sheath: foldOverSheath(knife) });
    for (const page of layOutSheet(contents, { kind: "smallest", papers: papersFor(words.units) })) {
      expect(checkLayout(page), name).toEqual([]);
    }
  }
});
