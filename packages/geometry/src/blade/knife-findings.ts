import type { FindingCode } from "../errors/finding-codes.js";
import { type Finding, length } from "../errors/issue.js";
import { nearestOnPath } from "../plane/nearest.js";
import { wallAroundSlot, wallBetweenSlots } from "../plane/slot.js";
import type { Vec2 } from "../plane/vec2.js";
import { bevelFindings } from "./bevel-findings.js";
import { holePlaceFindings } from "./hole-place-findings.js";
import { byUse } from "./judging.js";
import type { Knife } from "./knife.js";
import { namedHoles, slotOf } from "./named-holes.js";
import { type Outline, type RunName, runOfSegment } from "./outline.js";
import { plungeFindings } from "./plunge-findings.js";
import { type TooLow, tooLowForHole } from "./room-for-hole.js";
import type { HoleSpec } from "./spec.js";
import { spineFindings } from "./spine-findings.js";
import { steelAt } from "./steel-at.js";

/**
 * What is legal but unwise about the finished blade.
 *
 * @example
 * knifeFindings(knife).map(({ code }) => code); // []
 */
export function knifeFindings(knife: Knife): Finding[] {
  return [
    // A slip of a unit first: much of what else is found comes of it.
    ...suspicions(knife),
    ...holeFindings(knife),
    ...wallsBetween(knife),
    ...holePlaceFindings(knife),
    ...bevelFindings(knife),
    ...spineFindings(knife),
    ...plungeFindings(knife),
  ];
}

function holeFindings(knife: Knife): Finding[] {
  const findings: Finding[] = [];
  const { slab } = knife.body("finished");
  const { tangAtPin, tangAtPinChopper } = knife.limits;
  const atPin = byUse(knife, { kitchen: tangAtPin, field: tangAtPin, chopper: tangAtPinChopper });
  for (const [path, hole] of namedHoles(knife.spec)) {
    findings.push(...nearEdge(knife, path, hole));
    const thickness = slab.thicknessAt(hole.at.x);
    if (hole.kind === "pin" && thickness < atPin.value - 1e-9) {
      findings.push({
        code: "tang-thin-at-pin",
        severity: "warn",
        path: `${path}.at`,
        text: "The tang is only {thickness} thick at this pin; {limit} is good. Taper it less, or move the pin forward.",
        values: { thickness: length(thickness), limit: length(atPin.value) },
        basis: atPin.basis,
      });
    }
  }
  return findings;
}

/**
 * Too little steel beside a hole. Where a pin or a lanyard pulls at it, it is held against the rules of riveting, by its
 * diameter; of a hole that carries nothing, for hanging up or for lightness, only the steel that is left counts.
 */
function nearEdge(knife: Knife, path: string, hole: HoleSpec): Finding[] {
  const { outline, limits } = knife;
  const { wall, centre } = wallAroundSlot(slotOf(hole), outline.path);
  const toEdge = wall + hole.diameter / 2;
  const { holeEdgeStop, holeEdgeGood, holeWall } = limits;
  const bears = hole.kind === "pin" || hole.kind === "thong";
  const stops = bears && toEdge < holeEdgeStop.value * hole.diameter - 1e-9;
  const short = bears && toEdge < holeEdgeGood.value * hole.diameter - 1e-9;
  const rule = stops ? holeEdgeStop : holeEdgeGood;
  const side = sideOf(outline, centre);
  const values = {
    diameter: length(hole.diameter),
    side: side === undefined ? "the side of the steel" : SIDES[side],
    distance: length(toEdge),
    wall: length(wall),
  };
  if (short) {
    const limit = rule.value * hole.diameter;
    const low =
      side !== undefined && LONG_SIDES.has(side)
        ? tooLowForHole(knife, hole, limit, holeEdgeGood.value * hole.diameter)
        : undefined;
    if (low !== undefined)
      return [
        {
          code: stops ? "hole-too-near-edge" : "hole-near-edge",
          severity: stops ? "stop" : "warn",
          path: `${path}.at`,
          ...noRoomWords(low, stops, path),
          values: {
            ...values,
            limit: length(limit),
            height: length(low.height),
            needed: length(2 * limit),
            fits: length(low.half / rule.value),
            ...(low.place === undefined ? {} : { x: length(low.place.x), y: length(low.place.y) }),
          },
          basis: rule.basis,
        },
      ];
    // Of what stands too near an end y says nothing.
    const steel =
      stops && side !== undefined && LONG_SIDES.has(side)
        ? steelAt(knife.body("finished").footprint, hole.at)
        : undefined;
    return [
      {
        code: stops ? "hole-too-near-edge" : "hole-near-edge",
        severity: stops ? "stop" : "warn",
        path: `${path}.at`,
        text: stops
          ? `The centre of this {diameter} hole is {distance} from {side}; at least {limit} is needed. Move it {move} away from there, or drill {fits} at most.${steel === undefined ? "" : ` ${steel.text}`}`
          : "The centre of this {diameter} hole is {distance} from {side}; {limit} is good. Moved {move} away from there, or drilled {fits}, it would have it.",
        values: {
          ...values,
          ...steel?.values,
          limit: length(limit),
          move: length(limit - toEdge),
          fits: length(toEdge / rule.value),
        },
        basis: rule.basis,
      },
    ];
  }
  if (wall >= holeWall.value - 1e-9) return [];
  return [
    {
      code: "hole-near-edge",
      severity: "warn",
      path: `${path}.at`,
      text: "Only {wall} of steel is left between this {diameter} hole and {side}; {limit} is good. Move it, or make it smaller.",
      values: { ...values, limit: length(holeWall.value) },
      basis: holeWall.basis,
    },
  ];
}

/** No way up or down helps: what to do where the steel is lower than the hole needs. */
function noRoomWords({ place }: TooLow, stops: boolean, path: string): { readonly text: string } {
  const what = path.startsWith("tang") ? "tang" : "steel";
  const smaller = "Take a pin of {fits} at most, in the middle of that height";
  const elsewhere = place === undefined ? "" : ", or move it to x {x}, y {y}, where there is room";
  return {
    text: `The ${what} is {height} high at this {diameter} hole, whose centre is {distance} from {side}; {needed} is ${
      stops ? "needed" : "good"
    }, {limit} on each side, so moving it up or down does not help. ${smaller}, or make the ${what} higher there${elsewhere}.`,
  };
}

/** What a smith calls the runs of an outline. */
const SIDES: Readonly<Record<RunName, string>> = {
  edge: "the edge",
  front: "the front of the blade",
  spine: "the spine",
  tangTop: "the top of the tang",
  butt: "the butt",
  tangBottom: "the lower side of the tang",
  heelFace: "the heel's face",
};

/** Runs that lie over or under a hole. */
const LONG_SIDES: ReadonlySet<RunName> = new Set(["edge", "spine", "tangTop", "tangBottom"]);

function sideOf(outline: Outline, place: Vec2): RunName | undefined {
  const nearest = nearestOnPath(outline.path, place);
  return nearest === undefined ? undefined : runOfSegment(outline, nearest.segment);
}

/** Steel between holes, pair by pair. */
function wallsBetween(knife: Knife): Finding[] {
  const holes = namedHoles(knife.spec).map(([path, hole]) => [path, slotOf(hole)] as const);
  const { holeWall } = knife.limits;
  return holes.flatMap(([path, slot], i) =>
    holes.slice(0, i).flatMap(([otherPath, other]): Finding[] => {
      const wall = wallBetweenSlots(slot, other);
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
  const { thickSpine, thickSlab } = knife.limits;
  const { min, max } = laws.spine.range;
  const suspect = (
    code: FindingCode,
    path: string,
    text: string,
    value: number,
    limit: number,
    basis: string,
  ) =>
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
