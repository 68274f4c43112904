import { angle, type Finding, length, share } from "../errors/issue.js";
import { type BevelAtStation, bevelAt } from "./bevel-at.js";
import { facePath } from "./check-faces.js";
import { edgeFindings } from "./edge-findings.js";
import { levelCrown } from "./face-section.js";
import { byUse } from "./judging.js";
import type { Knife } from "./knife.js";
import { bevelStations, bevelsBegin, facesOf, type Side } from "./knife-faces.js";

/** What is unwise about the ground faces and the edge: height and steepness at the heel, the rest all along the bevel. */
export function bevelFindings(knife: Knife): Finding[] {
  return facesOf(knife).flatMap((side) => [
    ...height(knife, side),
    ...steepness(knife, side),
    ...convexity(knife, side),
    ...wheel(knife, side),
    ...edgeFindings(knife, side),
  ]);
}

function height(knife: Knife, side: Side): Finding[] {
  const x = bevelsBegin(knife);
  const { bevelHeight } = knife.laws[side];
  const { spineDistance } = bevelAt(knife, x, side);
  const asked = bevelHeight === "full" ? 0 : bevelHeight.valueAt(x);
  if (asked <= spineDistance + 1e-9) return [];
  return [
    {
      code: "bevel-over-spine",
      severity: "warn",
      path: facePath(knife.spec.blade.bevel, side, "height"),
      text: "A bevel {asked} high is more than the blade has at the heel ({height}): it is ground right to the spine. If that is meant, write full.",
      values: { asked: length(asked), height: length(spineDistance) },
      basis: "geometry",
    },
  ];
}

function steepness(knife: Knife, side: Side): Finding[] {
  const { angle: alpha } = bevelAt(knife, bevelsBegin(knife), side);
  const { bevelAngleKitchen, bevelAngle, bevelAngleChopper } = knife.limits;
  const most = byUse(knife, { kitchen: bevelAngleKitchen, field: bevelAngle, chopper: bevelAngleChopper });
  if (!knife.laws.symmetric || alpha <= most.value + 1e-9) return [];
  return [
    {
      code: "bevel-steep",
      severity: "warn",
      path: facePath(knife.spec.blade.bevel, side, "height"),
      text: "The bevel stands at {angle} per side at the heel; more than {limit} makes a wedge. Raise the bevel or thin the spine.",
      values: { angle: angle(alpha), limit: angle(most.value) },
      basis: most.basis,
    },
  ];
}

function convexity(knife: Knife, side: Side): Finding[] {
  const face = knife.laws[side];
  if (face.form !== "convex") return [];
  const { bevel } = knife.spec.blade;
  const looked = bevelStations(knife, side);
  const flat = looked.find(({ rise }) => rise <= 0);
  if (flat !== undefined) {
    return [
      {
        code: "convex-is-flat",
        severity: "warn",
        path: facePath(bevel, side, "form"),
        text: "At {x} ahead of the heel no arc bulges outward between edge and bevel line: the face is taken as flat there.",
        values: { x: length(flat.x) },
        basis: "geometry",
      },
    ];
  }
  const { crown } = face;
  const { crownShare } = knife.limits;
  if (crown === undefined) return [];
  let worst:
    | { readonly x: number; readonly asked: number; readonly most: number; readonly gain: number }
    | undefined;
  for (const { x, height, rise } of looked) {
    const asked = crown.law.valueAt(x) * (crown.kind === "mm" ? 1 : 2 * rise);
    const most = levelCrown(height, rise) * Math.min(1, crownShare.value);
    if (asked > most + 1e-9 && (worst === undefined || asked - most > worst.asked - worst.most)) {
      worst = { x, asked, most, gain: 2 * rise };
    }
  }
  if (worst === undefined) return [];
  return [
    {
      code: "crown-too-large",
      severity: "stop",
      path: facePath(bevel, side, "crown"),
      text:
        crown.kind === "mm"
          ? "At {x} ahead of the heel a crown of {asked} stands out beyond the flat; the most that fits there is {most}, level at the bevel line."
          : "At {x} ahead of the heel a crown of {askedShare} ({asked}) stands out beyond the flat; the most that fits there is {mostShare} ({most}), level at the bevel line.",
      values: {
        x: length(worst.x),
        asked: length(worst.asked),
        most: length(worst.most),
        ...(crown.kind === "mm"
          ? {}
          : { askedShare: share(worst.asked / worst.gain), mostShare: share(worst.most / worst.gain) }),
      },
      basis: crownShare.basis,
    },
  ];
}

/** A wheel too small leaves the blade thinnest above its edge, and in the end cuts through. */
function wheel(knife: Knife, side: Side): Finding[] {
  const { form, wheelRadius = Number.NaN } = knife.laws[side];
  if (form !== "hollow") return [];
  const path = facePath(knife.spec.blade.bevel, side, "wheelRadius");
  const looked = bevelStations(knife, side);
  const { wheelRoom } = knife.limits;
  const worst = smallestWheel(looked);
  const wanted = (worst?.radius ?? 0) * Math.max(1, wheelRoom.value);
  if (worst === undefined || wheelRadius >= wanted - 1e-9)
    return hollowBack(knife, looked, wheelRadius, path);
  return [
    {
      code: "wheel-too-small",
      ...(wheelRadius < worst.radius - 1e-9
        ? {
            severity: "stop",
            text: "At {x} ahead of the heel a wheel of {radius} radius leaves the blade thinnest above its edge; {least} is the smallest that does not. Take a larger wheel, or grind the bevel lower.",
          }
        : {
            severity: "warn",
            text: "At {x} ahead of the heel a wheel of {radius} radius is nearly too small: the blade would be thinnest above its edge, and {least} is the least that is allowed. Take a larger wheel, or grind the bevel lower.",
          }),
      path,
      values: { x: length(worst.x), radius: length(wheelRadius), least: length(wanted) },
      basis: wheelRoom.basis,
    },
  ];
}

/** The smallest wheel that nowhere dips below the edge, mm, and where it just does not; undefined on a face that does not rise. */
export function smallestWheel(
  looked: readonly BevelAtStation[],
): { readonly x: number; readonly radius: number } | undefined {
  let worst: { readonly x: number; readonly radius: number } | undefined;
  for (const { x, height, rise } of looked) {
    const radius = (height * height + rise * rise) / (2 * rise);
    if (rise > 0 && (worst === undefined || radius > worst.radius)) worst = { x, radius };
  }
  return worst;
}

/** Heights at which the steel over a hollowed back is looked at. */
const HEIGHTS = 48;

/** A face that does not rise (the apex lies on it) may be hollowed as long as the other face rises faster. */
function hollowBack(
  knife: Knife,
  looked: readonly BevelAtStation[],
  wheelRadius: number,
  path: string,
): Finding[] {
  const body = knife.body("unsharpened");
  for (const { x, height, edge } of looked.filter(({ rise }) => rise <= 0)) {
    const right = body.sectionAt(x);
    const left = body.section.left ?? right;
    for (let i = 1; i < HEIGHTS; i++) {
      const v = (height * i) / HEIGHTS;
      const thickness = right.valueAt(v) + left.valueAt(v);
      if (thickness >= edge - 1e-9) continue;
      return [
        {
          code: "wheel-too-small",
          severity: "stop",
          path,
          text: "At {x} ahead of the heel a wheel of {radius} radius leaves the blade {thickness} thick {above} above its edge, less than at the edge itself ({edge}). Take a larger wheel, or grind lower.",
          values: {
            x: length(x),
            radius: length(wheelRadius),
            thickness: length(thickness),
            above: length(v),
            edge: length(edge),
          },
          basis: "geometry: the blade must not be thinner above its edge than at it",
        },
      ];
    }
  }
  return [];
}
