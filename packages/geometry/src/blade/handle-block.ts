import type { Law } from "../numeric/law.js";
import { findRoot } from "../numeric/roots.js";
import { handleLaw } from "./handle-law.js";
import { BlockSection } from "./handle-section.js";
import type { BlockSpec, HandleBlockSpec } from "./spec.js";

/**
 * A solid along x, the same above and below its middle line and on both faces: handle of a hidden tang, bolster, guard,
 * pommel. Filled: what the tang takes out is not its own affair.
 */
export interface Block {
  /** x of its front and rear faces, mm; front > rear. */
  readonly front: number;
  readonly rear: number;
  /** y of its middle line, mm. */
  readonly centre: number;
  /** x at which its section is not smooth. */
  readonly breaks: readonly number[];
  /** Its section at x; the same object is filled again at every call. */
  sectionAt(x: number): BlockSection;
}

/** Leg of the corner cuts that make eight equal sides, as a share of the smaller half-size. */
const EQUAL_SIDES = 2 - Math.SQRT2;

/** A block of one section: bolster pair, guard or pommel. */
export function plainBlock(spec: BlockSpec, centre: number): Block {
  const oval = spec.section === "oval";
  const section = new BlockSection(oval ? "round" : "square");
  section.halfHeight = spec.height / 2;
  section.halfWidth = spec.width / 2;
  section.cornerHeight = oval ? section.halfHeight : 0;
  section.cornerWidth = oval ? section.halfWidth : 0;
  const { at, length } = spec;
  return { front: at, rear: at - length, centre, breaks: [], sectionAt: () => section };
}

/**
 * The handle of a hidden or through tang, its sizes by laws from its own front face back.
 *
 * @param front - x of its front face, mm.
 * @param centre - y of its middle line, mm.
 */
export function handleBlock(spec: HandleBlockSpec, front: number, centre: number): Block {
  const between = spec.between ?? "straight";
  const height = handleLaw(spec.height, between, spec.length);
  const width = handleLaw(spec.width, between, spec.length);
  const form = spec.section;
  const section = new BlockSection(form === "octagonal" ? "cut" : "round");
  const equalSides = form === "octagonal" && spec.cornerRadius === undefined;
  const breaks = [...height.breaks, ...width.breaks];
  if (equalSides) breaks.push(...meetings(height, width, spec.length));
  return {
    front,
    rear: front - spec.length,
    centre,
    breaks: breaks.map((s) => front - s),
    sectionAt(x) {
      const a = height.valueAt(front - x) / 2;
      const b = width.valueAt(front - x) / 2;
      section.halfHeight = a;
      section.halfWidth = b;
      const corner = equalSides ? EQUAL_SIDES * Math.min(a, b) : (spec.cornerRadius ?? 0);
      section.cornerHeight = form === "oval" ? a : corner;
      section.cornerWidth = form === "oval" ? b : corner;
      return section;
    },
  };
}

/** Samples between two stations; a meeting that they miss costs time, not truth. */
const SAMPLES = 8;

/** Where two laws have the same value: the smaller of the two has a kink there. */
function meetings(a: Law, b: Law, length: number): number[] {
  const gap = (s: number): number => a.valueAt(s) - b.valueAt(s);
  const stations = [0, ...a.breaks, ...b.breaks, length].sort((p, q) => p - q);
  const found: number[] = [];
  stations.slice(1).forEach((to, i) => {
    const from = stations[i] as number;
    for (let k = 0; k < SAMPLES; k++) {
      const s0 = from + ((to - from) * k) / SAMPLES;
      const s1 = from + ((to - from) * (k + 1)) / SAMPLES;
      if (gap(s0) > 0 === gap(s1) > 0) continue;
      const root = findRoot(gap, s0, s1, 1e-12);
      if (root !== undefined) found.push(root);
    }
  });
  return found;
}
