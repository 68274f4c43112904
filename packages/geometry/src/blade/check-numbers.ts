import { angle, count, type Issue, length, type QuantityValue, share } from "../errors/issue.js";
import { findMaterial } from "../materials/materials.js";
import { checkHandleNumbers } from "./check-handle.js";
import { namedHoles } from "./named-holes.js";
import type { KnifeSpec, LawSpec } from "./spec.js";

/** Rounding of stated places, mm. */
const ROUNDING = 1e-9;

/** Checks every number that can be judged without the outline; returns all problems, in the order of the file. */
export function checkNumbers(spec: KnifeSpec): Issue[] {
  const issues: Issue[] = [];
  const { blade, tang } = spec;
  const need = makeRules(issues);
  need.above("steel.density", spec.steel.density, 0, share);
  issues.push(...checkSteel(spec), ...checkSizes(spec));
  need.atLeast("blade.ricasso", blade.ricasso, 0);
  if (blade.thickness.length === 0) {
    issues.push({
      code: "no-stations",
      path: "blade.thickness",
      text: "The blade's thickness needs at least one station, for example { at: heel, is: 4 mm }.",
    });
  }
  need.law("blade.thickness", blade.thickness, "above");
  need.law("blade.flankTaper", blade.flankTaper, "atLeast");
  need.atLeast("blade.plunge.at", blade.plunge?.at, 0);
  need.atLeast("blade.plunge.length", blade.plunge?.length, 0);
  if (blade.bevel.height !== "full") need.law("blade.bevel.height", blade.bevel.height, "above");
  need.law("blade.bevel.edgeThickness", blade.bevel.edgeThickness, "atLeast");
  const crown = blade.bevel.crown;
  if (crown !== undefined) {
    if ("mm" in crown) need.law("blade.bevel.crown", crown.mm, "atLeast");
    else need.law("blade.bevel.crown", crown.share, "atLeast");
  }
  for (const side of ["right", "left"] as const) {
    const face = blade.bevel[side];
    if (face?.height !== undefined && face.height !== "full") {
      need.law(`blade.bevel.${side}.height`, face.height, "above");
    }
    need.above(`blade.bevel.${side}.wheelRadius`, face?.wheelRadius, 0);
  }
  need.above("blade.bevel.wheelRadius", blade.bevel.wheelRadius, 0);
  const { apex } = blade.bevel;
  if (apex !== undefined && !(apex >= -1 && apex <= 1)) {
    issues.push({
      code: "apex-range",
      path: "blade.bevel.apex",
      text: "The apex lies between −1 (on the left face) and 1 (on the right face); {value} does not.",
      values: { value: { quantity: "count", value: apex } },
    });
  }
  issues.push(...checkAngles(spec));
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

function checkAngles({ blade }: KnifeSpec): Issue[] {
  const { edgeAngle, microbevel, swedge, bevel } = blade;
  const issues: Issue[] = [];
  const within = (path: string, value: number, what: string): void => {
    if (value > 0 && value < Math.PI / 2) return;
    issues.push({
      code: "edge-angle-range",
      path,
      text: `A ${what} of {value} per side is no edge. Give an angle between 0° and 90°, usually 10° to 30°.`,
      values: { value: angle(value) },
    });
  };
  if (typeof edgeAngle === "number") within("blade.edgeAngle", edgeAngle, "sharpening angle");
  else {
    for (const side of ["right", "left"] as const) {
      const own = edgeAngle[side];
      if (own !== "flat") within(`blade.edgeAngle.${side}`, own, "sharpening angle");
    }
    if (edgeAngle.right === "flat" && edgeAngle.left === "flat") {
      issues.push({
        code: "no-edge",
        path: "blade.edgeAngle",
        text: "With both sides flat the blade has no edge. Give one side an angle.",
      });
    }
  }
  if (microbevel !== undefined) {
    within("blade.microbevel.angle", microbevel.angle, "microbevel");
    const steepest = Math.max(
      ...(typeof edgeAngle === "number" ? [edgeAngle] : [edgeAngle.right, edgeAngle.left]).map((a) =>
        a === "flat" ? 0 : a,
      ),
    );
    if (microbevel.angle <= steepest) {
      issues.push({
        code: "microbevel-not-steeper",
        path: "blade.microbevel.angle",
        text: "A microbevel of {value} is not steeper than the edge's {edge}. Make it steeper, or leave it out.",
        values: { value: angle(microbevel.angle), edge: angle(steepest) },
      });
    }
  }
  if (swedge !== undefined) within("blade.swedge.angle", swedge.angle, "swedge");
  for (const [path, face] of [
    ["blade.bevel", bevel],
    ["blade.bevel.right", { ...bevel, ...bevel.right }],
    ["blade.bevel.left", { ...bevel, ...bevel.left }],
  ] as const) {
    if (
      face.form !== "hollow" ||
      face.wheelRadius !== undefined ||
      issues.some((i) => i.code === "no-wheel")
    ) {
      continue;
    }
    issues.push({
      code: "no-wheel",
      path,
      text: "A hollow bevel needs the radius of its wheel, for example wheelRadius: 5 in.",
    });
  }
  return issues;
}

type Show = (value: number) => QuantityValue;

function makeRules(issues: Issue[]) {
  const refuse = (path: string, value: number, least: number, strict: boolean, show: Show): void => {
    issues.push({
      code: Number.isFinite(value) ? (strict ? "not-positive" : "negative") : "not-a-number",
      path,
      text: !Number.isFinite(value)
        ? "This is not a number that can be measured."
        : strict
          ? "{value} is too small here: it must be more than {least}."
          : "{value} is too small here: it must be {least} or more.",
      values: { value: show(value), least: show(least) },
    });
  };
  const above = (path: string, value: number | undefined, least: number, show: Show = length): void => {
    if (value !== undefined && !(value > least && Number.isFinite(value)))
      refuse(path, value, least, true, show);
  };
  const atLeast = (path: string, value: number | undefined, least: number, show: Show = length): void => {
    if (value !== undefined && !(value >= least && Number.isFinite(value))) {
      refuse(path, value, least, false, show);
    }
  };
  return {
    above,
    atLeast,
    finite(path: string, value: number): void {
      if (!Number.isFinite(value)) refuse(path, value, 0, false, length);
    },
    law(path: string, law: LawSpec | undefined, how: "above" | "atLeast"): void {
      const check = how === "above" ? above : atLeast;
      if (law === undefined) return;
      if (typeof law === "number") check(path, law, 0);
      else {
        for (const [i, station] of law.entries()) check(`${path}[${i}].is`, station.is, 0);
      }
    },
  };
}
