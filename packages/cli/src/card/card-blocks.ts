import type { PressPasses, PressStop } from "@scantling/geometry";
import {
  type FileUnits,
  formatCaliper,
  formatTemperature,
  GRAMS_PER_OUNCE,
  GRAMS_PER_POUND,
  radiansToDegrees,
} from "@scantling/geometry/units";
import type { CardBlock, CardCell, CardFigure, CardPanel } from "@scantling/render";
import type { Job } from "../load.js";
import { besideUnits } from "../models/sheet-units.js";
import { type Figure, fineMassText, fixed, lengthText } from "../report/figures.js";
import { laidText, passRows, stopsKnown } from "../report/setup-stops.js";

/** Words of a card. */
export const words = (text: string): CardBlock => ({ kind: "words", text });

/** Words that must not be passed over. */
export const loudWords = (text: string): CardBlock => ({ kind: "words", text, loud: true });

export const figures = (...all: readonly CardFigure[]): CardBlock => ({ kind: "figures", figures: all });

/** A table without rows is none. What the press is set by is large: it is read at the fire. */
export function table(heads: readonly string[], rows: readonly (readonly CardCell[])[]): CardBlock[] {
  if (rows.length === 0) return [];
  const large = heads.flatMap((head, column) => (head === STOP || head.startsWith(LAY_IN) ? [column] : []));
  return [{ kind: "table", heads, rows, ...(large.length === 0 ? {} : { large }) }];
}

/** Heads of what lies between the dies: its height, and what it is built of. */
export const STOP = "height of stop";
const LAY_IN = "blocks and shims";

/** A panel without a block is none. */
export const panel = (
  title: string,
  tool: string,
  blocks: readonly CardBlock[],
  wide = false,
): CardPanel[] =>
  blocks.length === 0 ? [] : [{ title, ...(tool === "" ? {} : { tool }), ...(wide ? { wide } : {}), blocks }];

/** An empty box for each row. */
export const BOX: CardCell = { box: "" };

/** The units that stand in brackets behind a card's own; undefined where there are none. */
export type Beside = FileUnits | undefined;

/** What stands behind a figure: the same in the other units where the card has them, then what else is to be said. */
export function otherBehind(
  write: (units: FileUnits) => string,
  other: Beside,
  more = "",
): Pick<CardFigure, "beside"> {
  const parts = [other === undefined ? "" : `(${write(other)})`, more].filter((part) => part !== "");
  return parts.length === 0 ? {} : { beside: parts.join(" ") };
}

/** A figure in running words, with the same in the other units where the card has them. */
export const withOther = (figure: Figure, value: number, units: FileUnits, other: Beside): string =>
  `${figure(value, units)}${other === undefined ? "" : ` (${figure(value, other)})`}`;

/** Units that sizes are told in, those in brackets behind them, and those that the shop's stop blocks are marked in. */
export interface CardUnits {
  readonly units: FileUnits;
  readonly other: Beside;
  readonly blocks: FileUnits;
}

export const unitsOf = (job: Job): CardUnits => ({
  units: job.units,
  other: besideUnits(job),
  blocks: job.shopPlaces?.units ?? job.units,
});

/** What to lay in for stops, closely and as it is marked: `8+0.5+2×0.2`. */
export const laidCell = (stops: readonly PressStop[], { blocks }: CardUnits): string =>
  laidText(stops, blocks).replaceAll(" + ", "+");

/** Above it. */
export const laidHead = ({ units, blocks }: CardUnits): string =>
  blocks === units ? LAY_IN : `${LAY_IN}, ${blocks}`;

/** The passes of a press, sizes and stop of each; the unit stands in the head of the panel. */
export function passTable(pressing: PressPasses, cardUnits: CardUnits): CardBlock[] {
  const { units } = cardUnits;
  const [, ...rows] = passRows(pressing, units);
  const known = stopsKnown(pressing.passes);
  const heads = ["pass", "cold", `at ${formatTemperature(pressing.temperature, units)}`, STOP];
  return table(
    known ? [...heads, laidHead(cardUnits)] : heads,
    rows.map(([number = "", cold = "", hot = "", , stop = ""], index) => {
      const pass = pressing.passes[index];
      const laid = known ? [pass === undefined ? "–" : laidCell([pass], cardUnits)] : [];
      return [number, cold, hot, stop, ...laid];
    }),
  );
}

/** A mass whose unit stands in the head of its panel, as closely as reports tell it; from a pound on still in ounces. */
export const bareMass = (grams: number, units: FileUnits): string =>
  units === "in" && grams >= GRAMS_PER_POUND
    ? fixed(grams / GRAMS_PER_OUNCE, 1)
    : fineMassText(grams, units).replace(/ (?:g|oz)$/u, "");

export const massUnit = (units: FileUnits): string => (units === "mm" ? "g" : "oz");

/** An angle to 0.1°, from rad. */
export const degrees = (angle: number): string => `${fixed(radiansToDegrees(angle), 1)}°`;

const withoutUnit = (text: string): string => text.replace(/(?: mm|")$/u, "").replace(/^-/u, "−");

/** Lengths whose unit stands in the head of their panel: as on a rule, as on a caliper. */
export const bareLength = (mm: number, units: FileUnits): string => withoutUnit(lengthText(mm, units));
export const bareCaliper = (mm: number, units: FileUnits): string => withoutUnit(formatCaliper(mm, units));

/** The first, the one in the middle, the last: between them little changes. */
export const endsAndMiddle = <T>(all: readonly T[]): T[] =>
  all.filter((_, i) => i === 0 || i === all.length - 1 || i === Math.floor((all.length - 1) / 2));
