import { type Issue, length } from "../errors/issue.js";
import { type Slot, wallAroundSlot, wallBetweenSlots } from "../plane/slot.js";
import { smallestWheel } from "./bevel-findings.js";
import { facePath } from "./check-faces.js";
import { fullerFloor } from "./fuller-floor.js";
import { grooveHalfWidth } from "./groove-moments.js";
import type { Knife } from "./knife.js";
import { bevelStations } from "./knife-faces.js";
import { bladeStation } from "./knife-laws.js";
import { namedHoles, slotOf } from "./named-holes.js";
import type { FullerSpec } from "./spec.js";

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

/** The place a fuller takes up on the flats. */
const reachOf = (fuller: Fuller): Slot => ({
  from: fuller.from,
  to: fuller.to,
  radius: grooveHalfWidth(fuller),
});

function checkFuller({ outline, body }: Knife, fuller: Fuller, i: number): Issue[] {
  const { wall } = wallAroundSlot(reachOf(fuller), outline.path);
  if (wall < -ROUNDING) {
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
  const thinnest = fullerFloor(body("finished"), fuller);
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

/** What two cut-outs share would be taken off twice: no fuller runs into a hole, or into another one of its face. */
function checkFullerOverlaps({ spec }: Knife, fullers: readonly Fuller[]): Issue[] {
  const holes = namedHoles(spec).map(([path, hole]) => [path, slotOf(hole)] as const);
  return fullers.flatMap((fuller, i) => {
    const reach = reachOf(fuller);
    const others = [
      ...holes,
      ...fullers
        .slice(0, i)
        .flatMap((other, j) =>
          other.faces === "both" || fuller.faces === "both" || other.faces === fuller.faces
            ? [[`blade.fullers[${j}]`, reachOf(other)] as const]
            : [],
        ),
    ];
    return others.flatMap(([path, other]): Issue[] => {
      const wall = wallBetweenSlots(reach, other);
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
function checkHollows(knife: Knife): Issue[] {
  const { spec, outline, laws, body } = knife;
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
  const least = smallestWheel(bevelStations(knife, side));
  return [
    {
      code: "hollow-through",
      path: facePath(spec.blade.bevel, side, "wheelRadius"),
      text:
        least === undefined
          ? "At {x} ahead of the heel the hollow goes through the blade: the faces pass each other by {by}. Take a wheel larger than {radius}, or grind the bevel lower."
          : "At {x} ahead of the heel the hollow goes through the blade: the faces pass each other by {by}. A wheel of {radius} radius is too small; {least} is the smallest that leaves the blade no thinner above its edge. Take a larger wheel, or grind the bevel lower.",
      values: {
        x: length(worst.x),
        by: length(-worst.thickness),
        radius: length(wheelOf(side)),
        ...(least === undefined ? {} : { least: length(least.radius) }),
      },
    },
  ];
}
