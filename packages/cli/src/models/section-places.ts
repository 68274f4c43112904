import { bladeStation, type Knife, type StationPlace } from "@scantling/geometry";
import { type FileUnits, formatLength, formatShare } from "@scantling/geometry/units";
import { placeOn } from "../stations.js";

/** Where a section is drawn, and why there, in words. */
export interface SectionPlace {
  /** mm ahead of the heel. */
  readonly x: number;
  readonly place: string;
}

/** Places nearer than this show the same section, mm. */
const SAME_SECTION = 3;
const SHARES = [0.25, 0.5, 0.75] as const;
/** How far behind the tip the blade's end is looked at, mm: it is where a blade comes out too thick or too thin. */
const BEHIND_TIP = [25, 10] as const;
/** Where the outline turns a corner the section is taken this little beside it, mm. */
const BESIDE = 1e-6;

/**
 * The places of a sheet of sections from the butt to the tip: those asked for, where the bevels begin, the stations of the
 * thickness law, quarters of the edge, near the tip, both ends of the tang. Of places next to one another the earlier one in this
 * list stays.
 *
 * @param at - As `weigh --at` takes it: places parted by commas.
 * @throws {CommandFailure} exit code 2 where a place cannot be read or lies beside the knife.
 */
export function sectionPlaces(knife: Knife, units: FileUnits, at?: string): SectionPlace[] {
  const { outline, spec } = knife;
  const { edgeLength, handleFront } = outline;
  const asked = (at ?? "").split(",").flatMap((text): SectionPlace[] => {
    const place = text.trim();
    return place === "" ? [] : [{ x: placeOn(knife, place, units), place: `at ${place}, as asked` }];
  });
  const { at: rear, length } = spec.blade.plunge ?? { at: 0, length: 0 };
  const begin = rear + length;
  const wished: SectionPlace[] = [
    ...asked,
    { x: begin, place: begin > 0 ? "front of the plunge" : "heel" },
    ...spec.blade.thickness.map(({ at: station }) => ({
      x: bladeStation(station, outline),
      place: stationWords(station),
    })),
    ...SHARES.map((share) => ({ x: share * edgeLength, place: shareWords(share) })),
    ...BEHIND_TIP.map((mm) => ({ x: edgeLength - mm, place: `${formatLength(mm, units)} behind the tip` })),
    { x: handleFront - BESIDE, place: "tang, front" },
    { x: buttOf(knife) + BESIDE, place: "tang, butt" },
  ];
  const { minX, maxX } = knife.body("finished").footprint;
  const kept: SectionPlace[] = [];
  for (const { x, place } of wished) {
    const inside = Math.min(maxX - BESIDE, Math.max(minX + BESIDE, x));
    const isNew = kept.every((other) => !isSame(other.x, inside, handleFront));
    if (isNew) kept.push({ x: inside, place });
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
