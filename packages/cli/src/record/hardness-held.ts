import {
  type HardnessAnswer,
  type HardnessBracket,
  type HardnessHeld,
  holdHardness,
} from "@scantling/geometry";
import { limitsOf } from "../asks.js";
import type { MeasuredHardness, RecordEntry } from "../file/record-file.js";
import type { Measured } from "../measure.js";

/** A hardness that was measured, and what it is held against. */
export interface HardnessAnswered {
  readonly asked: HardnessAnswer["asked"];
  readonly byFiles: boolean;
  /** Left out where it was read before the temper: what was asked for is what the temper leaves. */
  readonly held?: HardnessHeld;
}

/** What a reading leaves open, HRC: nothing by a tester; what lies between the files. */
export function bracketOf({ HRC: tester, filesCut, filesSkate }: MeasuredHardness): HardnessBracket {
  return tester === undefined
    ? { low: filesSkate ?? Number.NEGATIVE_INFINITY, high: filesCut ?? Number.POSITIVE_INFINITY }
    : { low: tester, high: tester };
}

/** Holds the hardness of an entry against the order; undefined where there is none or none was asked for. */
export function answerHardness(
  { hardness }: RecordEntry,
  measured: Measured | undefined,
): HardnessAnswered | undefined {
  const ask = measured?.job.knife.order.hardness;
  const asked = measured?.hardness?.asked;
  if (hardness === undefined || ask === undefined || asked === undefined) return undefined;
  const said = { asked, byFiles: hardness.HRC === undefined };
  if (hardness.after === "quench") return said;
  const { inclusive } = limitsOf(ask.test);
  return { ...said, held: holdHardness(bracketOf(hardness), { ...asked, inclusive }) };
}
