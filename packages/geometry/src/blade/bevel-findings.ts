import { angle, type Finding, length } from "../errors/issue.js";
import { bevelAt } from "./bevel-at.js";
import { levelCrown } from "./face-section.js";
import { FINDING_LIMITS } from "./finding-limits.js";
import type { Knife } from "./knife.js";

/** What is unwise about the ground faces and the edge, at the heel. */
export function bevelFindings(knife: Knife): Finding[] {
  const findings: Finding[] = [];
  const { spec, laws } = knife;
  const x = spec.blade.plunge === undefined ? 0 : spec.blade.plunge.at + spec.blade.plunge.length;
  const { height, bevelLine, edge, spineDistance, angle: alpha } = bevelAt(knife, x);
  const rise = (bevelLine - edge) / 2;
  const { bevelAngle } = FINDING_LIMITS;
  const asked = laws.bevelHeight === "full" ? 0 : laws.bevelHeight.valueAt(x);
  if (asked > spineDistance + 1e-9) {
    findings.push({
      code: "bevel-over-spine",
      severity: "warn",
      path: "blade.bevel.height",
      text: "A bevel {asked} high is more than the blade has at the heel ({height}): it is ground right to the spine. If that is meant, write full.",
      values: { asked: length(asked), height: length(spineDistance) },
      basis: "geometry",
    });
  }
  if (alpha > bevelAngle.value) {
    findings.push({
      code: "bevel-steep",
      severity: "warn",
      path: "blade.bevel.height",
      text: "The bevel stands at {angle} per side at the heel; more than {limit} makes a wedge. Raise the bevel or thin the spine.",
      values: { angle: angle(alpha), limit: angle(bevelAngle.value) },
      basis: bevelAngle.basis,
    });
  }
  if (spec.blade.bevel.form === "convex") {
    if (rise <= 0) {
      findings.push({
        code: "convex-is-flat",
        severity: "warn",
        path: "blade.bevel.form",
        text: "No arc bulges outward between edge and bevel line here: the face is taken as flat.",
        basis: "geometry",
      });
    }
    const crown = laws.crown;
    const sagitta = crown === undefined ? 0 : crown.law.valueAt(x) * (crown.kind === "mm" ? 1 : 2 * rise);
    const most = levelCrown(height, rise);
    if (sagitta > most + 1e-9) {
      findings.push({
        code: "crown-too-large",
        severity: "stop",
        path: "blade.bevel.crown",
        text: "A crown of {asked} stands out beyond the flat; the most that fits is {most}, level at the bevel line.",
        values: { asked: length(sagitta), most: length(most) },
        basis: "geometry: the arc that is level at the bevel line",
      });
    }
  }
  if (Math.tan(spec.blade.edgeAngle) * height < rise + edge / 2) {
    findings.push({
      code: "edge-bevel-over-bevel-line",
      severity: "warn",
      path: "blade.edgeAngle",
      text: "At {theta} per side the sharpening bevel runs up past the bevel line at the heel. Sharpen steeper, or grind higher or thinner.",
      values: { theta: angle(spec.blade.edgeAngle) },
      basis: "geometry",
    });
  }
  return findings;
}
