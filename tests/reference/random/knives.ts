// Valid knives drawn by lot: every family, outlines by runs, every form of bevel, everything cut into a blade.
import {
  type BladeSpec,
  FAMILY_NAMES,
  type FamilyName,
  type HoleSpec,
  type Knife,
  type KnifeSpec,
  type LandmarkOutlineSpec,
  makeKnife,
  SpecError,
  type TangSpec,
} from "@scantling/geometry";
import { Chance } from "./chance.js";
import { drawnBlade, drawnOutline } from "./drawn.js";
import { cuts, ground, heel, type Sizes, share, tip } from "./ground.js";

export const SEED = 20_261_125;

export interface RandomKnife {
  readonly index: number;
  /** Family or shape of the outline. */
  readonly kind: string;
  readonly spec: KnifeSpec;
  readonly knife: Knife;
  /** How many descriptions were refused before this one. */
  readonly refused: number;
}

/** Knife number `index` of a seed: the first of its drawings that makes a knife. */
export function randomKnife(index: number, seed = SEED): RandomKnife {
  const reasons: string[] = [];
  for (let attempt = 0; attempt < 200; attempt++) {
    const chance = new Chance(Math.imul(seed + index, 2_654_435_761) + Math.imul(attempt, 40_503));
    const { kind, spec } = draw(chance);
    try {
      return { index, kind, spec, knife: makeKnife(spec), refused: attempt };
    } catch (error) {
      if (!(error instanceof SpecError)) throw error;
      reasons.push(...error.issues.map((issue) => issue.code));
    }
  }
  throw new Error(`seed ${seed}, knife ${index}: nothing drawn makes a knife (${[...new Set(reasons)]})`);
}

function draw(c: Chance): { readonly kind: string; readonly spec: KnifeSpec } {
  const thick = c.between(2.2, 6.5);
  const drawn = c.in(0.35) ? drawnBlade(c) : undefined;
  const family = drawn === undefined ? landmarks(c) : undefined;
  const sizes: Sizes = {
    length: drawn?.length ?? family?.edgeLength ?? 0,
    height: drawn?.height ?? family?.heelHeight ?? 0,
    thick,
  };
  const ricasso = c.in(0.5) ? 0 : c.between(3, 25);
  const tang = family === undefined ? { form: "full" as const } : landmarkTang(c, sizes.height);
  const thickness: BladeSpec["thickness"] = c.pick(
    [heel(thick)],
    [heel(thick), tip(c.between(0.3, 0.8) * thick)],
    [
      heel(thick),
      share(c.between(0.3, 0.7), c.between(0.55, 1.05) * thick),
      tip(c.between(0.3, 0.55) * thick),
    ],
  );
  const blade: BladeSpec = {
    outline: drawn === undefined ? (family as LandmarkOutlineSpec) : drawnOutline(c, drawn),
    ...(family === undefined ? {} : { ricasso }),
    thickness,
    ...(c.in(0.5) ? { between: "smooth" as const } : {}),
    ...ground(c, sizes),
    ...cuts(c, sizes),
    ...(family !== undefined && ricasso > 0 && c.in(0.3)
      ? { choil: { radius: Math.min(0.45 * ricasso, 0.15 * sizes.height) } }
      : {}),
  };
  return {
    kind: drawn?.name ?? family?.family ?? "",
    spec: {
      steel: { name: "test steel", density: 0.00785 },
      blade,
      tang: { ...tang, ...tangThickness(c, thick), ...tangHoles(c, sizes.height, ricasso) },
    },
  };
}

function landmarks(c: Chance): LandmarkOutlineSpec {
  const family = c.pick(...(FAMILY_NAMES as [FamilyName, ...FamilyName[]]));
  const edgeLength = c.between(60, 300);
  const heelHeight = c.between(0.1, 0.42) * edgeLength;
  const tips: Partial<Record<FamilyName, readonly [number, number]>> = {
    "straight-back": [1, 1],
    tanto: [0.7, 1],
    "trailing-point": [1, 1.6],
    vegetable: [0.6, 0.97],
    cleaver: [0.8, 1],
    sheepsfoot: [0, 0.3],
    seax: [0, 0.4],
  };
  const [least, most] = tips[family] ?? [0.3, 0.95];
  return {
    family,
    edgeLength,
    heelHeight,
    ...(c.in(0.5) ? { straightEdge: c.between(0.1, 0.85) * edgeLength } : {}),
    ...(c.in(0.5) ? { tipHeight: c.between(least, most) * heelHeight } : {}),
    ...(c.in(0.4) ? { spineBreak: c.between(0.15, 0.85) * edgeLength } : {}),
  };
}

function landmarkTang(c: Chance, height: number): TangSpec {
  const form = c.pick("full", "full", "hidden", "through");
  const length = c.between(70, 130);
  if (form === "full") {
    const heights = {
      front: c.between(0.5, 0.95) * height,
      middle: c.between(0.45, 0.85) * height,
      butt: c.between(0.5, 1) * height,
    };
    return { form, length, heights, ...(c.in(0.2) ? { drop: 0.05 * height } : {}) };
  }
  const front = c.between(0.3, 0.7) * height;
  return {
    form,
    length,
    heights: { front, middle: 0.85 * front, butt: c.between(0.4, 0.8) * front },
    ...(c.in(0.4) ? { shoulderRadius: c.between(0.2, 0.8) * 0.4 * (height - front) } : {}),
  };
}

function tangThickness(c: Chance, thick: number): Partial<TangSpec> {
  const kind = c.pick("as the blade", "tapered", "stations");
  if (kind === "as the blade") return {};
  if (kind === "tapered") return { buttThickness: c.between(0.4, 0.9) * thick };
  return {
    thickness: [
      { at: { kind: "handle" }, is: c.in(0.5) ? thick : 0.9 * thick },
      { at: { kind: "fraction", share: 0.4 }, is: c.between(0.7, 1) * thick },
      { at: { kind: "butt" }, is: 0.5 * thick },
    ],
    ...(c.in(0.5) ? { between: "smooth" as const } : {}),
  };
}

function tangHoles(c: Chance, height: number, ricasso: number): Partial<TangSpec> {
  if (c.in(0.4)) return {};
  const diameter = c.between(0.05, 0.12) * height;
  const hole = (x: number): HoleSpec => ({
    kind: "pin",
    at: { x: -ricasso - x, y: c.between(0.52, 0.6) * height },
    diameter,
  });
  const slot: HoleSpec = {
    kind: "lightening",
    at: { x: -ricasso - 36, y: 0.55 * height },
    to: { x: -ricasso - 50, y: 0.56 * height },
    diameter,
  };
  return { holes: c.in(0.3) ? [hole(22), slot] : [hole(20), hole(c.between(45, 62))] };
}
