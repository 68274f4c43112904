import { type Knife, rebuildKnife } from "../blade/knife.js";
import { rearmostOf } from "../blade/rearmost.js";
import { Reweigher } from "../blade/reweigher.js";
import type { HandleSpec, HoleSpec, KnifeSpec, MaterialSpec } from "../blade/spec.js";
import { weighKnife } from "../blade/weigh-knife.js";
import { materialDensity } from "../materials/material-density.js";
import { MATERIALS } from "../materials/materials.js";
import { findRoot } from "../numeric/roots.js";
import { holesInTang } from "./holes-in-tang.js";
import { leastButt } from "./least-butt.js";

type HandlePartSpec = NonNullable<HandleSpec["parts"]>[number];

/** What the knife then weighs and where it balances, g and mm ahead of the heel. */
export interface Reweighed {
  readonly mass: number;
  readonly balance: number;
  /** Whether the balance comes where it was wanted; else this is as far as it goes. */
  readonly reaches: boolean;
}

/** A way to move the balance, with its number; mm, g, g/mm³. */
export type BalanceWay = Reweighed &
  (
    | { readonly kind: "tang-taper"; readonly from: number; readonly to: number }
    | { readonly kind: "tang-holes"; readonly diameter: number; readonly places: readonly HoleSpec["at"][] }
    | {
        readonly kind: "handle-density";
        readonly part: string;
        readonly from: number;
        readonly to: number;
        /** A material of the table that does it; left out where none does. */
        readonly material?: string;
      }
    | { readonly kind: "part-mass"; readonly part: string; readonly from: number; readonly to: number }
    | { readonly kind: "butt-mass"; readonly added: number; readonly x: number }
  );

/** A way that moves the balance by less than this is none, mm. */
const LEAST_MOVE = 0.5;
/** How near the wanted place is near enough, mm. */
const NEAR = 0.01;
/** How far ahead of the rear end a weight in the butt sits. */
const IN_THE_BUTT = 5;
/** Most that a weight may add, as a share of what the knife weighs: more is another knife. Common practice, no source. */
const MOST_ADDED = 0.5;

/**
 * Ways to bring the balance to a place, in the order in which they can still be gone: taper of the tang, holes in it, a denser or
 * lighter handle, a weight in the butt. Each is put into the knife and the knife weighed again.
 *
 * @param target - mm ahead of the heel.
 *
 * @example
 * balanceWays(knife, weighKnife(knife).knife.balanceFromHeel - 5).map(({ kind }) => kind); // ["handle-density", "butt-mass"]
 */
export function balanceWays(knife: Knife, target: number): BalanceWay[] {
  const scale = new Scale(knife, target);
  if (Math.abs(target - scale.now) < LEAST_MOVE) return [];
  return [
    ...tangTaper(knife, scale),
    ...tangHoles(knife, scale),
    ...handle(knife, scale),
    ...butt(knife, scale),
  ];
}

/** Weighs the knife as it would be. */
class Scale {
  readonly target: number;
  readonly now: number;
  readonly mass: number;
  private readonly knife: Knife;
  private readonly quick: Reweigher;

  constructor(knife: Knife, target: number) {
    const { balanceFromHeel, mass } = weighKnife(knife).knife;
    this.knife = knife;
    this.quick = new Reweigher(rebuildKnife(knife.spec));
    this.target = target;
    this.now = balanceFromHeel;
    this.mass = mass;
  }

  /** Whether the balance has to come forward: what lies behind it gets lighter. */
  get forward(): boolean {
    return this.target > this.now;
  }

  /** Weighed whole, by the same way as the knife itself. */
  read(change: (spec: KnifeSpec) => KnifeSpec): Omit<Reweighed, "reaches"> {
    const { mass, balanceFromHeel: balance } = weighKnife(rebuildKnife(change(this.knife.spec))).knife;
    return { mass, balance };
  }

  /** The number between two at which the balance is where it is wanted, or the second where it comes nowhere near. */
  solve(
    change: (value: number) => (spec: KnifeSpec) => KnifeSpec,
    from: number,
    to: number,
  ): { readonly value: number; readonly after: Reweighed } | undefined {
    const miss = (value: number): number =>
      this.quick.read(change(value)(this.quick.spec)).balance - this.target;
    const root = findRoot(miss, from, to, Math.abs(to - from) * 1e-4);
    const value = root ?? to;
    const then = this.read(change(value));
    if (Math.abs(then.balance - this.now) < LEAST_MOVE) return undefined;
    return { value, after: { ...then, reaches: root !== undefined } };
  }

  /**
   * Mass to add at a place that would do it: Δx = −m(x − x_B)/(M + m), solved for m; g, negative to take off. As much as a knife
   * can be given where that is not enough: nothing brings the balance to a place behind the weight itself.
   */
  massAt(x: number): number {
    const most = MOST_ADDED * this.mass;
    const added = (this.mass * (this.now - this.target)) / (this.target - x);
    return this.target > x ? Math.min(added, most) : most;
  }
}

function tangTaper(knife: Knife, scale: Scale): BalanceWay[] {
  const { tang } = knife.spec;
  // A tang that is given by stations has been thought about.
  if (tang.thickness !== undefined) return [];
  const front = knife.laws.spine.valueAt(0);
  const from = tang.buttThickness ?? front;
  const to = scale.forward ? leastButt(knife) : front;
  if (scale.forward ? to >= from : to <= from) return [];
  const found = scale.solve(
    (buttThickness) => (spec) => ({ ...spec, tang: { ...spec.tang, buttThickness } }),
    from,
    to,
  );
  return found === undefined ? [] : [{ kind: "tang-taper", from, to: found.value, ...found.after }];
}

function tangHoles(knife: Knife, scale: Scale): BalanceWay[] {
  if (!scale.forward || knife.spec.tang.form !== "full") return [];
  let best: Drilled | undefined;
  for (const { diameter, places } of holesInTang(knife)) {
    for (let count = 1; count <= places.length; count++) {
      const drilled = places.slice(0, count);
      const then = scale.read((spec) => withHoles(spec, diameter, drilled));
      const reaches = then.balance >= scale.target - NEAR;
      const way: Drilled = { kind: "tang-holes", diameter, places: drilled, ...then, reaches };
      if (reaches) {
        if (best?.reaches !== true || isBetterDrilled(way, best)) best = way;
        break;
      }
      if (best === undefined || (!best.reaches && best.balance < then.balance)) best = way;
    }
  }
  return best === undefined || best.balance - scale.now < LEAST_MOVE ? [] : [best];
}

type Drilled = Extract<BalanceWay, { kind: "tang-holes" }>;

/** Fewer holes; of as many, the ones that overshoot less. */
const isBetterDrilled = (a: Drilled, b: Drilled): boolean =>
  a.places.length < b.places.length || (a.places.length === b.places.length && a.balance < b.balance);

const withHoles = (spec: KnifeSpec, diameter: number, places: readonly HoleSpec["at"][]): KnifeSpec => ({
  ...spec,
  tang: {
    ...spec.tang,
    holes: [
      ...(spec.tang.holes ?? []),
      ...places.map((at): HoleSpec => ({ kind: "lightening", at, diameter })),
    ],
  },
});

/** What a handle may be made of; metal is none. */
const HANDLE_MATERIALS = MATERIALS.filter(({ kind }) => kind !== "steel" && kind !== "metal");

function handle(knife: Knife, scale: Scale): BalanceWay[] {
  const { slabs, block, parts = [] } = knife.spec.handle ?? {};
  const ways: BalanceWay[] = [];
  for (const [part, made] of [["slabs", slabs] as const, ["block", block] as const]) {
    if (made === undefined) continue;
    const from = materialDensity(made.material) ?? Number.NaN;
    const densities = HANDLE_MATERIALS.map(({ density }) => density);
    const to = scale.forward ? Math.min(...densities) : Math.max(...densities);
    if (!(scale.forward ? to < from : to > from)) continue;
    const found = scale.solve((density) => (spec) => withDensity(spec, part, density), from, to);
    if (found === undefined) continue;
    const material = found.after.reaches ? nearestMaterial(found.value, scale.forward) : undefined;
    ways.push({
      kind: "handle-density",
      part: part === "block" ? "handle" : part,
      from,
      to: found.value,
      ...(material === undefined ? {} : { material }),
      ...found.after,
    });
  }
  return [...ways, ...heaviestPart(parts, scale)];
}

const withDensity = (spec: KnifeSpec, part: "slabs" | "block", density: number): KnifeSpec => {
  const made = spec.handle?.[part];
  const material: MaterialSpec = { name: made?.material.name ?? "", density };
  return { ...spec, handle: { ...spec.handle, [part]: { ...made, material } } };
};

/** The material that is just dense, or just light, enough. */
function nearestMaterial(density: number, lighter: boolean): string | undefined {
  const fits = HANDLE_MATERIALS.filter((row) => (lighter ? row.density <= density : row.density >= density));
  const [nearest] = [...fits].sort((a, b) => Math.abs(a.density - density) - Math.abs(b.density - density));
  return nearest?.name;
}

/** A handle that is given by its mass: how heavy it would have to be where it is. */
function heaviestPart(parts: readonly HandlePartSpec[], scale: Scale): BalanceWay[] {
  const behind = parts.filter(({ at }) => at.x < Math.min(scale.target, scale.now));
  const heaviest = Math.max(...behind.map(({ mass }) => mass));
  const index = parts.findIndex((part) => part.mass === heaviest && behind.includes(part));
  const part = parts[index];
  if (part === undefined) return [];
  const to = part.mass + scale.massAt(part.at.x);
  if (to <= 0) return [];
  const then = scale.read((spec) => ({
    ...spec,
    handle: {
      ...spec.handle,
      parts: (spec.handle?.parts ?? []).map((one, i) => (i === index ? { ...one, mass: to } : one)),
    },
  }));
  const reaches = Math.abs(then.balance - scale.target) < NEAR;
  return [{ kind: "part-mass", part: part.name, from: part.mass, to, ...then, reaches }];
}

/**
 * A weight in the butt but for its mass: where it sits.
 *
 * @example
 * buttWeight(knife).at.x; // −105: 5 mm ahead of the rear end, mm from the heel
 */
export function buttWeight(knife: Knife): Omit<HandlePartSpec, "mass"> {
  const x = rearmostOf(knife) + IN_THE_BUTT;
  return { name: "weight in the butt", at: { x, y: knife.outline.runs.spine.at(-1)?.to.y ?? 0 } };
}

function butt(knife: Knife, scale: Scale): BalanceWay[] {
  if (scale.forward) return [];
  const place = buttWeight(knife);
  const { x } = place.at;
  const mass = scale.massAt(x);
  const weight: HandlePartSpec = { ...place, mass };
  const then = scale.read((spec) => ({
    ...spec,
    handle: { ...spec.handle, parts: [...(spec.handle?.parts ?? []), weight] },
  }));
  return [
    { kind: "butt-mass", added: mass, x, ...then, reaches: Math.abs(then.balance - scale.target) < NEAR },
  ];
}
