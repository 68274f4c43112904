import { fileAnswer, hardnessByFiles, type Knife, soakByThickness, USUAL_FILES } from "@scantling/geometry";
import { formatCaliper } from "@scantling/geometry/units";
import type { CardBlock } from "@scantling/render";
import type { Measured } from "../measure.js";
import { besideUnits } from "../models/sheet-units.js";
import { fixed } from "../report/figures.js";
import { withOther, words } from "./card-blocks.js";
import { recipesOf } from "./heat-recipes.js";

/** What the card says of soak and proof, a line each; `setup` has them at length. */
export interface HeatLines {
  readonly soak: readonly CardBlock[];
  readonly proof: readonly CardBlock[];
}

export const heatLines = (measured: Measured): HeatLines => ({
  soak: soakLines(measured),
  proof: proofLine(measured),
});

/** The thickest section that goes into the fire, mm: between its stations the spine is thicker nowhere. */
export function thickestToHarden(knife: Knife): number {
  const { slab } = knife.body("ready");
  return Math.max(...slab.spine.points.map(({ at }) => slab.thicknessAt(at)));
}

/** Only for steels that a source counts by thickness. */
function soakLines({ job, knife }: Measured): CardBlock[] {
  const thickness = thickestToHarden(knife);
  const thick = withOther(formatCaliper, thickness, job.units, besideUnits(job));
  const steels = recipesOf(job);
  return steels.flatMap(({ steel }) =>
    soakByThickness(steel, thickness).map(({ minutes, source }) =>
      words(
        `Soak by thickness, ${steels.length > 1 ? `${steel}, ` : ""}${thick}: ${fixed(minutes, 0)} min (${source}).`,
      ),
    ),
  );
}

/** The files that a usual blade lies between. */
const USUAL = [60, 65] as const;

/** The hardest file that does not bite at the hardness asked for, and the softest that does; what a usual blade shows where none is. */
function proofLine({ hardness }: Measured): CardBlock[] {
  const aim = hardness?.aim;
  if (aim === undefined) {
    const [low, high] = USUAL;
    const found = hardnessByFiles([
      { file: low, answer: "barely skates" },
      { file: high, answer: "cuts" },
    ]);
    return found === undefined
      ? []
      : [words(`File ${low} barely skates, ${high} cuts: ${found.low} to ${found.high} HRC (SAE J864).`)];
  }
  const answers = USUAL_FILES.map((file) => ({ file, answer: fileAnswer(file, aim) }));
  const skates = answers.filter(({ answer }) => answer.endsWith("skates")).at(-1);
  const cuts = answers.find(({ answer }) => answer.endsWith("cuts"));
  const told = [skates, cuts].flatMap((one) => (one === undefined ? [] : [`${one.file} ${one.answer}`]));
  const at = fixed(aim, Number.isInteger(aim) ? 0 : 1);
  return told.length === 0 ? [] : [words(`Test: at ${at} HRC file ${told.join(", ")} (SAE J864).`)];
}
