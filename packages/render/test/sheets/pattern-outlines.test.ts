import {
  mirrorPath,
  mirrorSegment,
  nearestOnPath,
  offsetPath,
  type Path,
  pathBounds,
  pointAt,
  type Segment,
} from "@scantling/geometry";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  checkLayout,
  type Drawing,
  type DrawingItem,
  flattenItems,
  type PatternModel,
  patternContents,
  patternSheet,
  textBox,
} from "../../src/index.js";
import { fixtures, harvestKnife } from "../fixtures.js";
import { randomModel } from "../random-model.js";

/** The same shape nearer to its middle or farther: a stand-in for other outlines. */
function scaled(path: Path, factor: number): Path {
  const { minX, maxX, minY, maxY } = pathBounds(path);
  const [x0, y0] = [(minX + maxX) / 2, (minY + maxY) / 2];
  const at = ({ x, y }: { x: number; y: number }) => ({
    x: x0 + (x - x0) * factor,
    y: y0 + (y - y0) * factor,
  });
  const grow = (segment: Segment): Segment => {
    const ends = { from: at(segment.from), to: at(segment.to) };
    if (segment.kind === "cubic")
      return { ...segment, ...ends, control1: at(segment.control1), control2: at(segment.control2) };
    return segment.kind === "arc"
      ? { ...segment, ...ends, centre: at(segment.centre), radius: segment.radius * factor }
      : { ...segment, ...ends };
  };
  return { ...path, segments: path.segments.map(grow) };
}

const nested = (model: PatternModel): PatternModel => ({
  ...model,
  state: "as forged",
  further: [
    { state: "ready to harden", outline: scaled(model.outline, 0.96), holes: model.holes },
    { state: "finished", outline: scaled(model.outline, 0.93) },
  ],
});

const pathsNamed = (drawing: Drawing, name: string): readonly Path[] =>
  flattenItems(drawing.items).flatMap((item) =>
    item.kind === "path" && item.name === name ? item.paths : [],
  );
const roleOf = (drawing: Drawing, name: string): string | undefined =>
  flattenItems(drawing.items).flatMap((item) =>
    item.kind === "path" && item.name === name ? [item.role] : [],
  )[0];
const words = (drawing: Drawing): string[] =>
  flattenItems(drawing.items).flatMap((item) => (item.kind === "text" ? [item.text] : []));

/** Middles of the dots that end leaders. */
const dotsOf = (drawing: Drawing): { x: number; y: number }[] =>
  flattenItems(drawing.items).flatMap((item) => {
    const arc = item.kind === "path" && item.fill === "black" ? item.paths[0]?.segments[0] : undefined;
    return arc?.kind === "arc" ? [arc.centre] : [];
  });

describe.each(Object.entries(fixtures))("several outlines of the %s on one sheet", (_, make) => {
  const drawing = patternSheet(nested(make()));

  it("are told apart by kinds of line, the outermost wide, and by a label on each", () => {
    const roles = ["outline", "outline-2", "outline-3"].map((name) => roleOf(drawing, name));
    expect(roles).toEqual(["outline", "adjacent", "hidden"]);
    for (const state of ["as forged", "ready to harden", "finished"]) expect(words(drawing)).toContain(state);
    const lines = ["outline", "outline-2", "outline-3"].map((name) => pathsNamed(drawing, name)[0]);
    const pointed = dotsOf(drawing).map((dot) =>
      lines.findIndex((line) => line !== undefined && (nearestOnPath(line, dot)?.distance ?? 1) < 1e-9),
    );
    expect(pointed.sort()).toEqual([0, 1, 2]);
  });

  it("can be read, mirrored and with a line to cut along as well", () => {
    const model = nested(make());
    const [cut] = [offsetPath(model.outline, 1.2)];
    for (const mirror of [undefined, true, false]) {
      for (const cutLine of [undefined, { offset: 1.2, paths: cut }]) {
        const asked = {
          ...model,
          ...(mirror === undefined ? {} : { mirror }),
          ...(cutLine === undefined ? {} : { cutLine }),
        };
        expect(checkLayout(patternSheet(asked))).toEqual([]);
      }
    }
  });
});

describe.each(Object.entries(fixtures))("the left face of the %s", (_, make) => {
  const seen = patternContents(make())[0];
  const turned = patternContents({ ...make(), mirror: true })[0];
  const itemsOf = (content: typeof seen): Exclude<DrawingItem, { kind: "group" }>[] =>
    flattenItems(content?.view?.items ?? []);

  it("has every line of the steel exactly where its mirror image is", () => {
    const steelOf = (content: typeof seen): Exclude<DrawingItem, { kind: "group" }>[] =>
      flattenItems(
        (content?.view?.items ?? []).filter((item) => item.kind === "group" && item.name === "knife"),
      );
    const [right, left] = [steelOf(seen), steelOf(turned)];
    expect(right.length).toBeGreaterThan(5);
    expect(left).toHaveLength(right.length);
    for (const [index, item] of right.entries()) {
      const other = left[index];
      if (item.kind === "path" && other?.kind === "path") {
        expect(other.paths.map(({ segments }) => segments)).toEqual(
          item.paths.map(({ segments }) => segments.map(mirrorSegment)),
        );
      }
      if (item.kind === "circle" && other?.kind === "circle") {
        expect(other.centre).toEqual({ x: 0 - item.centre.x, y: item.centre.y });
      }
    }
  });

  it("has lettering that reads as ever: the same words, level or from the right", () => {
    const texts = (content: typeof seen) => itemsOf(content).filter((item) => item.kind === "text");
    const [right, left] = [texts(seen), texts(turned)];
    expect(left.map(({ text }) => text).sort()).toEqual(right.map(({ text }) => text).sort());
    expect(left.every(({ rotation }) => rotation === 0 || rotation === Math.PI / 2)).toBe(true);
    // Level words stand where their mirror image would.
    for (const item of right.filter(({ rotation }) => rotation === 0)) {
      const box = textBox(item);
      const twin = left.find(
        (other) => other.text === item.text && Math.abs(textBox(other).minX + box.maxX) < 1e-9,
      );
      expect(twin, item.text).toBeDefined();
    }
  });

  it("is called so, in the name, in the title, in the title block and large on the sheet", () => {
    expect(turned).toMatchObject({ name: "pattern-mirrored" });
    expect(turned?.title).toMatch(/, left face$/);
    const sheet = patternSheet({ ...make(), mirror: true });
    expect(words(sheet)).toContain("LEFT FACE, TIP TO THE LEFT");
    expect(words(sheet)).toContain("Outline, left face");
    expect(sheet.description).toContain("tip to the left");
    expect(words(patternSheet({ ...make(), mirror: false }))).toContain("RIGHT FACE, TIP TO THE RIGHT");
    expect(words(patternSheet(make())).join(" ")).not.toMatch(/face/i);
    expect(checkLayout(sheet)).toEqual([]);
  });

  it("has figures on the left of upright dimension lines, as on the right face", () => {
    for (const content of [seen, turned]) {
      const items = itemsOf(content);
      const uprights = items.flatMap((item) =>
        item.kind === "path" && item.role === "dimension" && item.fill === undefined
          ? item.paths.flatMap(({ segments }) => segments.filter(({ from, to }) => from.x === to.x))
          : [],
      );
      for (const text of items.filter((item) => item.kind === "text")) {
        if (text.rotation === 0 || text.text.startsWith("[")) continue;
        const beside = uprights.filter(
          ({ from, to }) =>
            Math.min(from.y, to.y) <= text.at.y &&
            text.at.y <= Math.max(from.y, to.y) &&
            Math.abs(from.x - text.at.x) < 3.5 * 1.7,
        );
        expect(
          beside.some(({ from }) => from.x > text.at.x),
          text.text,
        ).toBe(true);
      }
    }
  });
});

describe("what lies on a face", () => {
  it("is seen on its own side and hidden from the other", () => {
    const { outline, ...rest } = harvestKnife();
    const rim = scaled(outline, 0.1);
    const fuller = { from: { x: 0, y: 70 }, to: { x: 60, y: 70 }, radius: 10, depth: 0.5, rim };
    const model = { ...rest, outline, fullers: [{ ...fuller, faces: "left" as const }] };
    expect(roleOf(patternSheet(model), "fuller-1")).toBe("hidden");
    expect(roleOf(patternSheet({ ...model, mirror: true }), "fuller-1")).toBe("thin");
    expect(words(patternSheet(model))).toContain("left, behind");
    expect(words(patternSheet({ ...model, mirror: true }))).toContain("left, seen");
  });
});

describe("a line to cut along", () => {
  it.each([0.8, -0.5])("is drawn beside the dashed outline and says how far, %s mm", (offset) => {
    const model = harvestKnife();
    const paths = offsetPath(model.outline, offset);
    const drawing = patternSheet({ ...model, cutLine: { offset, paths } });
    expect(pathsNamed(drawing, "cut-line")).toEqual(paths);
    expect(pathsNamed(drawing, "outline")).toEqual([model.outline]);
    expect([roleOf(drawing, "cut-line"), roleOf(drawing, "outline")]).toEqual(["cut", "hidden"]);
    expect(words(drawing)).toContain(offset > 0 ? "cut line, outside" : "cut line, inside");
    // 0.8 / 25.4 = 0.0315, 0.5 / 25.4 = 0.0197
    expect(words(drawing)).toContain(offset > 0 ? '0.8 mm [0.031"]' : '0.5 mm [0.020"]');
    expect(words(drawing)).toContain("True size is the middle of each line.");
    expect(checkLayout(drawing)).toEqual([]);
    const line = paths[0];
    const most = Math.max(
      ...(line?.segments ?? []).flatMap((segment) =>
        Array.from({ length: 50 }, (_, i) => {
          const found = nearestOnPath(model.outline, pointAt(segment, i / 49))?.distance ?? 0;
          return Math.abs(found - Math.abs(offset));
        }),
      ),
    );
    expect(most).toBeLessThan(1e-4);
  });
});

it("can be read whatever the knife: nested, mirrored, with a line to cut along", () => {
  fc.assert(
    fc.property(randomModel, fc.boolean(), fc.boolean(), (model, mirror, cut) => {
      const asked = {
        ...nested(model),
        mirror,
        ...(cut ? { cutLine: { offset: 1, paths: [scaled(model.outline, 1.02)] } } : {}),
      };
      expect(checkLayout(patternSheet(asked))).toEqual([]);
    }),
    { seed: 20260201, numRuns: 60 },
  );
});

it("turns an outline over without a change of shape", () => {
  const { outline } = harvestKnife();
  const [seen, turned] = [pathBounds(outline), pathBounds(mirrorPath(outline))];
  expect(turned).toEqual({ minX: 0 - seen.maxX, maxX: 0 - seen.minX, minY: seen.minY, maxY: seen.maxY });
});
