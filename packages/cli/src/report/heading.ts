import type { Measured } from "../measure.js";
import { isRearKnown, sizesOf } from "../sizes.js";
import { LENGTH_FIGURES, lengthText } from "./figures.js";
import { spread, wrap } from "./layout.js";
import { fromMemoryLines } from "./materials.js";

/** Scales along x and y that differ by less, as a share, are one. */
const SAME_SCALE = 1e-9;
const FINEST = LENGTH_FIGURES[2] ?? lengthText;

/** The order, the file it comes from, and the knife in one line: the head of every report for people. */
export function headingLines(measured: Measured): string[] {
  const { job } = measured;
  const { order, fileName } = job.knife;
  const title = [order.code, order.title].filter((part) => part !== "").join(": ");
  return [
    ...spread(title, fileName),
    ...wrap(knifeWords(measured)),
    ...drawingLines(measured),
    ...fromMemoryLines(job.spec),
  ];
}

/** Steel and the three sizes that a knife is called by. */
export function knifeWords({ job, knife }: Measured): string {
  const sizes = sizesOf(knife);
  const show = (mm: number): string => lengthText(mm, job.units);
  const whole = isRearKnown(knife) ? "overall" : "with tang";
  return `${steelWords(job.spec.steel.name)}, edge ${show(sizes.edgeLength)}, heel ${show(sizes.heelHeight)} high, ${whole} ${show(sizes.overallLength)}`;
}

/** `1084 steel`, but `carbon steel` and `wrought iron` as they are. */
const steelWords = (name: string): string => (/\b(?:steel|iron)\b/iu.test(name) ? name : `${name} steel`);

/** The scale at which the outline's drawing was read: the first thing to look at where the sizes are wrong. */
function drawingLines({ knife, job }: Measured): string[] {
  const unit = knife.drawingUnit;
  if (unit === undefined) return [];
  const show = (mm: number): string => FINEST(mm, job.units);
  const even = Math.abs(unit.x - unit.y) <= SAME_SCALE * unit.x;
  return wrap(`Drawing: 1 unit = ${even ? show(unit.x) : `${show(unit.x)} across, ${show(unit.y)} up`}`);
}
