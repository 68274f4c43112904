// Random knives with handles and an order's words, as jobs in the shop of the market garden.

import type { Job } from "../../../packages/cli/src/load.js";
import { type Measured, measure } from "../../../packages/cli/src/measure.js";
import { handledKnife } from "../../../packages/render/test/sheets/random-handles.js";

/** Random knife number `index` as a job: in mm by turns and in inches, with any code and title. */
export function randomJob(base: Job, index: number): { readonly name: string; readonly measured: Measured } {
  const { name, knife, head } = handledKnife(index);
  const job: Job = {
    ...base,
    units: head.units,
    knife: { ...base.knife, order: { ...base.knife.order, code: head.code, title: head.title, asks: [] } },
    spec: { ...knife.spec, steel: { name: "1084" }, forging: base.spec.forging ?? {} },
  };
  return { name, measured: measure(job) };
}
