// What the library says of an order, in the parts that the hand checks have.
import { type KnifeWeight, ledgerBodies, makeSteelChain, sectionAt, weighKnife } from "@scantling/geometry";
import type { LoadedOrder } from "./load.js";
import type { Order } from "./orders.js";

export interface OrderWeight {
  /** mm³ and g of the steel ahead of the heel, and behind it. */
  readonly bladeVolume: number;
  readonly bladeMass: number;
  readonly tangMass: number;
  /** g and mm of the whole knife. */
  readonly mass: number;
  readonly balance: number;
  readonly weight: KnifeWeight;
}

export function weighOrder(order: Order, { knife }: LoadedOrder): OrderWeight {
  const weight = weighKnife(knife);
  const tang = tangVolume(order, (x) => sectionAt(knife, x));
  const bladeVolume = weight.steel.volume - tang;
  return {
    bladeVolume,
    bladeMass: bladeVolume * knife.steelDensity,
    tangMass: tang * knife.steelDensity,
    mass: weight.knife.mass,
    balance: weight.knife.balanceFromHeel,
    weight,
  };
}

/** The tang's sections are of the second degree between stations: Simpson's rule is exact. Holes taken out. */
function tangVolume(
  { tang }: Order,
  section: (x: number) => { readonly height: number; readonly thickness: number },
): number {
  const inside = 1e-9;
  // A section of a tang is a rectangle; its own area has the holes taken out already.
  const area = (x: number): number => section(x).height * section(x).thickness;
  const solid = tang.height.slice(1).reduce((sum, [b], i) => {
    const [a = 0] = tang.height[i] ?? [];
    const areas = area(-a - inside) + 4 * area(-(a + b) / 2) + area(-b + inside);
    return sum + ((b - a) * areas) / 6;
  }, 0);
  return tang.holes.reduce(
    (sum, [back, diameter]) => sum - (Math.PI / 4) * diameter ** 2 * section(-back).thickness,
    solid,
  );
}

/** Volume of the forged blade with its tang, mm³. */
export function forgedByLibrary({ job, knife }: LoadedOrder): number {
  return makeSteelChain(ledgerBodies(knife), job.shop.losses, job.shop.limits, knife.forging, "value").forged;
}
