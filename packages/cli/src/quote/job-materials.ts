import {
  type HandleSpec,
  isSameMaterial,
  type PinRod,
  type PricedMaterial,
  pinsSetUp,
  type StockPlan,
} from "@scantling/geometry";
import { formatLength } from "@scantling/geometry/units";
import type { GivenWork } from "../file/index.js";
import { inFileTerms, type Measured } from "../measure.js";
import { cutText } from "../report/stock-text.js";
import type { Bars } from "../stock-report.js";

type Price = NonNullable<GivenWork["prices"]>[number];

const MM_PER_METRE = 1000;

/** Everything that is bought for a knife, at what it costs to buy again; without a cost where neither rack nor price list has one. */
export function jobMaterials(measured: Measured, bars: Bars, plan: StockPlan | undefined): PricedMaterial[] {
  return [...steelOf(measured, bars, plan), ...handleOf(measured)];
}

function steelOf({ job }: Measured, { mixed }: Bars, plan: StockPlan | undefined): PricedMaterial[] {
  if (mixed !== undefined) {
    return mixed.bars.map(({ steel, pieces, cost }) =>
      priced(`${steel}, ${pieces === 1 ? "1 piece" : `${pieces} pieces`}`, "blade", cost),
    );
  }
  const steel = job.spec.steel.name;
  if (plan === undefined) return [priced(`${steel}: no bars planned`, "blade", undefined)];
  return [priced(`${steel}, ${cutText(plan, job.units)}`, "blade", plan.cost)];
}

function handleOf({ job, knife }: Measured): PricedMaterial[] {
  const { handle } = job.spec;
  if (handle === undefined) return [];
  const prices = job.shopPlaces?.work.prices ?? [];
  const rods = inFileTerms(job, () => pinsSetUp(knife, job.shop.kerf))?.rods ?? [];
  return [
    ...wholeParts(handle).map(([name, what]) =>
      priced(what === "" ? name : `${name}, ${what}`, "handle", priceOf(name, prices)?.each),
    ),
    ...rods.map((rod) => rodOf(rod, handle.pins?.material.name ?? "", prices, job.units)),
  ];
}

/** Parts that are bought or sawn as one: what they are of, and what they are. */
function wholeParts(handle: HandleSpec): (readonly [name: string, what: string])[] {
  const { slabs, liners, block, bolsters = [], guard, pommel, parts = [] } = handle;
  return [
    ...(slabs === undefined ? [] : [[slabs.material.name, "a pair of slabs"] as const]),
    ...(liners === undefined ? [] : [[liners.material.name, "a pair of liners"] as const]),
    ...(block === undefined ? [] : [[block.material.name, "a block"] as const]),
    ...bolsters.map(({ material }) => [material.name, "a pair of bolsters"] as const),
    ...(guard === undefined ? [] : [[guard.material.name, "a guard"] as const]),
    ...(pommel === undefined ? [] : [[pommel.material.name, "a pommel"] as const]),
    ...parts.map(({ name }) => [name, ""] as const),
  ];
}

function rodOf(rod: PinRod, material: string, prices: readonly Price[], units: "mm" | "in"): PricedMaterial {
  const { diameter, count, length } = rod;
  const label = `${material} rod ${formatLength(diameter, units)}, ${count === 1 ? "1 pin" : `${count} pins`}`;
  const price = priceOf(material, prices);
  if (price?.perMetre !== undefined) return priced(label, "handle", (length / MM_PER_METRE) * price.perMetre);
  return priced(label, "handle", price?.each === undefined ? undefined : count * price.each);
}

const priceOf = (name: string, prices: readonly Price[]): Price | undefined =>
  prices.find((price) => price.of.toLowerCase() === name.toLowerCase() || isSameMaterial(price.of, name));

const priced = (label: string, part: PricedMaterial["for"], cost: number | undefined): PricedMaterial => ({
  label,
  for: part,
  ...(cost === undefined ? {} : { cost }),
});
