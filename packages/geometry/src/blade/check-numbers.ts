import { angle, count, type Issue, length, type QuantityValue, share } from "../errors/issue.js";
import { namedHoles } from "./named-holes.js";
import type { KnifeSpec, LawSpec } from "./spec.js";

/** Rounding of stated places, mm. */
const ROUNDING = 1e-9;

/** Checks every number that can be judged without the outline; returns all problems, in the order of the file. */
export function checkNumbers(spec: KnifeSpec): Issue[] {
  const issues: Issue[] = [];
  const { blade, tang, handle } = spec;
  const need = makeRules(issues);
  need.above("steel.density", spec.steel.density, 0, share);
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
  if (!(blade.edgeAngle > 0 && blade.edgeAngle < Math.PI / 2)) {
    issues.push({
      code: "edge-angle-range",
      path: "blade.edgeAngle",
      text: "A sharpening angle of {value} per side is no edge. Give an angle between 0° and 90°, usually 10° to 30°.",
      values: { value: angle(blade.edgeAngle) },
    });
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
  const slabs = handle?.slabs;
  need.above("handle.slabs.thickness", slabs?.thickness, 0);
  need.atLeast("handle.slabs.edgeRadius", slabs?.edgeRadius, 0);
  need.above("handle.slabs.material.density", slabs?.material.density, 0, share);
  need.above("handle.pins.material.density", handle?.pins?.material.density, 0, share);
  if (slabs?.edgeRadius !== undefined && slabs.edgeRadius > slabs.thickness) {
    issues.push({
      code: "radius-over-slab",
      path: "handle.slabs.edgeRadius",
      text: "An edge radius of {radius} is more than the slab's thickness of {thickness}. Make it smaller.",
      values: { radius: length(slabs.edgeRadius), thickness: length(slabs.thickness) },
    });
  }
  handle?.parts?.forEach((part, i) => {
    need.atLeast(`handle.parts[${i}].mass`, part.mass, 0);
    need.finite(`handle.parts[${i}].at`, part.at.x);
    need.finite(`handle.parts[${i}].at`, part.at.y);
  });
  for (const key of ["face", "outline", "tip", "butt", "forgedEdge", "afterHardening", "minEdge"] as const) {
    need.atLeast(`allowances.${key}`, spec.allowances?.[key], 0);
  }
  need.atLeast("forging.heats", spec.forging?.heats, 0, count);
  need.atLeast("forging.weldingHeats", spec.forging?.weldingHeats, 0, count);
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
