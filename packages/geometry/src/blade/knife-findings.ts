import { type Finding, length } from "../errors/issue.js";
import { wallAround } from "../plane/disc.js";
import { bevelFindings } from "./bevel-findings.js";
import { FINDING_LIMITS } from "./finding-limits.js";
import type { Knife } from "./knife.js";
import { holeDiscs, leastWall, namedHoles } from "./named-holes.js";
import { spineFindings } from "./spine-findings.js";

/**
 * What is legal but unwise about the finished blade.
 *
 * @example
 * knifeFindings(knife).map(({ code }) => code); // []
 */
export function knifeFindings(knife: Knife): Finding[] {
  return [
    ...holeFindings(knife),
    ...wallsBetween(knife),
    ...bevelFindings(knife),
    ...spineFindings(knife),
    ...suspicions(knife),
  ];
}

function holeFindings(knife: Knife): Finding[] {
  const findings: Finding[] = [];
  const { slab } = knife.body("finished");
  for (const [path, hole] of namedHoles(knife.spec)) {
    const wall = Math.min(...holeDiscs(hole).map((disc) => wallAround(disc, knife.outline.path)));
    const toEdge = wall + hole.diameter / 2;
    const limits = FINDING_LIMITS;
    const stop = limits.holeEdgeStop.value * hole.diameter;
    const good = limits.holeEdgeGood.value * hole.diameter;
    // Nothing pulls at a lightening hole: only the steel beside it counts.
    const bears = hole.kind !== "lightening";
    if (bears && toEdge < stop - 1e-9) {
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
    } else if ((bears && toEdge < good - 1e-9) || wall < limits.holeWall.value - 1e-9) {
      const short = bears && toEdge < good - 1e-9;
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

/** Steel between holes, pair by pair. */
function wallsBetween(knife: Knife): Finding[] {
  const holes = namedHoles(knife.spec).map(([path, hole]) => [path, holeDiscs(hole)] as const);
  const { holeWall } = FINDING_LIMITS;
  return holes.flatMap(([path, discs], i) =>
    holes.slice(0, i).flatMap(([otherPath, other]): Finding[] => {
      const wall = leastWall(discs, other);
      if (wall >= holeWall.value - 1e-9) return [];
      return [
        {
          code: "holes-close",
          severity: "warn",
          path: `${path}.at`,
          text: "Only {wall} of steel is left between this hole and {other}; {limit} is good. Move them apart.",
          values: { wall: length(wall), other: otherPath, limit: length(holeWall.value) },
          basis: holeWall.basis,
        },
      ];
    }),
  );
}

/** Values so far from the usual that a slipped digit or unit is likelier than the wish. */
function suspicions(knife: Knife): Finding[] {
  const findings: Finding[] = [];
  const { spec, laws } = knife;
  const { thickSpine, thickSlab } = FINDING_LIMITS;
  const { min, max } = laws.spine.range;
  const suspect = (code: string, path: string, text: string, value: number, limit: number, basis: string) =>
    findings.push({
      code,
      severity: "warn",
      path,
      text,
      values: { value: length(value), limit: length(limit) },
      basis,
    });
  if (max > thickSpine.value) {
    suspect(
      "spine-very-thick",
      "blade.thickness",
      "The spine is {value} thick; more than {limit} is rare. Is the unit or a digit wrong?",
      max,
      thickSpine.value,
      thickSpine.basis,
    );
  }
  const heel = laws.spine.valueAt(0);
  const tip = laws.spine.valueAt(knife.outline.edgeLength);
  if (tip > heel + 1e-9 && min < max) {
    suspect(
      "thicker-at-tip",
      "blade.thickness",
      "The blade is thicker at the tip ({value}) than at the heel ({limit}). Are the stations the right way round?",
      tip,
      heel,
      "common practice, no source: blades thin toward the tip",
    );
  }
  const slabs = spec.handle?.slabs?.thickness ?? 0;
  const slab = typeof slabs === "number" ? slabs : Math.max(...slabs.map(({ is }) => is));
  if (slab > thickSlab.value) {
    suspect(
      "slab-very-thick",
      "handle.slabs.thickness",
      "Each slab is {value} thick; more than {limit} is no handle. Is the unit or a digit wrong?",
      slab,
      thickSlab.value,
      thickSlab.basis,
    );
  }
  return findings;
}
