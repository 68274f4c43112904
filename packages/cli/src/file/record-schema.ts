import { CALIPER_STATES, GATE_STAGES, TASK_WORDS, type TaskName } from "@scantling/geometry";
import type { FileUnits } from "@scantling/geometry/units";
import { z } from "zod";
import { dateField } from "./date-field.js";
import { DRAWN_WITH } from "./drawn-with.js";
import { count, NOT_NEGATIVE, name, POSITIVE, plainNumber, quantity } from "./fields.js";
import { place } from "./knife-fields.js";
import { plannedFields } from "./planned-fields.js";
import { GROUP, unitsField, versionField } from "./shared-fields.js";

/** When a hardness was measured. */
export const HARDNESS_AFTER = ["quench", "temper"] as const;

const TASK_NAMES = Object.keys(TASK_WORDS) as [TaskName, ...TaskName[]];

/** Hardness on the C scale is defined from 20 to 70. Source: ISO 6508-1. */
const HRC = { least: 20, most: 70 } as const;

const LONGEST_NOTE = 1000;

/**
 * The record file, declared once like the knife file; the source of `schemas/record.schema.json`.
 *
 * @param units - What bare numbers of the file are in.
 */
export function recordSchema(units: FileUnits) {
  return z
    .strictObject(
      {
        scantling: versionField(),
        units: unitsField(),
        knife: name("The knife file that this is the record of, beside this one"),
        planned: plannedFields(units).optional(),
        entries: z
          .array(entrySchema(units), {
            error: "needs a list of entries: - { revision: 1, on: 2026-11-28, … }",
          })
          .superRefine(inOrder, ALWAYS)
          .meta({ description: "What was measured, in the order of writing; only ever added to" })
          .optional(),
      },
      { error: "needs to be a group of keys, beginning with scantling: 1" },
    )
    .meta({ title: "Scantling record file, version 1" });
}

/** Rules between keys are looked at even where one of the keys is wrong in itself: all problems at once. */
const ALWAYS = {
  when: ({ value }: { readonly value: unknown }): boolean => typeof value === "object" && value !== null,
} as const;

/** One entry: what was measured at one moment. */
export function entrySchema(units: FileUnits) {
  const mass = (about: string, range: { readonly above?: number; readonly from?: number } = POSITIVE) =>
    quantity("mass", units, { ...range, tolerance: false, about });
  const length = (about: string) => quantity("length", units, { ...POSITIVE, tolerance: false, about });
  const section = (about: string) =>
    z
      .strictObject(
        { height: length("Across, in the direction of the blade's height"), thickness: length("Thickness") },
        { error: "needs height and thickness, such as { height: 40, thickness: 30 }" },
      )
      .meta({ description: about });
  const hrc = (about: string) =>
    plainNumber(`${about}, HRC from ${HRC.least} to ${HRC.most}`, HRC.least).refine(
      (value) => value <= HRC.most,
      {
        error: `must be ${HRC.most} or less`,
        params: { code: "out-of-range" },
      },
    );
  return z
    .strictObject(
      {
        revision: count("Running number: the first entry is 1", 1, 1_000_000),
        on: dateField("The day that it was measured on"),
        stage: z
          .enum(GATE_STAGES)
          .meta({ description: "Stage of the piece that was weighed or measured" })
          .optional(),
        mass: mass("What the scale showed, the handling bar with it").optional(),
        tare: mass("Mass of the handling bar, 0 for none", NOT_NEGATIVE).optional(),
        heats: count("Forging heats since the stage before", 0, 500).optional(),
        weldingHeats: count("Welding heats since the stage before", 0, 500).optional(),
        sizes: z
          .array(
            z
              .strictObject(
                {
                  at: place(units, "knife"),
                  thickness: length("Full thickness there").optional(),
                  height: length("Height there, edge to spine").optional(),
                },
                { error: "needs a place and a size, { at: heel, thickness: 5.6 }" },
              )
              .refine(({ thickness, height }) => thickness !== undefined || height !== undefined, {
                error: "needs a thickness, a height, or both",
                params: { code: "size-missing" },
              }),
            { error: "needs a list of places: - { at: heel, thickness: 5.6 }" },
          )
          .min(1, { error: "needs at least one place: - { at: heel, thickness: 5.6 }" })
          .meta({ description: "Sizes measured at places along the knife" })
          .optional(),
        drawn: z
          .strictObject(
            {
              from: section("Section before"),
              to: section("Section after"),
              with: z.enum(DRAWN_WITH).meta({ description: "What the piece was drawn out with" }).optional(),
            },
            { error: "needs { from: { height: 40, thickness: 30 }, to: { height: 48, thickness: 20 } }" },
          )
          .refine(({ from, to }) => to.thickness.value < from.thickness.value, {
            error: "must get thinner: write the section before it under from, the one after it under to",
            params: { code: "not-drawn" },
          })
          .meta({ description: "A section measured before and after drawing out: how far the steel spread" })
          .optional(),
        task: z.enum(TASK_NAMES).meta({ description: "The task that the hours went into" }).optional(),
        hours: plainNumber("Hours of hand work, 3.5 for three and a half", 0)
          .refine((value) => value > 0, { error: "must be more than 0", params: { code: "out-of-range" } })
          .optional(),
        hardness: z
          .strictObject(
            {
              HRC: hrc("As a tester showed it").optional(),
              filesCut: hrc("The softest file that cut").optional(),
              filesSkate: hrc("The hardest file that skated").optional(),
              after: z
                .enum(HARDNESS_AFTER)
                .meta({ description: "Measured after quench or temper" })
                .optional(),
            },
            { error: "needs { HRC: 60 }, or { filesCut: 65, filesSkate: 60 }" },
          )
          .superRefine(hardnessHolds)
          .meta({ description: "Hardness, from a tester or from hardness files" })
          .optional(),
        batch: name("Batch or heat number of the steel").optional(),
        note: name("Anything worth knowing next time", LONGEST_NOTE).optional(),
        confirmed: z
          .boolean({ error: "needs true or false" })
          .meta({ description: "The program doubted the mass; it was weighed again and stands" })
          .optional(),
        correctsRevision: count(
          "The earlier entry that this one stands in place of",
          1,
          1_000_000,
        ).optional(),
      },
      { error: GROUP },
    )
    .superRefine(entryHolds, ALWAYS);
}

type Complain = (code: string, path: readonly string[], message: string) => void;

const complainTo =
  (ctx: z.core.$RefinementCtx): Complain =>
  (code, path, message) =>
    ctx.addIssue({ code: "custom", message, path: [...path], params: { code } });

interface GivenHardness {
  readonly HRC?: number | undefined;
  readonly filesCut?: number | undefined;
  readonly filesSkate?: number | undefined;
}

function hardnessHolds(
  { HRC: tester, filesCut, filesSkate }: GivenHardness,
  ctx: z.core.$RefinementCtx,
): void {
  const complain = complainTo(ctx);
  if (tester === undefined && filesCut === undefined && filesSkate === undefined) {
    complain("hardness-missing", [], "needs HRC, filesCut or filesSkate");
  }
  if (filesCut !== undefined && filesSkate !== undefined && filesCut <= filesSkate) {
    complain("files-swapped", [], "must have a file that cuts harder than the one that skates");
  }
}

interface GivenEntry {
  readonly stage?: string | undefined;
  readonly mass?: { readonly value: number } | undefined;
  readonly tare?: { readonly value: number } | undefined;
  readonly heats?: number | undefined;
  readonly weldingHeats?: number | undefined;
  readonly sizes?: unknown;
  readonly drawn?: unknown;
  readonly task?: string | undefined;
  readonly hours?: number | undefined;
  readonly hardness?: unknown;
  readonly batch?: string | undefined;
  readonly note?: string | undefined;
}

/** What the keys of one entry owe one another. */
function entryHolds(entry: GivenEntry, ctx: z.core.$RefinementCtx): void {
  const complain = complainTo(ctx);
  const { stage, mass, tare, heats, weldingHeats, sizes, task, hours } = entry;
  const ofStage = { mass, heats, weldingHeats, sizes };
  const measured = Object.entries(ofStage).filter(([, value]) => value !== undefined);
  for (const [key] of measured) {
    if (stage === undefined)
      complain("stage-missing", [key], `needs a stage beside it: ${GATE_STAGES.join(", ")}`);
  }
  if (stage !== undefined && measured.length === 0) {
    complain("stage-alone", ["stage"], "needs a mass, heats or sizes beside it");
  }
  if (tare !== undefined && mass === undefined) complain("mass-missing", ["tare"], "needs a mass beside it");
  if (tare !== undefined && mass !== undefined && tare.value >= mass.value) {
    complain("tare-too-great", ["tare"], "leaves no steel of the mass: it must be less than that");
  }
  if (sizes !== undefined && stage !== undefined && !Object.hasOwn(CALIPER_STATES, stage)) {
    const stages = Object.keys(CALIPER_STATES).join(", ");
    complain(
      "sizes-too-early",
      ["sizes"],
      `tell of a blade, which has no shape yet at this stage; use ${stages}`,
    );
  }
  if (task !== undefined && hours === undefined) complain("hours-missing", ["task"], "needs hours beside it");
  if (hours !== undefined && task === undefined)
    complain("task-missing", ["hours"], "needs a task beside it");
  const { drawn, hardness, batch, note } = entry;
  const says = [stage, mass, heats, weldingHeats, sizes, task, hours, tare, drawn, hardness, batch, note];
  if (says.every((value) => value === undefined)) complain("entry-empty", [], "says nothing but its day");
}

interface Numbered {
  readonly revision: number;
  readonly correctsRevision?: number | undefined;
}

/** Entries are numbered from 1 in the order of the file, and a correction stands behind what it corrects, once. */
function inOrder(entries: readonly Numbered[], ctx: z.core.$RefinementCtx): void {
  const corrected = new Map<number, number>();
  for (const [index, entry] of entries.entries()) {
    // What is no entry at all is told by itself.
    if (typeof entry !== "object" || entry === null) continue;
    const { revision, correctsRevision } = entry;
    const complain = (code: string, key: string, message: string): void =>
      ctx.addIssue({ code: "custom", message, path: [index, key], params: { code } });
    if (Number.isInteger(revision) && revision !== index + 1) {
      complain(
        "revision-order",
        "revision",
        `must be ${index + 1}: entries are numbered in the order of the file`,
      );
    }
    if (!Number.isInteger(correctsRevision) || correctsRevision === undefined) continue;
    const before = corrected.get(correctsRevision);
    if (correctsRevision > index) {
      complain("corrects-nothing", "correctsRevision", "must be the revision of an earlier entry");
    } else if (before !== undefined) {
      complain(
        "corrected-already",
        "correctsRevision",
        `is corrected by revision ${before} already; correct that one`,
      );
    }
    corrected.set(correctsRevision, revision);
  }
}
