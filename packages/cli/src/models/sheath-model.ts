import { foldOverSheath } from "@scantling/geometry";
import type { SheathModel } from "@scantling/render";
import { inFileTerms, type Measured } from "../measure.js";
import { orderHead } from "./order-head.js";

/** A fold-over sheath for the finished knife, as knife file and shop file ask for it. */
export function makeSheathModel({ job, knife }: Measured): SheathModel {
  return { ...orderHead(job), sheath: inFileTerms(job, () => foldOverSheath(knife, job.sheath)) };
}
