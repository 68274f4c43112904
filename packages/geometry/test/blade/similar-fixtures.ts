import type { Outline } from "../../src/blade/outline.js";
import type { KnifeSpec } from "../../src/blade/spec.js";
import { flattenPath } from "../../src/plane/flatten.js";

/** An invented harvest knife by landmarks, with something of everything ahead of the heel. */
export const LANDMARKS: KnifeSpec = {
  steel: { name: "1084", density: 0.00783 },
  blade: {
    outline: { family: "vegetable", edgeLength: 225, heelHeight: 92, straightEdge: 150, tipHeight: 80 },
    ricasso: 10,
    thickness: [
      { at: { kind: "heel" }, is: 4.6 },
      { at: { kind: "distance", mm: 120 }, is: 3.6 },
      { at: { kind: "tip" }, is: 2.2 },
    ],
    bevel: {
      form: "flat",
      height: [
        { at: { kind: "distance", mm: 20 }, is: 30 },
        { at: { kind: "fraction", share: 0.9 }, is: 28 },
      ],
      edgeThickness: 0.5,
    },
    edgeAngle: 0.28,
    plunge: { at: 2, length: 8 },
    fullers: [{ from: { x: 40, y: 45 }, to: { x: 120, y: 45 }, radius: 6, depth: 0.3 }],
    holes: [{ kind: "hanging", at: { x: 180, y: 50 }, diameter: 8 }],
  },
  tang: {
    form: "full",
    length: 128,
    heights: { front: 28, middle: 25, butt: 30 },
    buttThickness: 2.4,
    holes: [{ kind: "pin", at: { x: -26, y: 70 }, diameter: 4 }],
  },
};

/** An invented blade by runs, with circular arcs at the tip, in the belly and right over the heel. */
export const RUNS: KnifeSpec = {
  steel: { name: "1084", density: 0.00785 },
  blade: {
    outline: {
      runs: {
        edge: "M0 0 L90 0 A80 80 0 0 1 140 20",
        spine: "C120 32 60 34 20 33 A60 60 0 0 1 -20 33",
        tangTop: "L-130 30",
        butt: "A12 12 0 0 1 -130 8",
        tangBottom: "L-20 10",
        heelFace: "L0 10 L0 0",
      },
    },
    thickness: [
      { at: { kind: "heel" }, is: 4 },
      { at: { kind: "tip" }, is: 1.5 },
    ],
    bevel: { form: "flat", height: 20, edgeThickness: 0.4 },
    edgeAngle: 0.3,
  },
  tang: { form: "full", buttThickness: 3 },
};

/** An invented blade from a drawing, y down, in mm. */
export const DRAWN: KnifeSpec = {
  steel: { name: "1084", density: 0.00785 },
  blade: {
    outline: {
      drawing: `<svg xmlns="http://www.w3.org/2000/svg" width="300mm" height="60mm" viewBox="0 0 300 60">
        <path id="a" d="M120 45 H220 Q260 45 280 25"/><path id="b" d="M280 25 Q200 12 120 15"/>
        <path id="c" d="M120 15 H10 V40 H120"/></svg>`,
      runs: { edge: "a", spine: "b", tangTop: "c" },
    },
    ricasso: 0,
    thickness: [
      { at: { kind: "heel" }, is: 3.5 },
      { at: { kind: "tip" }, is: 1.5 },
    ],
    bevel: { form: "convex", height: "full", crown: { share: 0.06 }, edgeThickness: 0.3 },
    edgeAngle: 0.28,
  },
  tang: { form: "full", length: 110 },
};

/** Area of an outline ahead of the heel and behind it, mm², from a fine polygon. */
export function measureArea(outline: Outline): { readonly ahead: number; readonly behind: number } {
  const points = flattenPath(outline.path, 1e-7);
  let ahead = 0;
  let behind = 0;
  points.forEach((a, i) => {
    const b = points[(i + 1) % points.length] ?? a;
    // Trapezia under each side, parted where it crosses the heel's x.
    const under = (x0: number, x1: number): number => {
      if (x0 === x1) return 0;
      const y = (x: number): number => a.y + ((b.y - a.y) * (x - a.x)) / (b.x - a.x);
      return ((y(x0) + y(x1)) / 2) * (x0 - x1);
    };
    ahead += under(Math.max(0, a.x), Math.max(0, b.x));
    behind += under(Math.min(0, a.x), Math.min(0, b.x));
  });
  return { ahead, behind };
}
