import type { Measured } from "../measure.js";
import { sizesOf } from "../sizes.js";
import { lengthText } from "./figures.js";
import { spread, wrap } from "./layout.js";
import { fromMemoryLines } from "./materials.js";

/** The order, the file it comes from, and the knife in one line: the head of every report for people. */
export function headingLines({ job, knife }: Measured): string[] {
  const { order, fileName } = job.knife;
  const sizes = sizesOf(knife.outline);
  const title = [order.code, order.title].filter((part) => part !== "").join(": ");
  const show = (mm: number): string => lengthText(mm, job.units);
  return [
    ...spread(title, fileName),
    ...wrap(
      `${job.spec.steel.name} steel, edge ${show(sizes.edgeLength)}, heel ${show(sizes.heelHeight)} high, overall ${show(sizes.overallLength)}`,
    ),
    ...fromMemoryLines(job.spec),
  ];
}
