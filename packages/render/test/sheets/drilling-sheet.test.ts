import { crossingsAtX, type Path, pathBounds, pathLength, type Vec2, vec2 } from "@scantling/geometry";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  checkLayout,
  type Drawing,
  type DrillingHole,
  type DrillingModel,
  drillingContents,
  flattenItems,
  layOutSheet,
  type PaperSize,
  type PatternModel,
  papersFor,
} from "../../src/index.js";
import { pathsBehind } from "../../src/sheets/drilling/view.js";
import { boningKnife, fixtures, harvestKnife, slicer } from "../fixtures.js";
import { randomModel } from "../random-model.js";

/** A layout of a pattern's holes; distances by crossings, as a smith would measure them. */
function layoutOf(model: PatternModel): DrillingModel {
  const { minX } = pathBounds(model.outline);
  const { code, title, steel, outline, handleFront, edgeLength, units, revision } = model;
  return {
    code,
    title,
    steel,
    state: model.state,
    outline,
    handleFront,
    edgeLength,
    units,
    ...(revision === undefined ? {} : { revision }),
    holes: model.holes.map(
      (hole): DrillingHole => ({ ...hole, places: [placeOf(hole.centre)], rimToEdge: 5 }),
    ),
  };
  function placeOf(centre: Vec2): DrillingHole["places"][number] {
    const ys = crossingsAtX(outline, centre.x).map(({ point }) => point.y);
    return {
      centre,
      end: centre.x < 0 ? "butt end" : "heel",
      along: centre.x < 0 ? centre.x - minX : centre.x,
      fromTop: Math.max(centre.y, ...ys) - centre.y,
      fromBottom: centre.y - Math.min(centre.y, ...ys),
    };
  }
}

const sheetOf = (model: DrillingModel): Drawing => {
  const [page] = layOutSheet(drillingContents(model), { kind: "smallest", papers: papersFor(model.units) });
  if (page === undefined) throw new Error("no page");
  return page;
};
const words = (drawing: Drawing): string[] =>
  flattenItems(drawing.items).flatMap((item) => (item.kind === "text" ? [item.text] : []));

describe("the drill layout of MG-14", () => {
  const model: DrillingModel = {
    ...layoutOf(harvestKnife()),
    levelEdge: { side: "top", y: 92, rear: -138 },
    forged: { outline: 1.5, butt: 3 },
  };
  const drawing = sheetOf(model);

  it("draws every hole at true size where it is, letter and centre lines to it", () => {
    const circles = flattenItems(drawing.items).filter((item) => item.kind === "circle");
    expect(circles.map(({ centre, radius }) => ({ centre, radius }))).toEqual(
      model.holes.map(({ centre, diameter }) => ({ centre, radius: diameter / 2 })),
    );
    for (const letter of ["A", "B", "C"]) expect(words(drawing)).toContain(letter);
  });

  it("dimensions the centres from the butt end, 138 mm behind the heel, and in from the level top edge, at 92", () => {
    const texts = words(drawing);
    // At the dimension, and in the table with the zeros of its column.
    for (const [mm, inches] of [
      ["112", '4.409"'],
      ["54", '2.126"'],
      ["22", '0.866"'],
    ]) {
      expect(texts.filter((other) => other === `${mm} mm [${inches}]`)).toHaveLength(1);
      expect(texts.filter((other) => other === `${mm}.00 mm [${inches}]`)).toHaveLength(1);
    }
    expect(texts).toContain("16 mm");
    expect(texts).toContain("The top edge of the tang is straight and level: lay the");
    expect(texts.some((text) => text.includes('1.5 mm [0.059"]'))).toBe(true);
  });

  it("is broken off ahead of the handle, on the smallest paper, and whole where the blade has a hole", () => {
    expect(drawing.paper).toBe("A4");
    const named = (name: string, one = drawing): boolean =>
      flattenItems(one.items).some((item) => item.kind === "path" && item.name === name);
    expect(named("break-line")).toBe(true);
    const hanging = { ...harvestKnife().holes[0], centre: vec2(205, 70), diameter: 12, kind: "hanging" };
    const whole = sheetOf(layoutOf({ ...harvestKnife(), holes: [...harvestKnife().holes, hanging] }));
    expect(named("break-line", whole)).toBe(false);
    expect(words(whole)).toContain("heel");
    expect(checkLayout(whole)).toEqual([]);
  });

  it("has a column of drills where some are known", () => {
    expect(words(drawing)).not.toContain("Drill");
    const drilled = sheetOf({ ...model, holes: model.holes.map((hole) => ({ ...hole, drill: "4.1 mm" })) });
    expect(words(drilled)).toContain("Drill");
    expect(words(drilled).filter((text) => text === "4.1 mm")).toHaveLength(3);
  });

  it("is no sheet where nothing is drilled", () => {
    expect(drillingContents({ ...model, holes: [] })).toEqual([]);
  });
});

it.each(Object.entries(fixtures))(
  "can be read: %s, with a level edge and without, in both units",
  (_, make) => {
    for (const units of ["mm", "in"] as const) {
      const model = layoutOf({ ...make(), units });
      expect(checkLayout(sheetOf(model))).toEqual([]);
      const { minX, maxY } = pathBounds(model.outline);
      const level = { ...model, levelEdge: { side: "top" as const, y: maxY, rear: minX } };
      expect(checkLayout(sheetOf(level))).toEqual([]);
    }
  },
);

it("can be read whatever the holes", () => {
  fc.assert(
    fc.property(randomModel, fc.boolean(), (random, level) => {
      const model = layoutOf(random);
      if (model.holes.length === 0) return;
      const { minX, maxY } = pathBounds(model.outline);
      const asked = level ? { ...model, levelEdge: { side: "top" as const, y: maxY, rear: minX } } : model;
      expect(checkLayout(sheetOf(asked))).toEqual([]);
    }),
    { seed: 20260203, numRuns: 60 },
  );
});

it.each([
  ["harvest knife", harvestKnife()],
  ["slicer", slicer()],
  ["boning knife", boningKnife()],
])("an outline is cut exactly at a place, and nothing of it is lost: %s", (_, { outline }) => {
  for (const x of [5, 60, 111.1]) {
    const turned: Path = { ...outline, segments: outline.segments };
    const behind = pathsBehind(turned, x);
    const length = behind.reduce((sum, path) => sum + pathLength(path), 0);
    expect(length).toBeLessThan(pathLength(outline));
    const ends = behind.flatMap(({ segments }) => [segments[0]?.from, segments.at(-1)?.to]);
    const joint = outline.segments[0]?.from;
    for (const end of ends) {
      const atJoint = end?.x === joint?.x && end?.y === joint?.y;
      if (!atJoint) expect(end?.x).toBeCloseTo(x, 9);
    }
    expect(ends.filter((end) => Math.abs((end?.x ?? 0) - x) < 1e-9)).toHaveLength(2);
  }
});

/** The groups of parts on each page of a sheet on this paper. */
const groupsOn = (model: DrillingModel, paper: PaperSize, warnings: readonly string[]): string[][] =>
  layOutSheet(
    drillingContents(model).map((content) => ({ ...content, warnings })),
    { kind: "paper", paper },
  ).map(({ items }) =>
    items.flatMap((item) => (item.kind === "group" && item.name !== undefined ? [item.name] : [])),
  );

it.each([
  ["harvest knife", harvestKnife()],
  ["boning knife", boningKnife()],
])("has the table of centres beside the drawing, whatever stops the work and takes room: %s", (_, made) => {
  const drilled = layoutOf(made);
  const holes = drilled.holes.map((hole) => ({ ...hole, drill: "6.5 mm" }));
  const warnings = [
    "hole C: The centre of this 6.5 mm hole is 9 mm from the butt; at least 9.75 mm is needed.",
  ];
  for (const units of ["mm", "in"] as const) {
    for (const of of ["mm", "in"] as const) {
      const [smallest] = papersFor(of);
      if (smallest === undefined) throw new Error("there is paper");
      const [first, ...others] = groupsOn({ ...drilled, holes, units }, smallest, warnings);
      expect(first).toContain("places");
      expect(others).toEqual([]);
    }
  }
});
