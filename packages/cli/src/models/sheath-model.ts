import { foldOverSheath, type SheathSizes } from "@scantling/geometry";
import type { SheathModel } from "@scantling/render";
import { inFileTerms, type Measured } from "../measure.js";
import { orderHead } from "./order-head.js";

/** A fold-over sheath for the finished knife. */
export function makeSheathModel({ job, knife }: Measured, sizes: Partial<SheathSizes> = {}): SheathModel {
  return { ...orderHead(job), sheath: inFileTerms(job, () => foldOverSheath(knife, sizes)) };
}
