import { handleStock } from "@scantling/geometry";
import type { SlabsModel } from "@scantling/render";
import { inFileTerms, type Measured } from "../measure.js";
import { orderHead } from "./order-head.js";

/** The handle's wood; undefined where the knife has neither slabs nor a block. */
export function makeSlabsModel({ job, knife }: Measured): SlabsModel | undefined {
  const stock = inFileTerms(job, () => handleStock(knife, job.shop.kerf));
  return stock === undefined ? undefined : { ...orderHead(job), stock };
}

/** Why there is no wood to draw: a handle that is told by the mass of its parts, or by fittings alone, has no shape. */
export function whyNoSlabs({ knife }: Pick<Measured, "knife">): string {
  const { parts = [], ...rest } = knife.spec.handle ?? {};
  if (parts.length > 0) return "the handle is given as parts, without slabs or a block";
  return [Object.values(rest)].flat(2).some((part) => part !== undefined)
    ? "the handle is given without slabs or a block"
    : "the knife has no handle";
}
