import type { CutList, MixedPlan, SawnBar, StockPlan } from "@scantling/geometry";
import { type FileUnits, formatLength, formatQuantity } from "@scantling/geometry/units";
import { type CutOrder, minKeepOf, type OrderCuts, type StockCuts } from "../cut-orders.js";
import type { Job } from "../load.js";
import { CAUTIONS } from "./cautions.js";
import { massText } from "./figures.js";
import { findingText } from "./findings.js";
import { item, spread, wrap } from "./layout.js";
import { rackLines } from "./rack-lines.js";
import { costText, cutText, jointsText, noPlanLines, reachText, sawLength } from "./stock-text.js";

/** Shown as 0.0, mm. */
const NOTHING = 0.05;

/** The cut list over several orders for people: each order's best plan in short, then bar by bar what to saw. */
export function cuttingText({ orders, cuts }: OrderCuts): string[] {
  const [first] = orders;
  if (first === undefined) return [];
  const { job } = first.measured;
  return [
    ...orders.flatMap((order) => [...orderLines(order, job.units), ""]),
    ...cuts.flatMap((stock) => [...stockLines(stock, job), ""]),
    ...leftOutLines(orders, job.units),
    ...rackAfterLines(cuts, job),
    ...CAUTIONS,
  ];
}

function orderLines(order: CutOrder, units: FileUnits): string[] {
  const { code, measured, bars, plan } = order;
  const { job } = measured;
  const title = [code, job.knife.order.title].filter((part) => part !== "").join(": ");
  const head = spread(title, job.knife.fileName);
  if (bars.mixed !== undefined)
    return [...head, ...mixedLines(bars.mixed, units).flatMap((line) => item("   ", line))];
  if (plan === undefined) return [...head, ...noPlanLines(bars, units)];
  const grave = plan.findings.filter(({ severity }) => severity !== "note");
  const body = [
    `Cut ${cutText(plan, units)}: ${massText(plan.mass, units)}, of which ${massText(plan.waste, units)} does not end in the blade; ${jointsText(plan)}, ${plan.heats} heats${costText(plan, job.shop.currency)}.`,
    `Reach: ${reachText(plan)}.`,
    ...grave.map((finding) => findingText(finding, job)),
  ];
  return [...head, ...body.flatMap((line) => item("   ", line))];
}

/** A stack of several steels: what to cut, what to buy. */
function mixedLines(plan: MixedPlan, units: FileUnits): string[] {
  if (!Number.isFinite(plan.cutLength)) return ["No length of bar feeds this blade."];
  const size = (mm: number): string => formatLength(mm, units);
  return [
    ...plan.bars.map(({ pieces, cutLength, steel, thickness, width, bar }) => {
      const what = `${piecesText(pieces, cutLength, units)} of ${steel}, ${size(thickness)} × ${size(width)}`;
      return bar === undefined ? `Not on the rack, to be bought: ${what}.` : `Cut ${what}.`;
    }),
    `${massText(plan.mass, units)} in all; ${jointsText(plan)}, ${plan.heats} heats.`,
  ];
}

const piecesText = (count: number, length: number, units: FileUnits): string =>
  `${count === 1 ? "1 piece" : `${count} pieces`} of ${sawLength(length, units)}`;

function stockLines({ group, list }: StockCuts, job: Job): string[] {
  const { units, shop } = job;
  const { name, steel } = group.bar;
  const head = `CUT LIST: ${name}${steel === undefined ? "" : `, ${steel}`}; saw cut ${figure(shop.kerf, units)}`;
  if (list.bars.length === 0) return [...wrap(head), "   Nothing can be cut."];
  return [
    ...wrap(head),
    ...list.bars.flatMap((bar, i) => item(`${String(i + 1).padStart(3)}. `, barText(bar, units))),
    ...item("   ", proofText(list, minKeepOf(shop), units)),
  ];
}

/** `From 1219.2 mm: 150 mm MG-14, 150 mm MG-14, 255 mm SL-2602; 659.7 mm left, back on the rack`. */
function barText({ length, pieces, leftover, kept }: SawnBar, units: FileUnits): string {
  const cuts = pieces.map((piece) => `${sawLength(piece.length, units)} ${piece.order}`).join(", ");
  if (length === undefined) return `From a bar that is long enough: ${cuts}`;
  const from = `From ${figure(length, units)}: ${cuts}`;
  if (leftover === undefined || leftover < NOTHING) return `${from}; nothing left`;
  return `${from}; ${figure(leftover, units)} left, ${kept ? "back on the rack" : "scrap"}`;
}

function proofText(list: CutList, minKeep: number, units: FileUnits): string {
  const { proof, taken, longestLeftover, scrap } = list;
  const scraps =
    scrap < NOTHING ? "" : `, ${figure(scrap, units)} of it scrap, under ${figure(minKeep, units)}`;
  const sums = `${figure(taken, units)} of bar taken${scraps}.`;
  if (proof.optimal) {
    const left = longestLeftover === 0 ? "" : "; of those that take as little none leaves a longer piece";
    return `${sums} Proven best: no way takes less${left}.`;
  }
  if (taken - proof.takenAtLeast < NOTHING)
    return `${sums} No way takes less; whether one leaves a longer piece is not proven.`;
  return `${sums} Not proven best: ${figure(proof.takenAtLeast, units)} is the least that any way could take.`;
}

function leftOutLines(orders: readonly CutOrder[], units: FileUnits): string[] {
  const lines = orders
    .filter(({ missing }) => missing.length > 0)
    .flatMap(({ code, missing, instead, plan }) => {
      const lacks = missing
        .map(({ length, count, group }) => `${piecesText(count, length, units)} of ${group.bar.name}`)
        .join(" and ");
      const other =
        instead !== undefined
          ? ` From what the others leave it could be ${cutText(instead, units)}; ${jointsText(instead)}${narrowedText(instead)}.`
          : plan === undefined
            ? ""
            : " Nothing that the others leave on the rack would do instead.";
      return item("   ", `${code}: ${lacks} too few, so nothing is cut for it.${other}`);
    });
  if (lines.length === 0) return [];
  return ["LEFT WITHOUT BARS (orders named earlier are served first)", ...lines, ""];
}

/** The one care that a bar asks for before it is worth a saw cut. */
const narrowedText = ({ narrowing }: StockPlan): string =>
  narrowing === undefined
    ? ""
    : `; on edge it is ${formatQuantity({ quantity: "count", value: narrowing.slenderness }, "mm")} times as high as thick, to be drawn narrower in light blows`;

function rackAfterLines(cuts: readonly StockCuts[], { shopPlaces, units }: Job): string[] {
  const used = cuts.filter(({ list }) => list.bars.length > 0);
  if (used.length === 0) return [];
  const place = shopPlaces === undefined ? "" : ` in ${shopPlaces.fileName}`;
  return [
    ...wrap(`RACK AFTERWARDS: these lines in place of those of the same bars${place}`),
    ...used.flatMap(({ group, after }) =>
      after.length === 0
        ? [`  # ${group.bar.name}: nothing left`]
        : rackLines(after, shopPlaces?.units ?? units),
    ),
    "",
  ];
}

/** Of a bar, a leftover or a saw cut: to 0.1 mm or 1/64 in. */
const figure = (mm: number, units: FileUnits): string =>
  formatLength(mm, units, units === "mm" ? { resolution: 0.1 } : { remainder: false });
