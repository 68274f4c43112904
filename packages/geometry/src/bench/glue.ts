import { handleLayout } from "../blade/handle-layout.js";
import { handleParts } from "../blade/handle-parts.js";
import type { Knife } from "../blade/knife.js";
import { VOLUME } from "../blade/moments.js";
import type { HoleSpec } from "../blade/spec.js";
import { integrateAdaptive } from "../numeric/adaptive.js";
import { BENCH_DEFAULTS } from "./defaults.js";

/** Glue for a handle; mm², mm³ (1000 mm³ are 1 ml). */
export interface GlueSetUp {
  /** Bonded on one side of the tang, holes taken out; of a hidden tang: all round it. */
  readonly area: number;
  /** Joints that this area is glued in: two sides, twice as many with liners; one round a hidden tang. */
  readonly joints: number;
  /** What the joints and the holes around the pins take. */
  readonly needed: number;
  /** What to mix: with waste, and not less than can be measured. */
  readonly toMix: number;
}

/**
 * What to mix for joints of a thickness: twice what they take, 4 ml at the least.
 *
 * @param needed - What joints and holes take, mm³.
 * @returns mm³
 *
 * @example
 * glueToMix(3500); // 7000
 * glueToMix(900); // 4000
 */
export function glueToMix(needed: number): number {
  return Math.max(BENCH_DEFAULTS.glueWaste.value * needed, BENCH_DEFAULTS.glueLeast.value);
}

/**
 * Glue for slabs on a full tang, or for a hidden tang in its mortise; undefined where there is neither.
 *
 * @example
 * const glue = glueSetUp(knife);
 * glue?.joints; // 2
 * glue?.toMix; // 4000, the least that can be measured
 */
export function glueSetUp(knife: Knife): GlueSetUp | undefined {
  const { slabs, block, liners } = knife.spec.handle ?? {};
  if (slabs !== undefined) {
    const joints = liners === undefined ? 2 : 4;
    const area = bondArea(knife);
    const needed = joints * area * BENCH_DEFAULTS.glueLine.value + aroundPins(knife);
    return { area, joints, needed, toMix: glueToMix(needed) };
  }
  return block === undefined ? undefined : aroundTang(knife);
}

/** Bonded area on one side of a full tang, mm². */
function bondArea(knife: Knife): number {
  const { handle } = knife.spec;
  if (handle?.slabs === undefined) return 0;
  // A sheet 1 mm thick under both slabs holds as many mm³ as it covers mm².
  const sheet = { ...handle, liners: { material: handle.slabs.material, thickness: 1 } };
  const parts = handleParts(sheet, knife.outline, knife.body("finished").slab, knife.holes);
  const covered = (parts.find(({ name }) => name === "liners")?.moments.value[VOLUME] ?? 0) / 2;
  // Pins leave their own diameter free there, lightening holes nothing: the tang is bare over all of the hole.
  return covered - holesUnderSlabs(knife).reduce((sum, hole) => sum + bareBeyondPin(hole), 0);
}

function bareBeyondPin({ kind, at, to, diameter, pin }: HoleSpec): number {
  const radius = diameter / 2;
  if (kind === "pin") return Math.PI * (radius ** 2 - ((pin ?? diameter) / 2) ** 2);
  if (kind !== "lightening") return 0;
  const length = to === undefined ? 0 : Math.hypot(to.x - at.x, to.y - at.y);
  return Math.PI * radius ** 2 + diameter * length;
}

function holesUnderSlabs(knife: Knife): HoleSpec[] {
  const { fittings } = handleLayout(knife.spec.handle, knife.outline);
  return knife.holes.filter(
    ({ at }) =>
      at.x < knife.outline.handleFront &&
      fittings.every(({ block }) => at.x > block.front || at.x < block.rear),
  );
}

/** Rings between pins and their larger holes in the tang, mm³. */
function aroundPins(knife: Knife): number {
  const { slab } = knife.body("finished");
  return holesUnderSlabs(knife)
    .filter(({ kind }) => kind === "pin")
    .reduce((sum, hole) => sum + bareBeyondPin(hole) * slab.thicknessAt(hole.at.x), 0);
}

/** A hidden tang stands free in its mortise by half of what that is larger, all round. */
function aroundTang(knife: Knife): GlueSetUp | undefined {
  const { handle } = handleLayout(knife.spec.handle, knife.outline);
  const body = knife.body("finished");
  if (handle === undefined) return undefined;
  const { mortiseOver } = BENCH_DEFAULTS;
  const { front, rear } = handle.block;
  const { intervals, minX } = body.footprint;
  const from = Math.max(rear, minX);
  const cuts = [
    ...new Set([from, front, ...intervals.flatMap(({ x0, x1 }) => [x0, x1]), ...body.slab.breaks]),
  ]
    .filter((x) => x >= from && x <= front)
    .sort((a, b) => a - b);
  const pieces = cuts.slice(1).map((to, i) => ({ from: cuts[i] as number, to }));
  const { value } = integrateAdaptive(
    (x, out) => {
      const thickness = body.slab.thicknessAt(x);
      const height = body.footprint.heightAt(x);
      out[0] = 2 * (thickness + height);
      out[1] = mortiseOver.value * (thickness + height + mortiseOver.value);
    },
    2,
    pieces,
    { tolerance: Float64Array.of(1e-6, 1e-6) },
  );
  const [area, needed] = value as unknown as [number, number];
  return { area, joints: 1, needed, toMix: glueToMix(needed) };
}
