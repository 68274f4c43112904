import {
  type ForgeCard,
  ledgerBodies,
  type MixedBar,
  type MixedPlan,
  type StockPlan,
} from "@scantling/geometry";
import { type FileUnits, formatCaliper, formatLength, formatTemperature } from "@scantling/geometry/units";
import type { CardBlock, CardCell, CardFigure, CardPanel } from "@scantling/render";
import { inFileTerms, type Measured } from "../measure.js";
import { besideUnits } from "../models/sheet-units.js";
import { massText, percentText } from "../report/figures.js";
import type { Setup } from "../report/setup-json.js";
import { hammeredText, ruleText, unitless } from "../report/setup-sizes.js";
import { sawLength } from "../report/stock-text.js";
import { forgedMassOf } from "../stock-report.js";
import {
  type Beside,
  type CardUnits,
  figures,
  loudWords,
  otherBehind,
  panel,
  passTable,
  table,
  withOther,
  words,
} from "./card-blocks.js";

/** Bars to cut, how they lie in the stack, and their welds. */
export function cutPanels(setup: Setup, cardUnits: CardUnits): CardPanel[] {
  const { units, other } = cardUnits;
  const { plan, mixed, card, place } = setup;
  if (card === undefined) return [];
  if (mixed !== undefined) return mixedPanels(mixed, card, units, other);
  if (plan === undefined) return [];
  const title = place === 1 ? "Cut" : `Cut, plan ${place}`;
  const stacked =
    plan.bars === 1 ? [liesWords(card, units)] : [words("Every joint ground bright, ends flush.")];
  return [
    ...panel(title, "saw, rule", [figures(barFigure(plan, units, other)), ...stacked]),
    ...weldPanels(card, cardUnits),
  ];
}

/** Where nothing on the rack can become the blade: what a bar has to be found for. */
export function noBarsPanel({ job, knife }: Measured): CardPanel[] {
  const mass = inFileTerms(job, () => forgedMassOf(ledgerBodies(knife), job, knife));
  return panel("Cut", "saw, rule", [
    loudWords("No bar on the rack is known to become this blade: no marks, stops and masses for the forge."),
    words(`The forged blade has to weigh ${withOther(massText, mass, job.units, besideUnits(job))}.`),
  ]);
}

const barFigure = ({ bars, bar, cutLength }: StockPlan, units: FileUnits, other: Beside): CardFigure => ({
  label: bars === 1 ? "1 piece" : `${bars} pieces, each`,
  figure: sawLength(cutLength, units),
  ...otherBehind((of) => sawLength(cutLength, of), other, `of ${bar.name}`),
});

/** Which way the billet lies in the blade. */
const lies = ({ billet }: ForgeCard, units: FileUnits): string =>
  `${hammeredText(billet.height, units)} go to the blade's height, ${hammeredText(billet.thickness, units)} to its thickness.`;

const liesWords = (card: ForgeCard, units: FileUnits): CardBlock => words(lies(card, units));

function weldPanels(card: ForgeCard, cardUnits: CardUnits): CardPanel[] {
  const { units } = cardUnits;
  const { weld, stack } = card;
  if (weld === undefined) return [];
  const { passes, least } = weld;
  return panel("Squeeze the weld", `stops, ${units}`, [
    words(
      `${stack.bars} bars, ${formatCaliper(passes.from, units)} high, to ${formatCaliper(passes.to, units)} or less (${percentText(least)} off) at ${formatTemperature(passes.temperature, units)}.`,
    ),
    ...passTable(passes, cardUnits),
    words(`Ends cropped, sides ground to ${ruleText(weld.dressedWidth, units)}: ${lies(card, units)}`),
  ]);
}

/** A stack of two or more steels, weld by weld. */
function mixedPanels(plan: MixedPlan, card: ForgeCard, units: FileUnits, other: Beside): CardPanel[] {
  const size = (a: number, b: number): string =>
    `${unitless(hammeredText(a, units))} × ${unitless(hammeredText(b, units))}`;
  const rows = plan.stages.map((stage, weld): CardCell[] => {
    const next = plan.stages[weld + 1];
    const long = next === undefined ? plan.asCut.lastBar.length : plan.asCut.welds[weld + 1]?.barLength;
    const { lastBar } = plan;
    return [
      `${weld + 1}.`,
      `${stage.pieces}`,
      unitless(hammeredText(stage.stackHeight, units)),
      next === undefined
        ? size(lastBar.width, lastBar.thickness)
        : size(next.width, next.height / next.pieces),
      unitless(ruleText(long ?? next?.barLength ?? 0, units)),
      next === undefined ? "–" : `${next.pieces}`,
    ];
  });
  const ground = ruleText(plan.asCut.lastBar.dressedLength, units);
  return panel("Cut and weld", `saw, rule, ${units}`, [
    figures(...plan.bars.map((bar) => mixedFigure(bar, plan.cutLength, units, other))),
    ...table(["weld", "pieces", "high, cleaned", "draw to", "long", "cut in pieces"], rows),
    ...(plan.grooves > 0 ? [words(`Grooves ground and pressed flat: ${ground} long.`)] : []),
    liesWords(card, units),
  ]);
}

const mixedFigure = (
  { pieces, steel, thickness, width }: MixedBar,
  cutLength: number,
  units: FileUnits,
  other: Beside,
): CardFigure => ({
  label: pieces === 1 ? "1 piece" : `${pieces} pieces, each`,
  figure: sawLength(cutLength, units),
  ...otherBehind(
    (of) => sawLength(cutLength, of),
    other,
    `of ${steel}, ${formatLength(thickness, units)} × ${formatLength(width, units)}`,
  ),
});
