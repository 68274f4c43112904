import { count, type Issue, length, share } from "../errors/issue.js";
import { findMaterial } from "../materials/materials.js";
import { checkAngles } from "./check-angles.js";
import { checkFaces } from "./check-faces.js";
import { checkHandleNumbers } from "./check-handle.js";
import { namedHoles } from "./named-holes.js";
import { numberRules } from "./number-rules.js";
import type { KnifeSpec } from "./spec.js";

/** Rounding of stated places, mm. */
const ROUNDING = 1e-9;

/** Checks every number that can be judged without the outline; returns all problems, in the order of the file. */
export function checkNumbers(spec: KnifeSpec): Issue[] {
  const issues: Issue[] = [];
  const { blade, tang } = spec;
  const need = numberRules(issues);
  need.above("steel.density", spec.steel.density, 0, share);
  issues.push(...checkSteel(spec), ...checkSizes(spec));
  need.atLeast("blade.ricasso", blade.ricasso, 0);
  need.law("blade.thickness", blade.thickness, "above");
  need.law("blade.flankTaper", blade.flankTaper, "atLeast");
  need.atLeast("blade.plunge.at", blade.plunge?.at, 0);
  need.atLeast("blade.plunge.length", blade.plunge?.length, 0);
  issues.push(...checkFaces(blade.bevel));
  issues.push(...checkAngles(blade));
  need.above("blade.microbevel.height", blade.microbevel?.height, 0);
  if (blade.swedge !== undefined) need.law("blade.swedge.thickness", blade.swedge.thickness, "atLeast");
  need.atLeast("blade.easedSpine", blade.easedSpine, 0);
  if (blade.choil !== undefined && !("family" in blade.outline)) {
    issues.push({
      code: "choil-beside-runs",
      path: "blade.choil",
      text: "A choil is cut only into an outline by family. Draw it into the heelFace run, and leave this out.",
    });
  }
  for (const [i, fuller] of (blade.fullers ?? []).entries()) {
    need.above(`blade.fullers[${i}].radius`, fuller.radius, 0);
    need.above(`blade.fullers[${i}].depth`, fuller.depth, 0);
    for (const end of ["from", "to"] as const) {
      need.finite(`blade.fullers[${i}].${end}`, fuller[end].x);
      need.finite(`blade.fullers[${i}].${end}`, fuller[end].y);
    }
  }
  need.above("tang.length", tang.length, 0);
  need.above("tang.buttThickness", tang.buttThickness, 0);
  need.law("tang.thickness", tang.thickness, "above");
  if (tang.buttThickness !== undefined && tang.thickness !== undefined) {
    issues.push({
      code: "two-tang-laws",
      path: "tang.buttThickness",
      text: "The tang's thickness is given twice, by buttThickness and by stations. Keep one of them.",
    });
  }
  for (const [path, hole] of namedHoles(spec)) {
    need.above(`${path}.diameter`, hole.diameter, 0);
    need.above(`${path}.pin`, hole.pin, 0);
    need.finite(`${path}.at`, hole.at.x);
    need.finite(`${path}.at`, hole.at.y);
    need.finite(`${path}.to`, hole.to?.x);
    need.finite(`${path}.to`, hole.to?.y);
    if (hole.pin !== undefined && hole.pin > hole.diameter + ROUNDING) {
      issues.push({
        code: "pin-wider-than-hole",
        path: `${path}.pin`,
        text: "A pin of {pin} does not go into a hole of {hole}. Give the pin's own diameter, or drill wider.",
        values: { pin: length(hole.pin), hole: length(hole.diameter) },
      });
    }
  }
  issues.push(...checkHandleNumbers(spec));
  for (const key of ["face", "outline", "tip", "butt", "forgedEdge", "afterHardening", "minEdge"] as const) {
    need.atLeast(`allowances.${key}`, spec.allowances?.[key], 0);
  }
  need.atLeast("forging.heats", spec.forging?.heats, 0, count);
  need.atLeast("forging.weldingHeats", spec.forging?.weldingHeats, 0, count);
  return issues;
}

/** g/mm³ between which a density is that of a blade steel; outside it a digit or a unit has slipped. */
const STEEL_DENSITY = { least: 0.0065, most: 0.0095 };

function checkSteel({ steel }: KnifeSpec): Issue[] {
  const row = findMaterial(steel.name);
  if (steel.density === undefined && row !== undefined && row.kind !== "steel" && row.kind !== "metal") {
    return [
      {
        code: "not-a-steel",
        path: "steel",
        text: "{name} is no metal in the table of materials. Name the steel of the blade.",
        values: { name: steel.name },
      },
    ];
  }
  const density = steel.density ?? row?.density;
  if (density === undefined || !(density > 0)) return [];
  if (density >= STEEL_DENSITY.least && density <= STEEL_DENSITY.most) return [];
  return [
    {
      code: "not-a-steel",
      path: steel.density === undefined ? "steel" : "steel.density",
      text: "A density of {density} g/cm3 is none of a steel (about 7.4 to 8.2). Is the unit or a digit wrong?",
      values: { density: String(Number((density * 1000).toPrecision(4))) },
    },
  ];
}

/** No knife is this long, mm: beyond it a unit has slipped, or the file is no knife. */
const LONGEST = 5000;

/** Every length in the description must be one that a knife can have. */
function checkSizes(spec: KnifeSpec): Issue[] {
  const issues: Issue[] = [];
  const walk = (node: unknown, path: string): void => {
    if (typeof node === "number" && Math.abs(node) > LONGEST && !/density|heats|mass/i.test(path)) {
      issues.push({
        code: "length-too-great",
        path,
        text: "{value} is more than any knife has (the most is {limit}). Is the unit or a digit wrong?",
        values: { value: length(node), limit: length(LONGEST) },
      });
    } else if (Array.isArray(node)) {
      for (const [i, item] of node.entries()) walk(item, `${path}[${i}]`);
    } else if (typeof node === "object" && node !== null) {
      for (const [key, item] of Object.entries(node)) walk(item, path === "" ? key : `${path}.${key}`);
    }
  };
  walk(spec, "");
  return issues;
}
