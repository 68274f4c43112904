import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { makeKnife } from "../../src/blade/knife.js";
import { type Outline, RUN_NAMES, type RunName } from "../../src/blade/outline.js";
import { outlineFromDrawing } from "../../src/blade/outline-from-drawing.js";
import { outlineFromLandmarks } from "../../src/blade/outline-from-landmarks.js";
import { outlineFromRuns } from "../../src/blade/outline-from-runs.js";
import type { DrawingOutlineSpec, TangSpec } from "../../src/blade/spec.js";
import { signedArea } from "../../src/plane/measure.js";
import { pointAt, reverseSegment, type Segment } from "../../src/plane/segment.js";
import { pathDataFromSegments } from "../../src/plane/svg-path-data.js";
import type { Vec2 } from "../../src/plane/vec2.js";
import {
  CORNERS,
  codes,
  IDS,
  issuesOf,
  PAGE,
  RUNS,
  runPaths,
  sentences,
  svg,
  WHOLE,
} from "../drawing/drawings.js";
import { between, SEED } from "../plane/arbitraries.js";

const build = (drawing: string, rest: Omit<DrawingOutlineSpec, "drawing"> = { runs: IDS }) =>
  outlineFromDrawing({ drawing, ...rest });
const byCorners = { corners: CORNERS } as const;
const whole = (d: string = WHOLE): string => svg(`<path id="knife" d="${d}"/>`);

/** The same knife written by hand as runs: mm, y up, heel at 0, 0. */
const HAND = outlineFromRuns({
  runs: {
    edge: "M0 0 H100 C140 0 160 10 170 30",
    spine: "L-10 40",
    tangTop: "H-120",
    butt: "A13 13 0 0 1 -120 16",
    tangBottom: "H-10",
    heelFace: "H0 V0",
  },
});

/** Greatest distance between two outlines, run by run and piece by piece, mm. */
function difference(a: Outline, b: Outline): number {
  let worst = 0;
  for (const name of RUN_NAMES) {
    expect(
      a.runs[name].map(({ kind }) => kind),
      name,
    ).toEqual(b.runs[name].map(({ kind }) => kind));
    a.runs[name].forEach((segment, i) => {
      for (let k = 0; k <= 8; k++) {
        const p = pointAt(segment, k / 8);
        const q = pointAt(b.runs[name][i] as Segment, k / 8);
        worst = Math.max(worst, Math.hypot(p.x - q.x, p.y - q.y));
      }
    });
  }
  return worst;
}

describe("an outline from a drawing", () => {
  it("by runs is the one written by hand", () => {
    const { outline, findings } = build(svg(runPaths()));
    expect(difference(outline, HAND)).toBeLessThan(1e-12);
    expect(outline).toMatchObject({ edgeLength: 170, handleFront: -10, ricasso: 10, butt: -128 });
    expect(findings).toEqual([]);
  });

  it("by corners is the same, whichever way round it is drawn and wherever it begins", () => {
    expect(difference(build(whole(), byCorners).outline, HAND)).toBeLessThan(1e-12);
    const back = "M250 70 H150 V54 H140 H30 A13 13 0 0 1 30 30 H140 L320 40 C310 60 290 70 250 70";
    expect(difference(build(whole(back), byCorners).outline, HAND)).toBeLessThan(1e-12);
  });

  it("has straight lines where runs are left out", () => {
    const { edge, spine, tangTop } = IDS;
    const { outline } = build(svg(runPaths({ tangTop: "M30 30 H140" })), { runs: { edge, spine, tangTop } });
    // One line closes back to the heel.
    expect(outline.runs.butt).toEqual([{ kind: "line", from: { x: -120, y: 40 }, to: { x: 0, y: 0 } }]);
    expect(outline.runs.tangBottom).toEqual([]);
  });

  it("has a square front, by run, by corner and as the closing line", () => {
    const runs = { edge: "M150 70 H320", spine: "M320 30 H140" };
    const front = svg(`${runPaths(runs)}<path id="f" d="M320 30V70"/>`);
    const wanted = [{ kind: "line", from: { x: 170, y: 0 }, to: { x: 170, y: 40 } }];
    expect(build(front, { runs: { ...IDS, front: "f" } }).outline.runs.front).toEqual(wanted);
    expect(build(front).outline.runs.front).toEqual(wanted);
    const closed = "M150 70 H320 V30 H30 A13 13 0 0 0 30 54 H150 Z";
    const corners = { ...CORNERS, tip: { x: 320, y: 70 }, spineStart: { x: 320, y: 30 } };
    const { outline } = build(whole(closed), { corners });
    expect(outline.runs.front).toEqual(wanted);
    expect(outline.handleFront).toBe(-10);
    // A sector of radius 13 less the triangle of 24 × 5.
    const segment = 169 * Math.asin(12 / 13) - 60;
    expect(signedArea(outline.path)).toBeCloseTo(170 * 40 + 120 * 24 + segment, 9);
  });

  it("agrees with a ricasso and a tang length within what a drawing can hold", () => {
    const drawing = svg(runPaths());
    const tang: TangSpec = { form: "full", length: 118.03 };
    const spec = { drawing, runs: IDS };
    expect(codes(() => outlineFromDrawing(spec, 10.02, tang))).toEqual([]);
    expect(codes(() => outlineFromDrawing(spec, 11, { ...tang, length: 100, drop: 2 }))).toEqual([
      "runs-disagree blade.ricasso",
      "runs-disagree tang.length",
      "tang-shape-twice tang.drop",
    ]);
  });

  it("makes a knife, with its notes among the findings", () => {
    const drawing = svg(runPaths())
      .replace("<path", '<g transform="matrix(-1 0 0 1 400 0)"><path')
      .replace("</svg>", "</g></svg>");
    const knife = makeKnife({
      steel: { name: "1084" },
      blade: {
        outline: { drawing, runs: IDS },
        thickness: [{ at: { kind: "heel" }, is: 3 }],
        bevel: { form: "flat", height: 15, edgeThickness: 0.4 },
        edgeAngle: 0.3,
      },
      tang: { form: "full" },
    });
    expect(difference(knife.outline, HAND)).toBeLessThan(1e-12);
    expect(knife.findings.map(({ code }) => code)).toContain("drawing-mirrored");
  });
});

describe("scale", () => {
  const scaled = (page: string, factor: number): string =>
    svg(`<g transform="scale(${factor})">${runPaths()}</g>`, page);

  it.each<[string, string, number]>([
    ["cm", 'width="40cm" height="10cm" viewBox="0 0 4000 1000"', 10],
    ["inches", 'width="10in" height="5in" viewBox="0 0 254 127"', 1],
    ["px", 'width="800px" height="200px" viewBox="0 0 800 200"', 96 / 25.4],
    ["px without a viewBox", 'width="400mm" height="100mm"', 96 / 25.4],
    ["pt", 'width="720pt" height="72pt" viewBox="0 0 720 72"', 72 / 25.4],
    ["pc", 'width="60pc" height="6pc" viewBox="0 0 60 6"', 6 / 25.4],
  ])("in %s gives the same outline", (_, page, factor) => {
    expect(difference(build(scaled(page, factor)).outline, HAND)).toBeLessThan(1e-9);
  });

  it("each way its own", () => {
    const page = 'width="400mm" height="100mm" viewBox="0 0 200 100" preserveAspectRatio="none"';
    const halved = svg(`<g transform="scale(0.5 1)">${runPaths()}</g>`, page);
    expect(difference(build(halved).outline, HAND)).toBeLessThan(1e-12);
  });

  it("by two points goes before the file's own, and needs none", () => {
    const scale = { from: { x: 0, y: 0 }, to: { x: 30, y: -40 }, is: 100 };
    for (const page of ["", PAGE, 'width="50%"', 'width="500" height="3" viewBox="0 0 77 8"']) {
      const { outline } = build(svg(`<g transform="scale(.5)">${runPaths()}</g>`, page), {
        runs: IDS,
        scale,
      });
      expect(difference(outline, HAND)).toBeLessThan(1e-9);
    }
  });

  it("by two points keeps the picture's proportion", () => {
    const page = 'width="20" height="10" viewBox="0 0 10 10" preserveAspectRatio="none"';
    const drawing = svg(`<g transform="scale(0.5 1)">${runPaths()}</g>`, page);
    const scale = { from: { x: 10, y: 0 }, to: { x: 60, y: 0 }, is: 100 };
    expect(difference(build(drawing, { runs: IDS, scale }).outline, HAND)).toBeLessThan(1e-9);
  });

  it("applies to corners as drawn", () => {
    const double = (p: Vec2): Vec2 => ({ x: 2 * p.x, y: 2 * p.y });
    const corners = Object.fromEntries(
      Object.entries(CORNERS).map(([name, p]) => [name, double(p)]),
    ) as unknown as typeof CORNERS;
    const drawing = svg(`<path d="${WHOLE}" transform="scale(2)"/>`, 'width="400mm" viewBox="0 0 800 200"');
    expect(difference(build(drawing, { corners }).outline, HAND)).toBeLessThan(1e-12);
  });

  it("that is missing or makes no sense is told", () => {
    const bare = svg(runPaths(), 'width="400" height="100" viewBox="0 0 400 100"');
    expect(codes(() => build(bare))).toEqual(["drawing-no-scale blade.outline.drawing"]);
    expect(sentences(() => build(bare))[0]).toMatch(/mm or in, or add two points.*is: 200 mm \}/);
    const one = { x: 1, y: 1 };
    const with_ = (scale: DrawingOutlineSpec["scale"] & object) =>
      codes(() => build(bare, { runs: IDS, scale }));
    expect(with_({ from: one, to: one, is: 5 })).toEqual(["drawing-scale-points blade.outline.scale"]);
    expect(with_({ from: one, to: { x: 2, y: 2 }, is: 0 })).toEqual([
      "drawing-scale-distance blade.outline.scale.is",
    ]);
    expect(with_({ from: one, to: { x: Number.NaN, y: 2 }, is: Number.NaN })).toContain(
      "drawing-point blade.outline.scale.to",
    );
  });
});

describe("where a drawing lies", () => {
  it("does not matter, and a tip to the left is mirrored and told", () => {
    const moved = svg(`<g transform="translate(-1000 333)">${runPaths()}</g>`);
    expect(difference(build(moved).outline, HAND)).toBeLessThan(1e-9);
    const left = svg(`<g transform="scale(-1 1)">${runPaths()}</g>`);
    const { outline, findings } = build(left);
    expect(difference(outline, HAND)).toBeLessThan(1e-12);
    expect(findings.map(({ code }) => code)).toEqual(["drawing-mirrored"]);
    const corners = Object.fromEntries(
      Object.entries(CORNERS).map(([name, p]) => [name, { x: -p.x, y: p.y }]),
    ) as unknown as typeof CORNERS;
    const cut = build(svg(`<path d="${WHOLE}" transform="scale(-1 1)"/>`), { corners });
    expect(difference(cut.outline, HAND)).toBeLessThan(1e-12);
    expect(cut.findings.map(({ code }) => code)).toEqual(["drawing-mirrored"]);
  });

  it("runs may be drawn in any direction", () => {
    // All 64 ways.
    const there = Object.entries(HAND.runs).filter(([, run]) => run.length > 0);
    const options = { decimals: 9, flipY: true };
    const turned = (run: readonly Segment[], back: boolean): string =>
      pathDataFromSegments(back ? run.map(reverseSegment).reverse() : run, options);
    // The arc is written in two pieces, so areas are compared.
    const wanted = signedArea(HAND.path);
    for (let choice = 0; choice < 2 ** there.length; choice++) {
      const paths = there.map(
        ([name, run], i) => `<path id="${name}" d="${turned(run, ((choice >> i) & 1) === 1)}"/>`,
      );
      const { outline } = build(svg(paths.join("")));
      expect(signedArea(outline.path) / wanted).toBeCloseTo(1, 12);
      expect(outline.edgeLength).toBeCloseTo(170, 9);
    }
  });

  it("random similarities are undone by the groups around them", () => {
    const similarity = fc.record({
      turn: between(-180, 180),
      size: between(0.02, 50),
      x: between(-500, 500),
      y: between(-500, 500),
      mirror: fc.boolean(),
      apart: fc.boolean(),
    });
    fc.assert(
      fc.property(similarity, ({ turn, size, x, y, mirror, apart }) => {
        const angle = (turn / 180) * Math.PI;
        const m = mirror ? -1 : 1;
        // p ↦ size · R(turn) · diag(1, m) · p + (x, y), written out point by point.
        const [cos, sin] = [size * Math.cos(angle), size * Math.sin(angle)];
        const map = (p: Vec2): Vec2 => ({
          x: cos * p.x - sin * m * p.y + x,
          y: sin * p.x + cos * m * p.y + y,
        });
        const at = (px: number, py: number): string => {
          const q = map({ x: px, y: py });
          return `${q.x} ${q.y}`;
        };
        const paths = runPaths({
          edge: `M${at(150, 70)} L${at(250, 70)} C${at(290, 70)} ${at(310, 60)} ${at(320, 40)}`,
          spine: `M${at(320, 40)} L${at(140, 30)}`,
          tangTop: `M${at(140, 30)} L${at(30, 30)}`,
          butt: `M${at(30, 30)} A${13 * size} ${13 * size} 0 0 ${mirror ? 1 : 0} ${at(30, 54)}`,
          tangBottom: `M${at(30, 54)} L${at(140, 54)}`,
          heelFace: `M${at(140, 54)} L${at(150, 54)} L${at(150, 70)}`,
        });
        const back = [`scale(1 ${m})`, `rotate(${-turn})`, `scale(${1 / size})`, `translate(${-x} ${-y})`];
        const drawing = apart
          ? svg(`${back.map((step) => `<g transform="${step}">`).join("")}${paths}</g></g></g></g>`)
          : svg(`<g transform="${back.join(" ")}">${paths}</g>`);
        // Coordinates of up to 25,000 units keep twelve digits, and the least size makes mm of fifty of them.
        expect(difference(build(drawing).outline, HAND)).toBeLessThan(1e-9);
      }),
      { seed: SEED, numRuns: 150 },
    );
  });

  it("an outline written as SVG comes back, by runs and by corners", () => {
    const sizes = fc.record({
      edge: between(60, 300),
      heel: between(18, 90),
      ricasso: between(0, 20),
      tip: between(0.1, 0.9),
    });
    fc.assert(
      fc.property(sizes, ({ edge, heel, ricasso, tip }) => {
        const made = outlineFromLandmarks(
          { family: "drop-point", edgeLength: edge, heelHeight: heel, tipHeight: tip * heel },
          ricasso,
          { form: "full", length: 110 },
        );
        const options = { decimals: 12, flipY: true, offset: { x: 200, y: 100 } };
        const paths = RUN_NAMES.filter((name) => made.runs[name].length > 0).map(
          (name) => `<path id="${name}" d="${pathDataFromSegments(made.runs[name], options)}"/>`,
        );
        const runs = Object.fromEntries(
          RUN_NAMES.filter((name) => made.runs[name].length > 0).map((name) => [name, name]),
        );
        const read = build(svg(paths.join("")), { runs });
        const area = signedArea(made.path);
        expect(Math.abs(signedArea(read.outline.path) / area - 1)).toBeLessThan(1e-9);
        const start = (name: RunName): Vec2 => {
          const { x, y } = (made.runs[name][0] as Segment).from;
          return { x: x + 200, y: 100 - y };
        };
        const cut = build(
          svg(`<path d="${pathDataFromSegments(made.path.segments, { ...options, close: true })}"/>`),
          {
            corners: {
              heel: start("edge"),
              tip: start("spine"),
              handleTop: start("tangTop"),
              buttTop: start("butt"),
              buttBottom: start("tangBottom"),
              handleBottom: start("heelFace"),
            },
          },
        );
        expect(Math.abs(signedArea(cut.outline.path) / area - 1)).toBeLessThan(1e-9);
        expect(cut.outline.handleFront).toBeCloseTo(made.handleFront, 9);
        for (const name of RUN_NAMES) {
          // What a run encloses with the origin: the cut lies where it was.
          const part = (outline: Outline) => signedArea({ segments: outline.runs[name], closed: true });
          expect(Math.abs(part(cut.outline) - part(made))).toBeLessThan(1e-8);
        }
      }),
      { seed: SEED, numRuns: 60 },
    );
  });
});

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
