import {
  GeometryError,
  type Issue,
  type Judging,
  type Knife,
  type KnifeSpec,
  type MaterialSpec,
  makeKnife,
  materialDensity,
  SpecError,
  withHandleMaterials,
} from "@scantling/geometry";

/** Stands in for a density that is not known while the rest is looked at, g/mm³. It decides no rule. */
const STAND_IN_DENSITY = 0.00785;

const UNKNOWN_MATERIAL = "unknown-material";

/**
 * Builds a knife like `makeKnife`, but a material that is not known hides nothing: what is wrong with the built shape
 * is found in the same pass.
 *
 * @param judging - What kind of knife it is, and the shop's limits.
 * @throws {SpecError} with everything that is wrong.
 */
export function buildKnife(spec: KnifeSpec, judging: Judging = {}): Knife {
  try {
    return makeKnife(spec, judging);
  } catch (error) {
    if (!(error instanceof SpecError) || error.issues.some(({ code }) => code !== UNKNOWN_MATERIAL))
      throw error;
    const { issues, hidesMore } = slipsOf(withStandIns(spec));
    throw new SpecError([...error.issues, ...issues], hidesMore);
  }
}

/** Everything that is wrong with a knife. */
export const issuesOf = (spec: KnifeSpec): readonly Issue[] => slipsOf(spec).issues;

/** The same, and whether it hides more; what cannot be built at all gives none. */
export function slipsOf(spec: KnifeSpec): Pick<SpecError, "issues" | "hidesMore"> {
  try {
    buildKnife(spec);
    return { issues: [], hidesMore: false };
  } catch (error) {
    if (error instanceof SpecError) return error;
    if (error instanceof GeometryError) return { issues: [], hidesMore: true };
    throw error;
  }
}

function withStandIns(spec: KnifeSpec): KnifeSpec {
  const fill = (material: MaterialSpec): MaterialSpec =>
    materialDensity(material) === undefined ? { name: material.name, density: STAND_IN_DENSITY } : material;
  return {
    ...spec,
    steel: fill(spec.steel),
    ...(spec.handle === undefined ? {} : { handle: withHandleMaterials(spec.handle, fill) }),
  };
}

/** Parts of a knife that have one material each. */
export const MATERIAL_PARTS = ["slabs", "liners", "pins", "block", "guard", "pommel"] as const;

export type KnifeMaterials = Partial<Record<"steel" | (typeof MATERIAL_PARTS)[number], MaterialSpec>>;

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
export function materialIssues({ steel, ...parts }: KnifeMaterials): readonly Issue[] {
  // Sizes of any kind: of what is found wrong with them nothing is told.
  const block = { at: 0, length: 5, height: 20, width: 10 };
  const sizes = { slabs: { thickness: 8 }, liners: { thickness: 1 }, pins: {}, guard: block, pommel: block };
  const handle = Object.fromEntries(
    Object.entries(parts).map(([part, material]) => [
      part,
      {
        material,
        ...(part === "block" ? { ...block, section: "oval" } : sizes[part as keyof typeof sizes]),
      },
    ]),
  );
  return issuesOf({ ...SOUND, ...(steel === undefined ? {} : { steel }), handle }).filter(
    ({ code }) => code === UNKNOWN_MATERIAL,
  );
}
