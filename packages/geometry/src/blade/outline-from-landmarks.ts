import { SpecError } from "../errors/errors.js";
import type { Issue } from "../errors/issue.js";
import { bladeRuns } from "./blade-runs.js";
import { checkLandmarks } from "./check-landmarks.js";
import { checkOutline } from "./check-outline.js";
import { resolveLandmarks } from "./landmarks.js";
import { type Outline, outlineOfRuns } from "./outline.js";
import type { BladeSpec, LandmarkOutlineSpec, TangSpec } from "./spec.js";
import { tangRuns } from "./tang-runs.js";

/**
 * Builds the outline of a blade and its tang from landmarks; what the file leaves out comes from the family's table of
 * defaults.
 *
 * The heel is the origin. Blade: see {@link bladeRuns}; tang, shoulders and choil: see {@link tangRuns}.
 *
 * @param ricasso - unground length between heel and handle front, mm, 0 or more.
 * @param choil - half-round notch behind the heel, at most as wide as the ricasso.
 * @throws {SpecError} with every landmark that cannot be, or that makes an outline which crosses itself.
 *
 * @example
 * const outline = outlineFromLandmarks(
 *   { family: "vegetable", edgeLength: 225, heelHeight: 92, straightEdge: 150, tipHeight: 80 },
 *   10,
 *   { form: "full", length: 128, heights: { front: 28, middle: 25, butt: 30 } },
 * );
 * outline.handleFront; // -10
 * outline.butt; // -138
 */
export function outlineFromLandmarks(
  spec: LandmarkOutlineSpec,
  ricasso: number,
  tang: TangSpec,
  choil?: BladeSpec["choil"],
): Outline {
  const issues = checkLandmarks(spec, ricasso, tang, choil);
  if (issues.length > 0) throw new SpecError(issues);
  const landmarks = resolveLandmarks(spec, ricasso, tang, choil);
  const outline = outlineOfRuns({ ...bladeRuns(landmarks), ...tangRuns(landmarks) });
  const faults = checkOutline(outline);
  if (faults.length > 0) throw new SpecError(faults.map(inLandmarks));
  return outline;
}

/** There are no runs in the file to point at: the fault lies in the landmarks that drew them. */
function inLandmarks(fault: Issue): Issue {
  const { run, other } = fault.values ?? {};
  if (fault.code !== "outline-crosses-itself" || run !== "edge" || other !== "spine") {
    return { ...fault, path: "blade.outline" };
  }
  return {
    ...fault,
    code: "edge-meets-spine",
    path: "blade.outline.tipHeight",
    text: "Edge and spine meet at {x}, {y}, before the tip. Lower the tip, keep the edge straight for longer, or let the spine begin to rise sooner.",
  };
}
