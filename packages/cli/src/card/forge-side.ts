import { type ForgeCard, type GateStage, STAGE_WORDS } from "@scantling/geometry";
import { type FileUnits, formatTemperature } from "@scantling/geometry/units";
import type { CardBlock, CardCell, CardPanel, CardSide } from "@scantling/render";
import type { Job } from "../load.js";
import type { Measured } from "../measure.js";
import { askRows, WISH_NOTE } from "../report/asks-text.js";
import { caliperText, fineMassText, otherUnits, percentText } from "../report/figures.js";
import type { Setup } from "../report/setup-json.js";
import { markRows } from "../report/setup-marks.js";
import { mixedSentences } from "../report/setup-mixed.js";
import { preformRows, taperRows } from "../report/setup-shape.js";
import { anvilText, anvilUpText, hammeredText, inBothUnits, unitless } from "../report/setup-sizes.js";
import { cutText } from "../report/stock-text.js";
import { bareHeads, bareMass, passBlock, tableBlock, withColumn, withStops, words } from "./card-blocks.js";

/** From the order to the forged blade. */
export function forgeSide(measured: Measured, setup: Setup): CardSide {
  const { job } = measured;
  const { card } = setup;
  const panels = [
    asksPanel(measured),
    ...(card === undefined
      ? []
      : [
          cutPanel(setup, job),
          weighPanel(setup, job.units),
          ...weldPanels(card, job.units),
          markPanel(card, job.units),
          shoulderPanel(card, job.units),
          downPanel(card, job.units),
          preformPanel(card, job.units),
          taperPanel(card, job.units),
          heatsPanel(card, job.units),
        ]),
  ];
  return { name: "At the forge", panels: panels.filter(({ blocks }) => blocks.length > 0) };
}

function asksPanel({ answers, job }: Measured): CardPanel {
  if (answers.length === 0) return { title: "Asked", blocks: [] };
  const rows = [["", "asked", "computed", ""], ...askRows(answers, job.units)];
  const wish = answers.some(({ ask }) => ask.should) ? [words(WISH_NOTE)] : [];
  return { title: "What was asked", wide: true, blocks: [tableBlock(rows), ...wish] };
}

function cutPanel({ plan, mixed, card }: Setup, { units }: Job): CardPanel {
  if (mixed !== undefined) {
    return {
      title: "Cut and weld",
      tool: "saw, rule",
      wide: true,
      blocks: mixedSentences(mixed, units).map(words),
    };
  }
  const bars = card?.stack.bars ?? 1;
  return {
    title: "Cut",
    tool: "saw, rule",
    blocks:
      plan === undefined
        ? []
        : [
            { kind: "words", text: cutText(plan, units), loud: true },
            ...(bars > 1 ? [words("Clean every joint bright. Stack in the order cut, ends flush.")] : []),
          ],
  };
}

/** Short, for a column is narrow. */
const STAGES: Partial<Record<GateStage, string>> = { billet: "billet", forged: "forged", ready: "to harden" };

function weighPanel({ masses }: Setup, units: FileUnits): CardPanel {
  const unit = units === "mm" ? "g" : "oz";
  const show = (grams: number): string => bareMass(grams, units);
  const rows = masses.map(({ stage, need }): CardCell[] => [
    STAGES[stage] ?? STAGE_WORDS[stage],
    show(need.value),
    show(need.low),
    show(need.high),
    { box: "" },
  ]);
  const heads = ["", "needed", "low losses", "high losses", "on the scale"];
  return {
    title: "Weigh, steel alone",
    tool: `scale, ${unit}`,
    blocks: rows.length === 0 ? [] : [tableBlock([heads, ...rows])],
  };
}

function weldPanels({ weld, stack }: ForgeCard, units: FileUnits): CardPanel[] {
  if (weld === undefined) return [];
  const { passes, least } = weld;
  return [
    {
      title: "Squeeze the weld",
      tool: "stops",
      blocks: [
        words(
          `${stack.bars} bars, ${caliperText(passes.from, units)} high, to ${caliperText(passes.to, units)} or less at welding heat: ${percentText(least)} at the least.`,
        ),
        passBlock(passes, units),
        words(`Sides ground: ${anvilText(weld.dressedWidth, units)} wide.`),
      ],
    },
  ];
}

function markPanel(card: ForgeCard, units: FileUnits): CardPanel {
  return {
    title: "Mark",
    tool: "rule, punch",
    blocks: [
      {
        kind: "figures",
        figures: [
          {
            label: "from the butt end",
            figure: anvilUpText(card.marks.at, units),
            beside: `(${anvilUpText(card.marks.at, otherUnits(units))})`,
          },
        ],
      },
      tableBlock(markRows(card, units)),
      words("Behind the mark handle, ahead blade. Saw what is over off the butt; spare stays at the point."),
    ],
  };
}

function shoulderPanel(card: ForgeCard, units: FileUnits): CardPanel {
  const { shoulder, tang, shoulderPressing } = card;
  const size = ({ height, thickness }: typeof tang.front): string =>
    `${hammeredText(height, units)} × ${hammeredText(thickness, units)}`;
  const drawn = words(
    `Draw the handle ${inBothUnits(anvilUpText, tang.length, units)} long: ${size(tang.front)} at the shoulder, ${size(tang.butt)} at the butt.`,
  );
  if (shoulder.passes.length === 0) {
    return { title: "Handle", tool: "press", blocks: [words("No shoulder to set in."), drawn] };
  }
  const bare = (mm: number): string => unitless(hammeredText(mm, units));
  const heads = ["", "in at edge", "in at spine", "high", "thick", "fuller radius"];
  const rows = shoulder.passes.map((pass, index) => [
    `${index + 1}.`,
    pass.edgeSide > 0 ? bare(pass.edgeSide) : "–",
    pass.spineSide > 0 ? bare(pass.spineSide) : "–",
    bare(pass.height),
    bare(shoulderPressing[index]?.thickness ?? pass.thickness),
    bare(pass.fuller),
  ]);
  return {
    title: "Shoulder and handle",
    tool: `fuller, ${units}`,
    blocks: [
      tableBlock(
        withStops(
          [heads, ...rows],
          shoulderPressing.map(({ passes }) => passes),
          units,
        ),
      ),
      drawn,
    ],
  };
}

function downPanel({ thickness }: ForgeCard, units: FileUnits): CardPanel {
  if (thickness.passes.length === 0) return { title: "Press the blade down", blocks: [] };
  return {
    title: "Press the blade down",
    tool: "stops",
    blocks: [
      words(
        `To ${caliperText(thickness.to, units)} cold, at ${formatTemperature(thickness.temperature, units)}.`,
      ),
      passBlock(thickness, units),
    ],
  };
}

function preformPanel(card: ForgeCard, units: FileUnits): CardPanel {
  const bend: CardBlock =
    card.preCurve === undefined
      ? words("The point comes up with the bevels: measure how far.")
      : {
          kind: "figures",
          figures: [{ label: "bend the point down by", figure: anvilText(card.preCurve, units) }],
        };
  return {
    title: "Preform, before the bevels",
    tool: `cold, ${units}`,
    blocks: [tableBlock(bareHeads(preformRows(card, units))), bend],
  };
}

function taperPanel(card: ForgeCard, units: FileUnits): CardPanel {
  const rows = bareHeads(taperRows(card, units));
  const stops = withStops(
    rows,
    card.taper.map((stop) => [stop]),
    units,
  );
  return {
    title: "Distal taper at the spine",
    tool: `from the heel, ${units}`,
    blocks: [
      tableBlock(
        withColumn(
          stops,
          "measured",
          rows.slice(1).map(() => ({ box: "" })),
        ),
      ),
    ],
  };
}

function heatsPanel({ heats: { usual, high } }: ForgeCard, units: FileUnits): CardPanel {
  const more = (side: typeof usual): string => (Number.isFinite(side.more) ? `${side.more}` : "any");
  return {
    title: "Heats",
    tool: "strike off",
    blocks: [
      { kind: "tally", count: usual.planned },
      words(
        `${usual.planned} planned. More than these: ${more(usual)} at usual losses, ${more(high)} at high ones. Each costs ${fineMassText(usual.perHeat.forged, units)} of the forged blade.`,
      ),
    ],
  };
}
