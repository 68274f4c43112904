import type { OrderHead } from "@scantling/render";
import type { Job } from "../load.js";
import { sheetUnits } from "./sheet-units.js";

/** What every sheet of an order says about it. */
export const orderHead = (job: Job): OrderHead => ({
  code: job.knife.order.code,
  title: job.knife.order.title,
  units: sheetUnits(job),
});
