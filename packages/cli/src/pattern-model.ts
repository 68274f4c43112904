import { patternGeometry } from "@scantling/geometry";
import type { PatternModel } from "@scantling/render";
import { inFileTerms, type Measured } from "./measure.js";
import { sizesOf } from "./sizes.js";

/** The finished knife as the pattern sheet shows it. */
export function makePatternModel({ job, knife, weight }: Measured): PatternModel {
  const { outline } = knife;
  const geometry = inFileTerms(job, () => patternGeometry(knife, "finished"));
  return {
    ...geometry,
    code: job.knife.order.code,
    title: job.knife.order.title,
    steel: job.spec.steel.name,
    state: "finished",
    handleFront: outline.handleFront,
    ...sizesOf(outline),
    steelMass: weight.steel.mass,
    knifeMass: weight.knife.mass,
    units: job.units,
  };
}
