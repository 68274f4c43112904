import { type ForgeCard, type GateStage, STAGE_WORDS } from "@scantling/geometry";
import type { FileUnits } from "@scantling/geometry/units";
import type { CardCell, CardPanel, CardSide } from "@scantling/render";
import type { Measured } from "../measure.js";
import { askRows, WISH_NOTE } from "../report/asks-text.js";
import { fineMassText } from "../report/figures.js";
import { hardnessRows } from "../report/hardness-text.js";
import type { Setup } from "../report/setup-json.js";
import { markRows } from "../report/setup-marks.js";
import { ruleText, ruleUpText, unitless } from "../report/setup-sizes.js";
import { NEED_HEADS } from "../report/setup-weights.js";
import { askedOf } from "./card-asks.js";
import {
  BOX,
  bareMass,
  type CardUnits,
  figures,
  massUnit,
  otherBehind,
  panel,
  table,
  unitsOf,
  words,
} from "./card-blocks.js";
import { cutPanels } from "./cut-panels.js";
import { mindPanel } from "./mind-panel.js";
import { shapePanels } from "./shape-panels.js";

/** What can hurt someone at the forge. */
const HAZARDS = [
  "hot steel and scale",
  "fumes",
  "carbon monoxide (open the doors)",
  "noise",
  "the press",
] as const;

/** From the order to the forged blade; undefined where no bar is known to forge it from. */
export function forgeSide(measured: Measured, setup: Setup): CardSide | undefined {
  const { job } = measured;
  const { card } = setup;
  if (card === undefined) return undefined;
  const { units } = job;
  const panels = [
    ...asksPanel(measured),
    ...cutPanels(setup, unitsOf(job)),
    ...weighPanel(setup, units),
    ...markPanel(card, unitsOf(job)),
    ...shapePanels(card, unitsOf(job)),
    ...heatsPanel(card, units),
    ...mindPanel(card.findings, job),
  ];
  return { name: "At the forge", hazards: HAZARDS, panels };
}

/** What was asked, and what is computed. */
export function asksPanel(measured: Measured): CardPanel[] {
  const { answers, job } = measured;
  const wish = answers.some(({ ask }) => ask.should) ? [words(WISH_NOTE)] : [];
  const rows = table(
    ["", "asked", "computed", ""],
    [...askRows(answers, job.units), ...hardnessRows(measured, job.units)],
  );
  return panel("Asked for", askedOf(answers), rows.length === 0 ? [] : [...rows, ...wish], true);
}

/** Short, for a column is narrow. */
const STAGES: Partial<Record<GateStage, string>> = { billet: "billet", forged: "forged", ready: "to harden" };

function weighPanel({ masses }: Setup, units: FileUnits): CardPanel[] {
  const show = (grams: number): string => bareMass(grams, units);
  const rows = masses.map(({ stage, need }): CardCell[] => [
    STAGES[stage] ?? STAGE_WORDS[stage],
    show(need.low),
    show(need.value),
    show(need.high),
    BOX,
  ]);
  return panel("Weigh, steel alone", `scale, ${massUnit(units)}`, [
    ...table(["", ...NEED_HEADS, "on the scale"], rows),
    ...(rows.length === 0 ? [] : [words("In between: ask scantling gate.")]),
  ]);
}

function markPanel(card: ForgeCard, { units, other }: CardUnits): CardPanel[] {
  const { at, usual, high } = card.marks;
  const neck = Math.abs(usual.handleFront - usual.tang) > 0.5;
  const behind = neck
    ? `The blade begins at the mark, the handle ${ruleText(high.tang - high.handleFront, units)} behind it.`
    : "Behind it the handle, ahead the blade.";
  const [, , ...rows] = markRows(card, units);
  return panel("Mark the billet", `rule, punch, ${units}`, [
    figures({
      label: "from the butt end",
      figure: ruleUpText(at, units),
      ...otherBehind((of) => ruleUpText(at, of), other),
    }),
    words(`${behind} Saw off at the butt what is over.`),
    ...table(
      ["length", "usual losses", "high losses"],
      rows.map(([name = "", ...rest]) => [name, ...rest.map(unitless)]),
    ),
  ]);
}

function heatsPanel({ heats: { usual, high } }: ForgeCard, units: FileUnits): CardPanel[] {
  const more = (side: typeof usual): string => (Number.isFinite(side.more) ? `${side.more}` : "any number");
  return panel("Heats", "strike off", [
    { kind: "tally", count: usual.planned },
    words(
      `${usual.planned} heats planned; steel for ${more(usual)} more at usual losses, for ${more(high)} at high ones. Each costs ${fineMassText(usual.perHeat.forged, units)}.`,
    ),
  ]);
}
