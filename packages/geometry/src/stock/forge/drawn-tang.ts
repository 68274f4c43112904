import type { Knife } from "../../blade/knife.js";
import { heightBesideFillets, tangFilletRadius } from "../../blade/tang-front.js";
import type { ForgedProfile } from "./forged-profile.js";

/** A section of the handle as it is drawn out, mm. */
export interface DrawnSection {
  readonly height: number;
  readonly thickness: number;
}

/** What the isolated steel is drawn to, mm. */
export interface DrawnTang {
  readonly length: number;
  /** At the shoulder, beside the fillets in its corners. */
  readonly front: DrawnSection;
  /** Half way; left out where it is as high as half way between the other two. */
  readonly middle?: DrawnSection;
  readonly butt: DrawnSection;
  /** Radius left in the corners of the shoulder; left out where there is none, or no arc. */
  readonly fillet?: number;
}

/** A middle that differs by less from the mean of both ends is in line with them, mm. */
const IN_LINE = 0.25;
/** A shoulder nearer to the handle front than this is there, mm. */
const SAME_PLACE = 1e-3;

/**
 * Height and thickness of a forged section, the mean thickness where no other is given; mm.
 *
 * @example
 * sectionOf({ x: 0, area: 120, height: 30, top: 40 }); // { height: 30, thickness: 4 }
 */
export const sectionOf = ({ height, thickness, area }: ForgedProfile["behind"]): DrawnSection => ({
  height,
  thickness: thickness ?? area / height,
});

/**
 * What the handle of a forged blade is drawn to. Marks and volumes are taken from the sections themselves, fillets and all.
 *
 * @param profile - Of the same knife.
 *
 * @example
 * drawnTang(knife, forgedProfile(knife)).length; // 118: the tang of 105, the ricasso of 10 and 3 mm more at the butt
 */
export function drawnTang({ outline, allowances }: Knife, profile: ForgedProfile): DrawnTang {
  const { stations, shoulder, behind, handleFront } = profile;
  const last = stations[0] ?? behind;
  const atFront = Math.abs(shoulder - handleFront) < SAME_PLACE;
  const beside = atFront ? heightBesideFillets(outline) : undefined;
  const radius = atFront ? tangFilletRadius(outline) : undefined;
  const [front, butt] = [sectionOf(behind), sectionOf(last)];
  const start =
    beside === undefined ? front : { ...front, height: beside.high - beside.low + 2 * allowances.outline };
  const middle = sectionAt(stations, (last.x + shoulder) / 2);
  const bulge = middle.height - (start.height + butt.height) / 2;
  return {
    length: shoulder - last.x,
    front: start,
    ...(Math.abs(bulge) < IN_LINE ? {} : { middle }),
    butt,
    ...(radius === undefined ? {} : { fillet: radius }),
  };
}

/** Straight between the sections beside x. */
function sectionAt(stations: ForgedProfile["stations"], x: number): DrawnSection {
  const next = stations.findIndex((station) => station.x >= x);
  const [a, b] = [stations[Math.max(0, next - 1)], stations[next]];
  if (a === undefined || b === undefined) return { height: 0, thickness: 0 };
  const [from, to] = [sectionOf(a), sectionOf(b)];
  const u = b.x > a.x ? (x - a.x) / (b.x - a.x) : 1;
  return {
    height: from.height + (to.height - from.height) * u,
    thickness: from.thickness + (to.thickness - from.thickness) * u,
  };
}
