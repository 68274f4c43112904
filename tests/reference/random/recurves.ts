// Edges that swing in and out more than once, ground to the spine, where the ridges of the distance to the edge run through
// the whole blade: three cubics each, joined smoothly or in corners.
import { type KnifeSpec, makeKnife } from "@scantling/geometry";
import { Chance } from "./chance.js";
import type { RandomKnife } from "./knives.js";

export const SEED = 20_261_127;

const LENGTH = 100;
const SPINE = 28;
const THIRD = LENGTH / 3;

/** Recurve number `index`: `smooth` joints or corners, by turns. */
export function recurve(index: number): RandomKnife {
  const chance = new Chance(Math.imul(SEED + index, 2_654_435_761));
  const smooth = index % 2 === 0;
  const joints = [
    { x: chance.between(0.85, 1.2) * THIRD, y: chance.between(-3, 6) },
    { x: chance.between(1.7, 2.1) * THIRD, y: chance.between(-3, 6) },
  ];
  const points = [{ x: 0, y: 0 }, ...joints, { x: LENGTH, y: chance.between(8, 24) }];
  const slopes = points.map(() => chance.between(-0.35, 0.35));
  let edge = "M0 0";
  for (let i = 0; i + 1 < points.length; i++) {
    const from = points[i] as { x: number; y: number };
    const to = points[i + 1] as { x: number; y: number };
    const third = (to.x - from.x) / 3;
    const leaving = smooth ? (slopes[i] as number) : chance.between(-0.5, 0.5);
    const arriving = slopes[i + 1] as number;
    edge += ` C${from.x + third} ${from.y + leaving * third} ${to.x - third} ${to.y - arriving * third} ${to.x} ${to.y}`;
  }
  const tip = points[3] as { x: number; y: number };
  return knifeOf(index, smooth ? "smooth recurve" : "recurve with corners", {
    edge,
    spine: `M${tip.x} ${tip.y} C90 27 70 ${SPINE} 50 ${SPINE} L-10 ${SPINE}`,
  });
}

/** Three that a reviewer found wrong by up to a sixth, their estimates with them. */
export const FOUND: readonly RandomKnife[] = [
  "M0 0 C 30 -6 40 8 60 2 C 75 -3 95 8 100 20",
  "M0 0 C 12.512826 -1.995308 25.027653 0.617387 37.541479 1.747023 C 43.379224 2.195668 49.21697 4.798545 55.054714 5.829459 C 70.036476 8.424764 85.018238 8.154897 100 23.494046",
  "M0 0 C 13.285564 -1.193976 26.571127 4.236583 39.85669 3.409668 C 49.546791 2.80654 59.236891 -5.212116 68.926992 -2.476165 C 79.284662 0.44827 89.642331 -0.38078 100 15.116624",
].map((edge, i) => {
  const y = edge.split(" ").at(-1);
  return knifeOf(i, "recurve that was wrong once", {
    edge,
    spine: `M100 ${y} C90 27 70 ${SPINE} 50 ${SPINE} L-10 ${SPINE}`,
  });
});

function knifeOf(
  index: number,
  kind: string,
  runs: { readonly edge: string; readonly spine: string },
): RandomKnife {
  const spec: KnifeSpec = {
    steel: { name: "test steel", density: 0.00785 },
    blade: {
      outline: {
        runs: {
          ...runs,
          tangTop: `M-10 ${SPINE} L-110 ${SPINE}`,
          butt: `M-110 ${SPINE} L-110 6`,
          tangBottom: "M-110 6 L-10 6",
        },
      },
      thickness: [
        { at: { kind: "heel" }, is: 4 },
        { at: { kind: "tip" }, is: 2 },
      ],
      bevel: { form: "flat", height: index % 3 === 2 ? 15 : "full", edgeThickness: 0.3 },
      edgeAngle: 0.3,
    },
    tang: { form: "full" },
  };
  return { index, kind, spec, knife: makeKnife(spec), refused: 0 };
}
