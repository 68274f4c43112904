import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { makeKnife } from "../../src/blade/knife.js";
import { type Outline, RUN_NAMES, type RunName } from "../../src/blade/outline.js";
import { outlineFromDrawing } from "../../src/blade/outline-from-drawing.js";
import { outlineFromLandmarks } from "../../src/blade/outline-from-landmarks.js";
import type { DrawingOutlineSpec, TangSpec } from "../../src/blade/spec.js";
import { signedArea } from "../../src/plane/measure.js";
import { reverseSegment, type Segment } from "../../src/plane/segment.js";
import { pathDataFromSegments } from "../../src/plane/svg-path-data.js";
import type { Vec2 } from "../../src/plane/vec2.js";
import { CORNERS, codes, IDS, PAGE, runPaths, sentences, svg, WHOLE } from "../drawing/drawings.js";
import { between, SEED } from "../plane/arbitraries.js";
import { build, byCorners, difference, HAND, whole } from "./drawn-knife.js";

describe("an outline from a drawing", () => {
  it("is what the documentation's example says", () => {
    const { outline } = outlineFromDrawing({
      drawing: `<svg xmlns="http://www.w3.org/2000/svg" width="300mm" height="60mm" viewBox="0 0 300 60">
        <path id="a" d="M120 45 H240 Q270 45 280 25"/><path id="b" d="M280 25 L120 15"/>
        <path id="c" d="M120 15 H10 V40 H120"/></svg>`,
      runs: { edge: "a", spine: "b", tangTop: "c" },
    });
    expect(outline.edgeLength).toBe(160);
  });

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
