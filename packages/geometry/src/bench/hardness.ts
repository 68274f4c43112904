import { useOf } from "../blade/judging.js";
import type { Knife } from "../blade/knife.js";
import { count, type Finding, temperatureDifference } from "../errors/issue.js";
import { KNIFE_TYPES, usualRanges } from "../limits/type-ranges.js";
import { asQuenched } from "../materials/heat-treatment/as-quenched.js";
import {
  hardnessAfter,
  TEMPER_SCATTER,
  TEMPER_TABLES,
  type TemperChoice,
  temperFor,
} from "../materials/heat-treatment/tempering.js";
import { isSameMaterial } from "../materials/materials.js";

/** A hardness that was asked for, HRC; a side that is not asked for is infinite. */
export interface AskedHardness {
  readonly low: number;
  readonly high: number;
  /** Where in the file. */
  readonly path: string;
}

/** How hard and how soft a steel can be made, HRC. */
export interface HardnessReach {
  readonly high: number;
  /** Left out where no table says how it goes on. */
  readonly low?: number;
  readonly basis: string;
}

/** What tempering tables say of a hardness that was asked for. A hardness is measured, never computed. */
export interface HardnessAnswer {
  readonly asked: AskedHardness;
  readonly steel: string;
  /** The middle of what was asked; within one limit alone by what good tables differ, as far as the steel reaches. HRC. */
  readonly aim: number;
  /** What each source tempers at for that; empty for a steel of which no table is known. */
  readonly tempers: readonly TemperChoice[];
  /** Hardest and softest after a usual temper, HRC; left out where nothing is known of the steel. */
  readonly reach?: HardnessReach;
  readonly findings: readonly Finding[];
}

/**
 * Whether a steel comes to a hardness after a usual temper, and whether that is wise for the knife.
 *
 * @param steel - That of the edge.
 *
 * @example
 * const asked = { low: 59, high: 61, path: "order.asks.hardness" };
 * hardnessAnswer(knife, "O1", asked).tempers.map(({ temperature }) => temperature)[1]; // 260
 */
export function hardnessAnswer(knife: Knife, steel: string, asked: AskedHardness): HardnessAnswer {
  const reach = reachOf(knife, steel);
  const aim = aimOf(asked, reach);
  const answer = {
    asked,
    steel,
    aim,
    tempers: temperFor(steel, aim),
    ...(reach === undefined ? {} : { reach }),
  };
  const reached = reachFindings(knife, answer);
  const grave = reached.some(({ severity }) => severity !== "note");
  return { ...answer, findings: [...reached, ...useFindings(knife, answer, grave)] };
}

/** Right on an only limit one blade of two would miss it. */
function aimOf({ low, high }: AskedHardness, reach: HardnessReach | undefined): number {
  if (!Number.isFinite(high))
    return Math.max(low, Math.min(low + TEMPER_SCATTER, reach?.high ?? Number.POSITIVE_INFINITY));
  if (!Number.isFinite(low))
    return Math.min(high, Math.max(high - TEMPER_SCATTER, reach?.low ?? Number.NEGATIVE_INFINITY));
  return (low + high) / 2;
}

/**
 * What the coolest and the hottest usual temper leave, by the tables that reach so far; where none reaches down to the coolest,
 * what the quench leaves, less some. Beyond its rows and across its gaps a table says nothing.
 */
function reachOf({ limits }: Knife, steel: string): HardnessReach | undefined {
  const { lowestTemper, hottestTemper, temperTakes } = limits;
  const tables = TEMPER_TABLES.filter((table) => isSameMaterial(table.steel, steel)).map(
    ({ points }) => points,
  );
  const firsts = tables.map((points) => points[0]?.high ?? Number.NaN);
  const after = (temperature: number) => tables.flatMap((points) => hardnessAfter(points, temperature) ?? []);
  const cool = after(lowestTemper.value).map(({ high }) => high);
  const hot = after(hottestTemper.value).map(({ low }) => low);
  const quenched = cool.length > 0 ? undefined : asQuenched(steel);
  const highs = [
    ...cool,
    ...firsts,
    ...(quenched === undefined ? [] : [quenched.hardness - temperTakes.value]),
  ];
  if (highs.length === 0) return undefined;
  return {
    // A first row above the coolest temper is the hardest that is told, if nothing harder is.
    high: Math.max(...(cool.length > 0 ? cool : highs)),
    ...(hot.length === 0 ? {} : { low: Math.min(...hot) }),
    basis:
      quenched === undefined
        ? `tempering tables, each good to ± ${TEMPER_SCATTER} HRC; coolest and hottest usual temper: ${[...new Set([lowestTemper.basis, hottestTemper.basis])].join(" and ")}`
        : `${quenched.hardness} HRC as quenched (${quenched.source}), less ${temperTakes.value} for the temper (${temperTakes.basis})`,
  };
}

type Answer = Omit<HardnessAnswer, "findings">;

/** Half a tenth of a point is rounding. */
const ROUNDING = 0.05;

const tenth = (hardness: number): number => Math.round(hardness * 10) / 10;

function reachFindings({ limits }: Knife, { asked, aim, steel, reach, tempers }: Answer): Finding[] {
  if (reach === undefined)
    return [
      {
        code: "hardness-not-known",
        severity: "note",
        path: asked.path,
        text: "How hard {steel} can be made is not known here. Go by the sheet that came with the bar, and test the edge.",
        values: { steel },
        basis: "the table of tempering temperatures",
      },
    ];
  const over = aim - reach.high;
  const under = (reach.low ?? Number.NEGATIVE_INFINITY) - aim;
  const by = Math.max(over, under);
  if (by <= ROUNDING)
    return tempers.some(({ temperature }) => temperature !== undefined)
      ? []
      : [noTemper({ asked, aim, steel, tempers })];
  const hard = over > under;
  const limit = hard ? limits.lowestTemper : limits.hottestTemper;
  const partly = hard ? asked.low <= reach.high + ROUNDING : asked.high >= (reach.low ?? 0) - ROUNDING;
  const sure = by > TEMPER_SCATTER && !partly;
  const promise = partly
    ? "only one end of that can be had"
    : sure
      ? "that cannot be had"
      : "which is within the scatter of such figures, but cannot be promised";
  return [
    {
      code: "hardness-out-of-reach",
      severity: sure ? "stop" : "warn",
      path: asked.path,
      text: `{steel} comes to {reach} HRC ${hard ? "at the most" : "at the least"} after a temper at {temper}, as far as is known; {asked} HRC is asked for, ${promise}. Agree on {reach} or ${hard ? "less" : "more"}, or take another steel.`,
      values: {
        steel,
        reach: count(tenth(hard ? reach.high : (reach.low ?? 0))),
        asked: count(tenth(aim)),
        temper: { quantity: "temperature", value: limit.value },
      },
      basis: reach.basis,
    },
  ];
}

/** How much hotter a blade that came out too hard is tempered again. Common practice, no source. */
const TEMPER_STEP = 15;

/** A steel comes to it, but no table tells at what temper: what to do instead. */
function noTemper({ asked, aim, steel, tempers }: Omit<Answer, "reach">): Finding {
  const rows = tempers.map(({ reach: { low, high } }) => `${tenth(low)} to ${tenth(high)} HRC`);
  const told = rows.length === 0 ? "" : ` (its table here tells of ${[...new Set(rows)].join(", of ")} only)`;
  return {
    code: "hardness-not-known",
    severity: "note",
    path: asked.path,
    text: `At what temper {steel} comes to {aim} HRC is not known here${told}. Go by the sheet that came with the bar. Without one, temper on the cool side, test the edge, and temper again {step} hotter each time until it is there.`,
    values: { steel, aim: count(tenth(aim)), step: temperatureDifference(TEMPER_STEP) },
    basis: "the table of tempering temperatures; step: common practice, no source",
  };
}

/** Harder than the work of the knife allows, or than its type usually is. */
function useFindings(knife: Knife, { asked, aim }: Answer, outOfReach: boolean): Finding[] {
  const { chopperHardness } = knife.limits;
  if (useOf(knife) === "chopper" && aim > chopperHardness.value)
    return [
      {
        code: "hardness-unwise",
        severity: "warn",
        path: asked.path,
        text: "{asked} HRC is too hard for a knife that chops: above {limit} the edge chips. Agree on less.",
        values: { asked: count(tenth(aim)), limit: count(chopperHardness.value) },
        basis: chopperHardness.basis,
      },
    ];
  // What cannot be had need not be called unusual too.
  if (outOfReach) return [];
  const usual = knife.type === undefined ? undefined : usualRanges(knife.type, knife.ranges).hardness;
  if (knife.type === undefined || usual === undefined || (aim >= usual.low && aim <= usual.high)) return [];
  return [
    {
      code: "unusual-for-type",
      severity: "note",
      path: asked.path,
      text: `{asked} HRC is unusual for ${KNIFE_TYPES[knife.type].words}: {low} to {high} is usual.`,
      values: { asked: count(tenth(aim)), low: count(usual.low), high: count(usual.high) },
      basis: usual.basis,
    },
  ];
}
