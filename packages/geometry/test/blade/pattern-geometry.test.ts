import { describe, expect, it } from "vitest";
import { makeKnife } from "../../src/blade/knife.js";
import { patternGeometry } from "../../src/blade/pattern-geometry.js";
import type { Segment } from "../../src/plane/segment.js";
import { expectWithin } from "../numeric/close.js";
import { boxKnife, p } from "./bodies.js";
import { distanceField } from "./independent-parts.js";
import { heel, share, tip } from "./random-knives.js";

const points = (run: readonly Segment[]): { x: number; y: number }[] => [
  ...run.map(({ from }) => from),
  ...run.slice(-1).map(({ to }) => to),
];

describe("the pattern of a box knife", () => {
  const spec = boxKnife(
    {
      thickness: [heel(4), share(0.5, 3.5), tip(2)],
      bevel: { form: "flat", height: [heel(12), tip(20)], edgeThickness: 0.4 },
    },
    { tang: { buttThickness: 2.4, holes: [{ kind: "pin", at: p(-60, 20), diameter: 4 }] } },
  );
  const knife = makeKnife(spec);
  const pattern = patternGeometry(knife, "finished");

  it("has a station at butt, handle front, heel, every thickness station and tip, with what a caliper reads", () => {
    expect(pattern.stations.map(({ x }) => x)).toEqual([-100, -20, 0, 60, 120]);
    expect(pattern.stations.map(({ thickness }) => thickness)).toEqual([2.4, 4, 4, 3.5, 2]);
    expect(pattern.stations.map(({ top }) => top)).toEqual([30, 30, 30, 30, 30]);
    expect(pattern.stations.map(({ bottom }) => bottom)).toEqual([10, 10, 0, 0, 0]);
  });

  it("shows the holes, and none before they are drilled", () => {
    expect(pattern.holes).toEqual([{ centre: p(-60, 20), diameter: 4, kind: "pin" }]);
    expect(patternGeometry(knife, "undrilled").holes).toEqual([]);
  });

  it("draws the plunge across the heel and the bevel line from 12 to 20", () => {
    const [plunge, ...runs] = pattern.bevelLine;
    expect(plunge).toHaveLength(1);
    expectWithin(plunge?.[0]?.from.y ?? Number.NaN, 0, 1e-6);
    const line = points(runs.flat());
    expectWithin(line[0]?.x ?? Number.NaN, 0, 1e-6);
    expectWithin(line[line.length - 1]?.x ?? Number.NaN, 120, 1e-6);
    for (const { x, y } of line) expectWithin(y, 12 + (8 * x) / 120, 1e-6);
  });
});

describe("the bevel line", () => {
  it("lies at the bevel height from the edge, all along a belly, within a hundredth between its points", () => {
    const outline = {
      family: "vegetable" as const,
      edgeLength: 225,
      heelHeight: 92,
      straightEdge: 120,
      tipHeight: 66,
    };
    const { tang, ...rest } = boxKnife();
    const knife = makeKnife({
      ...rest,
      tang: { ...tang, length: 110 },
      blade: { ...rest.blade, outline, bevel: { form: "flat", height: 30, edgeThickness: 0.4 } },
    });
    const field = distanceField(knife.outline.runs.edge, 200);
    const [, ...runs] = patternGeometry(knife, "finished").bevelLine;
    const segments = runs.flat();
    expect(segments.length).toBeGreaterThan(20);
    for (const { from, to } of segments) {
      for (const q of [from, to]) expectWithin(field(q.x, q.y).distance, 30, 1e-6);
      expectWithin(field((from.x + to.x) / 2, (from.y + to.y) / 2).distance, 30, 0.01);
    }
  });

  it("ends where it runs into the spine, and is left out where the bevel is full", () => {
    const { tang, ...rest } = boxKnife();
    const knife = (height: "full" | number) =>
      makeKnife({
        ...rest,
        tang: { ...tang, length: 100 },
        blade: {
          ...rest.blade,
          outline: { family: "straight-back", edgeLength: 150, heelHeight: 40 },
          bevel: { form: "flat", height, edgeThickness: 0.4 },
        },
      });
    const part = knife(22);
    const [, ...runs] = patternGeometry(part, "finished").bevelLine;
    const line = points(runs.flat());
    const last = line[line.length - 1] ?? p(0, 0);
    expectWithin(last.y, 40, 1e-6, "it ends on the spine");
    expectWithin(distanceField(part.outline.runs.edge, 200)(last.x, last.y).distance, 22, 0.01);
    expect(patternGeometry(knife("full"), "finished").bevelLine).toHaveLength(1);
  });

  it("shows both ends of a plunge that eases in", () => {
    const knife = makeKnife(
      boxKnife({
        plunge: { at: 4, length: 10 },
        bevel: { form: "flat", height: 15, edgeThickness: 0.4 },
      }),
    );
    const upright = patternGeometry(knife, "finished")
      .bevelLine.flat()
      .filter(({ from, to }) => from.x === to.x)
      .map(({ from }) => from.x);
    expect(upright).toEqual([4, 14]);
  });
});
