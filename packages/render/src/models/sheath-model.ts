import type { Sheath } from "@scantling/geometry";
import type { OrderHead } from "./order-head.js";

/** A fold-over sheath laid flat, as it is measured. */
export interface SheathModel extends OrderHead {
  readonly sheath: Sheath;
}
