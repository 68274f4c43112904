import type { Job } from "../load.js";

/** What every sheet of an order says about it. */
export const orderHead = ({ knife, units }: Job): { code: string; title: string; units: Job["units"] } => ({
  code: knife.order.code,
  title: knife.order.title,
  units,
});
