import {
  GeometryError,
  type Issue,
  type Knife,
  type KnifeSpec,
  type MaterialSpec,
  makeKnife,
  SpecError,
} from "@scantling/geometry";

/** Stands in for a density that is not known while the rest is looked at, g/mm³. It decides no rule. */
const STAND_IN_DENSITY = 0.00785;

const UNKNOWN_MATERIAL = "unknown-material";

/**
 * Builds a knife like `makeKnife`, but a material that is not known hides nothing: what is wrong with the built shape
 * is found in the same pass.
 *
 * @throws {SpecError} with everything that is wrong.
 */
export function buildKnife(spec: KnifeSpec): Knife {
  try {
    return makeKnife(spec);
  } catch (error) {
    if (!(error instanceof SpecError) || error.issues.some(({ code }) => code !== UNKNOWN_MATERIAL))
      throw error;
    throw new SpecError([...error.issues, ...issuesOf(withStandIns(spec, error.issues))]);
  }
}

/** Everything that is wrong with a knife; what cannot be built at all gives none. */
export function issuesOf(spec: KnifeSpec): readonly Issue[] {
  try {
    buildKnife(spec);
    return [];
  } catch (error) {
    if (error instanceof SpecError) return error.issues;
    if (error instanceof GeometryError) return [];
    throw error;
  }
}

function withStandIns(spec: KnifeSpec, unknown: readonly Issue[]): KnifeSpec {
  const fill = (material: MaterialSpec, path: string): MaterialSpec =>
    unknown.some((issue) => issue.path === path) ? { ...material, density: STAND_IN_DENSITY } : material;
  const { slabs, pins } = spec.handle ?? {};
  return {
    ...spec,
    steel: fill(spec.steel, "steel"),
    handle: {
      ...spec.handle,
      ...(slabs === undefined
        ? {}
        : { slabs: { ...slabs, material: fill(slabs.material, "handle.slabs.material") } }),
      ...(pins === undefined ? {} : { pins: { material: fill(pins.material, "handle.pins.material") } }),
    },
  };
}

export interface KnifeMaterials {
  readonly steel?: MaterialSpec;
  readonly slabs?: MaterialSpec;
  readonly pins?: MaterialSpec;
}

/** A knife with nothing wrong in it: what is found wrong with its materials is wrong with the materials. */
const SOUND: KnifeSpec = {
  steel: { name: "any", density: STAND_IN_DENSITY },
  blade: {
    outline: { family: "drop-point", edgeLength: 100, heelHeight: 30 },
    thickness: [{ at: { kind: "heel" }, is: 3 }],
    bevel: { form: "flat", height: "full", edgeThickness: 0.4 },
    edgeAngle: 0.3,
  },
  tang: { form: "full", length: 100 },
};

/** What is wrong with the materials of a knife whose shape is not known. */
export function materialIssues({ steel, slabs, pins }: KnifeMaterials): readonly Issue[] {
  return issuesOf({
    ...SOUND,
    ...(steel === undefined ? {} : { steel }),
    handle: {
      ...(slabs === undefined ? {} : { slabs: { material: slabs, thickness: 8 } }),
      ...(pins === undefined ? {} : { pins: { material: pins } }),
    },
  }).filter(({ code }) => code === UNKNOWN_MATERIAL);
}
