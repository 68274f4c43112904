// The orders by plain sums, as on the back of an envelope: every table straight between its stations, sections by their
// height straight up from the edge, midpoints of short steps. No line of it comes from the library.
import type { Order, Table } from "./orders.js";

/** g/mm³: plain and low-alloy carbon steel, from memory; the orders say the same. */
export const DENSITY = 0.00785;

/** Value of a table at x; before the first and after the last station it stays. */
export function at(table: Table, x: number): number {
  let [before] = table;
  if (before === undefined) throw new Error("a table has at least one station");
  for (const here of table) {
    if (here[0] > x) return here[0] === before[0] ? here[1] : between(before, here, x);
    before = here;
  }
  return before[1];
}

const between = (a: readonly [number, number], b: readonly [number, number], x: number): number =>
  x <= a[0] ? a[1] : a[1] + ((b[1] - a[1]) * (x - a[0])) / (b[0] - a[0]);

/** Area between an arc and its chord. */
function segmentArea(chord: number, sagitta: number): number {
  if (sagitta === 0) return 0;
  const radius = (chord * chord) / (8 * sagitta) + sagitta / 2;
  const angle = 2 * Math.asin(chord / (2 * radius));
  return (radius * radius * (angle - Math.sin(angle))) / 2;
}

/** Section of the blade at x, sharpening planes not taken off, mm². */
export function sectionByHand(order: Order, x: number): number {
  const height = at(order.height, x);
  const thickness = at(order.thickness, x);
  const edge = at(order.edge, x);
  const bevel = order.bevel === undefined ? height : Math.min(height, at(order.bevel, x));
  const flat = thickness * (height - bevel) + (bevel * (thickness + edge)) / 2;
  const chord = Math.hypot(bevel, (thickness - edge) / 2);
  return flat + 2 * segmentArea(chord, (order.crown ?? 0) * (thickness - edge));
}

export interface Sum {
  readonly volume: number;
  /** ∫ x dV */
  readonly moment: number;
}

/** Volume and first moment of sections along x, midpoints of short steps. */
export function sumAlong(from: number, to: number, area: (x: number) => number, atMost = 0.05): Sum {
  const steps = Math.ceil((to - from) / atMost);
  const step = (to - from) / steps;
  let volume = 0;
  let moment = 0;
  for (let i = 0; i < steps; i++) {
    const x = from + (i + 0.5) * step;
    const slice = area(x) * step;
    volume += slice;
    moment += slice * x;
  }
  return { volume, moment };
}

export interface HandWeight {
  readonly blade: Sum;
  readonly tang: Sum;
  readonly mass: number;
  readonly balance: number;
}

/** Blade, tang, and where the whole balances. */
export function weighByHand(order: Order): HandWeight {
  const blade = sumAlong(0, order.edgeLength, (x) => sectionByHand(order, x));
  const { length, height, thickness, holes } = order.tang;
  const solid = sumAlong(-length, 0, (x) => at(height, -x) * at(thickness, -x));
  const tang = holes.reduce(({ volume, moment }, [back, diameter]) => {
    const hole = (Math.PI / 4) * diameter ** 2 * at(thickness, back);
    return { volume: volume - hole, moment: moment + hole * back };
  }, solid);
  const parts = order.parts.reduce((sum, [mass, x]) => [sum[0] + mass, sum[1] + mass * x] as const, [
    0, 0,
  ] as const);
  const mass = DENSITY * (blade.volume + tang.volume) + parts[0];
  return { blade, tang, mass, balance: (DENSITY * (blade.moment + tang.moment) + parts[1]) / mass };
}
