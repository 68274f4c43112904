import { type Finding, type Issue, length, share } from "../errors/issue.js";
import { slotArea, slotOutsideArea, wallAroundSlot, wallBetweenSlots } from "../plane/slot.js";
import { distance } from "../plane/vec2.js";
import { bevelAt } from "./bevel-at.js";
import { checkGround } from "./check-ground.js";
import { checkHandleFit, handleFindings } from "./check-handle-fit.js";
import { checkStations } from "./check-stations.js";
import { fittingFindings } from "./fitting-findings.js";
import type { Knife } from "./knife.js";
import { knifeFindings } from "./knife-findings.js";
import { namedHoles, slotOf } from "./named-holes.js";
import type { HoleSpec } from "./spec.js";
import { steelAt } from "./steel-at.js";

/** Rounding of stated places, mm. */
const ROUNDING = 1e-9;

/** Less steel than this between two holes is none, mm. */
const TOUCHING = 1e-3;

/** Checks what needs the built outline; with no issue left, also what is unwise. */
export function checkBuilt(knife: Knife): { readonly issues: Issue[]; readonly findings: Finding[] } {
  const { spec, outline } = knife;
  const steel = knife.body("finished").slab;
  const issues = [
    ...checkExtent(knife),
    ...checkStations(spec, outline),
    ...checkPlunge(knife),
    ...checkHoles(knife),
    ...checkGround(knife),
  ];
  issues.push(...checkHandleFit(spec, outline, steel));
  if (issues.length === 0) issues.push(...checkEdgeThickness(knife));
  const findings =
    issues.length === 0
      ? [
          ...knifeFindings(knife),
          ...handleFindings(spec, outline, steel, knife.limits.mortiseWall),
          ...fittingFindings(knife),
        ]
      : [];
  return { issues, findings };
}

/** An outline this long or tall is no knife's: a drawing or path data in the wrong unit, mm. */
const LARGEST = 5000;

function checkExtent(knife: Knife): Issue[] {
  const { minX, maxX, minY, maxY } = knife.body("finished").footprint;
  const size = Math.max(maxX - minX, maxY - minY);
  if (size <= LARGEST) return [];
  return [
    {
      code: "length-too-great",
      path: "blade.outline",
      text: "The outline measures {value}, more than any knife (the most is {limit}). Is it drawn in another unit?",
      values: { value: length(size), limit: length(LARGEST) },
    },
  ];
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

/** Share of a hole from which on it lies wholly outside. */
const WHOLLY = 0.999;

function outsideWords({ to }: HoleSpec, wholly: boolean): string {
  const places = "x counts ahead of the heel, y up from it";
  if (to !== undefined) {
    return `This slot of {diameter} does not lie in the steel: this end of it passes the outline by {by}. Move it, or make the slot shorter or narrower: ${places}.`;
  }
  return wholly
    ? `This hole of {diameter} lies wholly outside the steel. Move it: ${places}.`
    : "This hole of {diameter} does not lie in the steel: it passes the outline by {by} ({share} of it is outside). Move it or drill smaller.";
}

function checkHoles(knife: Knife): Issue[] {
  const issues: Issue[] = [];
  const holes = namedHoles(knife.spec);
  holes.forEach(([path, hole], i) => {
    const slot = slotOf(hole);
    const { wall: around, centre } = wallAroundSlot(slot, knife.outline.path);
    if (around < -ROUNDING) {
      const outside = slotOutsideArea(slot, knife.outline.path) / slotArea(slot);
      // Of a slot the end is told that lies farther out.
      const end = distance(centre, slot.to) < distance(centre, slot.from) ? "to" : "at";
      const steel = steelAt(knife.body("finished").footprint, end === "to" ? slot.to : slot.from);
      issues.push({
        code: "hole-outside-steel",
        path: `${path}.${end}`,
        text: `${outsideWords(hole, outside > WHOLLY)} ${steel.text}`,
        values: {
          ...steel.values,
          diameter: length(hole.diameter),
          by: length(-around),
          share: share(outside),
        },
      });
    }
    for (const [otherPath, other] of holes.slice(0, i)) {
      const wall = wallBetweenSlots(slot, slotOf(other));
      if (wall < TOUCHING) {
        issues.push({
          code: "holes-overlap",
          path: `${path}.at`,
          text:
            wall < 0
              ? "This hole runs into {other} by {by}. Move one of them."
              : "This hole touches {other}: no steel is left between them. Move one of them.",
          values: { other: otherPath, by: length(Math.max(0, -wall)) },
        });
      }
    }
  });
  return issues;
}

/** The blade at its bevel line must be at least as thick as the edge that is left there before sharpening. */
function checkEdgeThickness(knife: Knife): Issue[] {
  const { outline, spec } = knife;
  const start = spec.blade.plunge?.at ?? 0;
  const sides = knife.laws.symmetric ? (["right"] as const) : (["right", "left"] as const);
  const places = new Set([start, outline.edgeLength, ...knife.body("finished").section.breaks]);
  for (let i = 1; i < 64; i++) places.add(start + ((outline.edgeLength - start) * i) / 64);
  for (const x of [...places].filter((x) => x >= start && x <= outline.edgeLength).sort((a, b) => a - b)) {
    const edge = knife.laws.edgeThickness.valueAt(x);
    const bevelLine = Math.min(...sides.map((side) => bevelAt(knife, x, side).bevelLine));
    if (edge > bevelLine + ROUNDING) {
      return [
        {
          code: "edge-thicker-than-blade",
          path: "blade.bevel.edgeThickness",
          text: "At {x} ahead of the heel the edge is to be {edge} thick, but the blade is only {line} at its bevel line there. Make the edge thinner or the spine thicker.",
          values: { x: length(x), edge: length(edge), line: length(bevelLine) },
        },
      ];
    }
  }
  return [];
}
