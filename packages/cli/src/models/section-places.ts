import { behindFillets, bladeStation, type Knife, type StationPlace, sectionAt } from "@scantling/geometry";
import { type FileUnits, formatLength, formatShare } from "@scantling/geometry/units";
import { placeOn } from "../stations.js";

/** Where a section is drawn, and why there, in words. */
export interface SectionPlace {
  /** mm ahead of the heel. */
  readonly x: number;
  readonly place: string;
  /** Whether it is drawn; of the others the figures are enough. */
  readonly drawn: boolean;
}

/** Places nearer than this show the same section, mm. */
const SAME_SECTION = 3;
const SHARES = [
  { share: 0.25, drawn: false },
  { share: 0.5, drawn: true },
  { share: 0.75, drawn: true },
] as const;
/** How far behind the tip the blade's end is looked at, mm: it is where a blade comes out too thick or too thin. */
const BEHIND_TIP = [
  { mm: 25, drawn: false },
  { mm: 10, drawn: true },
] as const;
/** Ends of a tang whose thicknesses differ by less look alike, mm. */
const ALIKE = 0.2;
/** Where the outline turns a corner the section is taken this little beside it, mm. */
const BESIDE = 1e-6;

/**
 * The places of a sheet of sections from the butt to the tip: those asked for, where the bevels begin, quarters of the edge,
 * near the tip, the stations of the thickness law, both ends of the tang. Of places next to one another the earlier one in
 * this list stays. Drawn are few: those asked for, where the bevels begin, the middle and three quarters of the edge, near the
 * tip, and the tang at its front; at its butt too where it is tapered.
 *
 * @param at - As `weigh --at` takes it: places parted by commas.
 * @throws {CommandFailure} exit code 2 where a place cannot be read or lies beside the knife.
 */
export function sectionPlaces(
  knife: Knife,
  units: FileUnits,
  at?: string,
  inches: "fractions" | "decimals" = "fractions",
): SectionPlace[] {
  const format = units === "in" && inches === "decimals" ? { resolution: 0.001 } : {};
  const { outline, spec } = knife;
  const { edgeLength, handleFront } = outline;
  const asked = (at ?? "").split(",").flatMap((text): SectionPlace[] => {
    const place = text.trim();
    return place === ""
      ? []
      : [{ x: placeOn(knife, place, units), place: `at ${place}, as asked`, drawn: true }];
  });
  const { at: rear, length } = spec.blade.plunge ?? { at: 0, length: 0 };
  const begin = rear + length;
  // In the corners of a shoulder the fillets stand: the tang's own height is behind them.
  const front = behindFillets(outline);
  const ends = [front - BESIDE, buttOf(knife) + BESIDE] as const;
  const [thick, thin] = ends.map((x) => sectionAt(knife, x).thickness);
  const isTapered = Math.abs((thick ?? 0) - (thin ?? 0)) > ALIKE;
  const wished: SectionPlace[] = [
    ...asked,
    { x: begin, place: begin > 0 ? "front of the plunge" : "heel", drawn: true },
    ...SHARES.map(({ share, drawn }) => ({ x: share * edgeLength, place: shareWords(share), drawn })),
    ...BEHIND_TIP.map(({ mm, drawn }) => ({
      x: edgeLength - mm,
      place: `${formatLength(mm, units, format)} behind the tip`,
      drawn,
    })),
    ...spec.blade.thickness.map(({ at: station }) => ({
      x: bladeStation(station, outline),
      place: stationWords(station),
      drawn: false,
    })),
    { x: ends[0], place: front < handleFront ? "tang, behind the radius" : "tang, front", drawn: true },
    { x: ends[1], place: "tang, butt", drawn: isTapered },
  ];
  const { minX, maxX } = knife.body("finished").footprint;
  const kept: SectionPlace[] = [];
  for (const { x, ...place } of wished) {
    const inside = Math.min(maxX - BESIDE, Math.max(minX + BESIDE, x));
    const isNew = kept.every((other) => !isSame(other.x, inside, handleFront));
    if (isNew) kept.push({ x: inside, ...place });
  }
  return kept.sort((a, b) => a.x - b.x);
}

/** Blade and tang meet in a corner: sections on either side of it are not the same, however near. */
const isSame = (a: number, b: number, handleFront: number): boolean =>
  Math.abs(a - b) < SAME_SECTION && a < handleFront === b < handleFront;

const shareWords = (share: number): string => `${formatShare(share)} of the edge`;

function stationWords(place: StationPlace): string {
  switch (place.kind) {
    case "heel":
    case "tip":
    case "butt":
      return place.kind;
    case "handle":
      return "handle front";
    case "fraction":
      return shareWords(place.share);
    case "distance":
      return "station of the thickness";
  }
}

/** The foremost end of the butt: a rounded one has no height at its hindmost point. */
function buttOf({ outline }: Knife): number {
  const ends = outline.runs.butt.flatMap(({ from, to }) => [from.x, to.x]);
  return Math.max(outline.butt, ...ends);
}
