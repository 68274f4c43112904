import { BevelMoments } from "../blade/bevel-moments.js";
import { byUse } from "../blade/judging.js";
import type { Knife } from "../blade/knife.js";
import { sectionArea } from "../blade/section-area.js";
import { count, type Finding, length } from "../errors/issue.js";
import type { Limit } from "../limits/limit.js";
import type { BevelSetUp } from "./bevel-set-up.js";

/** Rounding of computed sizes, mm. */
const HAIR = 1e-9;

/**
 * What is unwise about a blade that goes into oven and oil: a thin edge or tip, a skin that is not ground off, a shape that
 * warps, flats left from the hammer that are thin.
 *
 * @param bevels - How the same knife's faces are ground; none where they are left from the hammer.
 *
 * @example
 * hardeningFindings(knife, bevelSetUps(knife, {})).map(({ code }) => code); // []
 */
export function hardeningFindings(knife: Knife, bevels: readonly BevelSetUp[]): Finding[] {
  const edge = thinnestEdge(knife, bevels);
  return [
    ...(edge === undefined ? [] : [edgeFinding(knife, edge)]),
    ...tip(knife),
    ...skin(knife),
    ...warp(knife, edge !== undefined),
    ...forgedFlats(knife),
  ];
}

interface ThinEdge {
  readonly edge: number;
  readonly spine: number;
  readonly limit: Limit;
}

/** The edge that is thinnest for its spine; undefined where none is too thin. */
function thinnestEdge(knife: Knife, bevels: readonly BevelSetUp[]): ThinEdge | undefined {
  // Thin edge and thick spine cool at different times: each place by its own spine.
  const [worst] = (bevels[0]?.stations ?? [])
    .map(({ edge, thickness }) => ({ edge, spine: thickness, limit: quenchLimit(knife, thickness) }))
    .sort((a, b) => b.limit.value - b.edge - (a.limit.value - a.edge));
  return worst === undefined || worst.edge >= worst.limit.value - HAIR ? undefined : worst;
}

/** Least edge before the quench behind a spine. */
function quenchLimit({ limits }: Knife, spine: number): Limit {
  if (spine <= limits.quenchThinSpine.value + HAIR) return limits.quenchEdgeThin;
  return spine > limits.quenchThickSpine.value + HAIR ? limits.quenchEdgeThick : limits.quenchEdge;
}

function edgeFinding({ allowances }: Knife, { edge, spine, limit }: ThinEdge): Finding {
  return {
    code: "edge-thin-for-quench",
    severity: "warn",
    path: "allowances.minEdge",
    text: "The edge goes into the quench {edge} thick, with a spine of {spine}; less than {limit} warps and cracks easily. Raise minEdge (now {least}) or afterHardening, or grind the bevels after hardening.",
    values: {
      edge: length(edge),
      spine: length(spine),
      limit: length(limit.value),
      least: length(allowances.minEdge),
    },
    basis: limit.basis,
  };
}

/** A thin tip heats and cools ahead of the rest. */
function tip(knife: Knife): Finding[] {
  const { tipThick, tipThickKitchen, tipPlace } = knife.limits;
  const least = byUse(knife, { kitchen: tipThickKitchen, field: tipThick, chopper: tipThick });
  const x = knife.outline.edgeLength - tipPlace.value;
  if (x <= 0) return [];
  const thickness = knife.body("ready").slab.thicknessAt(x);
  if (thickness >= least.value - HAIR) return [];
  return [
    {
      code: "tip-thin-for-hardening",
      severity: "warn",
      path: "blade.thickness",
      text: "{back} behind the tip the blade goes into the fire {thickness} thick; less than {limit} overheats and warps. Leave the tip thicker and taper it after hardening, or raise afterHardening by {more}.",
      values: {
        back: length(tipPlace.value),
        thickness: length(thickness),
        limit: length(least.value),
        more: length((least.value - thickness) / 2),
      },
      basis: least.basis,
    },
  ];
}

/** What the fire took the carbon out of has to come off where it is ground. */
function skin({ finish, allowances, limits }: Knife): Finding[] {
  if (finish.bevels !== "ground") return [];
  const { face, afterHardening } = allowances;
  const off = face + afterHardening;
  if (off >= limits.skin.value - HAIR) return [];
  return [
    {
      code: "skin-left-on",
      severity: "warn",
      path: "allowances.face",
      text: "Only {off} comes off each face of the forging, {face} before hardening and {after} after it; the fire takes carbon out of a skin, and {limit} is ground off until a test of your own says less. Raise face by {more}.",
      values: {
        off: length(off),
        face: length(face),
        after: length(afterHardening),
        limit: length(limits.skin.value),
        more: length(limits.skin.value - off),
      },
      basis: limits.skin.basis,
    },
  ];
}

/** Stations between heel and tip over which the mean thickness is taken. */
const STATIONS = 64;

/**
 * Edge length over the mean thickness of the blade that is hardened: steel over side area, ahead of the heel.
 *
 * @example
 * hardeningSlenderness(knife); // 60.1
 */
export function hardeningSlenderness(knife: Knife): number {
  const { edgeLength } = knife.outline;
  const body = knife.body("ready");
  const moments = new BevelMoments(body);
  let area = 0;
  let height = 0;
  for (let i = 0; i < STATIONS; i++) {
    const x = (edgeLength * (i + 0.5)) / STATIONS;
    area += sectionArea(body, moments, x);
    height += body.footprint.heightAt(x);
  }
  return (edgeLength * height) / area;
}

/**
 * How likely a blade is to warp: a point each for being long and thin, for a thin edge, for faces that differ. A thin edge by
 * itself has a finding of its own.
 */
function warp(knife: Knife, thinEdge: boolean): Finding[] {
  const { warpSlenderness } = knife.limits;
  const slenderness = hardeningSlenderness(knife);
  const slender = slenderness > warpSlenderness.value;
  const unlike = !knife.laws.symmetric;
  const causes = [
    ...(slender ? ["{slenderness} times as long as thick, over {limit}"] : []),
    ...(thinEdge ? ["with a thin edge"] : []),
    ...(unlike ? ["with two different faces"] : []),
  ];
  if (!slender && !unlike) return [];
  return [
    {
      code: "warp-risk",
      severity: causes.length > 1 ? "warn" : "note",
      path: "blade.thickness",
      text: `The blade is likely to warp in the quench: ${causes.join(", ")}. Normalise it, ease its stresses and straighten it before hardening, leave more on, and straighten it while it is warm or in the temper.`,
      values: { slenderness: count(Math.round(slenderness)), limit: count(warpSlenderness.value) },
      basis: slender ? warpSlenderness.basis : "geometry: more steel on one side than on the other",
    },
  ];
}

/** Flats that keep the forge finish get no allowance: what the hammer left is what is delivered. */
function forgedFlats({ finish, laws, limits, outline }: Knife): Finding[] {
  const { bevelHeight } = laws.right;
  if (finish.flats !== "forged" || bevelHeight === "full") return [];
  const places = [0, outline.edgeLength, ...laws.spine.breaks].filter(
    (x) => x >= 0 && x <= outline.edgeLength,
  );
  const thinnest = Math.min(...places.map((x) => laws.spine.valueAt(x)));
  if (thinnest >= limits.forgedFlat.value - HAIR) return [];
  return [
    {
      code: "forged-flats-thin",
      severity: "note",
      path: "finish.flats",
      text: "The flats keep the forge finish with nothing to grind off, and get as thin as {thickness}; under {limit} every dent shows and weighs. Forge these faces close to size, brush scale off before every heat, and finish with light blows.",
      values: { thickness: length(thinnest), limit: length(limits.forgedFlat.value) },
      basis: limits.forgedFlat.basis,
    },
  ];
}
