import { type Finding, length, share } from "../errors/issue.js";
import { crestCrossing } from "./crest.js";
import type { Knife } from "./knife.js";
import { bladeLaw, bladeStation } from "./knife-laws.js";

/** What does not come out as written along the spine: a swedge that takes nothing off, an easing rounder than the spine is thick. */
export function spineFindings(knife: Knife): Finding[] {
  return [...idleSwedge(knife), ...deepSwedge(knife), ...roundedSpine(knife)];
}

/** Places between two x, ends included. */
const between = (from: number, to: number, others: readonly number[]): number[] => [
  ...Array.from({ length: 33 }, (_, i) => from + ((to - from) * i) / 32),
  ...others.filter((x) => x > from && x < to),
];

function idleSwedge({ spec, outline, laws, body }: Knife): Finding[] {
  const { swedge } = spec.blade;
  if (swedge === undefined) return [];
  const { slab } = body("finished");
  const left = bladeLaw(swedge.thickness, outline);
  const places = between(bladeStation(swedge.from, outline), bladeStation(swedge.to, outline), [
    ...left.breaks,
    ...laws.spine.breaks,
  ]);
  if (places.some((x) => left.valueAt(x) < slab.thicknessAt(x) - 1e-9)) return [];
  const thickest = Math.max(...places.map((x) => slab.thicknessAt(x)));
  return [
    {
      code: "swedge-cuts-nothing",
      severity: "warn",
      path: "blade.swedge.thickness",
      text: "The swedge leaves {left} at the spine, and the blade is no thicker than {spine} there: it takes nothing off. Leave less.",
      values: { left: length(left.range.min), spine: length(thickest) },
      basis: "geometry",
    },
  ];
}

/** Places along a swedge at which it is looked at. */
const EVENLY = 48;

/** A swedge that runs down over most of the blade: its planes are flatter, or leave less, than was meant. */
function deepSwedge({ body, limits }: Knife): Finding[] {
  const finished = body("finished");
  const swedge = finished.input.crest?.input.swedge;
  if (swedge === undefined) return [];
  const { footprint } = finished;
  const tall = (footprint.maxY - footprint.minY) / 2;
  const { swedgeDepth } = limits;
  let worst = { x: 0, part: 0, depth: 0 };
  for (let i = 1; i < EVENLY; i++) {
    const x = swedge.from + ((swedge.to - swedge.from) * i) / EVENLY;
    const spans = footprint.spansAt(x);
    const low = spans[0]?.[0] ?? 0;
    const top = spans[spans.length - 1]?.[1] ?? low;
    // Near a point every plane runs down to the edge.
    if (top - low < tall) continue;
    const depth = top - crestCrossing(finished, finished.sectionAt(x), x, top);
    if (depth / (top - low) > worst.part) worst = { x, part: depth / (top - low), depth };
  }
  if (worst.part <= swedgeDepth.value + 1e-9) return [];
  return [
    {
      code: "swedge-deep",
      severity: "warn",
      path: "blade.swedge.angle",
      text: "At {x} ahead of the heel the swedge runs {depth} down from the spine, {part} of the blade's height; more than {limit} is a second bevel. Make its angle larger, or leave more at the spine.",
      values: {
        x: length(worst.x),
        depth: length(worst.depth),
        part: share(worst.part),
        limit: share(swedgeDepth.value),
      },
      basis: swedgeDepth.basis,
    },
  ];
}

function roundedSpine({ spec, outline, laws, body }: Knife): Finding[] {
  const { easedSpine = 0 } = spec.blade;
  if (easedSpine === 0) return [];
  const { slab } = body("finished");
  let thinnest = { x: 0, thickness: Number.POSITIVE_INFINITY };
  for (const x of between(outline.handleFront, outline.edgeLength, laws.spine.breaks)) {
    const thickness = slab.thicknessAt(x);
    if (thickness < thinnest.thickness) thinnest = { x, thickness };
  }
  if (easedSpine <= thinnest.thickness / 2 + 1e-9) return [];
  return [
    {
      code: "eased-spine-over-half",
      severity: "note",
      path: "blade.easedSpine",
      text: "At {x} ahead of the heel the spine is {thickness} thick, so it is half round with a radius of {half} there, not {radius}.",
      values: {
        x: length(thinnest.x),
        thickness: length(thinnest.thickness),
        half: length(thinnest.thickness / 2),
        radius: length(easedSpine),
      },
      basis: "geometry",
    },
  ];
}
