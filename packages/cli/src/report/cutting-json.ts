import type { RackBar, SawnBar, StockPlan } from "@scantling/geometry";
import { type CutOrder, minKeepOf, type OrderCuts, type StockCuts } from "../cut-orders.js";
import { mixedJson } from "./mixed-json.js";
import { stockPlanJson } from "./stock-json.js";

/** The cut list over several orders for programs: `scantling/cut-list/1`. Lengths mm, masses g. */
export function cuttingJson({ orders, cuts }: OrderCuts): unknown {
  const [first] = orders;
  const shop = first?.measured.job.shop;
  return {
    schema: "scantling/cut-list/1",
    ...(shop === undefined ? {} : { kerfMm: shop.kerf, minKeepMm: minKeepOf(shop) }),
    orders: orders.map(orderJson),
    cutLists: cuts.map(listJson),
  };
}

function orderJson({ code, measured, bars, plan, missing, toBuy, instead }: CutOrder): unknown {
  const { job } = measured;
  return {
    order: code,
    title: job.knife.order.title,
    file: job.knife.fileName,
    served: (plan !== undefined || bars.mixed !== undefined) && missing.length === 0 && toBuy.length === 0,
    plan: plan === undefined ? null : stockPlanJson(plan, job),
    ...(bars.mixed === undefined ? {} : { stack: mixedJson(bars.mixed, job) }),
    missing: missing.map(({ group, length, count }) => ({ bar: group.bar.name, lengthMm: length, count })),
    ...(instead === undefined ? {} : { instead: insteadJson(instead) }),
  };
}

/** From the rack that the others leave, whose lines are not those of the file: no lines, no findings. */
const insteadJson = (plan: StockPlan): unknown => ({
  bar: plan.bar.name,
  bars: plan.bars,
  widthMm: plan.width,
  thicknessMm: plan.thickness,
  layers: plan.layers,
  cutLengthMm: plan.cutLength,
  massG: plan.mass,
  joints: plan.joints,
  reach: plan.reach.wholeShare,
});

function listJson({ group, list, after }: StockCuts): unknown {
  const { bar } = group;
  return {
    bar: bar.name,
    widthMm: bar.width,
    thicknessMm: bar.thickness,
    ...(bar.steel === undefined ? {} : { steel: bar.steel }),
    bars: list.bars.map(sawnJson),
    leftOut: list.leftOut.map(({ order }) => order),
    takenMm: list.taken,
    longestLeftoverMm: list.longestLeftover,
    scrapMm: list.scrap,
    provenOptimal: list.proof.optimal,
    takenAtLeastMm: list.proof.takenAtLeast,
    method: list.proof.method,
    rackAfter: after.map(rackJson),
  };
}

const sawnJson = ({ name, length, pieces, leftover, kept }: SawnBar): unknown => ({
  bar: name,
  ...(length === undefined ? {} : { barLengthMm: length }),
  pieces: pieces.map((piece) => ({ order: piece.order, lengthMm: piece.length })),
  ...(leftover === undefined ? {} : { leftoverMm: leftover }),
  kept,
});

const rackJson = ({ name, width, thickness, length, count, steel, pricePerKg }: RackBar): unknown => ({
  name,
  widthMm: width,
  thicknessMm: thickness,
  ...(length === undefined ? {} : { lengthMm: length, count: count ?? 1 }),
  ...(steel === undefined ? {} : { steel }),
  ...(pricePerKg === undefined ? {} : { pricePerKg }),
});
