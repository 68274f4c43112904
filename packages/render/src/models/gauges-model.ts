import type { GaugeSet } from "@scantling/geometry";
import type { OrderHead } from "./order-head.js";

/** The gauges of a knife, as they are measured. */
export interface GaugesModel extends OrderHead {
  readonly gauges: GaugeSet;
}
