import { angle, count, type Finding, type Issue, length, type QuantityValue, share } from "../errors/issue.js";
import { holeOutsideArea, sharedDiscArea, wallAround, wallBetween } from "../plane/disc.js";
import type { Knife } from "./knife.js";
import { bladeStation, tangStation } from "./knife-laws.js";
import { knifeFindings } from "./knife-findings.js";
import type { HoleSpec, KnifeSpec, LawSpec, StationSpec } from "./spec.js";

/** Rounding of stated places, mm. */
const ROUNDING = 1e-9;

/** Checks every number that can be judged without the outline; returns all problems, in the order of the file. */
export function checkNumbers(spec: KnifeSpec): Issue[] {
  const issues: Issue[] = [];
  const { blade, tang, handle } = spec;
  const need = need_(issues);
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
  });
  for (const key of [
    "face",
    "outline",
    "tip",
    "butt",
    "forgedEdge",
    "afterHardening",
    "minEdge",
  ] as const) {
    need.atLeast(`allowances.${key}`, spec.allowances?.[key], 0);
  }
  need.atLeast("forging.heats", spec.forging?.heats, 0, count);
  need.atLeast("forging.weldingHeats", spec.forging?.weldingHeats, 0, count);
  return issues;
}

type Show = (value: number) => QuantityValue;

function need_(issues: Issue[]) {
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
    if (value !== undefined && !(value > least && Number.isFinite(value))) refuse(path, value, least, true, show);
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
      else law.forEach((station, i) => check(`${path}[${i}].is`, station.is, 0));
    },
  };
}

/** Every hole with its place in the file. */
export function namedHoles(spec: KnifeSpec): readonly (readonly [string, HoleSpec])[] {
  return [
    ...(spec.blade.holes ?? []).map((hole, i) => [`blade.holes[${i}]`, hole] as const),
    ...(spec.tang.holes ?? []).map((hole, i) => [`tang.holes[${i}]`, hole] as const),
  ];
}

/** Checks what needs the built outline; with no issue left, also what is unwise. */
export function checkBuilt(knife: Knife): { readonly issues: Issue[]; readonly findings: Finding[] } {
  const issues = [...checkStations(knife), ...checkPlunge(knife), ...checkHoles(knife)];
  if (issues.length === 0) issues.push(...checkEdgeThickness(knife));
  return { issues, findings: issues.length === 0 ? knifeFindings(knife) : [] };
}

function checkStations(knife: Knife): Issue[] {
  const { spec, outline } = knife;
  const { blade, tang } = spec;
  const tangLength = outline.handleFront - outline.butt;
  const inBlade = (station: StationSpec): number => bladeStation(station.at, outline);
  const inTang = (station: StationSpec): number => tangStation(station.at, tangLength);
  const laws: readonly [string, LawSpec | undefined | "full", (s: StationSpec) => number, number][] = [
    ["blade.thickness", blade.thickness, inBlade, outline.edgeLength],
    ["blade.flankTaper", blade.flankTaper, inBlade, outline.edgeLength],
    ["blade.bevel.height", blade.bevel.height, inBlade, outline.edgeLength],
    ["blade.bevel.edgeThickness", blade.bevel.edgeThickness, inBlade, outline.edgeLength],
    ["tang.thickness", tang.thickness, inTang, tangLength],
  ];
  return laws.flatMap(([path, law, place, most]) => {
    if (law === undefined || law === "full" || typeof law === "number") return [];
    const issues: Issue[] = [];
    const seen: number[] = [];
    law.forEach((station, i) => {
      const at = place(station);
      if (!(at >= -ROUNDING && at <= most + ROUNDING)) {
        issues.push({
          code: "station-outside",
          path: `${path}[${i}].at`,
          text: "A station at {at} lies outside: this law runs from 0 to {most}.",
          values: { at: length(at), most: length(most) },
        });
      } else if (seen.some((other) => Math.abs(other - at) < 1e-6)) {
        issues.push({
          code: "station-twice",
          path: `${path}[${i}].at`,
          text: "There are two stations at {at}. Keep one of them.",
          values: { at: length(at) },
        });
      }
      seen.push(at);
    });
    return issues;
  });
}

function checkPlunge(knife: Knife): Issue[] {
  const plunge = knife.spec.blade.plunge;
  if (plunge === undefined || plunge.at + plunge.length < knife.outline.edgeLength) return [];
  return [
    {
      code: "plunge-past-tip",
      path: "blade.plunge",
      text: "The plunge ends {end} ahead of the heel, but the blade is only {edge} long. Bring it back.",
      values: { end: length(plunge.at + plunge.length), edge: length(knife.outline.edgeLength) },
    },
  ];
}

function checkHoles(knife: Knife): Issue[] {
  const issues: Issue[] = [];
  const holes = namedHoles(knife.spec);
  holes.forEach(([path, hole], i) => {
    const disc = { centre: hole.at, radius: hole.diameter / 2 };
    const outside = holeOutsideArea(disc, knife.outline.path);
    if (outside > 0) {
      issues.push({
        code: "hole-outside-steel",
        path: `${path}.at`,
        text: "This hole of {diameter} does not lie in the steel: it passes the outline by {by} ({share} of it is outside). Move it or drill smaller.",
        values: {
          diameter: length(hole.diameter),
          by: length(-wallAround(disc, knife.outline.path)),
          share: share(outside / (Math.PI * disc.radius ** 2)),
        },
      });
    }
    for (const [otherPath, other] of holes.slice(0, i)) {
      const otherDisc = { centre: other.at, radius: other.diameter / 2 };
      if (sharedDiscArea(disc, otherDisc) > 0) {
        issues.push({
          code: "holes-overlap",
          path: `${path}.at`,
          text: "This hole runs into {other} by {by}. Move one of them.",
          values: { other: otherPath, by: length(-wallBetween(disc, otherDisc)) },
        });
      }
    }
  });
  return issues;
}

/** The blade at its bevel line must be at least as thick as the edge that is left there before sharpening. */
function checkEdgeThickness(knife: Knife): Issue[] {
  const { laws, outline, spec } = knife;
  const body = knife.body("finished");
  const start = spec.blade.plunge?.at ?? 0;
  const places = new Set([start, outline.edgeLength, ...body.section.breaks]);
  for (let i = 1; i < 64; i++) places.add(start + ((outline.edgeLength - start) * i) / 64);
  for (const x of [...places].filter((x) => x >= start && x <= outline.edgeLength).sort((a, b) => a - b)) {
    const spineDistance = body.spineDistanceAt(x);
    const bevel = Math.min(
      laws.bevelHeight === "full" ? spineDistance : laws.bevelHeight.valueAt(x),
      spineDistance,
    );
    const taper =
      spineDistance > 0
        ? laws.flankTaper.valueAt(x) * Math.min(1, (4 * (spineDistance - bevel)) / spineDistance)
        : 0;
    const line = laws.spine.valueAt(x) - taper;
    const edge = laws.edgeThickness.valueAt(x);
    if (edge > line + ROUNDING) {
      return [
        {
          code: "edge-thicker-than-blade",
          path: "blade.bevel.edgeThickness",
          text: "At {x} ahead of the heel the edge is to be {edge} thick, but the blade is only {line} at its bevel line there. Make the edge thinner or the spine thicker.",
          values: { x: length(x), edge: length(edge), line: length(line) },
        },
      ];
    }
  }
  return [];
}
