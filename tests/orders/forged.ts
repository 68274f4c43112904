// The forged blades by plain sums, by either of two rules for their section. No line of it comes from the library.
import { arcFace } from "./by-rule.js";
import { at, sumAlong } from "./hand-sums.js";
import type { Order } from "./orders.js";

/**
 * The hand's rule: a trapezoid from the forged edge to the spine, whatever the finished section is. The model's: that, and
 * nowhere less than the finished section with the face allowance on.
 */
export type ForgedRule = "trapezoid" | "face allowance everywhere";

/** The ends are drawn on by this, mm. */
const ENDS = 3;
/** Least thickness of the edge when it is hardened, mm; a default of the program. */
const HARDENING_EDGE = 0.6;
const POINTS = 400;

/** Volume of the forged blade and tang, mm³; the finished blade's height at x by the order's table, or as drawn. */
export function forgedVolume(
  order: Order,
  rule: ForgedRule,
  heightAt: (x: number) => number = (x) => at(order.height, x),
): number {
  const { forging, tang, edgeLength } = order;
  const section = (x: number): number => {
    const height = heightAt(x);
    const half = forgedHalf(order, x, rule, height);
    let sum = 0;
    for (let i = 0; i < POINTS; i++) sum += (2 * half((height * (i + 0.5)) / POINTS) * height) / POINTS;
    // The outline's allowance: strips as thick as the rim that they lie along.
    return sum + 2 * forging.outline * (half(0) + half(height));
  };
  const tangSection = (back: number): number =>
    (at(tang.height, back) + 2 * forging.outline) *
    (at(tang.thickness, forging.tang === "parallel" ? 0 : back) + 2 * forging.face);
  return (
    sumAlong(0, edgeLength, section, 0.5).volume +
    sumAlong(0, tang.length, tangSection).volume +
    ENDS * (section(edgeLength) + tangSection(tang.length))
  );
}

/** Half the forged thickness at x over the height above the finished edge. */
export function forgedHalf(
  order: Order,
  x: number,
  rule: ForgedRule,
  height = at(order.height, x),
): (above: number) => number {
  const { forging } = order;
  const spine = at(order.thickness, x) / 2;
  const edge = at(order.edge, x) / 2;
  if (rule === "trapezoid") {
    const top = Math.min(height, forging.bevel ?? height);
    return straightTo(forging.edge / 2, spine + forging.face, top);
  }
  const bevel = order.bevel === undefined ? height : Math.min(height, at(order.bevel, x));
  // Ready to harden: what comes off afterwards is still on, and the edge no thinner than hardening bears.
  const ready = spine + forging.afterHardening;
  const readyEdge = Math.max(edge + forging.afterHardening, HARDENING_EDGE / 2);
  const ground = arcFace(readyEdge, ready, bevel, 2 * (order.crown ?? 0) * (ready - readyEdge));
  const onFlats = forging.keptFlats === true ? 0 : 1;
  // Hammered before anything is ground: to what is left at the spine after hardening, and the face allowance beside it.
  const hammered = straightTo(
    forging.edge / 2,
    spine + onFlats * forging.afterHardening,
    forging.bevel === undefined ? height : bevel,
  );
  return (above) =>
    Math.max(
      hammered(above),
      above >= bevel ? spine + onFlats * forging.face : ground(above) + forging.face - forging.afterHardening,
    );
}

const straightTo =
  (from: number, to: number, height: number) =>
  (above: number): number =>
    above >= height ? to : from + ((to - from) * above) / height;
