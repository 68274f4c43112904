import { describeIssue } from "@scantling/geometry/units";
import type { MeasuredSection, MeasuredSize, Planned, RecordEntry, RecordFile } from "../file/record-file.js";
import type { Answered } from "../record/enter.js";
import { lossesIn, spreadOf } from "../record/meaning.js";
import { isLengthLoss } from "../record/planned.js";
import { weighingsOf } from "../record/weighings.js";
import { gateJson } from "./gate-json.js";
import type { EnteredReport } from "./record-text.js";

/** A record for programs: `scantling/record/1`. What is not there is `null`; lengths mm, masses g. */
export function recordJson(
  record: Pick<RecordFile, "fileName" | "knife" | "planned" | "entries">,
  entered?: EnteredReport,
): unknown {
  const { entries, planned } = record;
  return {
    schema: "scantling/record/1",
    file: record.fileName,
    knife: record.knife,
    ...(entered === undefined ? {} : { entered: enteredJson(entered) }),
    planned: planned === undefined ? null : plannedJson(planned),
    entries: entries.map(entryJson),
    weighings: weighingsOf(entries).map((one) => ({
      stage: one.stage,
      steelG: one.steel,
      heats: one.heats ?? null,
      weldingHeats: one.weldingHeats ?? null,
      on: one.on,
      revision: one.revision,
    })),
    losses: lossesIn(entries).map(({ from, to, mass, share, perHeat }) => ({
      from: from.stage,
      to: to.stage,
      massG: mass,
      share,
      perHeat: perHeat ?? null,
    })),
  };
}

/** `stored` is false where the entry is doubted: nothing was written then, and `doubts` says why. */
function enteredJson({ entry, stored, answered }: EnteredReport): object {
  return {
    stored,
    entry: entryJson(entry),
    doubts: answered.doubts.map((doubt) => ({ code: doubt.code, message: describeIssue(doubt, "mm") })),
    gate: gateOf(answered),
    ...hardnessHeldJson(answered),
  };
}

/** Nothing where no hardness was measured or asked for. */
function hardnessHeldJson({ hardness }: Answered): object {
  if (hardness === undefined) return {};
  const { held } = hardness;
  return {
    hardness: held === undefined ? { verdict: "before-the-temper" } : { verdict: held.is, offByHrc: held.by },
  };
}

const gateOf = ({ gate }: Answered): unknown =>
  gate === undefined ? null : gateJson(gate.report, gate.measured.job);

function entryJson(entry: RecordEntry): object {
  const { revision, on, stage, mass, tare, heats, weldingHeats, sizes, drawn, task, hours, hardness } = entry;
  return withoutNothing({
    revision,
    on,
    stage,
    massG: mass,
    tareG: tare,
    steelG: mass === undefined ? undefined : mass - (tare ?? 0),
    heats,
    weldingHeats,
    sizes: sizes?.map(sizeJson),
    drawn:
      drawn === undefined
        ? undefined
        : withoutNothing({
            from: sectionJson(drawn.from),
            to: sectionJson(drawn.to),
            with: drawn.with,
            spread: spreadOf(drawn),
          }),
    task,
    hours,
    hardness,
    batch: entry.batch,
    note: entry.note,
    confirmed: entry.confirmed,
    correctsRevision: entry.correctsRevision,
  });
}

const sizeJson = ({ at, thickness, height }: MeasuredSize): object =>
  withoutNothing({
    at: at.kind === "distance" || at.kind === "fraction" ? undefined : at.kind,
    atMm: at.kind === "distance" ? at.mm : undefined,
    atShare: at.kind === "fraction" ? at.share : undefined,
    thicknessMm: thickness,
    heightMm: height,
  });

const sectionJson = ({ height, thickness }: MeasuredSection): object => ({
  heightMm: height,
  thicknessMm: thickness,
});

/** The plan that a record keeps, for programs; the texts of its files stay in the record. */
export function plannedJson({ bars, needed, knife, balance, ...planned }: Planned): object {
  return {
    on: planned.on,
    program: planned.program,
    plan: planned.plan ?? null,
    bars: (bars ?? []).map((bar) => ({
      bar: bar.bar,
      steel: bar.steel ?? null,
      thicknessMm: bar.thickness,
      widthMm: bar.width,
      count: bar.count,
      lengthMm: bar.length,
      massG: bar.mass,
    })),
    heats: planned.heats,
    weldingHeats: planned.weldingHeats,
    needed: Object.entries(needed).map(([stage, { low, usual, high }]) => ({
      stage,
      neededG: usual,
      neededLowG: low,
      neededHighG: high,
    })),
    knife: { massG: knife.mass, massIntervalG: [knife.least, knife.most] },
    balance: { balanceFromHeelMm: balance.at, balanceIntervalMm: [balance.least, balance.most] },
    asks: planned.asks,
    losses: lossesJson(planned.losses),
  };
}

/** Shares and mm, said so in the names. */
const lossesJson = ({ scaleModel, ...losses }: Planned["losses"]): object => ({
  scale: scaleModel ?? null,
  ...Object.fromEntries(
    Object.entries(losses).map(([key, band]) => [`${key}${isLengthLoss(key) ? "Mm" : "Share"}`, band]),
  ),
});

/** The same without the keys that have no value. */
const withoutNothing = (given: Readonly<Record<string, unknown>>): object =>
  Object.fromEntries(Object.entries(given).filter(([, value]) => value !== undefined));
