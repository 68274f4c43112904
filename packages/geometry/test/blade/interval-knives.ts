import type { KnifeSpec } from "../../src/blade/spec.js";
import { p } from "./bodies.js";
import { at, heel, share, tip } from "./random-knives.js";

const front = (is: number) => ({ at: { kind: "handle" as const }, is });
const butt = (is: number) => ({ at: { kind: "butt" as const }, is });

/** Full tang with slabs, pins and a part-height flat bevel. */
export const SLAB_KNIFE: KnifeSpec = {
  steel: { name: "80CrV2" },
  blade: {
    outline: { family: "drop-point", edgeLength: 110, heelHeight: 30 },
    ricasso: 10,
    thickness: [heel(4.2), tip(2)],
    bevel: { form: "flat", height: 17, edgeThickness: 0.5 },
    edgeAngle: 0.32,
  },
  tang: {
    form: "full",
    length: 112,
    heights: { front: 24, middle: 22, butt: 25 },
    buttThickness: 3.2,
    holes: [{ kind: "pin", at: p(-35, 18), diameter: 6.2, pin: 6 }],
  },
  handle: {
    slabs: { material: { name: "black walnut" }, thickness: 8, edgeRadius: 3 },
    pins: { material: { name: "brass" } },
  },
};

/** Hidden tang with an octagonal block, a guard and a ring; convex to the spine. */
export const BLOCK_KNIFE: KnifeSpec = {
  steel: { name: "1084" },
  blade: {
    outline: { family: "chefs", edgeLength: 210, heelHeight: 48 },
    ricasso: 6,
    thickness: [heel(3), at(140, 2.2), tip(1)],
    bevel: { form: "convex", height: "full", crown: { share: 0.1 }, edgeThickness: 0.3 },
    edgeAngle: 0.25,
  },
  tang: { form: "hidden", length: 100, heights: { front: 18, middle: 13, butt: 8 }, buttThickness: 2.2 },
  handle: {
    block: {
      material: { name: "European ash" },
      section: "octagonal",
      length: 125,
      height: [front(24), butt(27)],
      width: [front(19), butt(22)],
    },
    guard: { material: { name: "brass" }, at: -6, length: 8, height: 30, width: 16, section: "oval" },
    parts: [{ name: "ring", mass: 8, at: p(-120, 24) }],
  },
};

/** One hollow bevel, its apex on the right face; oval block and a pommel. */
export const SINGLE_BEVEL: KnifeSpec = {
  steel: { name: "O1" },
  blade: {
    outline: { family: "petty", edgeLength: 150, heelHeight: 32 },
    ricasso: 5,
    thickness: [heel(3.6), tip(1.8)],
    bevel: { form: "hollow", wheelRadius: 100, height: 18, edgeThickness: 0.4, apex: 1 },
    edgeAngle: { right: "flat", left: 0.3 },
  },
  tang: {
    form: "hidden",
    length: 95,
    heights: { front: 14, middle: 11, butt: 7 },
    thickness: [front(3.6), butt(2.5)],
  },
  handle: {
    block: { material: { name: "beech" }, section: "oval", length: 120, height: 26, width: 20 },
    pommel: { material: { name: "brass" }, at: -126, length: 10, height: 24, width: 18 },
  },
};

/** Nearly every key of a full tang: each number of it can carry a tolerance. */
export const RICH_SLABS: KnifeSpec = {
  steel: { name: "1084", density: 0.00784 },
  blade: {
    outline: {
      family: "drop-point",
      edgeLength: 115,
      heelHeight: 31,
      straightEdge: 45,
      tipHeight: 19,
      spineBreak: 62,
    },
    ricasso: 12,
    thickness: [heel(4), at(60, 3.2), tip(1.6)],
    flankTaper: [heel(0.2), share(0.8, 0.1)],
    plunge: { at: 2, length: 8 },
    bevel: {
      form: "convex",
      height: [heel(18), tip(15)],
      crown: { mm: 0.05 },
      edgeThickness: [heel(0.5), tip(0.4)],
      left: { height: 16, crown: { share: 0.02 } },
      apex: 0.1,
    },
    edgeAngle: { right: 0.3, left: 0.28 },
    microbevel: { height: 0.3, angle: 0.4 },
    swedge: {
      from: { kind: "fraction", share: 0.6 },
      to: { kind: "distance", mm: 105 },
      angle: 0.6,
      thickness: 0.8,
    },
    easedSpine: 0.5,
    choil: { radius: 4 },
    fullers: [{ from: p(20, 24), to: p(60, 24), radius: 5, depth: 0.5 }],
    holes: [{ kind: "hanging", at: p(70, 15), to: p(74, 16), diameter: 4 }],
  },
  tang: {
    form: "full",
    length: 115,
    heights: { front: 24, middle: 22, butt: 26 },
    drop: 1,
    thickness: [front(4), { at: { kind: "distance", mm: 50 }, is: 3.6 }, butt(3)],
    holes: [
      { kind: "pin", at: p(-40, 19), diameter: 6.2, pin: 6 },
      { kind: "lightening", at: p(-62, 19), diameter: 8 },
    ],
  },
  handle: {
    slabs: {
      material: { name: "black walnut", moisture: 0.09 },
      thickness: [front(8), butt(9)],
      edgeRadius: 3,
    },
    liners: { material: { name: "G10", density: 0.00185 }, thickness: 0.8 },
    pins: { material: { name: "brass", density: 0.0085 } },
    bolsters: [
      {
        material: { name: "brass", density: 0.0085 },
        at: -12,
        length: 10,
        height: 27,
        width: 20,
        centre: 19,
      },
    ],
    parts: [{ name: "bead", mass: 4, at: p(-140, 20) }],
  },
};

/** Nearly every key of a hidden tang. */
export const RICH_BLOCK: KnifeSpec = {
  steel: { name: "1084" },
  blade: {
    outline: { family: "vegetable", edgeLength: 170, heelHeight: 52 },
    ricasso: 8,
    thickness: [heel(3.2), tip(2)],
    bevel: {
      form: "hollow",
      wheelRadius: 300,
      height: 30,
      edgeThickness: 0.4,
      right: { form: "flat", height: 25 },
    },
    edgeAngle: 0.27,
  },
  tang: {
    form: "hidden",
    length: 95,
    heights: { front: 16, middle: 12, butt: 8 },
    drop: 18,
    shoulderRadius: 1.5,
    buttThickness: 2.4,
  },
  handle: {
    block: {
      material: { name: "beech", moisture: 0.1 },
      section: "rounded",
      length: 118,
      height: [front(26), butt(28)],
      width: 21,
      cornerRadius: 5,
      centre: 26,
    },
    guard: { material: { name: "brass" }, at: -8, length: 7, height: 30, width: 18, centre: 26 },
    pommel: { material: { name: "brass" }, at: -133, length: 9, height: 26, width: 20, section: "oval" },
  },
};

/** The path of every number in a description, such as `blade.thickness[1].is`. */
export function numberPaths(node: unknown, path = ""): string[] {
  if (typeof node === "number") return [path];
  if (Array.isArray(node)) return node.flatMap((item, i) => numberPaths(item, `${path}[${i}]`));
  if (typeof node !== "object" || node === null) return [];
  return Object.entries(node).flatMap(([key, item]) =>
    numberPaths(item, path === "" ? key : `${path}.${key}`),
  );
}

/** No input uncertain but those that a test names. */
export const NOTHING_UNCERTAIN = {
  forgedThickness: 0,
  groundThickness: 0,
  edgeThickness: 0,
  outline: 0,
  steelDensity: 0,
  handleDensity: 0,
  moisture: 0,
  partMass: 0,
};
