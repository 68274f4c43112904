import type { GateStage, LossSpec, StationPlace, TaskName } from "@scantling/geometry";
import type { FileUnits } from "@scantling/geometry/units";
import type { AskName } from "./ask-fields.js";
import type { DRAWN_WITH } from "./drawn-with.js";
import { knifeJsonSchema, recordJsonSchema } from "./json-schema.js";
import { liftTolerances } from "./lift.js";
import { renameScale } from "./loss-fields.js";
import type { VERDICTS } from "./planned-fields.js";
import type { Position } from "./problem.js";
import { positionFinder, readShape } from "./read-shape.js";
import { type HARDNESS_AFTER, recordSchema } from "./record-schema.js";
import { remember } from "./remember.js";

const schemaFor = remember((units: FileUnits) => recordSchema(units));

/** A section across the bar or the blade, mm. */
export interface MeasuredSection {
  readonly height: number;
  readonly thickness: number;
}

/** Sizes read at one place of the knife, mm. */
export interface MeasuredSize {
  readonly at: StationPlace;
  readonly thickness?: number;
  readonly height?: number;
}

/** Rockwell C, from a tester or between two files. */
export interface MeasuredHardness {
  readonly HRC?: number;
  /** The softest file that cut: the blade is softer than it. */
  readonly filesCut?: number;
  /** The hardest file that skated: the blade is harder than it. */
  readonly filesSkate?: number;
  readonly after?: (typeof HARDNESS_AFTER)[number];
}

/** One entry of a record: what was measured at one moment. g, mm, hours. */
export interface RecordEntry {
  /** From 1, in the order of the file. */
  readonly revision: number;
  /** `2026-11-28` */
  readonly on: string;
  readonly stage?: GateStage;
  /** What the scale showed, the handling bar with it. */
  readonly mass?: number;
  /** Of the handling bar; left out where none was told. */
  readonly tare?: number;
  /** Since the stage before. */
  readonly heats?: number;
  readonly weldingHeats?: number;
  readonly sizes?: readonly MeasuredSize[];
  readonly drawn?: {
    readonly from: MeasuredSection;
    readonly to: MeasuredSection;
    readonly with?: (typeof DRAWN_WITH)[number];
  };
  readonly task?: TaskName;
  readonly hours?: number;
  readonly hardness?: MeasuredHardness;
  readonly batch?: string;
  readonly note?: string;
  /** The mass was doubted and stands all the same. */
  readonly confirmed?: boolean;
  /** The earlier entry that this one stands in place of. */
  readonly correctsRevision?: number;
}

/** Steel that has to be there, at low, usual and high losses still to come, g. */
export interface PlannedNeed {
  readonly low: number;
  readonly usual: number;
  readonly high: number;
}

/** Pieces of one bar, mm and g. */
export interface PlannedBar {
  readonly bar: string;
  readonly steel?: string;
  readonly thickness: number;
  readonly width: number;
  readonly count: number;
  readonly length: number;
  readonly mass: number;
}

/** What was planned when the first entry was made. g, mm, shares. */
export interface Planned {
  readonly on: string;
  readonly program: string;
  readonly plan?: number;
  readonly bars?: readonly PlannedBar[];
  readonly heats: number;
  readonly weldingHeats: number;
  readonly needed: Partial<Record<GateStage, PlannedNeed>>;
  readonly knife: { readonly mass: number; readonly least: number; readonly most: number };
  /** Ahead of the heel. */
  readonly balance: { readonly at: number; readonly least: number; readonly most: number };
  readonly asks: readonly { readonly ask: AskName; readonly verdict: (typeof VERDICTS)[number] }[];
  readonly losses: Partial<LossSpec>;
  /** The texts of the files that it was planned from. */
  readonly files: { readonly knife: string; readonly drawing?: string; readonly shop?: string };
}

/** A record file that was read whole. */
export interface RecordFile {
  readonly fileName: string;
  readonly units: FileUnits;
  /** The knife file, as it stands there: beside the record. */
  readonly knife: string;
  /** Undefined in a record that was begun by hand. */
  readonly planned: Planned | undefined;
  /** In the order of writing, those that a later one corrects among them; see `standingEntries`. */
  readonly entries: readonly RecordEntry[];
  positionOf(path: string): Position | undefined;
}

/**
 * Reads a record file, YAML or JSON.
 *
 * @throws {FileError} with every problem found, in the order of the file.
 */
export function readRecordFile(text: string, fileName: string): RecordFile {
  const { data, tree, units } = readShape(text, fileName, {
    schemaFor,
    explained: () => ({
      schema: recordJsonSchema(),
      other: { schema: knifeJsonSchema(), called: "the knife file" },
    }),
  });
  const { plain } = liftTolerances(data);
  const { knife, planned, entries = [] } = plain;
  return {
    fileName,
    units,
    knife,
    planned: planned === undefined ? undefined : { ...planned, losses: renameScale(planned.losses) },
    entries,
    positionOf: positionFinder(tree),
  };
}
