import {
  type BenchSetUp,
  type HeatRecipe,
  type HeatSource,
  type HeatStep,
    recipeFor,
  TEMPER_SCATTER,
  temperFor,
  USUAL_TEMPER,
} from "@scantling/geometry";
import { type FileUnits, formatTemperature } from "@scantling/geometry/units";
import type { CardBlock, CardFigure, CardPanel } from "@scantling/render";
import type { Job } from "../load.js";
import { fixed, lengthText, otherUnits } from "../report/figures.js";
import { figures, loudWords, panel, table, words } from "./card-blocks.js";
import { firstSentence } from "./mind-panel.js";

/** Hardnesses for which a tempering temperature is told, HRC: closer than the tables hold would promise too much. */
const HARDNESSES = [62, 60, 58, 56] as const;

/** What is done with the blade in oven and oil, each figure with its source; boxes where no source is known. */
export function heatPanel(job: Job, { quench, findings }: BenchSetUp): CardPanel[] {
  const steel = job.spec.steel.name;
  const { units } = job;
  const recipe = recipeFor(steel, job.shop.recipes ?? []);
  const thin = findings
    .filter(({ severity }) => severity === "warn")
    .map((finding) => loudWords(firstSentence(finding, job)));
  const oil = words(oilWords(quench, units));
  if (recipe === undefined) {
    return panel("Heat treatment", "oven, oil", [
      ...thin,
      words(`No figures for ${steel} are known here: go by the sheet that came with the bar.`),
      figures({ label: "harden at", boxes: [degreeUnit(units), "min"] }),
      oil,
      figures(tempered(units)),
    ]);
  }
  const sources = new SourceLetters();
  const steps = figures(...recipe.steps.map((step) => stepFigure(step, sources, units)));
  const temper = temperBlocks(steel, recipe, sources, units);
  return panel(`Heat treatment, ${steel}`, "oven, oil", [
    ...thin,
    words("The sheet that came with the bar goes before all of these."),
    steps,
    oil,
    ...temper,
    figures(tempered(units)),
    words(sources.legend()),
  ]);
}

const degreeUnit = (units: FileUnits): string => (units === "mm" ? "°C" : "°F");

/** What was done in the end, and what a file or tester says of it. */
const tempered = (units: FileUnits): CardFigure => ({ label: "tempered", boxes: [degreeUnit(units), "HRC"] });

/** How deep and how much; what the oil wants itself its sheet says. */
const oilWords = ({ depthNeeded, usualLitres }: QuenchSetUp, units: FileUnits): string =>
  `Oil ${lengthText(depthNeeded, units)} deep, ${fixed(Math.ceil(usualLitres * 10) / 10, 1)} l or more (from memory).`;

const STEP_WORDS: Partial<Record<HeatStep["step"], string>> = { "stress-relieve": "relieve" };

function stepFigure(step: HeatStep, sources: SourceLetters, units: FileUnits): CardFigure {
  const { times = 1, cooling } = step;
  const other = `(${range(step, otherUnits(units))})`;
  const how = [...soakWords(step), ...(cooling === undefined ? [] : [cooling])].join(", ");
  return {
    ticks: times,
    label: `${STEP_WORDS[step.step] ?? step.step}${times > 1 ? ` ${times} ×` : ""}`,
    figure: range(step, units),
    beside: [other, how, sources.of(step)].filter((part) => part !== "").join(" "),
  };
}

function range({ low, high }: { low: number; high: number }, units: FileUnits): string {
  const shown = formatTemperature(high, units);
  return low === high ? shown : `${formatTemperature(low, units).replace(/ ?°[CF]$/u, "")} to ${shown}`;
}

function soakWords({ soak }: HeatStep): string[] {
  if (soak === undefined) return [];
  return [soak.low === soak.high ? `${soak.low} min` : `${soak.low} to ${soak.high} min`];
}

/** By hardness, one column a source; sources that disagree stand side by side. */
function temperBlocks(
  steel: string,
  recipe: HeatRecipe,
  sources: SourceLetters,
  units: FileUnits,
): CardBlock[] {
  if (recipe.steps.some(({ step }) => step === "temper")) return [];
  const usual: CardFigure = {
    ticks: USUAL_TEMPER.times,
    label: "temper",
    figure: `${USUAL_TEMPER.times} × ${USUAL_TEMPER.soak / 60} h`,
    beside: "if no sheet says otherwise (common practice, no source)",
  };
  const rows = HARDNESSES.map((hardness) => ({ hardness, choices: temperFor(steel, hardness) }));
  const [first] = rows;
  if (first === undefined || first.choices.length === 0)
    return [figures({ ...usual, beside: `${usual.beside}; no table of heats is known for this steel` })];
  return [
    figures(usual),
    ...table(
      ["HRC", ...first.choices.map((choice) => `temper at ${sources.of(choice)}`)],
      rows
        .filter(({ choices }) => choices.some(({ temperature }) => temperature !== undefined))
        .map(({ hardness, choices }) => [
          `${hardness}`,
          ...choices.map(({ temperature }) =>
            temperature === undefined ? "–" : formatTemperature(temperature, units),
          ),
        ]),
    ),
    words(`The tables hold to ± ${TEMPER_SCATTER} HRC.`),
  ];
}

/** Sources by letters, so that a figure has its own beside it and the words stand once. */
class SourceLetters {
  private readonly seen: string[] = [];

  of({ source, mark }: HeatSource): string {
    const text =
      mark === "from memory" && !/memory|no source/u.test(source) ? `${source}, from memory` : source;
    const known = this.seen.indexOf(text);
    if (known < 0) this.seen.push(text);
    return `[${letter(known < 0 ? this.seen.length - 1 : known)}]`;
  }

  legend(): string {
    return this.seen.map((text, index) => `[${letter(index)}] ${text}.`).join(" ");
  }
}

/** a, b, … z, a2, … */
const letter = (index: number): string =>
  `${String.fromCharCode(97 + (index % 26))}${index < 26 ? "" : Math.floor(index / 26) + 1}`;
