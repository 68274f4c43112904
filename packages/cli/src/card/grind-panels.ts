import type {
  BenchSetUp,
  BevelSetUp,
  LevelShim,
  ScribeSetUp,
  ScribingDrill,
  SwedgeSetUp,
} from "@scantling/geometry";
import { type FileUnits, formatCaliper } from "@scantling/geometry/units";
import type { CardBlock, CardCell, CardFigure, CardPanel } from "@scantling/render";
import { fixed, placeText } from "../report/figures.js";
import {
  type Beside,
  bareCaliper,
  bareLength,
  degrees,
  endsAndMiddle,
  figures,
  otherBehind,
  panel,
  table,
  withOther,
  words,
} from "./card-blocks.js";

/** Lines for the edge, the bevels ground down to them, which may be left from the hammer, and the swedge. */
export const grindPanels = (
  { scribe, bevels, swedge }: BenchSetUp,
  butt: number,
  units: FileUnits,
  other: Beside,
): CardPanel[] => [
  ...(bevels.length === 0 ? [] : scribePanel(scribe, butt, units, other)),
  ...bevels.flatMap((face) => bevelPanel(face, units, other)),
  ...(swedge === undefined ? [] : swedgePanel(swedge, units)),
];

function scribePanel(scribe: ScribeSetUp, butt: number, units: FileUnits, other: Beside): CardPanel[] {
  const { level, stations, oneSetting } = scribe;
  const even = stations.every(({ leftDown, rightDown }) => Math.abs(leftDown - rightDown) < EVEN);
  return panel("Scribe the edge", `height gauge, ${units}`, [
    figures(
      {
        label: `thickness ${level.restsOn === "tang" ? "of the tang " : ""}${placeText(level.restsAt, units)}`,
        boxes: [units],
      },
      ...(oneSetting ? oneGauge(scribe, units, other) : []),
    ),
    ...(oneSetting
      ? []
      : [
          words(
            `Gauge for ${formatCaliper(level.thickness, units)}; up by half of what is more, down by half of what is less. ${DASH}`,
          ),
        ]),
    ...scribeTable(scribe, even, (x) => placeCell(x, butt, units), units),
  ]);
}

/** Where the gauge is set at every place some of them have no shim, and some that have one no setting. */
const DASH = "–: none there.";

/** Settings that are told alike, mm. */
const EVEN = 1e-6;

/** One setting for the whole edge, and how it follows from what is measured. */
function oneGauge({ level, stations, drills }: ScribeSetUp, units: FileUnits, other: Beside): CardFigure[] {
  const [first] = stations;
  if (first === undefined) return [];
  return [
    {
      label: `if ${formatCaliper(level.thickness, units)}: gauge at`,
      figure: formatCaliper(first.leftDown, units),
      ...otherBehind((of) => formatCaliper(first.leftDown, of), other),
    },
    {
      label: `else at (thickness − ${formatCaliper(first.edge, units)}) / 2; scribe both faces`,
    },
    ...drillFigure(drills.leftDown[0], units),
  ];
}

/** A drill whose line is farther off is no help, mm. */
const DRILL_OFF = 0.05;

function drillFigure(drill: ScribingDrill | undefined, units: FileUnits): CardFigure[] {
  if (drill === undefined || Math.abs(drill.error) > DRILL_OFF) return [];
  const size = formatCaliper(Math.abs(drill.error), units);
  const off = /[1-9]/u.test(size) ? { beside: `${size} too ${drill.error < 0 ? "low" : "high"}` } : {};
  return [{ label: "or scribe with a drill", figure: drill.drill.name, ...off }];
}

/** Gauge and shim by their places from the tip back; the gauge only where it changes along the edge. */
function scribeTable(
  scribe: ScribeSetUp,
  even: boolean,
  place: (x: number) => string,
  units: FileUnits,
): CardBlock[] {
  const { stations, oneSetting } = scribe;
  const gauges = new Map(oneSetting ? [] : stations.map((station) => [station.x, station]));
  const shims = new Map(shimsToLay(scribe).map(({ x, shim }) => [x, shim]));
  const gauge = (x: number): CardCell[] => {
    const at = gauges.get(x);
    const show = (height: number | undefined): string =>
      height === undefined || height < EVEN ? "–" : bareCaliper(height, units);
    if (oneSetting) return [];
    return even ? [show(at?.leftDown)] : [show(at?.leftDown), show(at?.rightDown)];
  };
  const places = [...new Set([...gauges.keys(), ...shims.keys()])].sort((a, b) => b - a);
  const rows = places.map((x): CardCell[] => {
    const shim = shims.get(x);
    return [place(x), ...gauge(x), shim === undefined ? "–" : bareCaliper(shim, units)];
  });
  const heads = oneSetting
    ? []
    : even
      ? ["gauge, both faces"]
      : ["gauge, left face down", "gauge, right face down"];
  return shims.size === 0 && oneSetting
    ? [words("Nothing tapers: no shim.")]
    : table(["from heel", ...heads, "shim under"], rows);
}

/** Under the front half of the blade and under the butt; where the gauge is set too, what lies there. */
function shimsToLay({ level, stations, oneSetting }: ScribeSetUp): LevelShim[] {
  const middle = stations[Math.floor(stations.length / 2)]?.x ?? 0;
  const last = Math.min(...level.shims.map(({ x }) => x));
  return level.shims.filter(({ x }) => x >= middle || x === last || (!oneSetting && x >= 0));
}

/** Distances from the heel; a minus is overlooked. */
const placeCell = (x: number, butt: number, units: FileUnits): string =>
  Math.abs(x - butt) < EVEN ? "butt" : x < 0 ? `${bareLength(-x, units)} behind` : bareLength(x, units);

/** Heights and angles as finished, the edge as it goes into the quench. */
function bevelPanel(face: BevelSetUp, units: FileUnits, other: Beside): CardPanel[] {
  const { side, form, stations, leverShim, wheels = [] } = face;
  const rows = stations.map((station): CardCell[] => [
    bareLength(station.x, units),
    bareLength(station.height, units),
    degrees(station.angle),
    bareCaliper(station.depth, units),
    bareCaliper(station.edge, units),
  ]);
  const notes = [
    ["Bevel as finished, edge before hardening.", ...droopWords(face)].join(" "),
    ...(leverShim === undefined
      ? []
      : [`Shim under the jig at the heel: ${withOther(formatCaliper, leverShim, units, other)}.`]),
    ...wheels.map(
      ({ diameter, fits }) =>
        `Wheel ${formatCaliper(diameter, units)}: ${fits ? "fits" : "too small, thins the blade above the edge"}.`,
    ),
  ];
  return panel(
    side === "both" ? `Grind the bevels, ${form}` : `Grind the ${side} bevel, ${form}`,
    `jig, ${units}`,
    [
      ...table(["from heel", "bevel high", "angle, each face", "off each face", "edge left"], rows),
      ...notes.map(words),
    ],
  );
}

/** Ground into the spine before hardening, for what hardens there is thinner then. */
const swedgePanel = ({ from, to, angle, stations }: SwedgeSetUp, units: FileUnits): CardPanel[] =>
  panel("Grind the swedge", `grinder, ${units}`, [
    words(`From ${bareLength(from, units)} to ${bareLength(to, units)}, ${degrees(angle)} on each face.`),
    ...table(
      ["from heel", "spine before", "spine left", "strip wide"],
      endsAndMiddle(stations).map(({ x, before, left, strip }): CardCell[] => [
        bareLength(x, units),
        bareCaliper(before, units),
        bareCaliper(left, units),
        bareCaliper(strip, units),
      ]),
    ),
  ]);

/** A line that rises nowhere more than this above where one angle brings it is not told, as a share. */
const NO_DROOP = 0.995;

function droopWords({ form, droop, stations }: BevelSetUp): string[] {
  const [first] = stations;
  if (form !== "flat" || droop === undefined || first === undefined || droop >= NO_DROOP) return [];
  return [
    `At ${degrees(first.angle)} all along the line drops to ${fixed(droop * 100, 0)} % of the height above.`,
  ];
}
