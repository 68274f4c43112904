import type { DensityMark } from "../material.js";
import { isSameMaterial } from "../materials.js";
import { fromFahrenheit, type HeatSource } from "./heat-step.js";

/** Hardness after tempering at a temperature, °C and HRC. */
export interface TemperPoint {
  readonly temperature: number;
  readonly low: number;
  readonly high: number;
}

/** How one source says a steel gives way in tempering, by rising temperature. */
export interface TemperTable extends HeatSource {
  readonly steel: string;
  readonly points: readonly TemperPoint[];
}

type Row = readonly [temperature: number, hardness: number | readonly [number, number]];

function table(
  steel: string,
  [source, mark]: readonly [string, DensityMark],
  rows: readonly Row[],
): TemperTable {
  const pair = (value: number | readonly [number, number]): { low: number; high: number } =>
    typeof value === "number" ? { low: value, high: value } : { low: value[0], high: value[1] };
  return {
    steel,
    source,
    mark,
    points: rows.map(([temperature, hardness]) => ({ temperature, ...pair(hardness) })),
  };
}

/** A figure of a source that gives °F, °C. */
const f = fromFahrenheit;

/**
 * Published tempering tables, small sections in controlled furnaces. Those of 1095 disagree from 204 °C up, and the second of
 * them is the same as that of 5160 from 232 °C up: one of the two was probably copied from the wrong steel.
 */
export const TEMPER_TABLES: readonly TemperTable[] = [
  table(
    "1095",
    ["a bladesmith's data page, which draws on published handbooks", "secondary copy"],
    [
      [f(300), 65],
      [f(350), [63, 64]],
      [f(400), [62, 63]],
      [f(450), [61, 62]],
      [f(500), [59, 60]],
      [f(550), [57, 58]],
      [f(600), [55, 56]],
      [f(650), [53, 54]],
    ],
  ),
  table(
    "1095",
    ["a kiln supplier's page; may be that of another steel", "secondary copy"],
    [
      [150, 65],
      [180, [63, 64]],
      [200, [60, 61]],
      [230, [57, 58]],
      [260, [55, 56]],
      [290, [53, 54]],
      [320, [52, 53]],
      [340, 50],
    ],
  ),
  table(
    "5160",
    ["a supplier's figures as a discussion quotes them, unconfirmed", "secondary copy"],
    [
      [f(300), 63],
      [f(350), [61, 62]],
      [f(400), [59, 60]],
      [f(450), [57, 58]],
      [f(500), [55, 56]],
      [f(550), [53, 54]],
      [f(600), [52, 53]],
    ],
  ),
  table(
    "O1",
    ["a distributor's sheet, hardened in oil", "secondary copy"],
    [
      [f(300), 64],
      [f(350), 63],
      [f(400), 62],
      [f(450), 61],
      [f(500), 59],
      [f(600), 56],
      [f(700), 52],
      [f(800), 49],
      [f(900), 44],
      [f(1000), 40],
    ],
  ),
  table(
    "O1",
    ["another distributor's sheet, 1/2 in round", "secondary copy"],
    [
      [f(300), 63],
      [f(350), 62.5],
      [f(400), 62],
      [f(500), 60],
      [f(600), 57],
      [f(700), 53],
      [f(800), 50],
      [f(900), 47],
      [f(1000), 44],
    ],
  ),
  table(
    "W2",
    ["a distributor's sheet, quoted", "secondary copy"],
    [
      [f(200), 67],
      [f(300), 65],
      [f(400), 62],
      [f(500), 59],
      [f(600), 55],
    ],
  ),
  table(
    "52100",
    ["two bearing-steel suppliers' pages", "secondary copy"],
    [
      [150, 62],
      [204, 60],
    ],
  ),
  table(
    "D2",
    ["two data pages", "secondary copy"],
    [
      [204, 61],
      [537, 54],
    ],
  ),
  table("80CrV2", ["common practice, no source", "from memory"], [[f(425), [60, 61]]]),
];

/** Scatter to show beside every figure of a table, HRC either way: what two good tables differ by. */
export const TEMPER_SCATTER = 2;

/** Rows farther apart than this say nothing of what lies between them, K: hardness may hold there, or rise again. */
export const TEMPER_ROWS_APART = 60;

/** What one source says of a hardness that is wished for. */
export interface TemperChoice extends HeatSource {
  /** °C; undefined where the source's table does not reach that hardness, or leaps over it. */
  readonly temperature: number | undefined;
  /** The hardest and softest that the table tells of, HRC. */
  readonly reach: { readonly low: number; readonly high: number };
}

/**
 * At what temperature to temper for a hardness, by each source's table (straight lines between rows that are no more than
 * 60 K apart, the middle of each range).
 *
 * @param hardness - HRC, 20 to 68.
 *
 * @example
 * temperFor("O1", 60)[1]?.temperature; // 260
 */
export function temperFor(steel: string, hardness: number): TemperChoice[] {
  return TEMPER_TABLES.filter((row) => isSameMaterial(row.steel, steel)).map(({ source, mark, points }) => {
    const middles = points.map(({ temperature, low, high }) => ({ temperature, hardness: (low + high) / 2 }));
    return {
      source,
      mark,
      temperature: temperatureAt(middles, hardness),
      reach: {
        low: Math.min(...points.map((point) => point.low)),
        high: Math.max(...points.map((point) => point.high)),
      },
    };
  });
}

/** Temperatures that differ by less are one, K: a recipe in whole °C beside a table in °F, or the other way round. */
const SAME_TEMPERATURE = 0.51;

/**
 * Hardness after a temper by one table, HRC: straight between rows that are no more than 60 K apart, both ends of each range.
 *
 * @param temperature - °C; half a degree is rounding.
 * @returns undefined beyond the rows and across gaps: the table does not tell.
 *
 * @example
 * const points = [{ temperature: 150, low: 65, high: 65 }, { temperature: 200, low: 60, high: 61 }];
 * hardnessAfter(points, 175); // { low: 62.5, high: 63 }
 */
export function hardnessAfter(
  points: readonly TemperPoint[],
  temperature: number,
): { readonly low: number; readonly high: number } | undefined {
  for (const [index, to] of points.entries()) {
    if (Math.abs(to.temperature - temperature) <= SAME_TEMPERATURE) return { low: to.low, high: to.high };
    const from = points[index - 1];
    if (from === undefined || temperature < from.temperature || temperature > to.temperature) continue;
    if (to.temperature - from.temperature > TEMPER_ROWS_APART) return undefined;
    const share = (temperature - from.temperature) / (to.temperature - from.temperature);
    return { low: from.low + share * (to.low - from.low), high: from.high + share * (to.high - from.high) };
  }
  return undefined;
}

/**
 * Hardnesses of the rows that stand alone in a steel's tables, with nothing told between them, hardest first; HRC.
 *
 * @example
 * loneHardnesses("D2"); // [61, 54]
 * loneHardnesses("O1").length; // 0
 */
export function loneHardnesses(steel: string): number[] {
  const lone = TEMPER_TABLES.filter((row) => isSameMaterial(row.steel, steel)).flatMap(({ points }) =>
    points
      .filter(({ temperature }, i) =>
        [points[i - 1], points[i + 1]].every(
          (next) => next === undefined || Math.abs(next.temperature - temperature) > TEMPER_ROWS_APART,
        ),
      )
      .map(({ low, high }) => (low + high) / 2),
  );
  return [...new Set(lone)].sort((a, b) => b - a);
}

/** Hardness falls with temperature: the place between two rows, or at one of them. A single row answers for half a point either way. */
function temperatureAt(
  points: readonly { readonly temperature: number; readonly hardness: number }[],
  hardness: number,
): number | undefined {
  const [only, second] = points;
  if (only !== undefined && second === undefined) {
    return Math.abs(only.hardness - hardness) <= 0.5 ? only.temperature : undefined;
  }
  for (const [index, to] of points.entries()) {
    const from = points[index - 1];
    if (from === undefined || hardness > from.hardness || hardness < to.hardness) continue;
    if (from.hardness === hardness) return from.temperature;
    if (to.hardness === hardness) return to.temperature;
    if (to.temperature - from.temperature > TEMPER_ROWS_APART) continue;
    const share = (from.hardness - hardness) / (from.hardness - to.hardness);
    return from.temperature + share * (to.temperature - from.temperature);
  }
  return undefined;
}
