// Hunting knives drawn by lot: a short blade with a drop point, thinned strongly toward the tip.
import { type KnifeSpec, makeKnife, SpecError } from "@scantling/geometry";
import type { Job } from "../../../packages/cli/src/load.js";
import { type Measured, measure } from "../../../packages/cli/src/measure.js";
import { Chance } from "../random/chance.js";
import { heel, share, tip } from "../random/ground.js";

const SEED = 4_711;

/** Hunter number `index` as a job, in mm by turns and in inches. */
export function hunter(base: Job, index: number): Measured {
  for (let attempt = 0; attempt < 50; attempt++) {
    const chance = new Chance(Math.imul(SEED + index, 2_654_435_761) + attempt);
    const spec: KnifeSpec = { ...hunterSpec(chance), forging: base.spec.forging ?? {} };
    try {
      makeKnife(spec);
    } catch (error) {
      if (!(error instanceof SpecError)) throw error;
      continue;
    }
    const order = { ...base.knife.order, code: `H-${index}`, title: "Hunter", asks: [] };
    return measure({ ...base, units: index % 2 === 0 ? "mm" : "in", knife: { ...base.knife, order }, spec });
  }
  throw new Error(`hunter ${index}: nothing drawn makes a knife`);
}

function hunterSpec(c: Chance): KnifeSpec {
  const edgeLength = c.between(70, 115);
  const heelHeight = c.between(0.24, 0.36) * edgeLength;
  const thick = c.between(3, 5.5);
  const end = c.between(0.15, 0.4) * thick;
  return {
    steel: { name: "1084" },
    blade: {
      outline: {
        family: "drop-point",
        edgeLength,
        heelHeight,
        tipHeight: c.between(0.45, 0.75) * heelHeight,
        spineBreak: c.between(0.3, 0.6) * edgeLength,
      },
      ricasso: c.between(5, 12),
      thickness: c.in(0.5) ? [heel(thick), tip(end)] : [heel(thick), share(0.6, 0.8 * thick), tip(end)],
      bevel: { form: "flat", height: "full", edgeThickness: c.between(0.3, 0.6) },
      edgeAngle: 0.3,
    },
    tang: {
      form: "full",
      length: c.between(95, 115),
      heights: { front: 0.85 * heelHeight, middle: 0.75 * heelHeight, butt: 0.95 * heelHeight },
      ...(c.in(0.5) ? { buttThickness: c.between(0.4, 0.7) * thick } : {}),
    },
  };
}
