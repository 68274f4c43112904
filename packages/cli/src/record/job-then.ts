import type { StockPlan } from "@scantling/geometry";
import { CommandFailure } from "../failure.js";
import { FileError, readKnifeFile, readShopFile, withDrawing } from "../file/index.js";
import type { Planned } from "../file/record-file.js";
import { type Job, makeJob } from "../load.js";
import { type Measured, measure } from "../measure.js";
import { planBars } from "../stock-report.js";
import type { JobTexts } from "./planned.js";

/** Larger than any outline: such a drawing is not kept in a record. */
const LONGEST_DRAWING = 256 * 1024;

/** The texts that a record keeps of a job. */
export function textsOf({ texts, spec }: Job): JobTexts {
  const { outline } = spec.blade;
  const drawing = "drawing" in outline ? outline.drawing : undefined;
  return drawing === undefined || drawing === "" || drawing.length > LONGEST_DRAWING
    ? texts
    : { ...texts, drawing };
}

/** Names that messages about kept texts give them. */
export interface KeptNames {
  readonly knife: string;
  readonly shop: string;
}

/**
 * The job that kept texts describe.
 *
 * @throws {FileError} where this version of the program does not take them.
 */
export function jobOfTexts(texts: JobTexts, today: Job, names: KeptNames): Job {
  const knife = readKnifeFile(texts.knife, names.knife);
  return makeJob({
    knife: withDrawing(knife, texts.drawing ?? ""),
    shopFile: texts.shop === undefined ? undefined : readShopFile(texts.shop, names.shop),
    name: today.name,
    fromStdin: false,
    units: today.units,
    texts,
  });
}

/** The same where it cannot be read any more, or makes no knife: undefined. */
export function tryMeasured(make: () => Job): Measured | undefined {
  try {
    return measure(make());
  } catch (error) {
    if (error instanceof FileError || error instanceof CommandFailure) return undefined;
    throw error;
  }
}

/** A job with the bars that were cut for it, and which of the plans of such bars it was. */
export interface AsCut {
  readonly measured: Measured;
  readonly place: number | undefined;
}

/**
 * Today's job with the bars that its record says were cut: the rack has other bars by now, and those that were taken are
 * gone from it.
 */
export function withBarsCut(measured: Measured, planned: Planned | undefined): AsCut {
  const [cut] = planned?.bars ?? [];
  if (planned === undefined || cut === undefined || measured.job.knife.stack !== undefined) {
    return { measured, place: undefined };
  }
  const bar = {
    name: cut.bar,
    width: cut.width,
    thickness: cut.thickness,
    ...(cut.steel === undefined ? {} : { steel: cut.steel }),
  };
  const { job } = measured;
  const asCut = { ...measured, job: { ...job, shop: { ...job.shop, rack: [bar] } } };
  const isIt = (plan: StockPlan): boolean => plan.bars === cut.count;
  const place = planBars(asCut).plans.findIndex(isIt);
  return place < 0 ? { measured, place: undefined } : { measured: asCut, place: place + 1 };
}
