import type { SheetUnits } from "../sheet-units.js";

/** What every sheet of an order says about it. */
export interface OrderHead {
  readonly code: string;
  readonly title: string;
  readonly units: SheetUnits;
  /** Date or revision text given by the caller. */
  readonly revision?: string;
}
