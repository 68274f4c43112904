import { angle, type Finding, length } from "../errors/issue.js";
import { type BevelAtStation, bevelAt } from "./bevel-at.js";
import { levelCrown } from "./face-section.js";
import { FINDING_LIMITS } from "./finding-limits.js";
import type { Knife } from "./knife.js";
import { sideAngle } from "./size-states.js";

type Side = "right" | "left";

/** What is unwise about the ground faces and the edge, at the heel and, for wheels, along the whole bevel. */
export function bevelFindings(knife: Knife): Finding[] {
  const sides: readonly Side[] = knife.laws.symmetric ? ["right"] : ["right", "left"];
  return sides.flatMap((side) => [
    ...height(knife, side),
    ...steepness(knife, side),
    ...convexity(knife, side),
    ...wheel(knife, side),
    ...sharpening(knife, side),
  ]);
}

const heel = (knife: Knife): number => {
  const plunge = knife.spec.blade.plunge;
  return plunge === undefined ? 0 : plunge.at + plunge.length;
};

const bevelPath = (knife: Knife, side: Side, key: string): string =>
  knife.spec.blade.bevel[side] === undefined ? `blade.bevel.${key}` : `blade.bevel.${side}`;

function height(knife: Knife, side: Side): Finding[] {
  const x = heel(knife);
  const { bevelHeight } = knife.laws[side];
  const { spineDistance } = bevelAt(knife, x, side);
  const asked = bevelHeight === "full" ? 0 : bevelHeight.valueAt(x);
  if (asked <= spineDistance + 1e-9) return [];
  return [
    {
      code: "bevel-over-spine",
      severity: "warn",
      path: bevelPath(knife, side, "height"),
      text: "A bevel {asked} high is more than the blade has at the heel ({height}): it is ground right to the spine. If that is meant, write full.",
      values: { asked: length(asked), height: length(spineDistance) },
      basis: "geometry",
    },
  ];
}

function steepness(knife: Knife, side: Side): Finding[] {
  const { angle: alpha } = bevelAt(knife, heel(knife), side);
  const { bevelAngle } = FINDING_LIMITS;
  if (!knife.laws.symmetric || alpha <= bevelAngle.value) return [];
  return [
    {
      code: "bevel-steep",
      severity: "warn",
      path: bevelPath(knife, side, "height"),
      text: "The bevel stands at {angle} per side at the heel; more than {limit} makes a wedge. Raise the bevel or thin the spine.",
      values: { angle: angle(alpha), limit: angle(bevelAngle.value) },
      basis: bevelAngle.basis,
    },
  ];
}

/** Stations at which the faces are looked at; near a tip the bevel is lower than it is thick, and no face to judge. */
function stations(knife: Knife, side: Side): BevelAtStation[] {
  const from = heel(knife);
  const to = knife.outline.edgeLength;
  const places = new Set([from, ...knife.body("finished").section.breaks.filter((x) => x > from && x < to)]);
  for (let i = 1; i < 48; i++) places.add(from + ((to - from) * i) / 48);
  return [...places]
    .sort((a, b) => a - b)
    .map((x) => bevelAt(knife, x, side))
    .filter(({ height, rise }) => height > 4 * Math.abs(rise));
}

function convexity(knife: Knife, side: Side): Finding[] {
  const face = knife.laws[side];
  if (face.form !== "convex") return [];
  const looked = stations(knife, side);
  const flat = looked.find(({ rise }) => rise <= 0);
  if (flat !== undefined) {
    return [
      {
        code: "convex-is-flat",
        severity: "warn",
        path: bevelPath(knife, side, "form"),
        text: "At {x} ahead of the heel no arc bulges outward between edge and bevel line: the face is taken as flat there.",
        values: { x: length(flat.x) },
        basis: "geometry",
      },
    ];
  }
  const { crown } = face;
  if (crown === undefined) return [];
  let worst: { readonly x: number; readonly asked: number; readonly most: number } | undefined;
  for (const { x, height, rise } of looked) {
    const asked = crown.law.valueAt(x) * (crown.kind === "mm" ? 1 : 2 * rise);
    const most = levelCrown(height, rise);
    if (asked > most + 1e-9 && (worst === undefined || asked - most > worst.asked - worst.most)) {
      worst = { x, asked, most };
    }
  }
  if (worst === undefined) return [];
  return [
    {
      code: "crown-too-large",
      severity: "stop",
      path: bevelPath(knife, side, "crown"),
      text: "At {x} ahead of the heel a crown of {asked} stands out beyond the flat; the most that fits there is {most}, level at the bevel line.",
      values: { x: length(worst.x), asked: length(worst.asked), most: length(worst.most) },
      basis: "geometry: the arc that is level at the bevel line",
    },
  ];
}

/** A wheel too small leaves the blade thinnest above its edge, and in the end cuts through. */
function wheel(knife: Knife, side: Side): Finding[] {
  const { form, wheelRadius = Number.NaN } = knife.laws[side];
  if (form !== "hollow") return [];
  let worst: { readonly x: number; readonly least: number } | undefined;
  for (const { x, height, rise } of stations(knife, side)) {
    if (rise <= 0) continue;
    const chord = Math.hypot(height, rise);
    const least = (chord * chord) / (2 * rise);
    if (wheelRadius < least - 1e-9 && (worst === undefined || least > worst.least)) worst = { x, least };
  }
  if (worst === undefined) return [];
  return [
    {
      code: "wheel-too-small",
      severity: "stop",
      path: bevelPath(knife, side, "wheelRadius"),
      text: "At {x} ahead of the heel a wheel of {radius} radius leaves the blade thinnest above its edge; {least} is the smallest that does not. Take a larger wheel, or grind the bevel lower.",
      values: { x: length(worst.x), radius: length(wheelRadius), least: length(worst.least) },
      basis: "geometry: the arc must not dip below the edge, R = c²/(t − e)",
    },
  ];
}

function sharpening(knife: Knife, side: Side): Finding[] {
  const theta = sideAngle(knife.spec.blade.edgeAngle, side === "right" ? 1 : -1);
  if (theta === "flat") return [];
  const x = heel(knife);
  const { height, apex, bevelLine } = bevelAt(knife, x, side);
  const path = typeof knife.spec.blade.edgeAngle === "number" ? "blade.edgeAngle" : `blade.edgeAngle.${side}`;
  if (apex + Math.tan(theta) * height < bevelLine / 2) {
    return [
      {
        code: "edge-bevel-over-bevel-line",
        severity: "warn",
        path,
        text: "At {theta} per side the sharpening bevel runs up past the bevel line at the heel. Sharpen steeper, or grind higher or thinner.",
        values: { theta: angle(theta) },
        basis: "geometry",
      },
    ];
  }
  return grazing(knife, side, theta, path);
}

/** How nearly a plane may run along the face before a small error of the angle moves the bevel a long way. */
const GRAZING = 0.0175; // rad, one degree

function grazing(knife: Knife, side: Side, theta: number, path: string): Finding[] {
  const body = knife.body("unsharpened");
  const x = heel(knife);
  const section = body.sectionAt(x);
  const face = side === "right" ? section : (body.section.left ?? section);
  const { height, apex } = bevelAt(knife, x, side);
  const gap = (v: number): number => face.valueAt(v) - apex - v * Math.tan(theta);
  let crossings = 0;
  let slope = Number.POSITIVE_INFINITY;
  const steps = 400;
  for (let i = 0; i < steps; i++) {
    const a = (height * i) / steps;
    const b = (height * (i + 1)) / steps;
    if (gap(a) > 0 !== gap(b) > 0) {
      crossings++;
      slope = Math.min(slope, Math.abs(theta - Math.atan((face.valueAt(b) - face.valueAt(a)) / (b - a))));
    }
  }
  if (crossings <= 1 && slope >= GRAZING) return [];
  return [
    {
      code: "edge-bevel-grazes",
      severity: "warn",
      path,
      text:
        crossings > 1
          ? "At {theta} per side the sharpening plane meets the hollow face more than once: it also touches higher up. Sharpen steeper."
          : "At {theta} per side the sharpening plane only grazes the face: its width is anybody's guess. Sharpen steeper.",
      values: { theta: angle(theta) },
      basis: "geometry: less than 1° between plane and face",
    },
  ];
}
