import {
  type CutList,
  groupRack,
  type IntegerSolver,
  type MixedBar,
  planCutList,
  type RackBar,
  type RackGroup,
  type ShopSpec,
  type StockPlan,
} from "@scantling/geometry";
import type { Measured } from "./measure.js";
import { type Bars, planBars } from "./stock-report.js";
import { takeFromRack } from "./take-from-rack.js";

/** Pieces of one length for one order, of one stock of the rack. */
export interface StockPieces {
  readonly group: RackGroup;
  /** mm */
  readonly length: number;
  readonly count: number;
}

/** One of several orders that are cut from one rack. */
export interface CutOrder {
  /** Its code on the cut list: that of the file, or the file's name; each once. */
  readonly code: string;
  readonly measured: Measured;
  readonly bars: Bars;
  /** Its best plan by itself; left out where there is none, and for a stack of several steels. */
  readonly plan?: StockPlan;
  /** Bars of a stack of several steels that the rack does not have. */
  readonly toBuy: readonly MixedBar[];
  /** Pieces that cannot be cut: empty where all are cut that the rack has; else none is cut for it. */
  readonly missing: readonly StockPieces[];
  /** Where the bars do not suffice for it: the best plan from what the others leave. */
  readonly instead?: StockPlan;
}

/** What is cut from the bars of one section, steel and price. */
export interface StockCuts {
  readonly group: RackGroup;
  readonly list: CutList;
  /** The rack's lines of that stock as they are afterwards. */
  readonly after: readonly RackBar[];
}

/** Several orders, each with its plan, and what is cut for all of them together. */
export interface OrderCuts {
  readonly orders: readonly CutOrder[];
  readonly cuts: readonly StockCuts[];
}

/** A shorter leftover is scrap, mm. */
export const minKeepOf = ({ minKeep, limits }: ShopSpec): number => minKeep ?? limits.minBilletLength;

/**
 * Cuts the best plan of each order, all orders from one rack so that no bar is used twice. An order that comes
 * earlier is served first, and each whole or not at all.
 *
 * @param jobs - All of one shop.
 */
export function cutOrders(jobs: readonly Measured[], solver: IntegerSolver): OrderCuts {
  const [first] = jobs;
  if (first === undefined) return { orders: [], cuts: [] };
  const { shop } = first.job;
  const groups = groupRack(shop.rack);
  const codes = codesOf(jobs);
  const orders = jobs.map((measured, i): CutOrder => {
    const bars = planBars(measured);
    const [plan] = bars.plans;
    const toBuy = bars.mixed?.bars.filter(({ rackIndex }) => rackIndex === undefined) ?? [];
    const code = codes[i] ?? "";
    return { code, measured, bars, ...(plan === undefined ? {} : { plan }), toBuy, missing: [] };
  });
  const needs = new Map(orders.map((order) => [order.code, needsOf(order, groups)]));
  const missing = new Map<string, readonly StockPieces[]>();
  let cuts = cutStocks(groups, needs, shop, solver);
  // A stack of several steels that lacks one of them gives back the others, the first such order first.
  for (;;) {
    const lacking = missingOf(cuts);
    const inPart = orders.find(({ code }) => lacking.has(code) && (needs.get(code)?.length ?? 0) > 1);
    if (inPart === undefined) {
      for (const [code, pieces] of lacking) missing.set(code, pieces);
      break;
    }
    missing.set(inPart.code, lacking.get(inPart.code) ?? []);
    needs.delete(inPart.code);
    cuts = cutStocks(groups, needs, shop, solver);
  }
  const told = orders.map((order) => ({ ...order, missing: missing.get(order.code) ?? [] }));
  return { orders: withInstead(told, cuts, shop), cuts };
}

function needsOf({ plan, bars }: CutOrder, groups: readonly RackGroup[]): StockPieces[] {
  const need = (entry: number | undefined, length: number, count: number): StockPieces[] => {
    const group = groups.find(({ lengths }) => lengths.some(({ barIndex }) => barIndex === entry));
    return group === undefined || !Number.isFinite(length) ? [] : [{ group, length, count }];
  };
  if (bars.mixed !== undefined)
    return bars.mixed.bars.flatMap(({ rackIndex, cutLength, pieces }) => need(rackIndex, cutLength, pieces));
  return plan === undefined ? [] : need(plan.barIndex, plan.cutLength, plan.bars);
}

function cutStocks(
  groups: readonly RackGroup[],
  needs: ReadonlyMap<string, readonly StockPieces[]>,
  shop: ShopSpec,
  solver: IntegerSolver,
): StockCuts[] {
  const minKeep = minKeepOf(shop);
  return groups.flatMap((group): StockCuts[] => {
    const pieces = [...needs].flatMap(([order, own]) =>
      own.flatMap(({ group: from, length, count }) => (from === group ? [{ order, length, count }] : [])),
    );
    if (pieces.length === 0) return [];
    const bars = group.lengths.map(({ barIndex, length, count }) => ({
      name: shop.rack[barIndex]?.name ?? group.bar.name,
      ...(length === undefined ? {} : { length }),
      ...(count === undefined ? {} : { count }),
    }));
    const list = planCutList({ pieces, bars, kerf: shop.kerf, minKeep }, solver);
    const entries = group.lengths.flatMap(({ barIndex }) => shop.rack[barIndex] ?? []);
    return [{ group, list, after: takeFromRack(entries, list.bars, minKeep) }];
  });
}

/** By order: the pieces that cannot be cut for it. */
function missingOf(cuts: readonly StockCuts[]): Map<string, StockPieces[]> {
  const missing = new Map<string, StockPieces[]>();
  for (const { group, list } of cuts)
    for (const { order, missing: pieces } of list.leftOut)
      missing.set(order, [...(missing.get(order) ?? []), ...pieces.map((piece) => ({ ...piece, group }))]);
  return missing;
}

/** Orders left without are planned anew, one after the other, from what is left by then. */
function withInstead(orders: readonly CutOrder[], cuts: readonly StockCuts[], shop: ShopSpec): CutOrder[] {
  const cutUp = new Set(cuts.flatMap(({ group }) => group.lengths.map(({ barIndex }) => barIndex)));
  let rack: readonly RackBar[] = [
    ...shop.rack.filter((_, i) => !cutUp.has(i)),
    ...cuts.flatMap(({ after }) => after),
  ];
  return orders.map((order) => {
    const { job } = order.measured;
    if (order.missing.length === 0 || order.plan === undefined) return order;
    const left = { ...order.measured, job: { ...job, shop: { ...job.shop, rack } } };
    const [instead] = planBars(left).plans;
    if (instead === undefined) return order;
    const taken = (instead.cuts ?? []).map(({ barIndex, remainder }) => ({
      bar: barIndex,
      leftover: remainder,
    }));
    rack = takeFromRack(rack, taken, minKeepOf(shop));
    return { ...order, instead };
  });
}

function codesOf(jobs: readonly Measured[]): string[] {
  const seen = new Map<string, number>();
  return jobs.map(({ job }) => {
    const code = job.knife.order.code || job.name;
    const times = (seen.get(code) ?? 0) + 1;
    seen.set(code, times);
    return times === 1 ? code : `${code} (${times})`;
  });
}
