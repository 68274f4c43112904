import { angle, type Issue } from "../errors/issue.js";
import type { BladeSpec } from "./spec.js";

/** Checks the angles of the edge, of its microbevel and of the swedge. */
export function checkAngles({ edgeAngle, microbevel, swedge }: BladeSpec): Issue[] {
  const issues: Issue[] = [];
  const within = (path: string, value: number, what: string): void => {
    if (value > 0 && value < Math.PI / 2) return;
    issues.push({
      code: "edge-angle-range",
      path,
      text: `A ${what} of {value} per side is no edge. Give an angle between 0° and 90°, usually 10° to 30°.`,
      values: { value: angle(value) },
    });
  };
  if (typeof edgeAngle === "number") within("blade.edgeAngle", edgeAngle, "sharpening angle");
  else {
    for (const side of ["right", "left"] as const) {
      const own = edgeAngle[side];
      if (own !== "flat") within(`blade.edgeAngle.${side}`, own, "sharpening angle");
    }
    if (edgeAngle.right === "flat" && edgeAngle.left === "flat") {
      issues.push({
        code: "no-edge",
        path: "blade.edgeAngle",
        text: "With both sides flat the blade has no edge. Give one side an angle.",
      });
    }
  }
  if (microbevel !== undefined) {
    within("blade.microbevel.angle", microbevel.angle, "microbevel");
    const steepest = Math.max(
      ...(typeof edgeAngle === "number" ? [edgeAngle] : [edgeAngle.right, edgeAngle.left]).map((a) =>
        a === "flat" ? 0 : a,
      ),
    );
    if (microbevel.angle <= steepest) {
      issues.push({
        code: "microbevel-not-steeper",
        path: "blade.microbevel.angle",
        text: "A microbevel of {value} is not steeper than the edge's {edge}. Make it steeper, or leave it out.",
        values: { value: angle(microbevel.angle), edge: angle(steepest) },
      });
    }
  }
  if (swedge !== undefined) within("blade.swedge.angle", swedge.angle, "swedge");
  return issues;
}
