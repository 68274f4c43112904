import type { FindingCode } from "../errors/finding-codes.js";
import { angle, type Finding, length } from "../errors/issue.js";
import { type BevelAtStation, bevelAt } from "./bevel-at.js";
import type { Knife } from "./knife.js";
import { bevelStations, bevelsBegin, type Side } from "./knife-faces.js";
import { sideAngle } from "./size-states.js";

/**
 * What is unwise about the sharpening of one face: a side that stays blunt, planes that run past the bevel line, graze
 * the face or meet it twice, a microbevel that leaves nothing of the edge's own angle.
 */
export function edgeFindings(knife: Knife, side: Side): Finding[] {
  const theta = sideAngle(knife.spec.blade.edgeAngle, side === "right" ? 1 : -1);
  if (theta === "flat") return bluntEdge(knife, side);
  const path = typeof knife.spec.blade.edgeAngle === "number" ? "blade.edgeAngle" : `blade.edgeAngle.${side}`;
  const looked = judged(knife, side);
  return [...planes(knife, side, theta, path, looked), ...microbevel(knife, side, looked)];
}

/**
 * Stations at which a sharpening plane is judged: the heel, and wherever the blade is at least half as high as at its
 * highest. Closer to a point every bevel gets as steep as its sharpening, and that is no fault.
 */
function judged(knife: Knife, side: Side): BevelAtStation[] {
  const heel = bevelAt(knife, bevelsBegin(knife), side);
  const stations = bevelStations(knife, side);
  const highest = Math.max(heel.spineDistance, ...stations.map(({ spineDistance }) => spineDistance));
  return [heel, ...stations.filter(({ x, spineDistance }) => x > heel.x && spineDistance >= highest / 2)];
}

/** Steps up the bevel in which a plane's meetings with the face are counted. */
const STEPS = 200;

/** The gravest thing that is wrong with where the plane meets the face, at the first station that has it. */
function planes(
  knife: Knife,
  side: Side,
  theta: number,
  path: string,
  looked: readonly BevelAtStation[],
): Finding[] {
  const met = looked.map((station) => ({ ...station, ...meetings(knife, side, theta, station) }));
  const finding = (x: number, code: FindingCode, text: string, basis: string): Finding[] => [
    { code, severity: "warn", path, text, values: { x: length(x), theta: angle(theta) }, basis },
  ];
  const often = met.find(({ crossings }) => crossings > 1);
  if (often !== undefined) {
    return finding(
      often.x,
      "edge-bevel-grazes",
      "At {x} ahead of the heel the sharpening plane, at {theta} per side, meets the hollow face more than once: it also touches higher up. Sharpen steeper.",
      "geometry: one meeting of plane and face",
    );
  }
  const past = met.find(({ apex, height, bevelLine }) => apex + Math.tan(theta) * height < bevelLine / 2);
  if (past !== undefined) {
    return finding(
      past.x,
      "edge-bevel-over-bevel-line",
      "At {x} ahead of the heel the sharpening bevel, at {theta} per side, runs up past the bevel line. Sharpen steeper, or grind higher or thinner.",
      "geometry",
    );
  }
  const { edgeGrazing } = knife.limits;
  const grazing = met.find(({ slope }) => slope < edgeGrazing.value);
  if (grazing === undefined) return [];
  return finding(
    grazing.x,
    "edge-bevel-grazes",
    "At {x} ahead of the heel the sharpening plane, at {theta} per side, only grazes the face: its width is anybody's guess. Sharpen steeper.",
    edgeGrazing.basis,
  );
}

/** How often the plane meets the ground face below the bevel line, and at what least angle, rad. */
function meetings(knife: Knife, side: Side, theta: number, { x, height, apex }: BevelAtStation) {
  const body = knife.body("unsharpened");
  const section = body.sectionAt(x);
  const face = side === "right" ? section : (body.section.left ?? section);
  const { microbevel } = knife.spec.blade;
  const lift =
    microbevel === undefined ? 0 : microbevel.height * (Math.tan(microbevel.angle) - Math.tan(theta));
  const above = (v: number): boolean => face.valueAt(v) > apex + lift + v * Math.tan(theta);
  let crossings = 0;
  let slope = Number.POSITIVE_INFINITY;
  // An edge of nothing begins on the plane: whether the face leaves it outward or inward is seen just above.
  let outside = face.valueAt(0) > apex + 1e-12 || above(height / STEPS);
  for (let i = 1; i <= STEPS; i++) {
    const a = (height * (i - 1)) / STEPS;
    const b = (height * i) / STEPS;
    if (above(b) === outside) continue;
    outside = !outside;
    crossings++;
    slope = Math.min(slope, Math.abs(theta - Math.atan((face.valueAt(b) - face.valueAt(a)) / (b - a))));
  }
  return { crossings, slope };
}

/** A microbevel as high as the whole sharpening bevel leaves nothing of the edge's own angle. */
function microbevel(knife: Knife, side: Side, looked: readonly BevelAtStation[]): Finding[] {
  const { microbevel: micro } = knife.spec.blade;
  if (micro === undefined) return [];
  const body = knife.body("unsharpened");
  const swallowed = looked.find(({ x, apex }) => {
    const section = body.sectionAt(x);
    const face = side === "right" ? section : (body.section.left ?? section);
    return face.valueAt(micro.height) <= apex + micro.height * Math.tan(micro.angle);
  });
  if (swallowed === undefined) return [];
  return [
    {
      code: "microbevel-over-edge-bevel",
      severity: "warn",
      path: "blade.microbevel.height",
      text: "At {x} ahead of the heel a microbevel {height} high takes up the whole sharpening bevel: nothing is left of the edge's own angle. Make it lower.",
      values: { x: length(swallowed.x), height: length(micro.height) },
      basis: "geometry",
    },
  ];
}

/** A side without a plane keeps its share of the unsharpened edge: only an apex that lies on it makes the edge sharp. */
function bluntEdge(knife: Knife, side: Side): Finding[] {
  const { edgeThickness } = knife.laws;
  const apex = knife.spec.blade.bevel.apex ?? 0;
  const share = (side === "right" ? 1 - apex : 1 + apex) / 2;
  const from = bevelsBegin(knife);
  const places = [from, ...edgeThickness.breaks.filter((x) => x > from), knife.outline.edgeLength];
  const blunt = Math.max(...places.map((x) => share * edgeThickness.valueAt(x)));
  if (!(blunt > 1e-9)) return [];
  return [
    {
      code: "edge-stays-blunt",
      severity: "warn",
      path: `blade.edgeAngle.${side}`,
      text: "The {side} side is not sharpened, and the apex does not lie on it: the edge stays {blunt} thick. For a single bevel give apex: {apex}, or an angle to this side too.",
      values: { side, blunt: length(blunt), apex: side === "right" ? "1" : "-1" },
      basis: "geometry",
    },
  ];
}
