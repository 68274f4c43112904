import type { Banded } from "../stock/shop.js";
import type { JobTask, TimeSide } from "./job-tasks.js";
import { toMinor } from "./money.js";
import { type StageRisk, scrapCosts } from "./scrap-cost.js";
import type { TaskName } from "./task-names.js";

/** What is done on the blade before it has a handle: what fails here takes the blade with it. */
export const BLADE_TASKS = [
  "stack",
  "weld",
  "forge",
  "anneal",
  "profile",
  "drill",
  "rough",
  "harden",
  "temper",
  "finish",
  "etch",
] as const satisfies readonly TaskName[];

/** What is done on the handle: what fails here takes the handle with it, and leaves the blade. */
export const HANDLE_TASKS = ["fit", "glue", "shape", "oil"] as const satisfies readonly TaskName[];

/** A task that can fail, so that what it was done on is made anew. */
export type RiskyTask = (typeof BLADE_TASKS)[number] | (typeof HANDLE_TASKS)[number];

/** A material at what it costs to buy again. */
export interface PricedMaterial {
  readonly label: string;
  readonly for: "blade" | "handle";
  /** Left out where nobody has said what it costs. */
  readonly cost?: number;
}

/** What a shop reckons with; money in its currency. */
export interface PriceTerms {
  /** For an hour at the bench. */
  readonly rate: number;
  /** Rent, power, machines and the like, for an hour at the bench. */
  readonly overhead: number;
  /** On all of the cost, as a share. */
  readonly profit: number;
  /** Of materials, as a share of what they cost. */
  readonly waste: number;
  /** Belts, gas, glue, oil for one knife. */
  readonly consumables: number;
  /** Chance that a task fails, each time that it is done; left out: none. */
  readonly scrap: Readonly<Partial<Record<RiskyTask, number>>>;
  /** Share of the price without it. */
  readonly taxRate: number;
  /** Decimals of an amount. */
  readonly decimals: number;
}

/** What an order has beside the knife; money. */
export interface PriceExtras {
  /** Work that others do on the blade. */
  readonly outsideWork?: number;
  /** The price of a sheath, its hours with it. */
  readonly sheath?: number;
  readonly post?: number;
  /** What the smith wants to ask, tax with it. */
  readonly asked?: number;
}

/** What the cost of a knife is made of, in the order in which it is told. */
export type CostLineName =
  | "material"
  | "waste"
  | "consumables"
  | "work"
  | "overhead"
  | "outside-work"
  | "scrap";

/** An amount with what it is for; in the smallest coin. */
export interface CostLine {
  readonly line: CostLineName;
  /** Which material. */
  readonly label?: string;
  readonly minor: number;
}

/** What a stage of the work adds to the cost by its chance of failing; money. */
export interface PricedRisk extends StageRisk {
  readonly id: string;
  readonly name: TaskName;
  readonly scrapShare: number;
}

/** What is asked for a knife: the parts of a price that the customer sees, in the smallest coin. */
export interface AskedPrice {
  readonly knifeMinor: number;
  readonly sheathMinor: number;
  readonly postMinor: number;
  /** All of these. */
  readonly netMinor: number;
  readonly taxMinor: number;
  readonly totalMinor: number;
}

/** A price with every line that it is made of, in the smallest coin. */
export interface JobPrice extends AskedPrice {
  readonly lines: readonly CostLine[];
  readonly costMinor: number;
  readonly profitMinor: number;
  /** Materials of which nobody has said what they cost: they are not in the price. */
  readonly unpriced: readonly string[];
  readonly risks: readonly PricedRisk[];
  /** Bench hours that are in the price. */
  readonly hours: Banded;
  /**
   * The whole with its band from the hours: limits that 95 of 100 such knives lie within, were the hours of the tasks
   * independent and their own bands such limits.
   */
  readonly bandMinor: readonly [low: number, high: number];
  /** The whole, where every task takes its shortest, and where every task takes its longest. */
  readonly lowMinor: number;
  readonly highMinor: number;
  /** What the smith wants to ask, and how much more than the reckoned price without tax that leaves; less than nothing: short of it. */
  readonly asked?: AskedPrice & { readonly overMinor: number };
}

/**
 * The price of a knife:
 * `[M(1 + w) + C + Σh·r + Σh·o + S + scrap] · (1 + profit) + sheath + post`, and tax on that.
 *
 * What failures cost is added stage by stage, see `scrapCosts`: blade and handle by themselves, for a handle that fails leaves the
 * blade, and drawing, sharpening and posting are never done twice. Consumables and the work of others are counted as spent when
 * the blade is begun.
 *
 * @param tasks - All tasks of the job; the hours of a sheath are in its own price.
 *
 * @remarks Every line is rounded to the smallest coin, halves up; sums are sums of rounded lines, so that they add up as printed.
 *
 * @example
 * const terms = { rate: 40, overhead: 10, profit: 0.1, waste: 0, consumables: 0, scrap: {}, taxRate: 0.2, decimals: 2 };
 * const hours = { low: 1, value: 2, high: 4 };
 * const price = priceJob([], [{ id: "forge", name: "forge", minutes: 120, hours, after: [] }], terms, {});
 * price.totalMinor; // 13200
 * price.highMinor; // 26400
 */
export function priceJob(
  materials: readonly PricedMaterial[],
  tasks: readonly JobTask[],
  terms: PriceTerms,
  extras: PriceExtras,
): JobPrice {
  const priced = tasks.filter(({ name }) => name !== "sheath");
  const made = (sideOf: SideOf): Reckoned => reckon(materials, priced, terms, extras, sideOf);
  const usual = made(() => "value");
  const minor = (amount: number | undefined): number => toMinor(amount ?? 0, terms.decimals);
  const sum = (side: TimeSide): number => priced.reduce((hours, task) => hours + task.hours[side], 0);
  // What each task alone moves the price by, in squares: the price is a straight line in every hour.
  const offBy = (side: "low" | "high"): number =>
    Math.round(
      Math.hypot(
        ...priced.map((task) => made((one) => (one === task ? side : "value")).totalMinor - usual.totalMinor),
      ),
    );
  const asked =
    extras.asked === undefined ? undefined : askedPrice(minor(extras.asked), usual, terms.taxRate);
  return {
    ...usual,
    unpriced: materials.filter(({ cost }) => cost === undefined).map(({ label }) => label),
    hours: { low: sum("low"), value: sum("value"), high: sum("high") },
    bandMinor: [usual.totalMinor - offBy("low"), usual.totalMinor + offBy("high")],
    lowMinor: made(() => "low").totalMinor,
    highMinor: made(() => "high").totalMinor,
    ...(asked === undefined ? {} : { asked: { ...asked, overMinor: asked.netMinor - usual.netMinor } }),
  };
}

/** On which side of its band the hours of a task are taken. */
type SideOf = (task: JobTask) => TimeSide;

type Reckoned = AskedPrice & Pick<JobPrice, "lines" | "costMinor" | "profitMinor" | "risks">;

function reckon(
  materials: readonly PricedMaterial[],
  tasks: readonly JobTask[],
  terms: PriceTerms,
  extras: PriceExtras,
  sideOf: SideOf,
): Reckoned {
  const { rate, overhead, waste, consumables, profit, taxRate, decimals } = terms;
  const hours = tasks.reduce((sum, task) => sum + task.hours[sideOf(task)], 0);
  const known = materials.flatMap(({ label, cost }) => (cost === undefined ? [] : [{ label, cost }]));
  const material = known.reduce((sum, { cost }) => sum + cost, 0);
  const risks = risksOf(materials, tasks, terms, extras, sideOf);
  const line = (name: CostLineName, amount: number, label?: string): CostLine[] => {
    const minor = toMinor(amount, decimals);
    return minor === 0 ? [] : [{ line: name, ...(label === undefined ? {} : { label }), minor }];
  };
  const lines = [
    ...known.flatMap(({ label, cost }) => line("material", cost, label)),
    ...line("waste", material * waste),
    ...line("consumables", consumables),
    ...line("work", hours * rate),
    ...line("overhead", hours * overhead),
    ...line("outside-work", extras.outsideWork ?? 0),
    ...line(
      "scrap",
      risks.reduce((sum, { expected }) => sum + expected, 0),
    ),
  ];
  const costMinor = lines.reduce((sum, { minor }) => sum + minor, 0);
  const profitMinor = toMinor(costMinor * profit, 0);
  const knifeMinor = costMinor + profitMinor;
  const sheathMinor = toMinor(extras.sheath ?? 0, decimals);
  const postMinor = toMinor(extras.post ?? 0, decimals);
  const netMinor = knifeMinor + sheathMinor + postMinor;
  const taxMinor = toMinor(netMinor * taxRate, 0);
  return {
    lines,
    costMinor,
    profitMinor,
    knifeMinor,
    sheathMinor,
    postMinor,
    netMinor,
    taxMinor,
    totalMinor: netMinor + taxMinor,
    risks,
  };
}

/** Blade and handle, each a run of stages that begins again with its own materials. */
function risksOf(
  materials: readonly PricedMaterial[],
  tasks: readonly JobTask[],
  { rate, overhead, waste, consumables, scrap }: PriceTerms,
  { outsideWork = 0 }: PriceExtras,
  sideOf: SideOf,
): PricedRisk[] {
  const run = (names: readonly RiskyTask[], part: PricedMaterial["for"], first: number): PricedRisk[] => {
    const bought = materials.filter((one) => one.for === part).reduce((sum, { cost = 0 }) => sum + cost, 0);
    const stages = tasks.flatMap((task) => {
      const { id, name } = task;
      const risky = names.find((one) => one === name);
      if (risky === undefined) return [];
      const cost = task.hours[sideOf(task)] * (rate + overhead);
      return [{ id, name, cost, scrapShare: scrap[risky] ?? 0 }];
    });
    const begin = { cost: bought * (1 + waste) + first, scrapShare: 0 };
    const costs = scrapCosts([begin, ...stages]).slice(1);
    return stages.flatMap(({ id, name, scrapShare }, index) => {
      const risk = costs[index];
      return risk === undefined || scrapShare === 0 ? [] : [{ id, name, scrapShare, ...risk }];
    });
  };
  return [...run(BLADE_TASKS, "blade", consumables + outsideWork), ...run(HANDLE_TASKS, "handle", 0)];
}

/**
 * What is asked, parted as the customer sees it: the tax in it, what sheath and post cost, the rest for the knife; in the
 * smallest coin.
 *
 * @param taxRate - Share of the price without it.
 *
 * @example
 * askedPrice(12000, { sheathMinor: 1000, postMinor: 0 }, 0.2).knifeMinor; // 9000
 */
export function askedPrice(
  totalMinor: number,
  { sheathMinor, postMinor }: Pick<AskedPrice, "sheathMinor" | "postMinor">,
  taxRate: number,
): AskedPrice {
  const netMinor = toMinor(totalMinor / (1 + taxRate), 0);
  return {
    knifeMinor: netMinor - sheathMinor - postMinor,
    sheathMinor,
    postMinor,
    netMinor,
    taxMinor: totalMinor - netMinor,
    totalMinor,
  };
}
