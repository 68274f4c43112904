/**
 * An independent planner for the tests: it tries cut lengths in whole steps, forging each stack forwards, heat by
 * heat, until the blade is fed; it compares every pair of plans. Slow, and no formula shared with the planner.
 */
import type { LedgerBodies } from "../../src/stock/blade-states.js";
import type { RackBar, ShopSpec } from "../../src/stock/shop.js";
import { forgeForwards } from "./forward.js";

export interface ExhaustivePlan {
  readonly key: string;
  readonly cutLength: number;
  readonly numbers: readonly [
    waste: number,
    cost: number,
    joints: number,
    heats: number,
    reach: number,
    narrowing: number,
  ];
  readonly fullers: boolean;
}

function forgedVolume(bodies: LedgerBodies, shop: ShopSpec): number {
  const { losses } = shop;
  const treated = bodies.finished + bodies.sharpening + bodies.finishGrinding;
  const ready =
    losses.scaleModel === "skin"
      ? treated + losses.skinHeatTreatment.high * bodies.readySurface
      : treated / (1 - losses.heatTreatmentScale.high);
  return (
    ready +
    bodies.drilling +
    bodies.bevelGrinding +
    bodies.tangGrinding +
    bodies.faceGrinding +
    bodies.profileTrimming
  );
}

/** Longer bars never feed less: doubles until fed, then halves the gap; undefined where 20 m do not feed either. */
function shortestThatFeeds(feeds: (length: number) => boolean, step: number): number | undefined {
  let enough = 1;
  while (!feeds(enough * step)) {
    enough *= 2;
    if (enough * step > 20_000) return undefined;
  }
  let short = Math.floor(enough / 2);
  while (enough - short > 1) {
    const middle = Math.floor((enough + short) / 2);
    if (feeds(middle * step)) enough = middle;
    else short = middle;
  }
  return enough * step;
}

/** The section of a stack with the losses of one side, held against every limit on sections. */
function sectionOn(
  bodies: LedgerBodies,
  { losses, limits, press }: ShopSpec,
  bar: RackBar,
  bars: number,
  layers: string,
  side: "low" | "value" | "high",
): { readonly fits: boolean; readonly reach: number; readonly narrowing: number } {
  const r = limits.minWeldReduction;
  const thickest = Math.max(...bodies.stations.map((s) => s.thickness ?? s.area / s.height));
  const tallest = Math.max(...bodies.stations.filter((s) => s.x >= 0).map((s) => s.height));
  const stacked = bars * bar.thickness - (bars - 1) * 2 * losses.cleaningPerFace[side];
  const thin = bars === 1 ? stacked : stacked * (1 - r);
  const wide =
    bars === 1
      ? bar.width
      : bar.width / (1 - r) ** limits.weldSpreadShare - 2 * losses.weldDressingPerSide[side];
  const [w0, t0] = layers === "flat" ? [wide, thin] : [thin, wide];
  const reach = Math.max(
    0,
    ...bodies.stations.map((s) =>
      s.height > w0 ? Math.log(s.height / w0) / Math.log(t0 / (s.area / s.height)) : 0,
    ),
  );
  const fits = !(
    (press.opening !== undefined && stacked > press.opening) ||
    w0 <= 0 ||
    t0 <= 0 ||
    t0 < thickest ||
    reach > limits.reach.fullers ||
    t0 / w0 > limits.maxSlenderness ||
    (bars > 1 && stacked / bar.width > limits.maxSlenderness) ||
    (tallest < 0.9 * w0 && tallest < w0 * (1 - limits.mostNarrowing) && w0 > limits.maxSlenderness * t0)
  );
  const buckles = tallest < 0.9 * w0 && w0 > limits.maxSlenderness * t0;
  return { fits, reach, narrowing: buckles ? (w0 - tallest) / w0 : 0 };
}

export function planExhaustively(
  bodies: LedgerBodies,
  shop: ShopSpec,
  forging: { readonly heats: number; readonly weldingHeats: number },
): ExhaustivePlan[] {
  const { limits, losses, press } = shop;
  const r = limits.minWeldReduction;
  const needed = forgedVolume(bodies, shop);
  const all: ExhaustivePlan[] = [];
  const nameOf = (bar: RackBar): string =>
    [
      Math.max(bar.width, bar.thickness),
      Math.min(bar.width, bar.thickness),
      bar.steel,
      bar.pricePerKg,
    ].join();
  shop.rack.forEach((bar, index) => {
    const alike = shop.rack.filter((other) => nameOf(other) === nameOf(bar));
    if (alike[0] !== bar) return;
    for (let bars = 1; bars <= limits.maxBars; bars++)
      for (const layers of bars === 1 ? ["flat"] : ["flat", "on-edge"]) {
        const sides = (["value", "low", "high"] as const).map((side) =>
          sectionOn(bodies, shop, bar, bars, layers, side),
        );
        const { reach = 0, narrowing = 0 } = sides[0] ?? {};
        if (sides.some(({ fits }) => !fits)) continue;
        const feeds = (length: number): boolean =>
          length >= limits.minBilletLength &&
          forgeForwards({
            bars,
            width: bar.width,
            thickness: bar.thickness,
            length,
            losses,
            side: "high",
            ...forging,
            reduction: r,
            spread: limits.weldSpreadShare,
            forgedSurface: bodies.forgedSurface,
          }).forged >= needed;
        const cutLength = shortestThatFeeds(feeds, shop.cutStep);
        if (cutLength === undefined) continue;
        const welded = bars === 1 ? cutLength : cutLength / (1 - r) ** (1 - limits.weldSpreadShare);
        if (press.forgeLength !== undefined && welded > press.forgeLength) continue;
        let sawn = 0;
        for (const { length, count = 1 } of alike) {
          let pieces = length === undefined ? bars : 0;
          if (length !== undefined) while ((pieces + 1) * cutLength + pieces * shop.kerf <= length) pieces++;
          sawn += pieces * count;
        }
        if (sawn < bars) continue;
        const section = bars * bar.width * bar.thickness;
        const waste = (section * cutLength - bodies.finished) * bodies.density;
        const price = bar.pricePerKg ?? Number.POSITIVE_INFINITY;
        const cost = ((section * (cutLength + shop.kerf) * bodies.density) / 1000) * price;
        const heats = forging.heats + (bars > 1 ? forging.weldingHeats : 0);
        all.push({
          key: `${index}/${bars}/${layers}`,
          cutLength,
          numbers: [waste, cost, bars - 1, heats, reach, narrowing],
          fullers: reach > limits.reach.flatDies,
        });
      }
  });
  // Sums in another order differ in the last digits.
  const same = (a: number, b: number): boolean =>
    a === b || Math.abs(a - b) <= 1e-9 * Math.max(1, Math.min(Math.abs(a), Math.abs(b)));
  const inOrder = (a: ExhaustivePlan, b: ExhaustivePlan): number => {
    for (let i = 0; i < 6; i++) {
      const [x = 0, y = 0] = [a.numbers[i], b.numbers[i]];
      if (!same(x, y)) return x < y ? -1 : 1;
    }
    return 0;
  };
  // A reach that is easy anyway is not better for being easier still.
  const felt = (plan: ExhaustivePlan): number[] =>
    plan.numbers.map((number, i) => (i === 4 ? Math.max(number, limits.reach.easy) : number));
  const noBetter = (b: ExhaustivePlan, a: ExhaustivePlan): boolean =>
    felt(b).every((number, i) => {
      const other = felt(a)[i] ?? 0;
      return same(other, number) || other < number;
    });
  const front = all.filter((plan, i) => {
    const isFirst = (other: ExhaustivePlan, j: number): boolean => {
      const order = inOrder(other, plan);
      return order < 0 || (order === 0 && j < i);
    };
    return !all.some(
      (other, j) => j !== i && noBetter(plan, other) && (!noBetter(other, plan) || isFirst(other, j)),
    );
  });
  // Of the bars that buckle on edge the one that is least welded passes whatever is welded more and wastes no less.
  const buckling = front.filter(({ fullers, numbers }) => !fullers && numbers[5] > 0);
  const passing = buckling.find((one) =>
    buckling.every(
      (two) =>
        one.numbers[2] < two.numbers[2] || (one.numbers[2] === two.numbers[2] && inOrder(one, two) <= 0),
    ),
  );
  const isPassed = ({ numbers }: ExhaustivePlan): boolean =>
    passing !== undefined &&
    numbers[2] > passing.numbers[2] &&
    (same(numbers[0], passing.numbers[0]) || numbers[0] > passing.numbers[0]);
  const place = (plan: ExhaustivePlan): number =>
    plan.fullers ? 4 : (isPassed(plan) ? 2 : 0) + (plan.numbers[5] > 0 ? 1 : 0);
  return front.sort((a, b) => place(a) - place(b) || inOrder(a, b));
}
