import { nearestOnPath, type Path, pathBounds, pointAt, statePattern } from "@scantling/geometry";
import {
  checkLayout,
  flattenItems,
  type PatternModel,
  patternContents,
  patternSheet,
} from "@scantling/render";
import { describe, expect, it } from "vitest";
import { CommandFailure } from "../../src/failure.js";
import { loadJob } from "../../src/load.js";
import { type Measured, measure } from "../../src/measure.js";
import { makePatternModel } from "../../src/models/pattern-model.js";
import { DEMO_KNIFE, demoWith } from "../support/demo.js";
import { fakeIo } from "../support/fake-io.js";

const FILE = "harvest.knife.yaml";

const measuredOf = async (knife = DEMO_KNIFE): Promise<Measured> =>
  measure(await loadJob(fakeIo({ files: { [FILE]: knife } }), FILE, {}));

const pathsOf = (model: PatternModel, name: string): readonly Path[] =>
  flattenItems(patternContents(model)[0]?.view?.items ?? []).flatMap((item) =>
    item.kind === "path" && item.name === name ? item.paths : [],
  );

describe("several states on one sheet", () => {
  it("is the sheet of one state where only one is asked for", async () => {
    const measured = await measuredOf();
    for (const state of ["finished", "ready", "forged"] as const) {
      expect(makePatternModel(measured, [state])).toEqual(makePatternModel(measured, state));
      expect(makePatternModel(measured, [state])).not.toHaveProperty("further");
    }
  });

  it("nests the finished outline in the forged one as it lies, 1.5 mm in from the sides, with the finished heel at the origin", async () => {
    const measured = await measuredOf();
    const model = makePatternModel(measured, ["finished", "ready", "forged"]);
    expect(model.state).toBe("as forged");
    expect(model.further?.map(({ state }) => state)).toEqual(["ready to harden, finished"]);
    expect(model).not.toHaveProperty("finishedOutline");
    const [inner] = pathsOf(model, "outline-2");
    const [outer] = pathsOf(model, "outline");
    const { outline } = measured.knife;
    for (const [index, segment] of (inner?.segments ?? []).entries()) {
      const own = outline.path.segments[index];
      for (const t of [0, 0.3, 1]) {
        const [a, b] = [pointAt(segment, t), own === undefined ? { x: Number.NaN, y: 0 } : pointAt(own, t)];
        expect(Math.hypot(a.x - b.x, a.y - b.y)).toBeLessThan(1e-12);
      }
    }
    // Edge and spine side moved out by 1.5, tip and butt by 3: 225 × 92 becomes 228 × 95 about the blade.
    if (outer === undefined) throw new Error("no outline");
    const bounds = pathBounds(outer);
    for (const [key, wanted] of Object.entries({ minX: -141, maxX: 228, minY: -1.5, maxY: 93.5 }))
      expect(bounds[key as keyof typeof bounds]).toBeCloseTo(wanted, 9);
    expect(checkLayout(patternSheet(model))).toEqual([]);
  });

  it("has the holes of the finished knife where it has them", async () => {
    const model = makePatternModel(await measuredOf(), ["finished", "forged"]);
    const circles = flattenItems(patternContents(model)[0]?.view?.items ?? []).filter(
      (item) => item.kind === "circle",
    );
    expect(circles.map(({ centre, radius }) => [centre.x, centre.y, radius])).toEqual([
      [-26, 76, 2],
      [-84, 76, 2],
      [-116, 76, 3],
    ]);
  });

  it("names two states together whose outline is one", async () => {
    const model = makePatternModel(await measuredOf(), ["ready", "finished"]);
    expect(model).toMatchObject({ state: "ready to harden, finished", further: [] });
    expect(model.holes).toHaveLength(3);
    expect(checkLayout(patternSheet(model))).toEqual([]);
  });
});

describe("the other face", () => {
  it("has its own bevel line and height", async () => {
    const measured = await measuredOf(
      demoWith(["height: 48, edge", "height: 48, left: { height: 30 }, edge"]),
    );
    const heights = (["right", "left"] as const).map((face) => {
      const { bevelHeight, mirror } = makePatternModel(measured, "finished", { face });
      return [mirror, (bevelHeight?.high ?? 0) - (bevelHeight?.low ?? 0)];
    });
    expect(heights[0]?.[0]).toBe(false);
    expect(heights[0]?.[1]).toBeCloseTo(48, 5);
    expect(heights[1]?.[0]).toBe(true);
    expect(heights[1]?.[1]).toBeCloseTo(30, 5);
    const { bevelLine } = makePatternModel(measured, "finished", { face: "left" });
    expect(bevelLine).toEqual(statePattern(measured.knife, "finished", "left").bevelLine);
  });
});

describe("a line to cut along", () => {
  it.each([0.8, 3, -1])("runs %s mm from the outline", async (cutOffset) => {
    const measured = await measuredOf();
    const { cutLine, outline } = makePatternModel(measured, "finished", { cutOffset });
    expect(cutLine?.offset).toBe(cutOffset);
    expect(cutLine?.paths).toHaveLength(1);
    for (const segment of cutLine?.paths[0]?.segments ?? []) {
      for (let i = 0; i <= 100; i++) {
        const found = nearestOnPath(outline, pointAt(segment, i / 100))?.distance ?? 0;
        expect(Math.abs(found - Math.abs(cutOffset))).toBeLessThan(0.01);
      }
    }
  });

  it("is no line of its own at no distance, and refused where it leaves nothing", async () => {
    const measured = await measuredOf();
    expect(makePatternModel(measured, "finished", { cutOffset: 0 })).not.toHaveProperty("cutLine");
    expect(() => makePatternModel(measured, "finished", { cutOffset: -60 })).toThrow(CommandFailure);
  });
});
