import { handleStock } from "@scantling/geometry";
import type { SlabsModel } from "@scantling/render";
import { inFileTerms, type Measured } from "../measure.js";
import { orderHead } from "./order-head.js";

/** The handle's wood; undefined where the knife has neither slabs nor a block. */
export function makeSlabsModel({ job, knife }: Measured): SlabsModel | undefined {
  const stock = inFileTerms(job, () => handleStock(knife, job.shop.kerf));
  return stock === undefined ? undefined : { ...orderHead(job), stock };
}
