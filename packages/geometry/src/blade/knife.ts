import { SpecError } from "../errors/errors.js";
import type { Finding, Issue } from "../errors/issue.js";
import { materialDensity } from "../materials/material-density.js";
import { suggestMaterials } from "../materials/materials.js";
import type { Vec2 } from "../plane/vec2.js";
import { buildOutline } from "./build-outline.js";
import { checkBuilt } from "./check-built.js";
import { checkNumbers } from "./check-numbers.js";
import { withDefaultAllowances, withDefaultFinish, withDefaultForging } from "./defaults.js";
import { handleMaterials, withHandleMaterials } from "./handle-materials.js";
import { type Judged, type Judging, judgedBy } from "./judging.js";
import { type KnifeLaws, knifeLaws } from "./knife-laws.js";
import type { Outline } from "./outline.js";
import type { DrawnOutline } from "./outline-from-drawing.js";
import { bodyInState, type SizeState } from "./size-states.js";
import type { AllowanceSpec, FinishSpec, ForgingSpec, HoleSpec, KnifeSpec, MaterialSpec } from "./spec.js";
import type { SteelBody } from "./steel-body.js";

/** A knife that can be built: outline, laws and bodies of every size state, with defaults filled in. */
export interface Knife extends Judged {
  readonly spec: KnifeSpec;
  readonly outline: Outline;
  readonly laws: KnifeLaws;
  readonly finish: FinishSpec;
  readonly allowances: AllowanceSpec;
  readonly forging: ForgingSpec;
  /** Density of the blade steel, g/mm³. */
  readonly steelDensity: number;
  readonly holes: readonly HoleSpec[];
  /** mm for a unit of the drawing that the outline comes from, along its x and y; left out where there is none. */
  readonly drawingUnit?: Vec2;
  /** What is legal but unwise, and what had to be assumed. */
  readonly findings: readonly Finding[];
  /** The blade and tang in a size state; built once each. */
  body(state: SizeState): SteelBody;
}

/**
 * Builds a knife from its description.
 *
 * @param judging - What kind of knife it is and the shop's limits, where findings are to go by them.
 * @throws {SpecError} with everything that is wrong, each with its place in the file.
 *
 * @example
 * const knife = makeKnife({
 *   steel: { name: "1084" },
 *   blade: {
 *     outline: { family: "drop-point", edgeLength: 100, heelHeight: 28 },
 *     thickness: [{ at: { kind: "heel" }, is: 3.2 }, { at: { kind: "tip" }, is: 1.6 }],
 *     bevel: { form: "flat", height: "full", edgeThickness: 0.4 },
 *     edgeAngle: 0.3,
 *   },
 *   tang: { form: "full", length: 105, heights: { front: 22, middle: 20, butt: 24 } },
 * });
 * weighKnife(knife).steel.mass; // g
 */
export function makeKnife(spec: KnifeSpec, judging: Judging = {}): Knife {
  const issues: Issue[] = [...checkNumbers(spec)];
  const density = densityOf(spec.steel, "steel", issues);
  for (const [path, material] of handleMaterials(spec.handle)) densityOf(material, path, issues);
  let drawn: DrawnOutline | undefined;
  try {
    drawn = buildOutline(spec);
  } catch (error) {
    if (!(error instanceof SpecError)) throw error;
    issues.push(...error.issues);
  }
  // What only the built shape shows is not looked at before there is one.
  if (drawn === undefined || issues.length > 0) throw new SpecError(issues, true);
  const knife = assemble(spec, drawn.outline, density, judging);
  const built = checkBuilt(knife);
  if (built.issues.length > 0) throw new SpecError(built.issues);
  const { unit } = drawn;
  return {
    ...knife,
    ...(unit === undefined ? {} : { drawingUnit: unit }),
    findings: [...drawn.findings, ...built.findings],
  };
}

/**
 * Builds a knife whose description is known to be good, or nearly so (one number moved a little), without judging it
 * again; named materials get their density written in.
 *
 * @throws {SpecError} where no outline can be built.
 *
 * @example
 * rebuildKnife(spec).steelDensity; // 0.00785
 */
export function rebuildKnife(spec: KnifeSpec): Knife {
  const full = withDensities(spec);
  return assemble(full, buildOutline(full).outline, full.steel.density ?? Number.NaN);
}

function withDensities(spec: KnifeSpec): KnifeSpec {
  const fill = (material: MaterialSpec): MaterialSpec => {
    const density = materialDensity(material);
    // A wood's moisture is in this density; beside it, it would be one too many.
    return density === undefined ? material : { name: material.name, density };
  };
  const { handle } = spec;
  return {
    ...spec,
    steel: fill(spec.steel),
    ...(handle === undefined ? {} : { handle: withHandleMaterials(handle, fill) }),
  };
}

function assemble(spec: KnifeSpec, outline: Outline, steelDensity: number, judging: Judging = {}): Knife {
  const laws = knifeLaws(spec, outline);
  const finish = withDefaultFinish(spec.finish);
  const allowances = withDefaultAllowances(spec.allowances);
  const bodies = new Map<SizeState, SteelBody>();
  return {
    spec,
    outline,
    laws,
    finish,
    allowances,
    forging: withDefaultForging(spec.forging),
    steelDensity,
    holes: [...(spec.blade.holes ?? []), ...(spec.tang.holes ?? [])],
    findings: [],
    ...judgedBy(spec, judging),
    body(state) {
      const known = bodies.get(state);
      if (known !== undefined) return known;
      const made = bodyInState({ spec, outline, laws, finish, allowances }, state);
      bodies.set(state, made);
      return made;
    },
  };
}

/** What a density is likely to be in each place, for the example in a message, g/cm³. */
const LIKELY_DENSITY: Readonly<Record<string, string>> = {
  steel: "7.85",
  "handle.slabs.material": "0.68",
  "handle.pins.material": "8.5",
  "handle.liners.material": "1.8",
  "handle.block.material": "0.68",
  "handle.guard.material": "8.5",
  "handle.pommel.material": "8.5",
};

/** Density of a named material, g/mm³; adds an issue where the name is not in the table and no density is given. */
function densityOf(material: MaterialSpec, path: string, issues: Issue[]): number {
  const density = materialDensity(material);
  if (density !== undefined) return density;
  const near =
    path === "steel" ? suggestMaterials(material.name, 2, "steel") : suggestMaterials(material.name);
  issues.push({
    code: "unknown-material",
    path,
    text:
      near.length > 0
        ? "{name} is not in the table of materials. Did you mean {near}? If not, give its own density, like { name: {name}, density: {like} g/cm3 }."
        : "{name} is not in the table of materials. Give its own density, like { name: {name}, density: {like} g/cm3 }.",
    values: { name: material.name, near: near.join(" or "), like: LIKELY_DENSITY[path] ?? "1.0" },
  });
  return Number.NaN;
}
