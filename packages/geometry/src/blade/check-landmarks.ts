import { type Issue, length, type QuantityValue } from "../errors/issue.js";
import { distance, type Vec2 } from "../plane/vec2.js";
import { FAMILIES, FAMILY_NAMES } from "./families.js";
import { edgeRise, type Landmarks, resolveLandmarks, SAME_LANDMARK, snapTo } from "./landmarks.js";
import type { BladeSpec, LandmarkOutlineSpec, TangSpec } from "./spec.js";
import { filletSetback, type TangCorners, tangCorners } from "./tang-runs.js";

type Values = Record<string, QuantityValue | string>;
const issue = (code: string, path: string, text: string, values: Values = {}): Issue => ({
  code,
  path,
  text,
  values,
});

/** An issue whose values are all lengths, mm. */
const lengthIssue = (code: string, path: string, text: string, values: Record<string, number>): Issue =>
  issue(
    code,
    path,
    text,
    Object.fromEntries(Object.entries(values).map(([name, value]) => [name, length(value)])),
  );

/**
 * Rules that landmarks must keep before an outline can be built from them: finite, positive, and each within what the
 * others leave. Everything that is wrong is listed, in the order of the file.
 */
export function checkLandmarks(
  spec: LandmarkOutlineSpec,
  ricasso: number,
  tang: TangSpec,
  choil?: BladeSpec["choil"],
): Issue[] {
  if (!Object.hasOwn(FAMILIES, spec.family)) {
    const text = "{family} is no family of blades. Write one of {names}, or give the outline by runs.";
    const values = { family: String(spec.family), names: FAMILY_NAMES.join(", ") };
    return [issue("unknown-family", "blade.outline.family", text, values)];
  }
  const sizes = checkSizes(spec, ricasso, tang, choil);
  // Rules between landmarks mean nothing while one of them is no length at all.
  if (sizes.length > 0) return sizes;
  const landmarks = resolveLandmarks(spec, ricasso, tang, choil);
  return [
    ...checkUse(spec, tang),
    ...checkBlade(spec, landmarks),
    ...checkTang(landmarks),
    ...checkChoil(landmarks),
  ];
}

/** A landmark that the family or the tang has no use for would be passed over in silence. */
function checkUse(spec: LandmarkOutlineSpec, tang: TangSpec): Issue[] {
  const issues: Issue[] = [];
  if (spec.spineBreak !== undefined && FAMILIES[spec.family].front === "square") {
    const text =
      "The spine of a {family} blade stays level to its front, so it has no break. Leave this out.";
    issues.push(
      issue("spine-break-unused", "blade.outline.spineBreak", text, { family: String(spec.family) }),
    );
  }
  if (tang.shoulderRadius !== undefined && tang.form === "full") {
    const text = "A full tang has no shoulders to round. Leave this out, or make the tang hidden.";
    issues.push(issue("shoulder-radius-unused", "tang.shoulderRadius", text));
  }
  return issues;
}

function checkSizes(
  spec: LandmarkOutlineSpec,
  ricasso: number,
  tang: TangSpec,
  choil: BladeSpec["choil"],
): Issue[] {
  const outline = "blade.outline";
  const tipSign = FAMILIES[spec.family].front === "square" ? "positive" : "zero-or-more";
  return [
    ...lengthRule(`${outline}.edgeLength`, spec.edgeLength, "positive"),
    ...lengthRule(`${outline}.heelHeight`, spec.heelHeight, "positive"),
    ...lengthRule(`${outline}.straightEdge`, spec.straightEdge, "zero-or-more"),
    ...lengthRule(`${outline}.tipHeight`, spec.tipHeight, tipSign),
    ...lengthRule(`${outline}.spineBreak`, spec.spineBreak, "zero-or-more"),
    ...lengthRule("blade.ricasso", ricasso, "zero-or-more"),
    ...lengthRule("blade.choil.radius", choil?.radius, "positive"),
    ...(tang.length === undefined
      ? [
          issue(
            "tang-length-missing",
            "tang.length",
            "The tang has no length. Give it from the handle front to the butt.",
          ),
        ]
      : lengthRule("tang.length", tang.length, "positive")),
    ...(["front", "middle", "butt"] as const).flatMap((place) =>
      lengthRule(`tang.heights.${place}`, tang.heights?.[place], "positive"),
    ),
    ...lengthRule("tang.drop", tang.drop, "zero-or-more"),
    ...lengthRule("tang.shoulderRadius", tang.shoulderRadius, "zero-or-more"),
  ];
}

/** Sizes past this, mm, are a slip of the unit, and would make the numbers of an outline overflow. */
const LONGEST = 1e5;

function lengthRule(path: string, value: number | undefined, sign: "positive" | "zero-or-more"): Issue[] {
  if (value === undefined) return [];
  if (!Number.isFinite(value)) {
    return [
      issue(
        "not-a-length",
        path,
        "This is not a length. Write a number, with its unit if it is not in the file's units.",
      ),
    ];
  }
  if (value < 0) {
    const text = "A length of {value} is below zero. Give it as a positive length.";
    return [lengthIssue("negative-length", path, text, { value })];
  }
  if (value > LONGEST) {
    const text = "A length of {value} is no part of a knife; the most is {most}. Check its unit.";
    return [lengthIssue("length-too-great", path, text, { value, most: LONGEST })];
  }
  if (value < SAME_LANDMARK && sign === "positive") {
    return [
      issue("zero-length", path, "A length of zero leaves nothing here. Give it as a positive length."),
    ];
  }
  return [];
}

function checkBlade(spec: LandmarkOutlineSpec, landmarks: Landmarks): Issue[] {
  const { edgeLength, heelHeight, straightEdge, tipHeight, spineBreak, front } = landmarks;
  const issues: Issue[] = [];
  if (straightEdge > edgeLength) {
    const text =
      "The straight part of the edge, {straightEdge}, is longer than the whole edge of {edgeLength}. Shorten it, or lengthen the edge.";
    const values = { straightEdge, edgeLength };
    issues.push(lengthIssue("straight-edge-too-long", "blade.outline.straightEdge", text, values));
  }
  if (tipHeight > heelHeight && FAMILIES[spec.family].tipHeight <= 1) {
    const text =
      front === "square"
        ? "A front of {tipHeight} is higher than the blade at the heel, {heelHeight}, and the spine stays level. Lower the front, or raise the heel height."
        : "The tip at {tipHeight} lies above the spine at {heelHeight}, which this family does not rise to. Lower the tip, take the family trailing-point, or give the outline by runs.";
    issues.push(lengthIssue("tip-above-spine", "blade.outline.tipHeight", text, { tipHeight, heelHeight }));
  }
  if (
    spineBreak > edgeLength ||
    (spineBreak === edgeLength && tipHeight !== heelHeight && front === "pointed")
  ) {
    const text =
      "The spine would leave its level at {spineBreak}, but the tip is at {edgeLength}. Let it begin before the tip.";
    const values = { spineBreak, edgeLength };
    issues.push(lengthIssue("spine-break-beyond-tip", "blade.outline.spineBreak", text, values));
  }
  return issues.length > 0 ? issues : checkBelly(landmarks);
}

function checkBelly(landmarks: Landmarks): Issue[] {
  const { edgeLength, straightEdge, front } = landmarks;
  const rise = edgeRise(landmarks);
  const belly = edgeLength - straightEdge;
  if (rise === 0 || (front === "pointed" && belly > 0) || belly >= rise) return [];
  const needed = front === "square" ? edgeLength - rise : edgeLength;
  const values = { rise, belly, needed: Math.max(0, needed) };
  const text =
    front === "square"
      ? needed < 0
        ? "The edge lifts by {rise}, more than the whole edge is long, so it would turn back. Raise the tip height."
        : "The edge lifts by {rise} over a belly of only {belly}, so it would turn back. Make the straight edge {needed} or shorter, or raise the tip height."
      : "The edge has to rise by {rise} but nothing is left for it. Make the straight edge shorter than {needed}.";
  return [lengthIssue("belly-too-short", "blade.outline.straightEdge", text, values)];
}

function checkTang(landmarks: Landmarks): Issue[] {
  const { drop, heelHeight, tangHeights, tangForm } = landmarks;
  const { front } = tangHeights;
  if (drop >= heelHeight) {
    const text =
      "A tang lowered by {drop} lies below the blade, which is {heelHeight} high. Lower it by less.";
    return [lengthIssue("tang-drop-too-deep", "tang.drop", text, { drop, heelHeight })];
  }
  if (tangForm === "full") return [];
  if (snapTo(front, heelHeight) >= heelHeight) {
    const text =
      "A hidden tang {front} high at the handle front is no narrower than the blade, {heelHeight}, so it has no shoulder. Make it lower, or make the tang full.";
    return [lengthIssue("no-shoulder", "tang.heights.front", text, { front, heelHeight })];
  }
  const room = heelHeight - front;
  if (snapTo(drop, room) > room) {
    const text =
      "A hidden tang {front} high, lowered by {drop}, reaches below the heel. Lower it by {room} at most, or make it less high.";
    return [lengthIssue("tang-below-heel", "tang.drop", text, { front, drop, room })];
  }
  return checkShoulders(landmarks);
}

/** A fillet has to fit on the shoulder as well as on the tang's side. */
function checkShoulders(landmarks: Landmarks): Issue[] {
  const { shoulderRadius } = landmarks;
  if (shoulderRadius === 0) return [];
  const c: TangCorners = tangCorners(landmarks);
  const room = Math.min(
    filletRoom(c.spineEnd, c.frontTop, c.middleTop),
    filletRoom(c.middleBottom, c.frontBottom, c.foot),
  );
  if (snapTo(shoulderRadius, room) <= room) return [];
  const text =
    "A shoulder rounded with {shoulderRadius} needs more room than the shoulder and the front half of the tang leave it; the most is {room}. Make the radius smaller, or the tang narrower.";
  return [lengthIssue("shoulder-radius-too-large", "tang.shoulderRadius", text, { shoulderRadius, room })];
}

/** The largest radius that fits in a corner, mm; without a limit where there is no corner. */
function filletRoom(before: Vec2, corner: Vec2, after: Vec2): number {
  const side = Math.min(distance(before, corner), distance(corner, after));
  return side === 0 ? Number.POSITIVE_INFINITY : side / filletSetback(before, corner, after, 1);
}

function checkChoil(landmarks: Landmarks): Issue[] {
  const { choilRadius: radius, ricasso, heelHeight, drop, tangHeights, tangForm } = landmarks;
  if (radius === 0) return [];
  const path = "blade.choil.radius";
  const bottom = tangForm === "full" ? snapTo(heelHeight - drop - tangHeights.front, 0) : 0;
  const width = 2 * radius;
  if (bottom < 0) {
    const text =
      "The tang reaches {below} below the heel, so there is no corner behind the heel to cut a choil into. Make the tang less high at its front, or leave the choil out.";
    return [lengthIssue("choil-no-corner", "blade.choil", text, { below: -bottom })];
  }
  // With a lower shoulder some level steel has to stand behind the notch, or the shoulder would be a feather.
  const shoulder = tangForm !== "full";
  if (snapTo(width, ricasso) > ricasso || (shoulder && snapTo(width, ricasso) === ricasso)) {
    const text = shoulder
      ? "A choil of radius {radius} is {width} wide and needs a ricasso longer than that to lie in; the ricasso is {ricasso}. Lengthen the ricasso, or make the radius smaller."
      : "A choil of radius {radius} is {width} wide and needs a ricasso as long as that to lie in; the ricasso is {ricasso}. Lengthen the ricasso, or make the radius smaller.";
    return [lengthIssue("choil-wider-than-ricasso", path, text, { radius, width, ricasso })];
  }
  const room = heelHeight - bottom;
  if (snapTo(radius, room) >= room) {
    const text =
      "A choil of radius {radius} would cut through to the spine; there are only {room} of steel above it. Make the radius smaller.";
    return [lengthIssue("choil-through-spine", path, text, { radius, room })];
  }
  return [];
}
