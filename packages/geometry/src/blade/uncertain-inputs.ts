import { materialDensity } from "../materials/material-density.js";
import { findMaterial } from "../materials/materials.js";
import { withDefaultFinish } from "./defaults.js";
import { handleMaterials } from "./handle-materials.js";
import type { FaceSpec, HandleSpec, KnifeSpec, LawSpec, MaterialSpec } from "./spec.js";
import { readAt } from "./spec-path.js";
import type { InputTolerance, ToleranceDefaults } from "./tolerances.js";

/** What is moved together: one number, a whole law, or the stations of a law that have no tolerance of their own. */
export interface UncertainInput {
  /** Its name in results: the path, or the law's path and `, other stations`. */
  readonly input: string;
  readonly paths: readonly string[];
  readonly plus: number;
  readonly minus: number;
}

/** What is no part of the finished knife. */
const LATER = /^(?:allowances|forging)\b/u;

/** Adds an input with its default limit unless the file gives one for it. */
type Add = (path: string, limit: number) => void;

/** Sheet of a liner against its own thickness, as a share of what a ground thickness is held to: it is bought to size. */
const BOUGHT_SHEET = 0.5;

/** What is heavier is metal and known as well as steel is, g/mm³: aluminium has 0.0027, glass laminates 0.0019. */
const LIGHTEST_METAL = 0.0025;

/**
 * Every number of a knife that is uncertain: those that the file gives a tolerance, and those that a shop cannot hold exactly,
 * with their default limits. The outline's sides are not among them.
 */
export function uncertainInputs(
  spec: KnifeSpec,
  given: readonly InputTolerance[],
  defaults: ToleranceDefaults,
): UncertainInput[] {
  const inputs = given
    .filter(({ path }) => !LATER.test(path))
    .map(({ path, plus, minus }): UncertainInput => ({ input: path, paths: [path], plus, minus }));
  const add: Add = (path, limit) => {
    const own = given.filter((other) => other.path === path || other.path.startsWith(`${path}[`));
    const law = readAt(spec, path);
    if (own.some((other) => other.path === path)) return;
    if (own.length === 0) inputs.push({ input: path, paths: [path], plus: limit, minus: limit });
    else if (Array.isArray(law)) {
      // Stations with a tolerance of their own err for themselves; the others still share one error.
      const paths = law
        .map((_, i) => `${path}[${i}].is`)
        .filter((p) => own.every((other) => other.path !== p));
      if (paths.length > 0)
        inputs.push({ input: `${path}, other stations`, paths, plus: limit, minus: limit });
    }
  };
  bladeDefaults(spec, defaults, add);
  if (spec.handle !== undefined) handleDefaults(spec.handle, defaults, add);
  return inputs.filter(({ plus, minus }) => plus > 0 || minus > 0);
}

function bladeDefaults(spec: KnifeSpec, defaults: ToleranceDefaults, add: Add): void {
  const { forgedThickness, groundThickness } = defaults;
  const { blade, tang, steel } = spec;
  const has = (law: LawSpec | undefined): boolean => law !== undefined && law !== 0;
  add(
    "blade.thickness",
    withDefaultFinish(spec.finish).flats === "forged" ? forgedThickness : groundThickness,
  );
  if (has(blade.flankTaper)) add("blade.flankTaper", groundThickness);
  add("blade.bevel.edgeThickness", defaults.edgeThickness);
  const rise = Math.max(1e-3, firstOf(blade.thickness) - firstOf(blade.bevel.edgeThickness));
  faceDefaults("blade.bevel", blade.bevel, rise, defaults, add);
  for (const side of ["left", "right"] as const) {
    const own = blade.bevel[side];
    if (own !== undefined)
      faceDefaults(`blade.bevel.${side}`, { form: blade.bevel.form, ...own }, rise, defaults, add);
  }
  if (blade.swedge !== undefined) add("blade.swedge.thickness", groundThickness);
  for (const i of (blade.fullers ?? []).keys()) add(`blade.fullers[${i}].depth`, groundThickness);
  if (tang.buttThickness !== undefined) add("tang.buttThickness", groundThickness);
  if (tang.thickness !== undefined) add("tang.thickness", groundThickness);
  add("steel.density", defaults.steelDensity * (materialDensity(steel) ?? 0));
}

/** A law's first value, mm. */
const firstOf = (law: LawSpec): number => (typeof law === "number" ? law : (law[0]?.is ?? 0));

/** @param rise - what both faces gain together from edge to spine, mm, of which a crown may be a share. */
function faceDefaults(
  path: string,
  { form, height, crown }: Partial<FaceSpec>,
  rise: number,
  defaults: ToleranceDefaults,
  add: Add,
): void {
  if (height !== undefined && height !== "full") add(`${path}.height`, 2 * defaults.outline);
  if (crown === undefined || form !== "convex") return;
  // How far one face stands out is as uncertain as half of a thickness.
  const limit = defaults.groundThickness / 2;
  if ("mm" in crown) add(`${path}.crown.mm`, limit);
  else add(`${path}.crown.share`, limit / rise);
}

function handleDefaults(handle: HandleSpec, defaults: ToleranceDefaults, add: Add): void {
  const { groundThickness, outline, steelDensity, handleDensity } = defaults;
  const { slabs, liners, block, bolsters = [], guard, pommel, parts = [] } = handle;
  if (slabs !== undefined) {
    add("handle.slabs.thickness", 2 * groundThickness);
    if ((slabs.edgeRadius ?? 0) > 0) add("handle.slabs.edgeRadius", 2 * outline);
  }
  if (liners !== undefined) add("handle.liners.thickness", BOUGHT_SHEET * groundThickness);
  if (block !== undefined) {
    for (const size of ["height", "width", "length"]) add(`handle.block.${size}`, 2 * outline);
  }
  const fittings = [
    ...bolsters.map((_, i) => `handle.bolsters[${i}]`),
    ...(guard === undefined ? [] : ["handle.guard"]),
    ...(pommel === undefined ? [] : ["handle.pommel"]),
  ];
  for (const path of fittings) {
    for (const size of ["height", "width"]) add(`${path}.${size}`, 2 * outline);
    add(`${path}.length`, 2 * groundThickness);
  }
  for (const [path, material] of handleMaterials(handle)) {
    const isMetal = (materialDensity(material) ?? 0) > LIGHTEST_METAL;
    add(`${path}.density`, densityBand(material, isMetal ? steelDensity : handleDensity));
    if (material.moisture !== undefined) add(`${path}.moisture`, defaults.moisture);
  }
  for (const [i, { mass }] of parts.entries()) add(`handle.parts[${i}].mass`, defaults.partMass * mass);
}

/** Half the band of a material's density, g/mm³: the range of its sources, or a share where that is less. */
function densityBand(material: MaterialSpec, share: number): number {
  const row = material.density === undefined ? findMaterial(material.name) : undefined;
  const density = materialDensity(material) ?? 0;
  const band = row?.low === undefined || row.high === undefined ? 0 : (row.high - row.low) / 2;
  return Math.max(band, share * density);
}
