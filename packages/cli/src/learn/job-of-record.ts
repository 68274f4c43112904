import { dirname, resolve } from "node:path";
import {
  bladeStation,
  GeometryError,
  gateBodies,
  type JobDrawn,
  type JobPlan,
  type JobRecord,
  type JobSize,
  type Knife,
  SpecError,
  stackRestacks,
  type TaskName,
  type TimesDone,
  type WrittenIn,
} from "@scantling/geometry";
import { type FileUnits, GRAMS_PER_OUNCE, GRAMS_PER_POUND, MM_PER_INCH } from "@scantling/geometry/units";
import { CommandFailure } from "../failure.js";
import {
  buildKnife,
  FileError,
  type Planned,
  type RecordEntry,
  readKnifeFile,
  readShopFile,
  withDrawing,
} from "../file/index.js";
import { isCaliperStage } from "../gate-input.js";
import type { Io } from "../io/io.js";
import { type Job, loadJob, makeJob } from "../load.js";
import { standingEntries, weighingsOf } from "../record/weighings.js";
import type { RecordText } from "./find-records.js";

/**
 * What a record holds for learning: entries that stand, and what of the plan the sums need. The knife is that of the plan which
 * the record keeps, or the knife file beside it; where neither can be made any more, what needs it is not learnt.
 */
export async function jobOfRecord(io: Io, { file, path }: RecordText): Promise<JobRecord> {
  const made = await madeKnife(io, file.planned, resolve(dirname(path), file.knife));
  const entries = standingEntries(file.entries);
  const timesDone = made === undefined ? {} : timesOf(made.job);
  return {
    file: file.fileName,
    ...(made === undefined ? {} : { steel: made.job.spec.steel.name }),
    weighings: weighingsOf(file.entries).map(({ stage, steel, heats, weldingHeats, confirmed, on }) => ({
      stage,
      steel,
      ...(heats === undefined ? {} : { heats }),
      ...(weldingHeats === undefined ? {} : { weldingHeats }),
      confirmed,
      on,
    })),
    sizes: entries.flatMap((entry) => sizesOf(entry, made?.knife)),
    drawn: entries.flatMap(drawnOf),
    hours: entries.flatMap(({ task, hours, on }) =>
      task === undefined || hours === undefined || !canBeCounted(task, timesDone)
        ? []
        : [{ task, hours, on }],
    ),
    timesDone,
    ...(made === undefined ? {} : { plan: planOf(file.planned, made) }),
    written: { mass: WRITTEN[file.units].mass, length: WRITTEN[file.units].length },
  };
}

interface MadeKnife {
  readonly job: Job;
  readonly knife: Knife;
}

const KEPT = { knife: "the knife file as it was", shop: "the shop file as it was" } as const;

/** The job that a record keeps the texts of. */
function keptJob({ files }: Planned): Job {
  const { knife: text, drawing = "", shop } = files;
  const knife = withDrawing(readKnifeFile(text, KEPT.knife), drawing);
  return makeJob({
    knife,
    shopFile: shop === undefined ? undefined : readShopFile(shop, KEPT.shop),
    name: KEPT.knife,
    fromStdin: false,
    units: knife.units,
    texts: files,
  });
}

async function madeKnife(
  io: Io,
  planned: Planned | undefined,
  beside: string,
): Promise<MadeKnife | undefined> {
  try {
    const job = planned === undefined ? await loadJob(io, beside, {}) : keptJob(planned);
    return { job, knife: buildKnife(job.spec) };
  } catch (error) {
    // Today's program may not take what was planned with an older one; masses and hours count all the same.
    if (error instanceof FileError || error instanceof CommandFailure) return undefined;
    if (error instanceof SpecError || error instanceof GeometryError) return undefined;
    throw error;
  }
}

function planOf(planned: Planned | undefined, { job, knife }: MadeKnife): JobPlan {
  const mixed = job.knife.stack !== undefined;
  const [bar] = planned?.bars ?? [];
  const finished = planned?.needed.finished?.usual;
  return {
    ...(bar === undefined || mixed
      ? {}
      : { stack: { bars: bar.count, width: bar.width, thickness: bar.thickness } }),
    density: knife.steelDensity,
    ...(finished === undefined ? {} : { finished }),
    ...(bar === undefined || mixed
      ? {}
      : { forgedSurface: gateBodies(knife, "billet", "skin").forgedSurface }),
    flatsKept: knife.finish.flats === "forged",
  };
}

/** Hours of oil are counted for each coat: where nothing says how many there were, they say nothing. */
const canBeCounted = (task: TaskName, timesDone: TimesDone): boolean =>
  task !== "oil" || timesDone.oil !== undefined;

/** Welds of a stack: the first, and one for each time that it was cut and stacked again. */
function timesOf({ knife: { stack } }: Job): TimesDone {
  return stack === undefined ? {} : { weld: 1 + stackRestacks(stack).length };
}

/** Thicknesses at places that are known without the knife, or with it. */
function sizesOf({ stage, sizes = [], on }: RecordEntry, knife: Knife | undefined): JobSize[] {
  if (stage === undefined || !isCaliperStage(stage)) return [];
  return sizes.flatMap(({ at, thickness }): JobSize[] => {
    const x =
      knife !== undefined ? bladeStation(at, knife.outline) : at.kind === "distance" ? at.mm : undefined;
    return x === undefined || thickness === undefined ? [] : [{ stage, x, thickness, on }];
  });
}

function drawnOf({ drawn, stage, weldingHeats, on }: RecordEntry): JobDrawn[] {
  if (drawn === undefined) return [];
  const { from, to } = drawn;
  const welding = stage === "billet" || weldingHeats !== undefined;
  return [{ from, to, welding, fullers: drawn.with === "fullers", on }];
}

/** What numbers were written in, and what that is taken for. */
const WRITTEN: Readonly<Record<FileUnits, { readonly mass: WrittenIn; readonly length: WrittenIn }>> = {
  mm: {
    mass: {
      unit: 1,
      mixUps: [
        { times: GRAMS_PER_OUNCE, words: "ounces written as grams" },
        { times: GRAMS_PER_POUND, words: "pounds written as grams" },
        { times: 1000, words: "kilograms written as grams" },
      ],
    },
    length: { unit: 1, mixUps: [{ times: MM_PER_INCH, words: "inches written as millimetres" }] },
  },
  in: {
    mass: {
      unit: GRAMS_PER_OUNCE,
      mixUps: [
        { times: 1 / GRAMS_PER_OUNCE, words: "grams written as ounces" },
        { times: GRAMS_PER_POUND / GRAMS_PER_OUNCE, words: "pounds written as ounces" },
      ],
    },
    length: {
      unit: MM_PER_INCH,
      mixUps: [{ times: 1 / MM_PER_INCH, words: "millimetres written as inches" }],
    },
  },
};
