import { describe, expect, it } from "vitest";
import { makeKnife } from "../../src/blade/knife.js";
import { patternGeometry } from "../../src/blade/pattern-geometry.js";
import { expectWithin } from "../numeric/close.js";
import { boxKnife, p } from "./bodies.js";
import { DEGREE, heel } from "./random-knives.js";

const flat = { form: "flat", height: 12, edgeThickness: 0.4 } as const;
const swedge = {
  from: { kind: "distance", mm: 60 },
  to: { kind: "distance", mm: 100 },
  angle: 20 * DEGREE,
  thickness: 1.5,
} as const;
const brass = { name: "brass" } as const;

describe("what is ground along the spine and into the faces", () => {
  const spec = boxKnife({
    thickness: [heel(4)],
    bevel: flat,
    swedge,
    fullers: [{ from: p(0, 22), to: p(50, 22), radius: 4, depth: 1, faces: "left" }],
  });
  const pattern = patternGeometry(makeKnife(spec), "finished");

  it("is a swedge that runs out (T − t)/(2 tan σ) below the spine, with a wall at either end", () => {
    const depth = (4 - 1.5) / 2 / Math.tan(20 * DEGREE);
    const [run = []] = pattern.swedge?.line ?? [];
    expect(pattern.swedge?.line).toHaveLength(1);
    const corners = [...run.map(({ from }) => from), ...run.slice(-1).map(({ to }) => to)];
    expect(corners).toHaveLength(4);
    [p(60, 30), p(60, 30 - depth), p(100, 30 - depth), p(100, 30)].forEach((corner, i) => {
      expectWithin(corners[i]?.x ?? Number.NaN, corner.x, 1e-9);
      expectWithin(corners[i]?.y ?? Number.NaN, corner.y, 1e-9);
    });
  });

  it("is a station at each end of the swedge, with what it leaves", () => {
    const found = pattern.stations.map(({ x, thickness, atSwedge }) => [x, thickness, atSwedge]);
    expect(found).toContainEqual([60, 4, 1.5]);
    expect(found).toContainEqual([100, 4, 1.5]);
    expect(found).toContainEqual([0, 4, undefined]);
  });

  it("is a fuller with the rim that its radius and depth make", () => {
    const [fuller] = pattern.fullers;
    const wide = Math.sqrt(2 * 4 * 1 - 1);
    expect(fuller?.faces).toBe("left");
    const ys = fuller?.rim.segments.flatMap(({ from, to }) => [from.y, to.y]) ?? [];
    expectWithin(Math.max(...ys), 22 + wide, 1e-12);
    expectWithin(Math.min(...ys), 22 - wide, 1e-12);
  });

  it("is none of it on the forging", () => {
    const forged = patternGeometry(makeKnife(spec), "forged");
    expect(forged.swedge).toBeUndefined();
    expect(forged.fullers).toEqual([]);
  });
});

describe("fittings on the steel", () => {
  it("have the lines of both faces from side to side of the tang, as far as they are high", () => {
    const block = { material: brass, width: 14 } as const;
    const knife = makeKnife(
      boxKnife(
        {},
        {
          handle: {
            guard: { ...block, at: -20, length: 6, height: 60 },
            bolsters: [{ ...block, at: -40, length: 10, height: 8, centre: 20 }],
          },
        },
      ),
    );
    const { fittings } = patternGeometry(knife, "finished");
    expect(fittings.map(({ name, front, rear }) => [name, front, rear])).toEqual([
      ["bolsters", -40, -50],
      ["guard", -20, -26],
    ]);
    const [bolsters, guard] = fittings.map(({ lines }) =>
      lines.map(({ from, to }) => [from.x, from.y, to.y]),
    );
    expect(bolsters).toEqual([
      [-40, 16, 24],
      [-50, 16, 24],
    ]);
    expect(guard).toEqual([
      [-20, 10, 30],
      [-26, 10, 30],
    ]);
  });
});

describe("a slot", () => {
  it("has both its centres and its rim", () => {
    const at = p(-40, 20);
    const to = p(-60, 22);
    const knife = makeKnife(boxKnife({}, { tang: { holes: [{ kind: "lightening", at, to, diameter: 6 }] } }));
    const [hole] = patternGeometry(knife, "finished").holes;
    expect(hole?.slot?.to).toEqual(to);
    const arcs = hole?.slot?.rim.segments.flatMap((s) => (s.kind === "arc" ? [s.centre] : [])) ?? [];
    expect(arcs).toEqual([to, at]);
  });
});
