import { handleLayout } from "../blade/handle-layout.js";
import { mortiseOf } from "../blade/handle-mortise.js";
import type { Knife } from "../blade/knife.js";
import type { Drill } from "../stock/bench-tools.js";
import { BENCH_DEFAULTS } from "./defaults.js";
import { drillAtLeast } from "./nearest-drill.js";

/** The mortise for a hidden tang at a depth, mm. */
export interface MortiseStep {
  /** From the front face of the handle. */
  readonly depth: number;
  /** Of the tang there, and of the mortise around it. */
  readonly tang: { readonly height: number; readonly thickness: number };
  readonly mortise: { readonly height: number; readonly thickness: number };
  /** Smallest owned drill that the tang goes into side to side with room; left out where none is known. */
  readonly drill?: Drill;
  /** How many of its holes stand beside one another up the height. */
  readonly holes?: number;
}

/** How the handle of a hidden tang is drilled. mm. */
export interface MortiseSetUp {
  /** The deepest first: drill those, then wider ones less deep. */
  readonly steps: readonly MortiseStep[];
  /** Goes right through: a through tang. */
  readonly through: boolean;
  /** Wood left around the mortise at its thinnest, and where (x). */
  readonly wall: number;
  readonly thinnestAt: number;
}

/** Shares of the mortise's depth that the drills are given for. */
const DEPTHS = [1, 0.75, 0.5, 0.25, 0] as const;

/** Share of a hole that is none: heights are read a little inside the ends of a tang, not at them. */
const SAME = 1e-4;

/**
 * Holes side by side that a slot is drilled with, each half over the next.
 *
 * @param height - Of the slot, mm.
 * @param drill - Its diameter, mm.
 *
 * @example
 * holesAcross(14, 5); // 5
 * holesAcross(4, 5); // 1
 */
export function holesAcross(height: number, drill: number): number {
  return height <= drill ? 1 : 1 + Math.ceil((height - drill) / (drill / 2) - SAME);
}

/**
 * Drills and depths for the mortise of a hidden tang; undefined for a full tang or without a handle.
 *
 * @param drills - Those in hand.
 *
 * @example
 * mortiseSetUp(knife, []); // undefined: a full tang
 */
export function mortiseSetUp(knife: Knife, drills: readonly Drill[]): MortiseSetUp | undefined {
  const { handle } = handleLayout(knife.spec.handle, knife.outline);
  if (handle === undefined || knife.spec.tang.form === "full") return undefined;
  const body = knife.body("finished");
  const { front, rear } = handle.block;
  const { footprint, slab } = body;
  const end = Math.max(rear, footprint.minX);
  const over = BENCH_DEFAULTS.mortiseOver.value;
  // Fillets of the shoulders are let into an eased mouth.
  const shoulder = Math.min(front, knife.outline.handleFront - (knife.spec.tang.shoulderRadius ?? 0));
  const steps = DEPTHS.map((share): MortiseStep => {
    const depth = share * (front - end);
    // Just inside either end: where the outline stands upright there is no height to read.
    const x = Math.min(shoulder - INSIDE, Math.max(end + INSIDE, front - depth));
    const height = footprint.heightAt(x);
    const thickness = slab.thicknessAt(x);
    const drill = drillAtLeast(drills, thickness + over);
    return {
      depth,
      tang: { height, thickness },
      mortise: { height: height + over, thickness: thickness + over },
      ...(drill === undefined ? {} : { drill, holes: holesAcross(height + over, drill.diameter) }),
    };
  });
  const { wall, at } = mortiseOf(handle.block, body);
  return { steps, through: footprint.minX <= rear + 1e-6, wall: wall - over / 2, thinnestAt: at };
}

/** mm. */
const INSIDE = 1e-6;
