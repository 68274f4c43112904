import {
  type BenchSetUp,
  type FindingCode,
  type HardnessAnswer,
  HEAT_STEPS,
  type HeatRecipe,
  type HeatSource,
  type HeatStep,
  loneHardnesses,
  TEMPER_SCATTER,
  temperFor,
  USUAL_TEMPER,
} from "@scantling/geometry";
import { describeIssue, type FileUnits } from "@scantling/geometry/units";
import type { CardBlock, CardFigure, CardPanel } from "@scantling/render";
import type { Measured } from "../measure.js";
import { fixed } from "../report/figures.js";
import { firstSentence } from "../report/findings.js";
import { roomText } from "../report/setup-sizes.js";
import {
  type CardUnits,
  figures,
  loudWords,
  otherBehind,
  panel,
  table,
  unitsOf,
  words,
} from "./card-blocks.js";
import type { HeatLines } from "./heat-lines.js";
import { recipesOf } from "./heat-recipes.js";
import { heatText, heatWords } from "./heat-text.js";
import { type QuenchMedium, quenchMedia, quenchTools } from "./quench-media.js";
import { SourceLetters } from "./source-letters.js";

/** Hardnesses for which a tempering temperature is told, HRC: closer than the tables hold would promise too much. */
export const HARDNESSES = [62, 60, 58, 56] as const;

const TEMPER_PRACTICE: HeatSource = { source: "common practice, no source", mark: "from memory" };

/** What is to be minded between oven and oil. */
const IN_THE_FIRE: readonly FindingCode[] = ["edge-thin-for-quench", "tip-thin-for-hardening", "warp-risk"];

/**
 * What is done with the blade in oven and oil, each figure with its source; boxes where no source is known.
 *
 * @param lines - What is said there of soak and proof.
 */
export function heatPanels(
  { job, hardness }: Pick<Measured, "job" | "hardness">,
  { quench, findings }: BenchSetUp,
  { soak, proof }: HeatLines = { soak: [], proof: [] },
): CardPanel[] {
  const { units } = job;
  const recipes = recipesOf(job);
  const warned = findings
    .filter(({ severity, code }) => severity === "warn" && IN_THE_FIRE.includes(code))
    .map((finding) => loudWords(firstSentence(finding, job)));
  const media = quenchMedia(recipes);
  const tank = tankWords(quench, media, units);
  const [first] = recipes;
  if (first === undefined) {
    return panel("Harden and temper", quenchTools(media), [
      ...warned,
      words(`No figures for ${job.spec.steel.name} are known here: go by the sheet that came with the bar.`),
      figures({ label: "harden at", boxes: [degreeUnit(units), "min"] }),
      ...tank,
      ...proof,
      figures(tempered(units)),
    ]);
  }
  const sources = new SourceLetters();
  const steels = recipes.map(({ steel }) => steel).join(", ");
  const steps = stepFigures(recipes, STEPS_TO_HARDEN, sources, unitsOf(job));
  const temper = [
    ...stepFigures(recipes, ["temper"], sources, unitsOf(job)).map((step) => figures(step)),
    ...temperBlocks(first, recipes.length > 1 ? [] : HARDNESSES, hardness, sources, units),
  ];
  return [
    ...panel(`Harden, ${steels}`, quenchTools(media), [
      ...warned,
      words("The sheet that came with the bar goes first."),
      ...recipes.flatMap(({ steel, notes = [] }) =>
        notes.map((note) =>
          words(`${recipes.length > 1 ? `${steel}: ` : ""}${note.text} ${sources.of(note)}`),
        ),
      ),
      figures(...steps),
      ...soak,
      ...tank,
    ]),
    ...panel("Temper", "oven", [
      ...temper,
      ...proof,
      figures(tempered(units)),
      words(`Sources: ${sources.legend()}`),
    ]),
  ];
}

/** All that comes before the quench. */
const STEPS_TO_HARDEN = HEAT_STEPS.filter((step) => step !== "temper");

const degreeUnit = (units: FileUnits): string => (units === "mm" ? "°C" : "°F");

/** What was done in the end, and what a file or tester says of it. */
const tempered = (units: FileUnits): CardFigure => ({
  label: "tempered, hardness",
  boxes: [degreeUnit(units), "HRC"],
});

/** Litres in a US gallon. */
const GALLON = 3.785411784;

/** Common practice, no source. */
const WATER_CRACKS = "It cracks what oil would not: edge 1 mm or more, corners eased, a test piece first.";

/** How deep and how much; what the oil wants itself its sheet says. */
function tankWords(
  { depthNeeded, usualLitres }: BenchSetUp["quench"],
  media: readonly QuenchMedium[],
  units: FileUnits,
): CardBlock[] {
  const deep = `${roomText(depthNeeded, units)} deep`;
  const [amount, unit] = units === "mm" ? [usualLitres, "l"] : [usualLitres / GALLON, "US gal"];
  const oil = `${deep}, ${fixed(Math.ceil(amount * 10) / 10, 1)} ${unit} at least (from memory)`;
  if (media.length === 0)
    return [words(`Quench in what the sheet says and nothing else; if in oil, ${oil}.`)];
  return [
    ...(media.includes("oil") ? [words(`Oil ${oil}.`)] : []),
    ...(media.includes("water")
      ? [words(`Water or brine ${deep}.${media.includes("oil") ? "" : ` ${WATER_CRACKS}`}`)]
      : []),
  ];
}

/** In the order of the work; with several steels each by its name, and once what is the same for all. */
function stepFigures(
  recipes: readonly HeatRecipe[],
  wanted: readonly HeatStep["step"][],
  sources: SourceLetters,
  units: CardUnits,
): CardFigure[] {
  const seen = new Set<string>();
  return wanted.flatMap((name) =>
    recipes.flatMap(({ steel, steps }) =>
      bySource(steps.filter(({ step }) => step === name)).flatMap((inTurn, place) =>
        inTurn.flatMap((step, turn): CardFigure[] => {
          const ofAll = name === "stress-relieve" || recipes.length === 1;
          const key = JSON.stringify([step, ofAll ? "" : steel]);
          if (seen.has(key)) return [];
          seen.add(key);
          const figure = stepFigure(step, ofAll ? "" : ` ${steel}`, sources, units);
          // One source's heats follow one another; what another source says is instead of them, not after them.
          const label = `${turn > 0 ? "then " : place > 0 ? "or " : ""}${figure.label}`;
          const { ticks: _, ...unticked } = figure;
          return [{ ...(place > 0 && inTurn.length === 1 ? unticked : figure), label }];
        }),
      ),
    ),
  );
}

/** One group a source, in the order that they first come in. */
function bySource(steps: readonly HeatStep[]): HeatStep[][] {
  const groups = new Map<string, HeatStep[]>();
  for (const step of steps) groups.set(step.source, [...(groups.get(step.source) ?? []), step]);
  return [...groups.values()];
}

function stepFigure(
  step: HeatStep,
  name: string,
  sources: SourceLetters,
  { units, other }: CardUnits,
): CardFigure {
  const { times = 1, cooling, result } = step;
  const how = [
    ...soakWords(step),
    ...(cooling === undefined ? [] : [coolingText(cooling, units)]),
    ...(result === undefined ? [] : [result]),
  ].join(", ");
  return {
    ticks: times,
    label: `${step.step}${name}${times > 1 ? ` ${times} ×` : ""}`,
    figure: heatWords(step.low, step.high, units),
    ...otherBehind(
      (of) => heatWords(step.low, step.high, of),
      other,
      [how, sources.of(step)].filter((part) => part !== "").join(" "),
    ),
  };
}

/** What the shop wrote itself stands as it was written. */
const coolingText = (cooling: NonNullable<HeatStep["cooling"]>, units: FileUnits): string =>
  typeof cooling === "string" ? cooling : describeIssue(cooling, units);

function soakWords({ soak }: HeatStep): string[] {
  if (soak === undefined) return [];
  return [soak.low === soak.high ? `${soak.low} min` : `${soak.low} to ${soak.high} min`];
}

/** By hardness, one column a source; sources that disagree stand side by side. */
function temperBlocks(
  { steel, steps }: HeatRecipe,
  hardnesses: readonly number[],
  asked: HardnessAnswer | undefined,
  sources: SourceLetters,
  units: FileUnits,
): CardBlock[] {
  if (steps.some(({ step }) => step === "temper")) return [];
  const { times, soak } = USUAL_TEMPER;
  const usual = { ticks: times, label: "temper", figure: `${times} × ${soak / 60} h` };
  const told =
    hardnesses.length === 0
      ? []
      : [...new Set([...hardnesses, ...(asked === undefined ? [] : [asked.aim]), ...loneHardnesses(steel)])];
  const rows = told
    .sort((a, b) => b - a)
    .map((hardness) => ({ hardness, choices: temperFor(steel, hardness) }));
  const choices = rows[0]?.choices ?? [];
  const letter = sources.of(TEMPER_PRACTICE);
  const about = (column: number): string =>
    rows.some(({ choices: all }) => {
      const temperature = all[column]?.temperature;
      return temperature !== undefined && heatText(temperature, temperature, units).about;
    })
      ? "about "
      : "";
  if (choices.length === 0)
    return [figures({ ...usual, beside: `${letter}; heat as its sheet says, no table is known` })];
  return [
    figures({ ...usual, beside: `${letter}; table ± ${TEMPER_SCATTER} HRC` }),
    ...table(
      ["HRC", ...choices.map((choice, column) => `temper at ${about(column)}${sources.of(choice)}`)],
      rows
        .filter((row) => row.choices.some(({ temperature }) => temperature !== undefined))
        .map((row) => [
          `${fixed(row.hardness, Number.isInteger(row.hardness) ? 0 : 1)}${row.hardness === asked?.aim ? " asked" : ""}`,
          ...row.choices.map(({ temperature }) =>
            temperature === undefined ? "–" : heatText(temperature, temperature, units).text,
          ),
        ]),
    ),
  ];
}
