import {
  type HeatRecipe,
  type HeatSource,
  type HeatStep,
  recipeFor,
  TEMPER_SCATTER,
  temperFor,
  USUAL_TEMPER,
} from "@scantling/geometry";
import { type FileUnits, formatTemperature } from "@scantling/geometry/units";
import type { CardBlock, CardPanel } from "@scantling/render";
import type { Job } from "../load.js";
import { otherUnits } from "../report/figures.js";
import { tableBlock, words } from "./card-blocks.js";

/** Hardnesses for which a tempering temperature is told, HRC. */
const HARDNESSES = [62, 61, 60, 59, 58, 57, 56] as const;

/** What is done with the blade in oven and oil, each figure with its source; nothing where no source is known. */
export function heatPanel(job: Job): CardPanel {
  const steel = job.spec.steel.name;
  const recipe = recipeFor(steel, job.shop.recipes ?? []);
  if (recipe === undefined) {
    return {
      title: "Heat treatment",
      tool: "oven, oil",
      blocks: [
        words(`No figures for ${steel} are known here: go by the sheet that came with the bar.`),
        ...emptyFigures(job.units),
      ],
    };
  }
  const sources = new SourceLetters();
  const steps = stepBlocks(recipe, sources, job.units);
  const temper = temperBlocks(steel, recipe, sources, job.units);
  return {
    title: `Heat treatment, ${steel}`,
    tool: "oven, oil",
    blocks: [
      ...steps,
      ...temper,
      ...sources.lines().map(words),
      words("The sheet that came with the bar goes before all of these."),
      {
        kind: "figures",
        figures: [{ label: "file or tester says", box: "HRC" }],
      },
    ],
  };
}

/** What the smith writes in where no figures are known. */
const emptyFigures = (units: FileUnits): CardBlock[] => [
  {
    kind: "figures",
    figures: ["harden at", "soak", "temper at"].map((label) => ({
      label,
      box: label === "soak" ? "min" : units === "mm" ? "°C" : "°F",
    })),
  },
];

const STEP_WORDS: Partial<Record<HeatStep["step"], string>> = { "stress-relieve": "relieve" };

function stepBlocks(recipe: HeatRecipe, sources: SourceLetters, units: FileUnits): CardBlock[] {
  return recipe.steps.flatMap((step): CardBlock[] => {
    const times = step.times === undefined ? "" : ` ${step.times} ×`;
    const cool = step.cooling === undefined ? "" : `${step.cooling} `;
    return [
      {
        kind: "figures",
        figures: [
          {
            label: `${STEP_WORDS[step.step] ?? step.step}${times}`,
            figure: range(step, units),
            beside: [`(${range(step, otherUnits(units))})`, ...soakWords(step)].join(" "),
          },
        ],
      },
      words(`${cool}${sources.of(step)}`),
    ];
  });
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
  const usual = `Temper ${USUAL_TEMPER.times} × ${USUAL_TEMPER.soak / 60} h where no sheet says otherwise (common practice, no source).`;
  const rows = HARDNESSES.map((hardness) => ({ hardness, choices: temperFor(steel, hardness) }));
  const tables = rows[0]?.choices ?? [];
  if (tables.length === 0) return [words(`${usual} No tempering table is known for this steel.`)];
  return [
    tableBlock([
      ["HRC", ...tables.map((table) => `temper at, ${sources.of(table)}`)],
      ...rows
        .filter(({ choices }) => choices.some(({ temperature }) => temperature !== undefined))
        .map(({ hardness, choices }) => [
          `${hardness}`,
          ...choices.map(({ temperature }) =>
            temperature === undefined ? "–" : formatTemperature(temperature, units),
          ),
        ]),
    ]),
    words(`${usual} Tables hold to ± ${TEMPER_SCATTER} HRC.`),
  ];
}

/** Sources by letters, so that a figure has its own beside it and the words stand once. */
class SourceLetters {
  private readonly seen: string[] = [];

  of({ source, mark }: HeatSource): string {
    const text = mark === "from memory" && !/memory/u.test(source) ? `${source}, from memory` : source;
    const known = this.seen.indexOf(text);
    if (known < 0) this.seen.push(text);
    return `[${letter(known < 0 ? this.seen.length - 1 : known)}]`;
  }

  lines(): string[] {
    return this.seen.map((text, index) => `[${letter(index)}] ${text}`);
  }
}

const letter = (index: number): string => String.fromCharCode(97 + index);
