import { flatPreform, forgedProfile, preformSteps, thermalElongation } from "@scantling/geometry";
import { type FileUnits, inchesToMm } from "@scantling/geometry/units";
import type { PreformModel } from "@scantling/render";
import { inFileTerms, type Measured } from "../measure.js";
import type { Setup } from "../report/setup-json.js";
import { orderHead } from "./order-head.js";

/** Steps along the preform that a rule lays off, 25 mm or 1 in, and how many of them before they grow longer. */
const STEP: Readonly<Record<FileUnits, number>> = { mm: 25, in: inchesToMm(1) };
const MOST_STEPS = 10;

/**
 * The preform of a plan as its sheet shows it.
 *
 * @param setup - Of the same knife, see `setupOf`.
 * @returns undefined where the rack gives no plan, so that there is no forge card.
 */
export function makePreformModel(
  measured: Measured,
  { card }: Pick<Setup, "card">,
): PreformModel | undefined {
  if (card === undefined) return undefined;
  const { job, knife } = measured;
  const { units } = job;
  const { outline, length, shoulder, heel } = inFileTerms(job, () =>
    flatPreform(forgedProfile(knife), card.preform),
  );
  const step = STEP[units] * Math.max(1, Math.ceil((length - shoulder) / STEP[units] / MOST_STEPS));
  return {
    ...orderHead(job),
    steel: job.spec.steel.name,
    outline,
    length,
    shoulder,
    ...(heel === undefined ? {} : { heel }),
    marks: preformSteps(card.preform, step).map(({ at, height, thickness }) => ({
      fromShoulder: at,
      height,
      thickness,
    })),
    handle: card.tang,
    pointDrop: card.pointDrop,
    temperature: card.temperature,
    elongation: thermalElongation(card.temperature),
    ...(card.preCurve === undefined ? {} : { bendDown: card.preCurve }),
    billetMark: card.marks.at,
  };
}
