import { GATE_STAGES, type GateStage } from "@scantling/geometry";
import type { RecordEntry } from "../file/record-file.js";

/**
 * The entries that hold: those that no later one corrects. One that only strikes out another, with nothing but a note of
 * its own, stays.
 */
export function standingEntries(entries: readonly RecordEntry[]): readonly RecordEntry[] {
  const corrected = new Set(entries.flatMap(({ correctsRevision }) => correctsRevision ?? []));
  return entries.filter(({ revision }) => !corrected.has(revision));
}

/** Steel on the scale at a stage, as it holds today. */
export interface Weighing {
  readonly stage: GateStage;
  /** Handling bar off, g. */
  readonly steel: number;
  /** Since the stage before that was weighed; undefined where nobody counted. */
  readonly heats: number | undefined;
  readonly weldingHeats: number | undefined;
  readonly confirmed: boolean;
  readonly revision: number;
  readonly on: string;
}

/**
 * What was weighed, one a stage, in the order of the work: the last mass that stands, and the last count of heats.
 *
 * @example
 * weighingsOf(record.entries).map(({ stage, steel }) => [stage, steel]); // [["billet", 702], ["forged", 655]]
 */
export function weighingsOf(entries: readonly RecordEntry[]): readonly Weighing[] {
  const standing = standingEntries(entries);
  return GATE_STAGES.flatMap((stage): Weighing[] => {
    const ofStage = standing.filter((entry) => entry.stage === stage);
    const weighed = ofStage.findLast(({ mass }) => mass !== undefined);
    if (weighed?.mass === undefined) return [];
    return [
      {
        stage,
        steel: weighed.mass - (weighed.tare ?? 0),
        heats: ofStage.findLast(({ heats }) => heats !== undefined)?.heats,
        weldingHeats: ofStage.findLast(({ weldingHeats }) => weldingHeats !== undefined)?.weldingHeats,
        confirmed: weighed.confirmed === true,
        revision: weighed.revision,
        on: weighed.on,
      },
    ];
  });
}
