// The orders' files through the program's own file layer.
import { join } from "node:path";
import type { Knife } from "@scantling/geometry";
import { buildKnife } from "../../packages/cli/src/file/index.js";
import { nodeIo } from "../../packages/cli/src/io/node-io.js";
import { type Job, loadJob } from "../../packages/cli/src/load.js";
import { judgingOf } from "../../packages/cli/src/measure.js";
import { ROOT } from "../unit/repository.js";
import { type DrawnBlade, drawnBlade } from "./drawn.js";

export interface LoadedOrder {
  readonly job: Job;
  readonly knife: Knife;
}

/** One for all: each listens to the streams of the process. */
const io = nodeIo();

/** Path of an order's knife file. */
export const orderFile = (name: string): string => join(ROOT, "examples", name, `${name}.knife.yaml`);

/** The knife of an order, with the shop that its file finds. */
export async function loadOrder(name: string): Promise<LoadedOrder> {
  const job = await loadJob(io, orderFile(name), {});
  return { job, knife: buildKnife(job.spec, judgingOf(job)) };
}

/** Edge and spine of an order, as its file gives them. */
export function drawingOf({ job }: LoadedOrder): DrawnBlade {
  const { outline } = job.spec.blade;
  if (!("runs" in outline) || "drawing" in outline) throw new Error("the orders are drawn by runs");
  return drawnBlade(outline.runs);
}
