import { describe, expect, it } from "vitest";
import type { Outline } from "../../src/blade/outline.js";
import { outlineFromLandmarks } from "../../src/blade/outline-from-landmarks.js";
import type { LandmarkOutlineSpec, TangSpec } from "../../src/blade/spec.js";
import { SpecError } from "../../src/errors/errors.js";
import { signedArea } from "../../src/plane/measure.js";
import { type Arc, endTangent, type Segment } from "../../src/plane/segment.js";

/** A net maker's knife of our own: a plain rectangle of a blade, so that areas are done by hand. */
const blade: LandmarkOutlineSpec = {
  family: "straight-back",
  edgeLength: 120,
  heelHeight: 30,
  straightEdge: 70,
};
const stick: TangSpec = { form: "hidden", length: 100, heights: { front: 14, middle: 12, butt: 8 } };
const area = (outline: Outline): number => signedArea(outline.path);
const ends = (run: readonly Segment[]): number[][] => [
  ...(run[0] === undefined ? [] : [[run[0].from.x, run[0].from.y]]),
  ...run.map(({ to }) => [to.x, to.y]),
];
const arcsOf = (run: readonly Segment[]): Arc[] => run.filter((segment) => segment.kind === "arc");

describe("a hidden tang", () => {
  it("narrows to both sides of the middle of the blade, between two shoulders", () => {
    const { runs } = outlineFromLandmarks(blade, 10, stick);
    expect(ends(runs.tangTop)).toEqual([
      [-10, 30],
      [-10, 22],
      [-60, 21],
      [-110, 19],
    ]);
    expect(ends(runs.butt)).toEqual([
      [-110, 19],
      [-110, 11],
    ]);
    expect(ends(runs.tangBottom)).toEqual([
      [-110, 11],
      [-60, 9],
      [-10, 8],
    ]);
  });

  it("leaves the ricasso as high as the blade: the heel face goes down the shoulder, then level to the heel", () => {
    const { runs } = outlineFromLandmarks(blade, 10, stick);
    expect(ends(runs.heelFace)).toEqual([
      [-10, 8],
      [-10, 0],
      [0, 0],
    ]);
    expect(ends(outlineFromLandmarks(blade, 0, stick).runs.heelFace)).toEqual([
      [0, 8],
      [0, 0],
    ]);
  });

  it("begins as far below the spine's end as drop says, the middle line with it", () => {
    const { runs } = outlineFromLandmarks(blade, 10, { ...stick, drop: 5 });
    expect(ends(runs.tangTop)).toEqual([
      [-10, 30],
      [-10, 25],
      [-60, 24],
      [-110, 22],
    ]);
    expect(ends(runs.heelFace)[0]).toEqual([-10, 11]);
  });

  it("may have one shoulder only, above or below", () => {
    const below = outlineFromLandmarks(blade, 10, { ...stick, drop: 0, shoulderRadius: 2 });
    expect(ends(below.runs.tangTop)[0]).toEqual([-10, 30]);
    expect(arcsOf(below.runs.tangTop)).toEqual([]);
    expect(arcsOf(below.runs.tangBottom)).toHaveLength(1);
    const above = outlineFromLandmarks(blade, 10, { ...stick, drop: 16, shoulderRadius: 2 });
    expect(arcsOf(above.runs.tangTop)).toHaveLength(1);
    expect(ends(above.runs.heelFace)).toEqual([
      [-10, 0],
      [0, 0],
    ]);
  });

  it("has the area of blade, ricasso and trapezoids", () => {
    const whole = outlineFromLandmarks(blade, 10, stick);
    const bare = outlineFromLandmarks(blade, 0, stick);
    expect(area(whole) - area(bare)).toBeCloseTo(10 * 30, 9);
    const tang = (50 * (14 + 12)) / 2 + (50 * (12 + 8)) / 2;
    // The full tang hangs on the same blade without ricasso: take one tang off, put the other on.
    const full = outlineFromLandmarks(blade, 0, { ...stick, form: "full" });
    expect(area(full)).toBeCloseTo(area(bare), 9);
    const parallel = { front: 14, middle: 14, butt: 14 };
    expect(area(outlineFromLandmarks(blade, 0, { ...stick, heights: parallel })) - area(bare)).toBeCloseTo(
      100 * 14 - tang,
      9,
    );
  });

  it("is drawn the same when it goes right through the handle", () => {
    expect(outlineFromLandmarks(blade, 10, { ...stick, form: "through" })).toEqual(
      outlineFromLandmarks(blade, 10, stick),
    );
  });
});

describe("shoulder fillets", () => {
  const parallel: TangSpec = { ...stick, heights: { front: 14, middle: 14, butt: 14 } };

  it("are quarter circles on a parallel tang, each adding r²(1 − π/4)", () => {
    const sharp = outlineFromLandmarks(blade, 10, parallel);
    const round = outlineFromLandmarks(blade, 10, { ...parallel, shoulderRadius: 3 });
    expect(area(round) - area(sharp)).toBeCloseTo(2 * 9 * (1 - Math.PI / 4), 9);
    const [upper] = arcsOf(round.runs.tangTop);
    expect(upper?.radius).toBeCloseTo(3, 12);
    expect(upper?.centre.x).toBeCloseTo(-13, 12);
    expect(upper?.centre.y).toBeCloseTo(25, 12);
    expect(upper?.sweep).toBeCloseTo(-Math.PI / 2, 12);
    const [lower] = arcsOf(round.runs.tangBottom);
    expect(lower?.centre.x).toBeCloseTo(-13, 12);
    expect(lower?.centre.y).toBeCloseTo(5, 12);
    expect(ends(round.runs.heelFace)).toEqual([
      [-10, 5],
      [-10, 0],
      [0, 0],
    ]);
  });

  it("keep their radius and touch both sides on a tang that narrows", () => {
    const steep: TangSpec = { ...stick, heights: { front: 14, middle: 4, butt: 4 }, length: 20 };
    const { runs } = outlineFromLandmarks(blade, 10, { ...steep, shoulderRadius: 4 });
    for (const run of [runs.tangTop, [...runs.tangBottom, ...runs.heelFace]]) {
      const at = run.findIndex(({ kind }) => kind === "arc");
      const [before, arc, after] = run.slice(at - 1, at + 2) as [Segment, Arc, Segment];
      expect(arc.radius).toBeCloseTo(4, 12);
      for (const [a, b] of [
        [before, arc],
        [arc, after],
      ] as const) {
        const into = endTangent(a, "to");
        const out = endTangent(b, "from");
        expect(into?.x).toBeCloseTo(out?.x ?? Number.NaN, 12);
        expect(into?.y).toBeCloseTo(out?.y ?? Number.NaN, 12);
      }
    }
  });

  it("may take up the whole shoulder", () => {
    const { runs } = outlineFromLandmarks(blade, 10, { ...parallel, shoulderRadius: 8 });
    expect(runs.tangTop.map(({ kind }) => kind)).toEqual(["arc", "line", "line"]);
    expect(ends(runs.heelFace)).toEqual([
      [-10, 0],
      [0, 0],
    ]);
  });
});

describe("a choil", () => {
  it("is a half circle cut up into the level steel behind the heel", () => {
    const plain = outlineFromLandmarks(blade, 10, stick);
    const cut = outlineFromLandmarks(blade, 10, stick, { radius: 3 });
    expect(area(plain) - area(cut)).toBeCloseTo((Math.PI * 9) / 2, 9);
    expect(ends(cut.runs.heelFace)).toEqual([
      [-10, 8],
      [-10, 0],
      [-6, 0],
      [0, 0],
    ]);
    const [notch] = arcsOf(cut.runs.heelFace);
    expect(notch).toMatchObject({ radius: 3, sweep: -Math.PI, to: { x: 0, y: 0 } });
    expect(notch?.centre.x).toBeCloseTo(-3, 12);
    expect(notch?.centre.y).toBeCloseTo(0, 12);
    expect(cut).toMatchObject({ edgeLength: 120, ricasso: 10, handleFront: -10 });
  });

  it("sits above the heel where the full tang's lower side is", () => {
    const full: TangSpec = { form: "full", length: 100, heights: { front: 24, middle: 20, butt: 24 } };
    const cut = outlineFromLandmarks(blade, 10, full, { radius: 5 });
    expect(ends(cut.runs.heelFace)).toEqual([
      [-10, 6],
      [0, 6],
      [0, 0],
    ]);
    expect(area(outlineFromLandmarks(blade, 10, full)) - area(cut)).toBeCloseTo((Math.PI * 25) / 2, 9);
  });
});

describe("tangs and choils that cannot be", () => {
  const codes = (tang: Partial<TangSpec>, ricasso = 10, choil?: number): string[] => {
    try {
      outlineFromLandmarks(
        blade,
        ricasso,
        { ...stick, ...tang },
        choil === undefined ? undefined : { radius: choil },
      );
    } catch (error) {
      if (error instanceof SpecError) return error.issues.map(({ code, path }) => `${code} ${path}`);
      throw error;
    }
    return [];
  };
  const wide = { front: 34, middle: 30, butt: 30 };

  it("are named with their place in the file", () => {
    expect(codes({ heights: { front: 30, middle: 12, butt: 8 } })).toEqual([
      "no-shoulder tang.heights.front",
    ]);
    expect(codes({ drop: 17 })).toEqual(["tang-below-heel tang.drop"]);
    expect(codes({ drop: 30 })).toEqual(["tang-drop-too-deep tang.drop"]);
    expect(codes({ shoulderRadius: 9 })).toEqual(["shoulder-radius-too-large tang.shoulderRadius"]);
    expect(codes({ shoulderRadius: -1 })).toEqual(["negative-length tang.shoulderRadius"]);
    expect(codes({ form: "full", shoulderRadius: 2 })).toEqual([
      "shoulder-radius-unused tang.shoulderRadius",
    ]);
    expect(codes({}, 0, 3)).toEqual(["choil-wider-than-ricasso blade.choil.radius"]);
    expect(codes({}, 10, 5)).toEqual(["choil-wider-than-ricasso blade.choil.radius"]);
    expect(codes({}, 80, 30)).toEqual(["choil-through-spine blade.choil.radius"]);
    expect(codes({}, 10, 0)).toEqual(["zero-length blade.choil.radius"]);
    expect(codes({ form: "full", heights: wide }, 10, 3)).toEqual(["choil-no-corner blade.choil"]);
  });

  it("are all told at once", () => {
    expect(codes({ drop: 17 }, 0, 3)).toEqual([
      "tang-below-heel tang.drop",
      "choil-wider-than-ricasso blade.choil.radius",
    ]);
  });

  it("say the largest fillet that fits, and that one does fit", () => {
    const narrowing = { ...stick, heights: { front: 14, middle: 4, butt: 4 }, length: 20 };
    let room = Number.NaN;
    try {
      outlineFromLandmarks(blade, 10, { ...narrowing, shoulderRadius: 50 });
    } catch (error) {
      const { room: value } = (error instanceof SpecError && error.issues[0]?.values) || {};
      room = typeof value === "object" ? value.value : Number.NaN;
    }
    // The shoulder is 8 deep; the side leans in by atan(5/10), and the fillet turns through that much less than 90°.
    expect(room).toBeCloseTo(8 / Math.tan((Math.PI / 2 - Math.atan(0.5)) / 2), 9);
    expect(() => outlineFromLandmarks(blade, 10, { ...narrowing, shoulderRadius: room })).not.toThrow();
  });
});
