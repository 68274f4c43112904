import type { HandleStock } from "@scantling/geometry";
import type { OrderHead } from "./order-head.js";

/** The wood of a handle, as it is measured. */
export interface SlabsModel extends OrderHead {
  readonly stock: HandleStock;
}
