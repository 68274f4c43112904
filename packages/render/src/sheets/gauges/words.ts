import type {
  BevelFace,
  BevelGauge,
  EdgeGauge,
  HandleGauge,
  HandlePlace,
  RadiusGauge,
  RadiusUse,
} from "@scantling/geometry";
import { formatAngle } from "@scantling/geometry/units";
import { caliperText, lengthText, onOneLine } from "../../label-text.js";
import { KEY } from "../../lettering-size.js";
import type { SheetUnits } from "../../sheet-units.js";
import { small, type TextLine } from "../part-of.js";

type Units = SheetUnits;

const head = (text: string): TextLine => ({ text, height: KEY, bold: true });
const caliper = (mm: number, units: Units): string => onOneLine(caliperText(mm, units));
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
      small(
        place === "front"
          ? "right behind its front face"
          : `${tape(behindFront, units)} behind its front face`,
      ),
    ),
    small(`height ${caliper(height, units)}`),
    small(`width ${caliper(width, units)}, half here`),
    small("Hold square against one side, turn over for the other."),
    small("The left side of the card is the middle of the handle."),
  ];
}

const formOf = ({ profile, sagitta }: BevelFace): string =>
  profile.kind === "line" || sagitta < 0.005 ? "flat" : "curved";

const stations = (at: readonly number[], units: Units): TextLine[] =>
  at.map((x) => small(x === 0 ? "at the heel" : `${tape(x, units)} ahead of the heel`));

/** What the card with the slot of a bevel says. */
export function bevelWords(gauge: BevelGauge, units: Units): TextLine[] {
  const { right, left, edge, bevelLine, height } = gauge;
  const same = Math.abs(right.angle - left.angle) < 1e-9;
  const curved = formOf(right) === "curved" || formOf(left) === "curved";
  return [
    head(curved ? "Bevel as ground" : "Bevel as ground, flat"),
    ...stations(gauge.at, units),
    small(`edge before sharpening ${caliper(edge, units)}`),
    small(`bevel line ${caliper(bevelLine, units)}`),
    small(`height ${caliper(height, units)}`),
    small(
      same
        ? `${curved ? "chord " : ""}${angle(right.angle)} per side, ${angle(right.angle + left.angle)} included`
        : `${curved ? "chords " : ""}right ${angle(right.angle)}, left ${angle(left.angle)}`,
    ),
    ...(same ? [] : [small("Right-hand face on the right: seen from the handle.")]),
    small("Edge first into the slot, card square to the edge."),
  ];
}

const USES: Readonly<Record<RadiusUse, string>> = {
  convex: "Convex face",
  hollow: "Hollow face",
  spine: "Eased spine",
  handle: "Edge of the handle",
};

/** A radius as it is said: of a large one nobody can tell tenths. The curve itself is not rounded. */
const read = (radius: number): number => (radius < 100 ? radius : Math.round(radius));

const sagitta = (radius: number, chord: number): number =>
  radius - Math.sqrt(Math.max(0, radius * radius - (chord * chord) / 4));

/** What the card of a radius says. */
export function radiusWords({ use, radius, chord, at, faces }: RadiusGauge, units: Units): TextLine[] {
  const onFace = use === "convex" || use === "hollow";
  return [
    head(`${USES[use]}: radius`),
    small(`R ${caliper(read(radius), units)}`),
    ...(use === "hollow" ? [small(`wheel of ${caliper(read(2 * radius), units)}`)] : []),
    ...(onFace ? [small(`${caliper(sagitta(radius, chord), units)} deep over ${tape(chord, units)}`)] : []),
    ...(onFace ? stations(at, units) : []),
    ...(onFace && faces !== "both" ? [small(`${faces}-hand face`)] : []),
    small(
      onFace ? "Hold square to the edge, light behind." : "Over the edge with the notch; corner: the same.",
    ),
  ];
}

/** What the card of an edge's angle says. */
export function edgeWords({ use, right, left }: EdgeGauge): TextLine[] {
  return [
    head(use === "edge" ? "Edge angle" : "Microbevel angle"),
    small(`${angle(right + left)} included`),
    small(right === left ? `${angle(right)} per side` : `right ${angle(right)}, left ${angle(left)}`),
    small("CAUTION: sharp. Lower the card onto the edge."),
  ];
}
