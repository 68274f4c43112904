import { type Issue, length } from "../errors/issue.js";
import { wallAround } from "../plane/disc.js";
import { interpolate, type Vec2 } from "../plane/vec2.js";
import { facePath } from "./check-faces.js";
import { grooveHalfWidth } from "./groove-moments.js";
import type { Knife } from "./knife.js";
import { bladeStation } from "./knife-laws.js";
import { holeDiscs, leastWall, namedHoles } from "./named-holes.js";
import type { FullerSpec } from "./spec.js";
import type { SteelBody } from "./steel-body.js";

/** Rounding of stated places, mm. */
const ROUNDING = 1e-9;

/** Checks what is ground into the blade: swedge and fullers lie on it, the bevels of both faces leave steel between them. */
export function checkGround(knife: Knife): Issue[] {
  const fullers = (knife.spec.blade.fullers ?? []).map((fuller) => ({
    ...fuller,
    faces: fuller.faces ?? ("both" as const),
  }));
  return [
    ...checkSwedge(knife),
    ...fullers.flatMap((fuller, i) => checkFuller(knife, fuller, i)),
    ...checkFullerOverlaps(knife, fullers),
    ...checkHollows(knife),
  ];
}

function checkSwedge({ spec, outline, body }: Knife): Issue[] {
  const { swedge } = spec.blade;
  if (swedge === undefined) return [];
  const from = bladeStation(swedge.from, outline);
  const to = bladeStation(swedge.to, outline);
  const issues: Issue[] = [];
  if (!(to > from)) {
    issues.push({
      code: "swedge-backward",
      path: "blade.swedge.from",
      text: "The swedge begins at {from} and ends at {to} ahead of the heel. Give from behind to.",
      values: { from: length(from), to: length(to) },
    });
  }
  const least = outline.handleFront;
  const most = Math.max(outline.edgeLength, body("finished").footprint.maxX);
  for (const [key, at] of [
    ["from", from],
    ["to", to],
  ] as const) {
    if (at >= least - ROUNDING && at <= most + ROUNDING) continue;
    issues.push({
      code: "swedge-outside-blade",
      path: `blade.swedge.${key}`,
      text: "The swedge lies along the spine of the blade, from {least} to {most} ahead of the heel; {at} is outside.",
      values: { at: length(at), least: length(least), most: length(most) },
    });
  }
  return issues;
}

type Fuller = Required<FullerSpec>;

const discsOf = (fuller: Fuller) =>
  holeDiscs({
    kind: "lightening",
    at: fuller.from,
    to: fuller.to,
    diameter: 2 * grooveHalfWidth(fuller),
  });

function checkFuller({ outline, body }: Knife, fuller: Fuller, i: number): Issue[] {
  const wall = Math.min(...discsOf(fuller).map((disc) => wallAround(disc, outline.path)));
  if (wall < 0) {
    return [
      {
        code: "fuller-outside-steel",
        path: `blade.fullers[${i}].from`,
        text: "This fuller runs out of the steel by {by}. Move it, or make it shallower.",
        values: { by: length(-wall) },
      },
    ];
  }
  // The finished body has every groove in it: those of the other face count too.
  const thinnest = thinnestIn(body("finished"), fuller);
  if (thinnest.left > ROUNDING) return [];
  return [
    {
      code: "fuller-through",
      path: `blade.fullers[${i}].depth`,
      text: "This fuller is {depth} deep where the blade is only {floor} thick{other}: it goes through. Make it shallower.",
      values: {
        depth: length(fuller.depth),
        floor: length(thinnest.uncut),
        other: thinnest.uncut - thinnest.left > thinnest.own + ROUNDING ? ", with another one opposite" : "",
      },
    },
  ];
}

/** Places along a fuller and across it at which the floor is looked at. */
const ALONG = 48;
const ACROSS = 8;

/** Where a fuller leaves least steel: what is left, what there was, and how much of that this one takes, mm. */
function thinnestIn(body: SteelBody, fuller: Fuller) {
  const w = grooveHalfWidth(fuller);
  const run = Math.hypot(fuller.to.x - fuller.from.x, fuller.to.y - fuller.from.y);
  const along: Vec2 =
    run === 0
      ? { x: 1, y: 0 }
      : { x: (fuller.to.x - fuller.from.x) / run, y: (fuller.to.y - fuller.from.y) / run };
  let worst = { left: Number.POSITIVE_INFINITY, uncut: 0, own: 0 };
  for (let i = 0; i <= ALONG; i++) {
    const middle = interpolate(fuller.from, fuller.to, i / ALONG);
    for (let j = -ACROSS; j <= ACROSS; j++) {
      const q = (w * j) / ACROSS;
      const point = { x: middle.x - q * along.y, y: middle.y + q * along.x };
      const left = body.thicknessIgnoringOutline(point);
      if (left >= worst.left) continue;
      const depth = Math.max(0, Math.sqrt(fuller.radius ** 2 - q * q) - (fuller.radius - fuller.depth));
      worst = {
        left,
        uncut: body.faceUncut(point, "right") + body.faceUncut(point, "left"),
        own: depth * (fuller.faces === "both" ? 2 : 1),
      };
    }
  }
  return worst;
}

/** What two cut-outs share would be taken off twice: no fuller runs into a hole, or into another one of its face. */
function checkFullerOverlaps({ spec }: Knife, fullers: readonly Fuller[]): Issue[] {
  const holes = namedHoles(spec).map(([path, hole]) => [path, holeDiscs(hole)] as const);
  return fullers.flatMap((fuller, i) => {
    const discs = discsOf(fuller);
    const others = [
      ...holes,
      ...fullers
        .slice(0, i)
        .flatMap((other, j) =>
          other.faces === "both" || fuller.faces === "both" || other.faces === fuller.faces
            ? [[`blade.fullers[${j}]`, discsOf(other)] as const]
            : [],
        ),
    ];
    return others.flatMap(([path, other]): Issue[] => {
      const wall = leastWall(discs, other);
      if (!(wall < -ROUNDING)) return [];
      return [
        {
          code: "fuller-overlaps",
          path: `blade.fullers[${i}].from`,
          text: "This fuller runs into {other} by {by}. Move one of them.",
          values: { other: path, by: length(-wall) },
        },
      ];
    });
  });
}

/** Stations and heights at which the steel between two hollow faces is looked at. */
const STATIONS = 64;
const HEIGHTS = 48;

/** Two faces may not meet above the edge: a wheel far too small would take more steel than there is. */
function checkHollows({ spec, outline, laws, body }: Knife): Issue[] {
  if (laws.right.form !== "hollow" && laws.left.form !== "hollow") return [];
  const unsharpened = body("unsharpened");
  const start = spec.blade.plunge?.at ?? 0;
  const places = [start, outline.edgeLength, ...unsharpened.section.breaks].filter(
    (x) => x >= start && x <= outline.edgeLength,
  );
  for (let i = 1; i < STATIONS; i++) places.push(start + ((outline.edgeLength - start) * i) / STATIONS);
  let worst = { x: 0, thickness: -ROUNDING };
  for (const x of places) {
    const right = unsharpened.sectionAt(x);
    const left = unsharpened.section.left ?? right;
    const top = unsharpened.spineDistanceAt(x);
    for (let i = 1; i < HEIGHTS; i++) {
      const v = (top * i) / HEIGHTS;
      const thickness = right.valueAt(v) + left.valueAt(v);
      if (thickness < worst.thickness) worst = { x, thickness };
    }
  }
  if (worst.thickness >= -ROUNDING) return [];
  // The smaller wheel takes more.
  const wheelOf = (side: "right" | "left"): number =>
    laws[side].form === "hollow" ? (laws[side].wheelRadius ?? 0) : Number.POSITIVE_INFINITY;
  const side = wheelOf("left") < wheelOf("right") ? "left" : "right";
  return [
    {
      code: "hollow-through",
      path: facePath(spec.blade.bevel, side, "wheelRadius"),
      text: "At {x} ahead of the heel the hollow goes through the blade: the faces pass each other by {by}. Take a larger wheel, or grind the bevel lower.",
      values: { x: length(worst.x), by: length(-worst.thickness) },
    },
  ];
}
