import { type Issue, length } from "../errors/issue.js";
import { bladeStation, tangStation } from "./knife-laws.js";
import type { Outline } from "./outline.js";
import type { FaceSpec, KnifeSpec, LawSpec, StationPlace } from "./spec.js";

/** Rounding of stated places, mm. */
const ROUNDING = 1e-9;

/** Stations nearer to each other than this are one, mm. */
const SAME_PLACE = 1e-6;

/** An axis that stations stand on. */
interface StationAxis {
  /** mm along the axis. */
  readonly placeOf: (place: StationPlace) => number;
  readonly most: number;
  /** Words for places that do not belong on it, or lie before its start or beyond its end. */
  readonly foreign: readonly StationPlace["kind"][];
  readonly foreignText: string;
  readonly beforeText: string;
  readonly beyondText: string;
}

type NamedLaw = readonly [path: string, law: LawSpec | "full" | undefined];

/** Checks where the stations of every law of blade and tang stand: on their axis, and no two at one place. */
export function checkStations({ blade, tang }: KnifeSpec, outline: Outline): Issue[] {
  const { bevel, swedge } = blade;
  const onBlade: readonly NamedLaw[] = [
    ["blade.thickness", blade.thickness],
    ["blade.flankTaper", blade.flankTaper],
    ...faceLaws("blade.bevel", bevel),
    ["blade.bevel.edgeThickness", bevel.edgeThickness],
    ...faceLaws("blade.bevel.left", bevel.left ?? {}),
    ...faceLaws("blade.bevel.right", bevel.right ?? {}),
    ["blade.swedge.thickness", swedge?.thickness],
  ];
  return [
    ...onBlade.flatMap((law) => stationIssues(law, bladeAxis(outline))),
    ...stationIssues(["tang.thickness", tang.thickness], tangAxis(outline)),
  ];
}

const faceLaws = (path: string, { height, crown }: Partial<FaceSpec>): readonly NamedLaw[] => [
  [`${path}.height`, height],
  [`${path}.crown`, crown && ("mm" in crown ? crown.mm : crown.share)],
];

function bladeAxis(outline: Outline): StationAxis {
  return {
    placeOf: (place) => bladeStation(place, outline),
    most: outline.edgeLength,
    foreign: ["handle", "butt"],
    foreignText:
      "{word} is no station of the blade: its stations run from the heel to the tip, and the ricasso keeps the values of the heel. Write heel, or a distance ahead of it.",
    beforeText: "A station at {at} lies behind the heel. Give its distance ahead of it, or write heel.",
    beyondText:
      "A station at {at} lies beyond the tip, {most} ahead of the heel. Write tip, or a smaller distance.",
  };
}

function tangAxis(outline: Outline): StationAxis {
  const most = outline.handleFront - outline.butt;
  return {
    placeOf: (place) => tangStation(place, most),
    most,
    foreign: ["heel", "tip"],
    foreignText:
      "{word} is no station of the tang: its stations run from the handle front to the butt. Write handle, butt, or a distance behind the handle front.",
    beforeText:
      "A station at {at} lies ahead of the handle front. Give its distance behind it, or write handle.",
    beyondText:
      "A station at {at} lies beyond the butt, {most} behind the handle front. Write butt, or a smaller distance.",
  };
}

function stationIssues([path, law]: NamedLaw, axis: StationAxis): Issue[] {
  if (law === undefined || law === "full" || typeof law === "number") return [];
  const seen: number[] = [];
  return law.flatMap((station, i): Issue[] => {
    const at = axis.placeOf(station.at);
    const twice = seen.some((other) => Math.abs(other - at) < SAME_PLACE);
    seen.push(at);
    const place = `${path}[${i}].at`;
    const values = { at: length(at), most: length(axis.most), word: station.at.kind };
    if (axis.foreign.includes(station.at.kind)) {
      return [{ code: "station-outside", path: place, text: axis.foreignText, values }];
    }
    if (!(at >= -ROUNDING && at <= axis.most + ROUNDING)) {
      const text = at < 0 ? axis.beforeText : axis.beyondText;
      return [{ code: "station-outside", path: place, text, values }];
    }
    if (!twice) return [];
    return [
      {
        code: "station-twice",
        path: place,
        text: "There are two stations at {at}. Keep one of them.",
        values: { at: values.at },
      },
    ];
  });
}
