import { benchSetUp } from "@scantling/geometry";
import type { CardModel } from "@scantling/render";
import { inFileTerms, type Measured } from "../measure.js";
import { knifeWords } from "../report/heading.js";
import type { Setup } from "../report/setup-json.js";
import { stopWords } from "../report/setup-text.js";
import { benchSide } from "./bench-side.js";
import { forgeSide } from "./forge-side.js";

/** Where the work can hurt someone; at the foot of every page. */
const CAUTION =
  "Take care: hot steel, fumes, carbon monoxide, burning quench oil (lid and extinguisher at hand), grinding and wood dust, noise, glue on the skin, sharp edges (tape them). Data sheets and local rules go first.";

/** The bench card of a job: everything that is set on a tool, from the saw to the stone. */
export function makeCardModel(measured: Measured, setup: Setup): CardModel {
  const { job, knife } = measured;
  const bench = inFileTerms(job, () => benchSetUp(knife, job.shop));
  return {
    code: job.knife.order.code,
    title: job.knife.order.title,
    about: knifeWords(measured),
    warnings: stopWords(setup, job),
    sides: [forgeSide(measured, setup), benchSide(measured, bench)],
    caution: CAUTION,
  };
}
