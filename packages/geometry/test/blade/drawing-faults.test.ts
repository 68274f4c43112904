import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { DrawingOutlineSpec } from "../../src/blade/spec.js";
import { signedArea } from "../../src/plane/measure.js";
import type { Segment } from "../../src/plane/segment.js";
import type { Vec2 } from "../../src/plane/vec2.js";
import { CORNERS, codes, IDS, issuesOf, RUNS, runPaths, sentences, svg, WHOLE } from "../drawing/drawings.js";
import { SEED } from "../plane/arbitraries.js";
import { build, byCorners, difference, HAND, whole } from "./drawn-knife.js";

describe("corners", () => {
  it("cut a curve exactly, at the nearest place", () => {
    // On the line from (320, 40) to (140, 30), 0.3 mm beside it.
    const handleTop = { x: 150, y: 30 + 10 / 18 - 0.3 };
    const { outline, findings } = build(whole(), { corners: { ...CORNERS, handleTop } });
    const spine = outline.runs.spine.at(-1) as Segment;
    expect(outline.runs.spine).toHaveLength(1);
    expect(outline.runs.tangTop).toHaveLength(2);
    expect(outline.runs.tangTop[0]?.from).toEqual(spine.to);
    // On the line y = 40 − (170 − x)/18 of the knife's frame.
    expect(spine.to.y).toBeCloseTo(40 - (10 + spine.to.x) / 18, 12);
    expect(findings.map(({ code, path }) => `${code} ${path}`)).toEqual([
      "drawing-corner-moved blade.outline.corners.handleTop",
    ]);
    const inCurve = build(whole(), { corners: { ...CORNERS, tip: { x: 318.9, y: 42.1 } } }).outline;
    expect(inCurve.runs.edge).toHaveLength(2);
    expect(inCurve.runs.spine).toHaveLength(2);
    expect(signedArea(inCurve.path)).toBeCloseTo(signedArea(HAND.path), 9);
  });

  it("take a joint of the path that is nearly there", () => {
    const { outline, findings } = build(whole(), { corners: { ...CORNERS, tip: { x: 319.98, y: 40.02 } } });
    expect(difference(outline, HAND)).toBeLessThan(1e-12);
    expect(findings).toEqual([]);
  });

  it.each<[string, Partial<typeof CORNERS> | Record<string, Vec2>, string, RegExp]>([
    [
      "beside the path",
      { tip: { x: 330, y: 40 } },
      "drawing-corner-off-path blade.outline.corners.tip",
      /tip at 330, 40 lies 10 mm .* is 320, 40/,
    ],
    [
      "in a wrong order",
      { handleTop: CORNERS.buttTop, buttTop: CORNERS.handleTop },
      "drawing-corner-order blade.outline.corners.buttTop",
      /buttTop does not come after handleTop/,
    ],
    [
      "heel and tip as one",
      { tip: CORNERS.heel },
      "drawing-corners-meet blade.outline.corners.tip",
      /one place/,
    ],
    [
      "without a spine",
      { handleTop: CORNERS.tip },
      "drawing-corners-meet blade.outline.corners.handleTop",
      /spine has no length/,
    ],
    [
      "no numbers",
      { tip: { x: Number.NaN, y: 0 } },
      "drawing-point blade.outline.corners.tip",
      /two plain numbers/,
    ],
  ])("%s", (_, changes, code, says) => {
    const run = () => build(whole(), { corners: { ...CORNERS, ...changes } });
    expect(codes(run)).toEqual([code]);
    expect(sentences(run)[0]).toMatch(says);
  });
});

describe("ends", () => {
  it("that nearly meet are joined and told", () => {
    const { outline, findings } = build(
      svg(runPaths({ spine: "M320.03 40 L140 30", butt: "M30 30.02A13 13 0 0 0 30 54" })),
    );
    expect(outline.edgeLength).toBeCloseTo(170.015, 9);
    expect(outline.runs.edge.at(-1)?.to).toEqual(outline.runs.spine[0]?.from);
    expect(findings).toMatchObject([{ code: "drawing-ends-joined", severity: "note" }]);
    expect(findings[0]?.values).toMatchObject({ gap: { value: expect.closeTo(0.03, 9) } });
    const path = WHOLE.replace("H150 Z", "H150 V69.96");
    expect(build(whole(path), byCorners).findings).toMatchObject([{ code: "drawing-ends-joined" }]);
  });

  it("that do not meet are told with both places", () => {
    const run = () => build(svg(runPaths({ spine: "M319 40 L140 32" })), { runs: IDS });
    // Between edge and spine the front was left out: that gap is a line. The other has nothing left out.
    expect(codes(run)).toEqual(["drawing-gap blade.outline.runs.tangTop"]);
    expect(sentences(run)[0]).toBe(
      "The spine (spine) ends at 140, 32 of the drawing, and the tangTop (tangTop) starts at 140, 30, 2 mm away. Draw them to one point.",
    );
  });

  it("of a path that does not close likewise", () => {
    const run = () => build(whole(WHOLE.replace("H150 Z", "H150 V60")), byCorners);
    expect(codes(run)).toEqual(["drawing-open blade.outline.drawing"]);
    expect(sentences(run)[0]).toBe(
      "The path knife does not close: it starts at 150, 70 of the drawing and ends at 150, 60, 10 mm away. Close it in the editor.",
    );
  });
});

describe("what is wrong with a drawing", () => {
  const crossing = { spine: "M320 40 L200 90 L140 30" };

  it("runs that cross are named, with the place in the drawing and on the knife", () => {
    const run = () => build(svg(runPaths(crossing)));
    expect(codes(run).every((code) => code.startsWith("outline-crosses-itself blade.outline.runs."))).toBe(
      true,
    );
    // The line from (320, 40) to (200, 90) meets y = 70 at x = 248; the other one at x = 180.
    expect(sentences(run).join("\n")).toMatch(
      /edge with spine, at 98 mm, 0 mm.*In the drawing: edge and spine, at 248, 70\./,
    );
    expect(sentences(run).join("\n")).toMatch(/at 180, 70\./);
  });

  it("a path that crosses itself is named", () => {
    const run = () =>
      build(whole(WHOLE.replace("L140 30", "L200 90 L140 30")), { ...byCorners, path: "knife" });
    expect(new Set(codes(run))).toEqual(new Set(["outline-crosses-itself blade.outline.path"]));
    expect(sentences(run).join("\n")).toMatch(/knife.* at 248, 70/);
    // Where even the order of the corners is lost in the knot.
    const eight = "M150 70 H320 L30 54 V30 L320 20 L140 54 Z";
    const knot = () =>
      build(whole(eight), { corners: { ...CORNERS, tip: { x: 320, y: 70 }, handleTop: { x: 320, y: 20 } } });
    expect(new Set(codes(knot))).toEqual(new Set(["outline-crosses-itself blade.outline.drawing"]));
  });

  it("a blade drawn with its edge up is told so", () => {
    const up = svg(`<g transform="scale(1 -1)">${runPaths()}</g>`);
    expect(codes(() => build(up))).toEqual(["drawing-edge-up blade.outline"]);
    const corners = Object.fromEntries(
      Object.entries(CORNERS).map(([name, p]) => [name, { x: p.x, y: -p.y }]),
    ) as unknown as typeof CORNERS;
    expect(codes(() => build(svg(`<path d="${WHOLE}" transform="scale(1 -1)"/>`), { corners }))).toEqual([
      "drawing-edge-up blade.outline.corners.heel",
    ]);
  });

  it.each<[string, string, Omit<DrawingOutlineSpec, "drawing">, string[]]>([
    ["no ids and no corners", whole(), {}, ["drawing-cut-missing blade.outline"]],
    ["both", whole(), { runs: IDS, ...byCorners }, ["drawing-cut-twice blade.outline.runs"]],
    ["no edge", svg(runPaths()), { runs: { spine: "spine" } }, ["drawing-edge-missing blade.outline.runs"]],
    [
      "an element for two runs",
      svg(runPaths()),
      { runs: { ...IDS, tangTop: "spine" } },
      ["drawing-id-for-two-runs blade.outline.runs.tangTop"],
    ],
    [
      "several ids that are not there",
      svg(runPaths()),
      { runs: { ...IDS, butt: "b", edge: "e" } },
      ["drawing-no-such-id blade.outline.runs.edge", "drawing-no-such-id blade.outline.runs.butt"],
    ],
    ["no such path", whole(), { ...byCorners, path: "k" }, ["drawing-no-such-id blade.outline.path"]],
    ["several paths", svg(runPaths()), byCorners, ["drawing-several-paths blade.outline.drawing"]],
    [
      "a closed run",
      svg(`${runPaths()}<rect id="r" width="5" height="5"/>`),
      { runs: { ...IDS, edge: "r" } },
      ["drawing-run-closed blade.outline.runs.edge"],
    ],
    [
      "a clone as run",
      svg(`${runPaths()}<use id="u" href="#edge"/>`),
      { runs: { ...IDS, edge: "u" } },
      ["drawing-element-clone blade.outline.runs.edge"],
    ],
    ["not SVG", "edge", { runs: IDS }, ["drawing-not-xml blade.outline.drawing"]],
    [
      "no tang",
      svg(runPaths()),
      { runs: { edge: "edge", spine: "spine" } },
      ["no-tang blade.outline.runs.tangTop"],
    ],
    [
      "no scale and no such id at once",
      svg(runPaths(), ""),
      { runs: { ...IDS, butt: "b" } },
      ["drawing-no-scale blade.outline.drawing", "drawing-no-such-id blade.outline.runs.butt"],
    ],
  ])("%s", (_, drawing, spec, wanted) => {
    expect(codes(() => build(drawing, spec))).toEqual(wanted);
  });

  it("never makes a number that is none, whatever the file holds", () => {
    const piece = fc.constantFrom(
      ...[
        "M150 70",
        "H250",
        "C290 70 310 60 320 40",
        "L140 30",
        "A13 13 0 0 0 30 54",
        "a0 0 0 0 0 1 1",
        "Z",
        "z m1e9 0",
        "T5 5",
      ],
      ...["q1e-300 0 1e-300 0", "A1e-9 1e9 45 1 1 3 3", "s1 1 1 1", "l0 0", "L1e6 0", "V-1e6", "x", "1e308"],
    );
    const step = fc.constantFrom(
      "scale(1e-6)",
      "scale(1e6 1)",
      "skewX(89.9999)",
      "rotate(1e9)",
      "matrix(1e150 0 0 1e-150 0 0)",
      "translate(1e9)",
      "scale(0)",
      "?",
    );
    const data = fc.array(piece, { minLength: 1, maxLength: 8 }).map((pieces) => pieces.join(""));
    fc.assert(
      fc.property(
        fc.array(data, { minLength: 6, maxLength: 6 }),
        fc.array(step, { maxLength: 2 }),
        fc.boolean(),
        (ds, steps, one) => {
          const paths = Object.keys(RUNS).map((id, i) => `<path id="${id}" d="${ds[i]}"/>`);
          const inside = `<g transform="${steps.join(" ")}">${one ? `<path id="knife" d="${ds[0]}"/>` : paths.join("")}</g>`;
          const run = () => build(svg(inside), one ? byCorners : { runs: IDS });
          const issues = issuesOf(run);
          if (issues.length > 0) {
            expect(sentences(run).join(" ")).not.toMatch(/NaN|Infinity|undefined/);
          } else {
            expect(JSON.stringify(run().outline)).not.toContain("null");
          }
        },
      ),
      { seed: SEED, numRuns: 400 },
    );
  });
});
