import { angle, type Finding, length } from "../errors/issue.js";
import { wallAround } from "../plane/disc.js";
import { bevelAt } from "./bevel-at.js";
import { levelCrown } from "./face-section.js";
import type { Knife } from "./knife.js";
import { namedHoles } from "./named-holes.js";

const PRACTICE = "common practice, no source";

/** Where a value becomes unwise; one table. Lengths in mm, angles in rad, distances of holes in hole diameters. */
export const FINDING_LIMITS = {
  holeEdgeStop: {
    value: 1.5,
    basis: "boiler rule: centre to edge 1.5 d (Indian Boiler Regulations, reg. 184)",
  },
  holeEdgeGood: { value: 2, basis: "aircraft rule: centre to edge 2 d" },
  holeWall: { value: 3, basis: PRACTICE },
  tangAtPin: { value: 1.6, basis: PRACTICE },
  bevelAngle: { value: (5 * Math.PI) / 180, basis: PRACTICE },
} as const;

/** What is legal but unwise about the finished blade. */
export function knifeFindings(knife: Knife): Finding[] {
  return [...holeFindings(knife), ...bevelFindings(knife)];
}

function holeFindings(knife: Knife): Finding[] {
  const findings: Finding[] = [];
  const { slab } = knife.body("finished");
  for (const [path, hole] of namedHoles(knife.spec)) {
    const wall = wallAround({ centre: hole.at, radius: hole.diameter / 2 }, knife.outline.path);
    const toEdge = wall + hole.diameter / 2;
    const limits = FINDING_LIMITS;
    const stop = limits.holeEdgeStop.value * hole.diameter;
    const good = limits.holeEdgeGood.value * hole.diameter;
    if (toEdge < stop - 1e-9) {
      findings.push({
        code: "hole-too-near-edge",
        severity: "stop",
        path: `${path}.at`,
        text: "The centre of this {diameter} hole is {distance} from the side of the steel; at least {limit} is needed. The largest hole that fits here is {fits}.",
        values: {
          diameter: length(hole.diameter),
          distance: length(toEdge),
          limit: length(stop),
          fits: length(toEdge / limits.holeEdgeStop.value),
        },
        basis: limits.holeEdgeStop.basis,
      });
    } else if (toEdge < good - 1e-9 || wall < limits.holeWall.value - 1e-9) {
      const short = toEdge < good - 1e-9;
      findings.push({
        code: "hole-near-edge",
        severity: "warn",
        path: `${path}.at`,
        text: short
          ? "The centre of this {diameter} hole is {distance} from the side of the steel; {limit} is good. A hole of {fits} would have it."
          : "Only {wall} of steel is left beside this {diameter} hole; {limit} is good.",
        values: {
          diameter: length(hole.diameter),
          distance: length(toEdge),
          wall: length(wall),
          limit: length(short ? good : limits.holeWall.value),
          fits: length(toEdge / limits.holeEdgeGood.value),
        },
        basis: short ? limits.holeEdgeGood.basis : limits.holeWall.basis,
      });
    }
    const thickness = slab.thicknessAt(hole.at.x);
    if (hole.kind === "pin" && thickness < FINDING_LIMITS.tangAtPin.value) {
      findings.push({
        code: "tang-thin-at-pin",
        severity: "warn",
        path: `${path}.at`,
        text: "The tang is only {thickness} thick at this pin; {limit} is good. Taper it less, or move the pin forward.",
        values: { thickness: length(thickness), limit: length(FINDING_LIMITS.tangAtPin.value) },
        basis: FINDING_LIMITS.tangAtPin.basis,
      });
    }
  }
  return findings;
}

function bevelFindings(knife: Knife): Finding[] {
  const findings: Finding[] = [];
  const { spec, laws } = knife;
  const x = spec.blade.plunge === undefined ? 0 : spec.blade.plunge.at + spec.blade.plunge.length;
  const { height, bevelLine, edge, angle: alpha } = bevelAt(knife, x);
  const rise = (bevelLine - edge) / 2;
  const { bevelAngle } = FINDING_LIMITS;
  if (alpha > bevelAngle.value) {
    findings.push({
      code: "bevel-steep",
      severity: "warn",
      path: "blade.bevel.height",
      text: "The bevel stands at {angle} per side at the heel; more than {limit} makes a wedge. Raise the bevel or thin the spine.",
      values: { angle: angle(alpha), limit: angle(bevelAngle.value) },
      basis: bevelAngle.basis,
    });
  }
  if (spec.blade.bevel.form === "convex") {
    if (rise <= 0) {
      findings.push({
        code: "convex-is-flat",
        severity: "warn",
        path: "blade.bevel.form",
        text: "No arc bulges outward between edge and bevel line here: the face is taken as flat.",
        basis: "geometry",
      });
    }
    const crown = laws.crown;
    const asked = crown === undefined ? 0 : crown.law.valueAt(x) * (crown.kind === "mm" ? 1 : 2 * rise);
    const most = levelCrown(height, rise);
    if (asked > most + 1e-9) {
      findings.push({
        code: "crown-too-large",
        severity: "stop",
        path: "blade.bevel.crown",
        text: "A crown of {asked} stands out beyond the flat; the most that fits is {most}, level at the bevel line.",
        values: { asked: length(asked), most: length(most) },
        basis: "geometry: the arc that is level at the bevel line",
      });
    }
  }
  if (Math.tan(spec.blade.edgeAngle) * height < rise + edge / 2) {
    findings.push({
      code: "edge-bevel-over-bevel-line",
      severity: "warn",
      path: "blade.edgeAngle",
      text: "At {theta} per side the sharpening bevel runs up past the bevel line at the heel. Sharpen steeper, or grind higher or thinner.",
      values: { theta: angle(spec.blade.edgeAngle) },
      basis: "geometry",
    });
  }
  return findings;
}
