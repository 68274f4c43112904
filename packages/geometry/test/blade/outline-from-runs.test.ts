import { describe, expect, it } from "vitest";
import { RUN_NAMES } from "../../src/blade/outline.js";
import { outlineFromLandmarks } from "../../src/blade/outline-from-landmarks.js";
import { outlineFromRuns } from "../../src/blade/outline-from-runs.js";
import type { RunsOutlineSpec, TangSpec } from "../../src/blade/spec.js";
import { SpecError } from "../../src/errors/errors.js";
import type { Issue } from "../../src/errors/issue.js";
import { signedArea } from "../../src/plane/measure.js";
import { pathDataFromSegments } from "../../src/plane/svg-path-data.js";

type Runs = RunsOutlineSpec["runs"];

/** A garden knife of our own, all runs given, each in the plainest way. */
const full = {
  edge: "M0 0 H100 C130 0 155 10 170 30",
  spine: "M170 30 C150 38 120 40 90 40 L-8 40",
  tangTop: "M-8 40 L-110 40",
  butt: "L-110 15",
  tangBottom: "L-60 18 L-8 12",
  heelFace: "L0 12 L0 0",
} satisfies Runs;

const build = (runs: Partial<Record<keyof Runs, string>>, ricasso?: number, tang?: TangSpec) =>
  outlineFromRuns({ runs: { ...full, ...runs } }, ricasso, tang);
const issuesOf = (run: () => unknown): readonly Issue[] => {
  try {
    run();
  } catch (error) {
    if (error instanceof SpecError) return error.issues;
    throw error;
  }
  return [];
};
const codes = (run: () => unknown): string[] => issuesOf(run).map(({ code, path }) => `${code} ${path}`);

describe("explicit runs", () => {
  it("read their stations off the drawing", () => {
    const outline = build({}, 8, { form: "full", length: 102 });
    expect(outline).toMatchObject({ edgeLength: 170, handleFront: -8, ricasso: 8, butt: -110 });
    expect(outline.runs.front).toEqual([]);
  });

  it("close gaps with straight lines: left out runs make the same outline", () => {
    const { edge, spine, tangBottom } = full;
    const sparse = outlineFromRuns({
      runs: {
        edge,
        spine,
        tangTop: "H-110",
        tangBottom: `M-110 15 ${tangBottom}`,
        heelFace: full.heelFace,
      },
    });
    expect(sparse.runs.butt).toEqual([{ kind: "line", from: { x: -110, y: 40 }, to: { x: -110, y: 15 } }]);
    expect(signedArea(sparse.path)).toBeCloseTo(signedArea(build({}).path), 10);
  });

  it("give a front only where edge and spine do not meet", () => {
    const square = outlineFromRuns({
      runs: { edge: "H150", spine: "M150 50 H-5", tangTop: "H-100", butt: "V30", tangBottom: "H0" },
    });
    expect(square.runs.front).toEqual([{ kind: "line", from: { x: 150, y: 0 }, to: { x: 150, y: 50 } }]);
    expect(square.runs.heelFace).toEqual([{ kind: "line", from: { x: 0, y: 30 }, to: { x: 0, y: 0 } }]);
    expect(signedArea(square.path)).toBeCloseTo(150 * 50 + 100 * 20, 10);
  });

  it("come back the same from the path data of an outline from landmarks", () => {
    const drawn = outlineFromLandmarks(
      { family: "vegetable", edgeLength: 225, heelHeight: 92, straightEdge: 150, tipHeight: 80 },
      10,
      { form: "full", length: 128, heights: { front: 28, middle: 25, butt: 30 } },
    );
    const runs = Object.fromEntries(
      RUN_NAMES.map((name) => [name, pathDataFromSegments(drawn.runs[name], { decimals: 9 })]),
    ) as unknown as Runs;
    const read = outlineFromRuns({ runs }, 10);
    expect(Math.abs(signedArea(read.path) / signedArea(drawn.path) - 1)).toBeLessThan(1e-10);
    expect(read.path.segments.map(({ kind }) => kind)).toEqual(drawn.path.segments.map(({ kind }) => kind));
  });

  it("take a start within 1e-6 mm of the last end as that end, arcs included", () => {
    const outline = build({
      edge: "M0.0000004 0 H100 A70 70 0 0 1 169.9999996 30",
      spine: "M170 30.0000003 L-8 40",
    });
    outline.path.segments.forEach((segment, i) => {
      expect(outline.path.segments[(i + 1) % outline.path.segments.length]?.from).toEqual(segment.to);
    });
    expect(outline.runs.edge[0]?.from).toEqual({ x: 0, y: 0 });
  });
});

describe("runs that cannot be", () => {
  it("say which run does not start where the one before it ends", () => {
    const [gap] = issuesOf(() => build({ tangTop: "M-9 40 L-110 40" }));
    expect(gap).toMatchObject({
      code: "runs-gap",
      path: "blade.outline.runs.tangTop",
      values: { gap: { value: 1 } },
    });
    expect(codes(() => build({ heelFace: "L0 12 L0 1" }))).toEqual(["runs-gap blade.outline.runs.heelFace"]);
    expect(codes(() => build({ edge: "M5 0 H100 C130 0 155 10 170 30" }))).toEqual([
      "runs-gap blade.outline.runs.edge",
    ]);
  });

  it("say which run cannot be read, and why", () => {
    const [unread] = issuesOf(() => build({ butt: "L-110 15 oops" }));
    expect(unread).toMatchObject({ code: "path-data-unreadable", path: "blade.outline.runs.butt" });
    expect(String(unread?.values?.["reason"])).toContain("bad command");
  });

  it("say which runs cross, and where", () => {
    const [crossing] = issuesOf(() => build({ edge: "M0 0 H100 C130 0 155 60 170 30" }));
    expect(crossing).toMatchObject({
      code: "outline-crosses-itself",
      path: "blade.outline.runs.edge",
      values: { run: "edge", other: "spine" },
    });
    const x = crossing?.values?.["x"];
    expect(typeof x === "object" && x.value > 100 && x.value < 170).toBe(true);
    const itself = issuesOf(() => build({ tangBottom: "L-60 18 L-60 5 L-70 17 L-50 10 L-8 12" }));
    expect(itself[0]?.text).toContain("with itself");
  });

  it("refuse an outline that runs clockwise, backwards, or has no tang", () => {
    const mirrored = {
      edge: "H150",
      spine: "M150 -50 H-5",
      tangTop: "H-100",
      butt: "V-30",
      tangBottom: "H0",
    };
    expect(codes(() => outlineFromRuns({ runs: mirrored }))).toEqual(["outline-clockwise blade.outline"]);
    const backwards = { edge: "H-150", spine: "V-50 H5", tangTop: "H100", butt: "V-30", tangBottom: "H0" };
    expect(codes(() => outlineFromRuns({ runs: backwards }))).toEqual([
      "edge-not-ahead blade.outline.runs.edge",
      "handle-front-ahead-of-heel blade.outline.runs.spine",
    ]);
    expect(codes(() => outlineFromRuns({ runs: { edge: "H150", spine: "V50 H0" } }))).toEqual([
      "no-tang blade.outline.runs.tangTop",
    ]);
  });

  it("refuse a ricasso, a tang length or a tang shape that says something else", () => {
    const tang: TangSpec = { form: "full", length: 90, drop: 1, heights: { front: 1, middle: 1, butt: 1 } };
    expect(codes(() => build({}, 10, tang))).toEqual([
      "runs-disagree blade.ricasso",
      "runs-disagree tang.length",
      "tang-shape-twice tang.heights",
      "tang-shape-twice tang.drop",
    ]);
  });

  it("fill every placeholder of their messages", () => {
    const found = [
      ...issuesOf(() => build({ tangTop: "M-9 40 L-110 40" })),
      ...issuesOf(() => build({ butt: "oops" })),
      ...issuesOf(() => build({ edge: "M0 0 H100 C130 0 155 60 170 30" })),
      ...issuesOf(() => build({}, 10)),
    ];
    expect(found.length).toBeGreaterThanOrEqual(4);
    for (const { text, values } of found) {
      for (const [, name] of text.matchAll(/\{(\w+)\}/g)) expect(Object.keys(values ?? {})).toContain(name);
    }
  });
});
