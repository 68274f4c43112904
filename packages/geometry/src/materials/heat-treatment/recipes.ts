import {
  type QuantityValue,
  type TextWithValues,
  temperature,
  temperatureDifference,
} from "../../errors/issue.js";
import type { DensityMark } from "../material.js";
import { isSameMaterial } from "../materials.js";
import {
  fromFahrenheit,
  HEAT_STEPS,
  type HeatNote,
  type HeatRecipe,
  type HeatStep,
  type HeatStepName,
} from "./heat-step.js";

interface Row {
  readonly steel: string;
  readonly step: HeatStepName;
  readonly at: number | readonly [low: number, high: number];
  readonly soak?: number | readonly [low: number, high: number];
  readonly cooling?: string | TextWithValues;
  readonly result?: string;
  readonly times?: number;
  readonly source: string;
  readonly mark: DensityMark;
}

/** Whose figures they are, and how surely: the two go together. */
type Origin = Pick<Row, "source" | "mark">;

const BLADESMITH: Origin = {
  source: "a bladesmith's data page, which draws on published handbooks",
  mark: "secondary copy",
};
const SOCIETY: Origin = { source: "a bladesmiths' society page", mark: "secondary copy" };
const DISTRIBUTORS: Origin = { source: "three distributors' sheets", mark: "secondary copy" };
const MEMORY: Origin = {
  source: "from memory, unconfirmed: prefer the sheet that came with the bar",
  mark: "from memory",
};
const PRACTICE: Origin = { source: "common practice, no source", mark: "from memory" };

const pair = (value: number | readonly [number, number]): { low: number; high: number } =>
  typeof value === "number" ? { low: value, high: value } : { low: value[0], high: value[1] };

/** A figure of a source that gives °F, °C. */
const f = fromFahrenheit;
/** The K of so many °F of a source that gives °F, not rounded. */
const perHour = (fahrenheit: number): number => fahrenheit / 1.8;

/** Cooled at so many K an hour at the most, down to a temperature in °C. */
const slowly = (
  text: string,
  kelvin: number,
  rest: Readonly<Record<string, number>> = {},
): TextWithValues => ({
  text,
  values: { rate: temperatureDifference(kelvin), ...temperatures(rest) },
});

const temperatures = (values: Readonly<Record<string, number>>): Record<string, QuantityValue> =>
  Object.fromEntries(Object.entries(values).map(([name, value]) => [name, temperature(value)]));

// Minutes, and °C or °F as the source gives them; °F too where its °C are such figures rounded: 788 °C are 1450 °F.
const ROWS: readonly Row[] = [
  { steel: "1095", step: "normalise", at: 855, cooling: "still air", ...BLADESMITH },
  {
    steel: "1095",
    step: "anneal",
    at: f(1475),
    cooling: slowly("at most {rate} an hour to {to}", perHour(50), { to: f(1200) }),
    ...BLADESMITH,
  },
  {
    steel: "1095",
    step: "harden",
    at: f(1475),
    soak: 5,
    cooling: "fast oil below 5 to 6 mm thick, else water or brine",
    ...BLADESMITH,
  },
  {
    steel: "1095",
    step: "harden",
    at: f(1475),
    soak: 10,
    cooling: "fast oil",
    source: "a forge's page, on a laminate of 1095 and 15N20",
    mark: "secondary copy",
  },
  { steel: "5160", step: "normalise", at: 870, cooling: "air", ...SOCIETY },
  {
    steel: "5160",
    step: "anneal",
    at: f(1525),
    cooling: slowly("fast to {first}, then at most {rate} an hour to {to}", perHour(20), {
      first: f(1300),
      to: f(1200),
    }),
    ...SOCIETY,
  },
  { steel: "5160", step: "harden", at: f(1525), cooling: "oil", ...SOCIETY },
  {
    steel: "5160",
    step: "harden",
    at: f(1525),
    soak: [8, 10],
    cooling: "oil",
    source: "a smiths' discussion",
    mark: "secondary copy",
  },
  { steel: "52100", step: "normalise", at: 885, cooling: "air", ...BLADESMITH },
  {
    steel: "52100",
    step: "anneal",
    at: 795,
    cooling: slowly("fast to {first}, then at most {rate} an hour to {to}", perHour(10), {
      first: 750,
      to: 675,
    }),
    ...BLADESMITH,
  },
  { steel: "52100", step: "harden", at: [f(1475), f(1550)], cooling: "oil", ...BLADESMITH },
  {
    steel: "52100",
    step: "harden",
    at: [830, 870],
    cooling: "oil",
    source: "a bearing-steel supplier's page",
    mark: "secondary copy",
  },
  {
    steel: "O1",
    step: "normalise",
    at: f(1600),
    cooling: "air",
    source: "a distributor's sheet; another says not to normalise",
    mark: "secondary copy",
  },
  {
    steel: "O1",
    step: "anneal",
    at: [f(1400), f(1450)],
    cooling: slowly("at most {rate} an hour", perHour(40)),
    ...DISTRIBUTORS,
  },
  {
    steel: "O1",
    step: "harden",
    at: [f(1450), f(1500)],
    soak: [10, 45],
    cooling: { text: "oil, down to {to}", values: temperatures({ to: f(150) }) },
    source: `${DISTRIBUTORS.source}: 10 to 30 min, 30 to 45 min, 30 min an inch`,
    mark: "secondary copy",
  },
  {
    steel: "W2",
    step: "harden",
    at: f(1450),
    cooling: "water",
    source: "a distributor's sheet, quoted",
    mark: "secondary copy",
  },
  {
    steel: "D2",
    step: "anneal",
    at: [870, 900],
    cooling: slowly("at most {rate} an hour", 4.4),
    source: "mill data sheet for D2",
    mark: "secondary copy",
  },
  {
    steel: "D2",
    step: "harden",
    at: [f(1850), f(1875)],
    soak: [20, 45],
    cooling: {
      text: "air; preheat at {a} to {b}, {c} to {d}, or both",
      values: temperatures({ a: f(1150), b: f(1250), c: f(1400), d: f(1450) }),
    },
    source: "mill data sheet for D2",
    mark: "secondary copy",
  },
  {
    steel: "AEB-L",
    step: "harden",
    at: f(1940),
    soak: 3,
    cooling: "oil or between plates, fast; the soak is that of 1 mm strip",
    source: "mill data sheet for the same steel under its other name",
    mark: "secondary copy",
  },
  {
    steel: "1084",
    step: "normalise",
    at: f(1600),
    soak: 4,
    cooling: "air",
    source: "a handbook on heat treating, quoted in a discussion",
    mark: "secondary copy",
  },
  { steel: "1084", step: "harden", at: f(1500), cooling: "fast oil", ...MEMORY },
  {
    steel: "1080",
    step: "normalise",
    at: f(1600),
    soak: 4,
    cooling: "air",
    source: "a handbook on heat treating, quoted in a discussion",
    mark: "secondary copy",
  },
  { steel: "1080", step: "anneal", at: [790, 850], source: "a distributor's sheet", mark: "secondary copy" },
  { steel: "1080", step: "harden", at: f(1500), cooling: "fast oil", ...MEMORY },
  { steel: "1075", step: "normalise", at: [845, 870], ...MEMORY },
  { steel: "1075", step: "harden", at: [800, 815], cooling: "fast oil", ...MEMORY },
  { steel: "80CrV2", step: "normalise", at: [870, 900], ...MEMORY },
  ...([1650, 1500, 1400] as const).map(
    (at): Row => ({
      steel: "80CrV2",
      step: "normalise",
      at: f(at),
      cooling: "air",
      ...PRACTICE,
    }),
  ),
  { steel: "80CrV2", step: "harden", at: [830, 845], soak: [5, 10], cooling: "oil", ...MEMORY },
  {
    steel: "80CrV2",
    step: "harden",
    at: f(1525),
    cooling: { text: "fast oil near {oil}", values: temperatures({ oil: f(120) }) },
    ...PRACTICE,
  },
  {
    steel: "80CrV2",
    step: "temper",
    at: f(425),
    soak: 120,
    times: 2,
    cooling: "air",
    result: "gives about 60 or 61 HRC",
    ...PRACTICE,
  },
  { steel: "15N20", step: "normalise", at: [830, 870], ...MEMORY },
  { steel: "15N20", step: "harden", at: [800, 825], soak: [5, 10], cooling: "oil", ...MEMORY },
];

/** What is not done at all. */
const NOTES: readonly (HeatNote & { readonly steel: string })[] = [
  { steel: "D2", text: "Do not normalise.", ...MEMORY },
];

const notesOf = (steel: string): HeatNote[] =>
  NOTES.filter((note) => isSameMaterial(note.steel, steel)).map(({ steel: _, ...note }) => note);

/** Straightened and eased before it is hardened: not of one steel. */
const STRESS_RELIEF: HeatStep = {
  step: "stress-relieve",
  low: 600,
  high: 650,
  cooling: "air; straighten again",
  source: "a maker's page on heat treatment",
  mark: "secondary copy",
};

/** How long, in minutes, and how often a blade is tempered where no sheet says otherwise. Common practice, no source. */
export const USUAL_TEMPER = { soak: 120, times: 2 } as const;

/**
 * What to go by for a steel: the shop's own recipe where it has one, and beside it what other sources say of the steps that
 * it leaves out.
 *
 * @param own - Recipes of the shop.
 *
 * @example
 * recipeFor("5160", [])?.steps[0]?.cooling; // "air"
 */
export function recipeFor(steel: string, own: readonly HeatRecipe[]): HeatRecipe | undefined {
  const ours = own.find((recipe) => isSameMaterial(recipe.steel, steel));
  const published = heatRecipe(steel);
  if (ours === undefined) return published;
  const given = new Set(ours.steps.map(({ step }) => step));
  const rest = (published?.steps ?? []).filter(({ step }) => !given.has(step));
  const steps = inOrder([...ours.steps, ...rest]);
  // Whoever normalises by a recipe of his own knows better.
  return published?.notes === undefined || given.has("normalise")
    ? { steel, steps }
    : { steel, steps, notes: published.notes };
}

/**
 * What sources say of treating a steel, in the order of the work and side by side where they differ: sources conflict,
 * and the sheet that came with the bar goes before them all.
 *
 * @returns undefined where no source is known.
 *
 * @example
 * heatRecipe("5160")?.steps.map(({ step, low }) => `${step} ${low}`)[0]; // "normalise 870"
 */
export function heatRecipe(steel: string): HeatRecipe | undefined {
  const rows = ROWS.filter((row) => isSameMaterial(row.steel, steel));
  const [first] = rows;
  if (first === undefined) return undefined;
  const steps = rows.map(
    ({ step, at, soak, cooling, result, times, source, mark }): HeatStep => ({
      step,
      ...pair(at),
      ...(soak === undefined ? {} : { soak: pair(soak) }),
      ...(cooling === undefined ? {} : { cooling }),
      ...(result === undefined ? {} : { result }),
      ...(times === undefined ? {} : { times }),
      source,
      mark,
    }),
  );
  const notes = notesOf(steel);
  return {
    steel: first.steel,
    steps: inOrder([...steps, STRESS_RELIEF]),
    ...(notes.length === 0 ? {} : { notes }),
  };
}

/** By the order of the work; what stood first of one name stays first. */
const inOrder = (steps: readonly HeatStep[]): HeatStep[] =>
  HEAT_STEPS.flatMap((name) => steps.filter(({ step }) => step === name));

/** Steels for which {@link heatRecipe} knows something. */
export const STEELS_WITH_RECIPE: readonly string[] = [...new Set(ROWS.map(({ steel }) => steel))];
