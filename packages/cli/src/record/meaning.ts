import { GATE_STAGES, type GateStage, type TaskName } from "@scantling/geometry";
import type { RecordEntry } from "../file/record-file.js";
import { standingEntries, type Weighing, weighingsOf } from "./weighings.js";

/** Steel that went between two weighings. */
export interface LossSince {
  readonly from: Weighing;
  readonly to: Weighing;
  /** g; below nothing where the mass rose. */
  readonly mass: number;
  /** Of what was weighed before. */
  readonly share: number;
  /**
   * Of the mass, in each heat; only from the billet to the forged blade, where fire alone takes of it, and where the heats
   * were counted. `1 − (m₂/m₁)^(1/n)`
   */
  readonly perHeat: number | undefined;
}

/**
 * What was lost on the way to a stage since the nearest one before it that was weighed.
 *
 * @example
 * lossTo(entries, "forged")?.perHeat; // 0.0077 of 702 g that became 655 g in 9 heats
 */
export function lossTo(entries: readonly RecordEntry[], stage: GateStage): LossSince | undefined {
  const weighings = weighingsOf(entries);
  const at = weighings.findIndex((one) => one.stage === stage);
  const [from, to] = [weighings[at - 1], weighings[at]];
  if (from === undefined || to === undefined) return undefined;
  const mass = from.steel - to.steel;
  const fireOnly = from.stage === "billet" && to.stage === "forged";
  const { heats } = to;
  const counted = fireOnly && heats !== undefined && heats > 0 && mass >= 0;
  return {
    from,
    to,
    mass,
    share: mass / from.steel,
    perHeat: counted ? 1 - (to.steel / from.steel) ** (1 / heats) : undefined,
  };
}

/** All losses that the record tells, in the order of the work. */
export const lossesIn = (entries: readonly RecordEntry[]): readonly LossSince[] =>
  GATE_STAGES.flatMap((stage) => lossTo(entries, stage) ?? []);

/**
 * Share of a thinning that went into height: `ln(h₂/h₁) / ln(t₁/t₂)`.
 *
 * @example
 * spreadOf({ from: { height: 40, thickness: 30 }, to: { height: 48, thickness: 20 } }); // 0.45
 */
export function spreadOf({ from, to }: NonNullable<RecordEntry["drawn"]>): number {
  return Math.log(to.height / from.height) / Math.log(from.thickness / to.thickness);
}

/** Hours that the record tells for each task, in the order of their first entry. */
export function hoursByTask(entries: readonly RecordEntry[]): ReadonlyMap<TaskName, number> {
  const sums = new Map<TaskName, number>();
  for (const { task, hours } of standingEntries(entries)) {
    if (task !== undefined && hours !== undefined) sums.set(task, (sums.get(task) ?? 0) + hours);
  }
  return sums;
}
