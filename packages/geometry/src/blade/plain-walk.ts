import type { EdgeElement } from "./edge-element.js";
import type { Joint } from "./edge-run-parts.js";
import { RoundElement } from "./round-element.js";
import { StraightElement } from "./straight-element.js";

/** A stretch of a station over which the distance to the edge is smooth and monotone. */
export type StretchVisitor = (
  element: number,
  y0: number,
  v0: number,
  foot0: number,
  y1: number,
  v1: number,
  foot1: number,
) => void;

/** No ridge is near: the nearest element changes at the normals of the joints, one after the other. */
export function walkPlainly(
  elements: readonly EdgeElement[],
  joints: readonly Joint[],
  x: number,
  y0: number,
  v0: number,
  e0: number,
  f0: number,
  y1: number,
  v1: number,
  e1: number,
  f1: number,
  visit: StretchVisitor,
): void {
  let y = y0;
  let v = v0;
  let foot = f0;
  const step = e1 > e0 ? 1 : -1;
  for (let e = e0; e !== e1; e += step) {
    const joint = joints[step > 0 ? e : e - 1] as Joint;
    const element = elements[e] as EdgeElement;
    const next = elements[e + step] as EdgeElement;
    if (joint.normal.x !== 0) {
      const vJoint = (x - joint.at.x) / joint.normal.x;
      const yJoint = Math.min(y1, joint.at.y + vJoint * joint.normal.y);
      if (yJoint > y && vJoint >= 0) {
        visitTurning(
          element,
          x,
          e,
          y,
          v,
          foot,
          yJoint,
          vJoint,
          step > 0 ? element.footAtEnd : element.footAtStart,
          visit,
        );
        y = yJoint;
        v = vJoint;
      }
    }
    foot = step > 0 ? next.footAtStart : next.footAtEnd;
  }
  if (y1 > y) visitTurning(elements[e1] as EdgeElement, x, e1, y, v, foot, y1, v1, f1, visit);
}

/** Divides a stretch where the distance turns: at the height of a round centre, on a prolonged edge. */
export function visitTurning(
  element: EdgeElement,
  x: number,
  e: number,
  y0: number,
  v0: number,
  f0: number,
  y1: number,
  v1: number,
  f1: number,
  visit: StretchVisitor,
): void {
  if (element instanceof RoundElement && element.cy > y0 && element.cy < y1) {
    const v = Math.abs(Math.abs(x - element.cx) - element.radius);
    visit(e, y0, v0, f0, element.cy, v, 0);
    visit(e, element.cy, v, 0, y1, v1, f1);
    return;
  }
  if (element instanceof StraightElement) {
    // A prolonged edge may pass through the steel (a front that leans far forward): below it the distance grows again.
    const y = element.heightAt(x);
    if (y > y0 + 1e-12 && y < y1 - 1e-12) {
      visit(e, y0, v0, f0, y, 0, f0);
      visit(e, y, 0, f1, y1, v1, f1);
      return;
    }
  }
  visit(e, y0, v0, f0, y1, v1, f1);
}
