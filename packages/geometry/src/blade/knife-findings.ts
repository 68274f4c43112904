import { type Finding, length } from "../errors/issue.js";
import { wallAround } from "../plane/disc.js";
import { bevelFindings } from "./bevel-findings.js";
import { FINDING_LIMITS } from "./finding-limits.js";
import type { Knife } from "./knife.js";
import { namedHoles } from "./named-holes.js";

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
