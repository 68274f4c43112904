import type { Path, Vec2 } from "@scantling/geometry";
import type { OrderHead } from "./order-head.js";
import type { PatternHole } from "./pattern-model.js";

/** A centre laid off from two edges; mm. */
export interface DrillingPlace {
  readonly centre: Vec2;
  /** The end that the distance along the blade is measured from, and that distance along x. */
  readonly end: "butt end" | "heel";
  readonly along: number;
  /** To the outline above and below the centre, square to x. */
  readonly fromTop: number;
  readonly fromBottom: number;
}

/** A hole to drill, or a slot, whose two end arcs are drilled first. */
export interface DrillingHole extends PatternHole {
  /** One for a round hole, two for a slot. */
  readonly places: readonly DrillingPlace[];
  /** From the rim to the nearest place of the outline, mm. */
  readonly rimToEdge: number;
  /** From this centre to the next one toward the tip, mm; left out for the last. */
  readonly pitch?: number;
  /** What to drill it with: "4.1 mm", "#20"; left out where no drills are known. */
  readonly drill?: string;
  /** Of a pin's hole: its diameter as drilled less that of the pin, mm; left out where nothing goes through. */
  readonly play?: number;
}

/** Everything that a drill layout shows, in mm, y up, heel at the origin. */
export interface DrillingModel extends OrderHead {
  readonly steel: string;
  /** The size state whose edges are measured from: "finished". */
  readonly state: string;
  readonly outline: Path;
  readonly handleFront: number;
  readonly edgeLength: number;
  /** In the order of their letters on the pattern. */
  readonly holes: readonly DrillingHole[];
  /** What is to be minded at some of them, a hole's name first; left out where there is nothing. */
  readonly warnings?: readonly string[];
  /** An edge of the tang that is straight and runs along x from butt to handle front, at y. */
  readonly levelEdge?: { readonly side: "top" | "bottom"; readonly y: number; readonly rear: number };
  /** What stands over those edges while the profile is not trimmed, mm; left out where nothing does. */
  readonly forged?: { readonly outline: number; readonly butt: number };
}
