import type { TaskName } from "../job/task-names.js";
import type { CaliperStage } from "../stock/gates/caliper.js";
import type { GateStack, GateStage } from "../stock/gates/stage-need.js";

/** Steel weighed at a stage, handling bar off. */
export interface JobWeighing {
  readonly stage: GateStage;
  /** g */
  readonly steel: number;
  /** Forging heats since the stage before that was weighed; left out where nobody counted. */
  readonly heats?: number;
  readonly weldingHeats?: number;
  /** The mass was doubted and weighed again: it is no slip of the hand. */
  readonly confirmed?: boolean;
  readonly on: string;
}

/** A thickness read with a caliper. */
export interface JobSize {
  readonly stage: CaliperStage;
  /** mm ahead of the heel. */
  readonly x: number;
  /** mm */
  readonly thickness: number;
  readonly on: string;
}

/** A section before and after it was drawn out, mm. */
export interface JobDrawn {
  readonly from: { readonly height: number; readonly thickness: number };
  readonly to: { readonly height: number; readonly thickness: number };
  /** At welding heat: the squeeze of the weld. */
  readonly welding: boolean;
  /** Fullers laid along the bar, which spread it as nothing else does. */
  readonly fullers: boolean;
  readonly on: string;
}

/** Hours at the bench. */
export interface JobHours {
  readonly task: TaskName;
  readonly hours: number;
  readonly on: string;
}

/** How often a task was done in a job, where the shop counts hours of each time: welds, coats of oil. Left out: once. */
export type TimesDone = Partial<Record<TaskName, number>>;

/** What the sums of the ledger need of a job as it was planned; whatever is not known is left out. */
export interface JobPlan {
  /** Bars of one steel; left out where the stack is of several. */
  readonly stack?: GateStack;
  /** Of the steel, g/mm³. */
  readonly density?: number;
  /** What blade and tang are to weigh, g: only tells which of two numbers slipped. */
  readonly finished?: number;
  /** Surface of the forged blade, mm²: needed for skins. */
  readonly forgedSurface?: number;
  /** Flats left from the hammer: nothing is ground off them. */
  readonly flatsKept: boolean;
}

/** The unit that numbers were written in, and the units that it is taken for by mistake. */
export interface WrittenIn {
  /** As many g or mm: digits change places in what was written. */
  readonly unit: number;
  readonly mixUps: readonly UnitMixUp[];
}

/** A unit taken for another. */
export interface UnitMixUp {
  /** What was meant, over what was written. */
  readonly times: number;
  /** For a sentence: `ounces written as grams`. */
  readonly words: string;
}

/** What was measured of one job, and what of its plan the sums need. */
export interface JobRecord {
  /** As the person sees it. */
  readonly file: string;
  readonly steel?: string;
  /** In the order of the work, one a stage. */
  readonly weighings: readonly JobWeighing[];
  readonly sizes: readonly JobSize[];
  readonly drawn: readonly JobDrawn[];
  readonly hours: readonly JobHours[];
  readonly timesDone?: TimesDone;
  readonly plan?: JobPlan;
  readonly written: { readonly mass: WrittenIn; readonly length: WrittenIn };
}
