import type { DensityMark } from "../material.js";
import { isSameMaterial } from "../materials.js";
import type { HeatSource } from "./heat-step.js";

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

/**
 * Published tempering tables, small sections in controlled furnaces. Those of 1095 disagree from 204 °C up, and the second of
 * them is the same as that of 5160 from 232 °C up: one of the two was probably copied from the wrong steel.
 */
export const TEMPER_TABLES: readonly TemperTable[] = [
  table(
    "1095",
    ["a bladesmith's data page, which draws on published handbooks", "secondary copy"],
    [
      [149, 65],
      [177, [63, 64]],
      [204, [62, 63]],
      [232, [61, 62]],
      [260, [59, 60]],
      [288, [57, 58]],
      [316, [55, 56]],
      [343, [53, 54]],
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
      [149, 63],
      [177, [61, 62]],
      [204, [59, 60]],
      [232, [57, 58]],
      [260, [55, 56]],
      [288, [53, 54]],
      [316, [52, 53]],
    ],
  ),
  table(
    "O1",
    ["a distributor's sheet, oil from 800 °C", "secondary copy"],
    [
      [149, 64],
      [177, 63],
      [204, 62],
      [232, 61],
      [260, 59],
      [316, 56],
      [371, 52],
      [427, 49],
      [482, 44],
      [538, 40],
    ],
  ),
  table(
    "O1",
    ["another distributor's sheet, 1/2 in round", "secondary copy"],
    [
      [149, 63],
      [177, 62.5],
      [204, 62],
      [260, 60],
      [316, 57],
      [371, 53],
      [427, 50],
      [482, 47],
      [538, 44],
    ],
  ),
  table(
    "W2",
    ["a distributor's sheet, quoted", "secondary copy"],
    [
      [93, 67],
      [149, 65],
      [204, 62],
      [260, 59],
      [316, 55],
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
  table("80CrV2", ["common practice, no source (425 °F)", "from memory"], [[218, [60, 61]]]),
];

/** Scatter to show beside every figure of a table, HRC either way: what two good tables differ by. */
export const TEMPER_SCATTER = 2;

/** Rows farther apart than this say nothing of what lies between them, K: hardness may hold there, or rise again. */
const APART = 60;

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
 * temperFor("O1", 60).map(({ temperature }) => temperature); // [246, 260]
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

/**
 * Hardness after a temper by one table, HRC: straight between its rows, the upper end of each range; beyond its rows that of the
 * last one, for it is not told how it goes on.
 *
 * @param temperature - °C
 *
 * @example
 * const points = [{ temperature: 150, low: 65, high: 65 }, { temperature: 200, low: 60, high: 61 }];
 * hardnessAfter(points, 175); // 63
 */
export function hardnessAfter(points: readonly TemperPoint[], temperature: number): number {
  const [first] = points;
  const last = points.at(-1);
  if (first === undefined || last === undefined) return Number.NaN;
  if (temperature <= first.temperature) return first.high;
  if (temperature >= last.temperature) return last.high;
  const at = points.findIndex((point) => point.temperature >= temperature);
  const [from, to] = [points[at - 1] ?? first, points[at] ?? last];
  const share = (temperature - from.temperature) / (to.temperature - from.temperature);
  return from.high + share * (to.high - from.high);
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
          (next) => next === undefined || Math.abs(next.temperature - temperature) > APART,
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
    if (to.temperature - from.temperature > APART) continue;
    const share = (from.hardness - hardness) / (from.hardness - to.hardness);
    return from.temperature + share * (to.temperature - from.temperature);
  }
  return undefined;
}
