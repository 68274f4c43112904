import { gaugeSet } from "@scantling/geometry";
import type { GaugesModel } from "@scantling/render";
import { inFileTerms, type Measured } from "../measure.js";
import { orderHead } from "./order-head.js";

/** The gauges of the finished knife, its bevels before sharpening. */
export function makeGaugesModel({ job, knife }: Measured): GaugesModel {
  return { ...orderHead(job), gauges: inFileTerms(job, () => gaugeSet(knife)) };
}
