import type { DensityMark } from "../material.js";
import { isSameMaterial } from "../materials.js";
import { HEAT_STEPS, type HeatNote, type HeatRecipe, type HeatStep, type HeatStepName } from "./heat-step.js";

const BLADESMITH = "a bladesmith's data page, which draws on published handbooks";
const SOCIETY = "a bladesmiths' society page";
const DISTRIBUTORS = "three distributors' sheets";
const MEMORY = "from memory, unconfirmed: prefer the sheet that came with the bar";
const PRACTICE = "common practice, no source";

interface Row {
  readonly steel: string;
  readonly step: HeatStepName;
  readonly at: number | readonly [low: number, high: number];
  readonly soak?: number | readonly [low: number, high: number];
  readonly cooling?: string;
  readonly times?: number;
  readonly source: string;
  readonly mark: DensityMark;
}

const pair = (value: number | readonly [number, number]): { low: number; high: number } =>
  typeof value === "number" ? { low: value, high: value } : { low: value[0], high: value[1] };

// °C and minutes. Where the source gives °F the figure is the whole °C next to it.
const ROWS: readonly Row[] = [
  {
    steel: "1095",
    step: "normalise",
    at: 855,
    cooling: "still air",
    source: BLADESMITH,
    mark: "secondary copy",
  },
  {
    steel: "1095",
    step: "anneal",
    at: 800,
    cooling: "at most 28 °C an hour to 650 °C",
    source: BLADESMITH,
    mark: "secondary copy",
  },
  {
    steel: "1095",
    step: "harden",
    at: 800,
    soak: 5,
    cooling: "fast oil below 5 to 6 mm thick, else water or brine",
    source: BLADESMITH,
    mark: "secondary copy",
  },
  {
    steel: "1095",
    step: "harden",
    at: 800,
    soak: 10,
    cooling: "fast oil",
    source: "a forge's page, on a laminate of 1095 and 15N20",
    mark: "secondary copy",
  },
  { steel: "5160", step: "normalise", at: 870, cooling: "air", source: SOCIETY, mark: "secondary copy" },
  {
    steel: "5160",
    step: "anneal",
    at: 830,
    cooling: "fast to 705 °C, then at most 11 °C an hour to 650 °C",
    source: SOCIETY,
    mark: "secondary copy",
  },
  { steel: "5160", step: "harden", at: 830, cooling: "oil", source: SOCIETY, mark: "secondary copy" },
  {
    steel: "5160",
    step: "harden",
    at: 830,
    soak: [8, 10],
    cooling: "oil",
    source: "a smiths' discussion (1525 °F)",
    mark: "secondary copy",
  },
  { steel: "52100", step: "normalise", at: 885, cooling: "air", source: BLADESMITH, mark: "secondary copy" },
  {
    steel: "52100",
    step: "anneal",
    at: 795,
    cooling: "fast to 750 °C, then at most 6 °C an hour to 675 °C",
    source: BLADESMITH,
    mark: "secondary copy",
  },
  {
    steel: "52100",
    step: "harden",
    at: [800, 845],
    cooling: "oil",
    source: BLADESMITH,
    mark: "secondary copy",
  },
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
    at: 871,
    cooling: "air",
    source: "a distributor's sheet; another says not to normalise",
    mark: "secondary copy",
  },
  {
    steel: "O1",
    step: "anneal",
    at: [760, 788],
    cooling: "at most 22 °C an hour",
    source: DISTRIBUTORS,
    mark: "secondary copy",
  },
  {
    steel: "O1",
    step: "harden",
    at: [788, 816],
    soak: [10, 45],
    cooling: "oil, down to 65 °C",
    source: `${DISTRIBUTORS}: 10 to 30 min, 30 to 45 min, 30 min an inch`,
    mark: "secondary copy",
  },
  {
    steel: "W2",
    step: "harden",
    at: 788,
    cooling: "water",
    source: "a distributor's sheet, quoted (1450 °F)",
    mark: "secondary copy",
  },
  {
    steel: "D2",
    step: "anneal",
    at: [870, 900],
    cooling: "at most 4.4 °C an hour",
    source: "mill data sheet for D2",
    mark: "secondary copy",
  },
  {
    steel: "D2",
    step: "harden",
    at: [1010, 1024],
    soak: [20, 45],
    cooling: "air; preheat at 621 to 677 °C, 760 to 788 °C, or both",
    source: "mill data sheet for D2",
    mark: "secondary copy",
  },
  {
    steel: "AEB-L",
    step: "harden",
    at: 1060,
    soak: 3,
    cooling: "oil or between plates, fast; the soak is that of 1 mm strip",
    source: "mill data sheet for the same steel under its other name (1940 °F)",
    mark: "secondary copy",
  },
  {
    steel: "1084",
    step: "normalise",
    at: 870,
    soak: 4,
    cooling: "air",
    source: "a handbook on heat treating, quoted in a discussion (1600 °F)",
    mark: "secondary copy",
  },
  { steel: "1084", step: "harden", at: 815, cooling: "fast oil", source: MEMORY, mark: "from memory" },
  {
    steel: "1080",
    step: "normalise",
    at: 870,
    soak: 4,
    cooling: "air",
    source: "a handbook on heat treating, quoted in a discussion (1600 °F)",
    mark: "secondary copy",
  },
  { steel: "1080", step: "anneal", at: [790, 850], source: "a distributor's sheet", mark: "secondary copy" },
  { steel: "1080", step: "harden", at: 815, cooling: "fast oil", source: MEMORY, mark: "from memory" },
  { steel: "1075", step: "normalise", at: [845, 870], source: MEMORY, mark: "from memory" },
  { steel: "1075", step: "harden", at: [800, 815], cooling: "fast oil", source: MEMORY, mark: "from memory" },
  { steel: "80CrV2", step: "normalise", at: [870, 900], source: MEMORY, mark: "from memory" },
  ...([899, 816, 760] as const).map(
    (at): Row => ({
      steel: "80CrV2",
      step: "normalise",
      at,
      cooling: "air; one after the other",
      source: `${PRACTICE} (1650, 1500, 1400 °F)`,
      mark: "from memory",
    }),
  ),
  {
    steel: "80CrV2",
    step: "harden",
    at: [830, 845],
    soak: [5, 10],
    cooling: "oil",
    source: MEMORY,
    mark: "from memory",
  },
  {
    steel: "80CrV2",
    step: "harden",
    at: 829,
    cooling: "fast oil near 50 °C (1525 °F, oil near 120 °F)",
    source: PRACTICE,
    mark: "from memory",
  },
  {
    steel: "80CrV2",
    step: "temper",
    at: 218,
    soak: 120,
    times: 2,
    cooling: "air; to about 60 or 61 HRC (425 °F)",
    source: PRACTICE,
    mark: "from memory",
  },
  { steel: "15N20", step: "normalise", at: [830, 870], source: MEMORY, mark: "from memory" },
  {
    steel: "15N20",
    step: "harden",
    at: [800, 825],
    soak: [5, 10],
    cooling: "oil",
    source: MEMORY,
    mark: "from memory",
  },
];

/** What is not done at all. */
const NOTES: readonly (HeatNote & { readonly steel: string })[] = [
  { steel: "D2", text: "Do not normalise.", source: MEMORY, mark: "from memory" },
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
    ({ step, at, soak, cooling, times, source, mark }): HeatStep => ({
      step,
      ...pair(at),
      ...(soak === undefined ? {} : { soak: pair(soak) }),
      ...(cooling === undefined ? {} : { cooling }),
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
