import {
  arcBulge,
  type BevelFace,
  type BevelGauge,
  type EdgeGauge,
  type HandleGauge,
  type HandlePlace,
  type RadiusGauge,
  type RadiusUse,
} from "@scantling/geometry";
import { formatAngle } from "@scantling/geometry/units";
import { lengthText, onOneLine, sizeText } from "../../label-text.js";
import { KEY } from "../../lettering-size.js";
import type { SheetUnits } from "../../sheet-units.js";
import { small, type TextLine } from "../part-of.js";

type Units = SheetUnits;

const head = (text: string): TextLine => ({ text, height: KEY, bold: true });
const caliper = (mm: number, units: Units): string => onOneLine(sizeText(mm, units));
const tape = (mm: number, units: Units): string => onOneLine(lengthText(mm, units));
/** A hundredth of a degree moves a face by less than a hundredth of a mm over 50. */
const ANGLE_STEP = 0.01;
const angle = (value: number): string => formatAngle(value, ANGLE_STEP);

const PLACES: Readonly<Record<HandlePlace, string>> = {
  front: "front",
  middle: "middle",
  butt: "butt",
  widest: "widest place",
};

/** What the card of a handle's section says. */
export function handleWords({ places, height, width }: HandleGauge, units: Units): TextLine[] {
  return [
    head(`Handle: ${places.map(({ place }) => PLACES[place]).join(", ")}`),
    ...places.map(({ place, behindFront }) =>
      small(place === "front" ? "right behind the front" : `${tape(behindFront, units)} behind the front`),
    ),
    small(`height ${caliper(height, units)}`),
    small(`width ${caliper(width, units)}, half here`),
    small("Hold square against one side,"),
    small("turn over for the other."),
    small("Left side: middle of handle."),
  ];
}

const formOf = ({ profile, sagitta }: BevelFace): string =>
  profile.kind === "line" || sagitta < 0.005 ? "flat" : "curved";

const stations = (at: readonly number[], units: Units): TextLine[] =>
  at.flatMap((x) => (x === 0 ? ["at the heel"] : [`at ${tape(x, units)}`, "ahead of the heel"]).map(small));

/** What the card with the slot of a bevel says. */
export function bevelWords(gauge: BevelGauge, units: Units): TextLine[] {
  const { right, left, edge, bevelLine, height } = gauge;
  const same = Math.abs(right.angle - left.angle) < 1e-9;
  const curved = formOf(right) === "curved" || formOf(left) === "curved";
  return [
    head(curved ? "Bevel as ground" : "Bevel as ground, flat"),
    ...stations(gauge.at, units),
    small(`edge as ground ${caliper(edge, units)}`),
    small(`bevel line ${caliper(bevelLine, units)}`),
    small(`height ${caliper(height, units)}`),
    small(
      same
        ? `${curved ? "chord " : ""}${angle(right.angle)} per side, ${angle(right.angle + left.angle)} included`
        : `${curved ? "chords " : ""}right ${angle(right.angle)}, left ${angle(left.angle)}`,
    ),
    ...(same ? [] : [small("Seen from the handle: right is right.")]),
    small("Edge first into the slot,"),
    small("card square to the edge."),
  ];
}

export const USES: Readonly<Record<RadiusUse, string>> = {
  convex: "Convex face",
  hollow: "Hollow face",
  spine: "Eased spine",
  handle: "Handle edge",
};

/** A radius as it is said: of a large one nobody can tell tenths. The curve itself is not rounded. */
export const read = (radius: number): number => (radius < 100 ? radius : Math.round(radius));

/** What the card of a radius says. */
export function radiusWords({ use, radius, chord, at, faces }: RadiusGauge, units: Units): TextLine[] {
  const onFace = use === "convex" || use === "hollow";
  return [
    head(`${USES[use]}: radius`),
    small(`R ${caliper(read(radius), units)}`),
    ...(use === "hollow" ? [small(`wheel of ${caliper(read(2 * radius), units)}`)] : []),
    ...(onFace
      ? [small(`${caliper(arcBulge(radius, chord), units)} deep`), small(`over ${tape(chord, units)}`)]
      : []),
    ...(onFace ? stations(at, units) : []),
    ...(onFace && faces !== "both" ? [small(`${faces}-hand face`)] : []),
    ...(onFace
      ? [small("Hold square to the edge,"), small("light behind.")]
      : [small("Notch: over the edge."), small("Round corner: the same radius.")]),
  ];
}

/** What the card of an edge's angle says. */
export function edgeWords({ use, right, left }: EdgeGauge): TextLine[] {
  return [
    head(use === "edge" ? "Edge angle" : "Microbevel angle"),
    small(`${angle(right + left)} included`),
    small(right === left ? `${angle(right)} per side` : `right ${angle(right)}, left ${angle(left)}`),
    small("CAUTION: sharp."),
    small("Lower the card onto the edge."),
  ];
}
