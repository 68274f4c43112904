import type { DrawingItem } from "../../drawing.js";
import { fitText } from "../../fit-text.js";
import { massText, onOneLine } from "../../label-text.js";
import { KEY, SMALL } from "../../lettering-size.js";
import type { PlotCause, PlotsModel } from "../../models/plots-model.js";
import { LEVEL_AXIS_HEIGHT, levelAxis } from "../../plot/axes.js";
import { barItems, markItems } from "../../plot/bars.js";
import { type Block, gap, lineBlock, paragraph, stackBlocks } from "../../plot/block.js";
import { makeScale, type Scale } from "../../plot/scale.js";
import { mainUnits } from "../../sheet-units.js";
import { textWidth } from "../../text-metrics.js";
import { axisMass, percent } from "./figures.js";

const BAR = 3;
const THIN_BAR = 1.5;
/** Clear space over a bar, for what hangs below the lettering, and under it, mm. */
const BEFORE_BAR = 0.4;
const AFTER = 1;
const BETWEEN = 2;
/** Room left and right of the axis for half a figure, mm. */
const SIDE = 6;
const MOST_TICKS = 5;
/** Clear range on either side of what is shown, as a share of it. */
const PADDING = 0.1;
/** Causes that are shown; the rest are summed up. */
const MOST_CAUSES = 4;

/** Where 95 in 100 such knives weigh in, beside what was asked, and what the interval comes from. */
export function massPlot(model: PlotsModel, width: number): Block {
  const { units, mass } = model;
  const { value, interval, causes, asked } = mass;
  const [low, high] = interval;
  const limits = asked?.filter(Number.isFinite) ?? [];
  const ends = [low, high, value, ...limits].map((grams) => axisMass(grams, units));
  const range = Math.max(...ends) - Math.min(...ends);
  const length = width - 2 * SIDE;
  const scale = makeScale(
    { low: Math.min(...ends) - PADDING * range, high: Math.max(...ends) + PADDING * range },
    { length, most: MOST_TICKS, ends: "round" },
  );
  const at = (grams: number): number => SIDE + clampTo(scale, axisMass(grams, units));
  const show = (grams: number): string => massText(grams, units).main;
  const band: DrawingItem[] = [
    ...barItems(at(low), at(high), { bottom: -BAR, height: BAR, look: "grey" }),
    markItems(at(value), -BAR, BAR),
  ];
  return stackBlocks([
    paragraph(`Mass of the knife, ${mainUnits(units) === "mm" ? "g" : "ounces"}`, width, KEY),
    paragraph(`${onOneLine(massText(value, units))}; 95 in 100: ${show(low)} to ${show(high)}`, width),
    gap(AFTER),
    { height: BAR + AFTER, items: band },
    ...(asked === undefined ? [] : askedBlocks(asked, at, show, width)),
    { height: AFTER, items: [] },
    {
      height: LEVEL_AXIS_HEIGHT,
      items: levelAxis(scale, { x: SIDE, y: 0 }, length),
    },
    ...causeBlocks(causes, width),
  ]);
}

const clampTo = (scale: Scale, value: number): number =>
  scale.at(Math.min(scale.high, Math.max(scale.low, value)));

/** What was asked, as a bar: to the end of the axis where there is no limit. */
function askedBlocks(
  [low, high]: readonly [number, number],
  at: (grams: number) => number,
  show: (grams: number) => string,
  width: number,
): Block[] {
  const words = Number.isFinite(low)
    ? Number.isFinite(high)
      ? `${show(low)} to ${show(high)}`
      : `${show(low)} or more`
    : `${show(high)} or less`;
  const bar = barItems(at(low), at(high), { bottom: -THIN_BAR, height: THIN_BAR, look: "hatched" });
  return [paragraph(`asked: ${words}`, width), gap(BEFORE_BAR), { height: THIN_BAR + AFTER, items: bar }];
}

/** The largest causes of the interval, each with its share. */
function causeBlocks(causes: readonly PlotCause[], width: number): Block[] {
  const shown = causes.slice(0, MOST_CAUSES).filter(({ share }) => share > 0);
  const [largest] = shown;
  if (largest === undefined) return [];
  const rest = causes.slice(MOST_CAUSES).reduce((sum, { share }) => sum + share, 0);
  const rows = [...shown, ...(rest > 0 ? [{ name: "all others", share: rest }] : [])];
  const scale = width / Math.max(...rows.map(({ share }) => share));
  return [
    gap(AFTER),
    paragraph("What the interval comes from:", width),
    gap(AFTER),
    ...rows.flatMap((row) => causeRow(row, scale, width)),
  ];
}

function causeRow({ name, share }: PlotCause, scale: number, width: number): Block[] {
  const figure = percent(share);
  const room = width - textWidth(figure, SMALL) - BETWEEN;
  const lines = fitText(name, SMALL, room, 2);
  const bar = barItems(0, share * scale, { bottom: -THIN_BAR, height: THIN_BAR, look: "grey" });
  return [
    ...lines.map((line, index) => lineBlock(index === lines.length - 1 ? [line, figure] : [line], width)),
    gap(BEFORE_BAR),
    { height: THIN_BAR + AFTER, items: bar },
  ];
}
