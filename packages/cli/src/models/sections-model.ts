import {
  type FaceMarks,
  type Knife,
  type PieceState,
  sectionAt,
  sectionMarks,
  sectionOutline,
  thicknessAbove,
} from "@scantling/geometry";
import { inchesToMm } from "@scantling/geometry/units";
import type { SectionStation, SectionsModel } from "@scantling/render";
import { inFileTerms, type Measured } from "../measure.js";
import { type SectionPlace, sectionPlaces } from "./section-places.js";
import { sheetUnits } from "./sheet-units.js";

/** A section lower than this is the point of the blade: there is nothing to be seen, mm. */
const LOWEST = 1.5;
/**
 * Heights above the edge whose thickness is listed, mm: 5, 10, 20 mm; 3/16, 3/8, 3/4 in, which are nearest to them among
 * the fractions that halve; 0.2, 0.4, 0.8 in where inches are decimals.
 */
const HEIGHTS = {
  mm: [5, 10, 20],
  fractions: [3 / 16, 3 / 8, 3 / 4].map(inchesToMm),
  decimals: [0.2, 0.4, 0.8].map(inchesToMm),
} as const;
/** Share of the edge length near which the edge is drawn by itself once more. */
const SECOND_EDGE = 0.75;

/**
 * The knife's sections as their sheet shows them.
 *
 * @param at - Further places, as `weigh --at` takes them.
 * @throws {CommandFailure} exit code 2 where a place cannot be read or lies beside the knife.
 */
export function makeSectionsModel(measured: Measured, at?: string): SectionsModel {
  const { job, knife } = measured;
  const places = sectionPlaces(knife, job.units, at, job.shopPlaces?.sheets?.inches);
  return {
    code: job.knife.order.code,
    title: job.knife.order.title,
    steel: job.spec.steel.name,
    outline: knife.outline.path,
    stations: inFileTerms(job, () =>
      sectionStations(
        knife,
        places,
        HEIGHTS[job.units === "mm" ? "mm" : (job.shopPlaces?.sheets?.inches ?? "fractions")],
      ),
    ),
    units: sheetUnits(job),
  };
}

/**
 * The sections at these places; where the blade runs out in a point there is none.
 *
 * @param heights - Above the edge, whose thickness is listed, mm.
 */
export function sectionStations(
  knife: Knife,
  places: readonly SectionPlace[],
  heights: readonly number[] = HEIGHTS.mm,
): SectionStation[] {
  const stations = places.flatMap((place) => stationOf(knife, place, heights));
  const details = detailsOf(
    stations.filter(({ drawn }) => drawn),
    knife.outline.edgeLength,
  );
  return stations.map((station) => ({ ...station, edgeDetail: details.has(station) }));
}

type Drawn = Omit<SectionStation, "edgeDetail">;

function stationOf(knife: Knife, { x, place, drawn }: SectionPlace, heights: readonly number[]): Drawn[] {
  const contours = (state: PieceState): SectionStation["finished"] =>
    sectionOutline(knife, x, state).contours;
  const { thickness, atSwedge, height, area } = sectionAt(knife, x);
  const finished = contours("finished");
  if (height < LOWEST || finished.length === 0) return [];
  const marks = sectionMarks(knife, x);
  return [
    {
      x,
      place,
      drawn,
      finished,
      ready: contours("ready"),
      forged: contours("forged"),
      marks,
      thickness,
      ...(atSwedge === undefined ? {} : { atSwedge }),
      height,
      area,
      aboveEdge: marks.right === undefined ? [] : thicknessAbove(knife, x, heights),
    },
  ];
}

/** Edges whose thicknesses behind the bevel differ by less look alike when drawn 20 : 1, mm; so do angles, rad. */
const ALIKE = { behind: 0.05, angle: 0.01 } as const;

const edgeAngle = (face: FaceMarks | undefined): number => face?.sharpeningAngle ?? face?.angleAtEdge ?? 0;

const looksLike = (a: Drawn, b: Drawn): boolean =>
  (["right", "left"] as const).every((side) => {
    const [one, other] = [a.marks[side], b.marks[side]];
    const behind = (one?.edgeBevel?.behind ?? 0) - (other?.edgeBevel?.behind ?? 0);
    const angle = edgeAngle(one) - edgeAngle(other);
    return Math.abs(behind) < ALIKE.behind && Math.abs(angle) < ALIKE.angle;
  });

/**
 * Where the edge is drawn by itself: at the first bevelled station, and near three quarters of the edge where it looks
 * otherwise there.
 */
function detailsOf(stations: readonly Drawn[], edgeLength: number): ReadonlySet<Drawn> {
  const bevelled = stations.filter(({ marks }) => marks.right !== undefined);
  const distance = ({ x }: Drawn): number => Math.abs(x - SECOND_EDGE * edgeLength);
  const [first] = bevelled;
  if (first === undefined) return new Set();
  const second = bevelled.reduce((a, b) => (distance(b) < distance(a) ? b : a), first);
  return new Set(looksLike(first, second) ? [first] : [first, second]);
}
