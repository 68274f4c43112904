import type { Finding } from "@scantling/geometry";
import type { Verdict } from "../asks.js";
import { formatPath } from "../file/index.js";
import type { RecordFile } from "../file/record-file.js";
import type { Job } from "../load.js";
import { changedLosses } from "../record/changed-losses.js";
import type { ChangedInput } from "../record/inputs.js";
import type { PlanRow, RowKind } from "../record/plan-rows.js";
import type { Cause, Reorder } from "../record/reorder.js";
import { weighingsOf } from "../record/weighings.js";
import { findingJson } from "./findings.js";
import { plannedJson } from "./record-json.js";

/**
 * An order made again, for programs: `scantling/reorder/1`. `rows` has every figure of the plan, old and new; `causes` of a
 * row index into the list of that name; `verdict` is that of the new one, as of `check`.
 */
export function reorderJson(
  found: Reorder,
  record: RecordFile,
  today: { readonly job: Job; readonly verdict: Verdict; readonly findings: readonly Finding[] },
): unknown {
  const { was, is, rows, causes, idle, unexplained } = found;
  return {
    schema: "scantling/reorder/1",
    verdict: today.verdict,
    old: plannedJson(was),
    new: plannedJson(is),
    rows: rows.map((row) => ({
      figure: row.key,
      same: row.same,
      ...figureJson("old", row.was),
      ...figureJson("new", row.is),
      causes: row.causes,
      together: row.together,
    })),
    causes: causes.map((cause) => causeJson(cause, found)),
    unchanging: idle.map(inputJson),
    unexplained: unexplained ?? null,
    cameOut: weighingsOf(record.entries).map((one) => ({
      stage: one.stage,
      steelG: one.steel,
      heats: one.heats ?? null,
      weldingHeats: one.weldingHeats ?? null,
      on: one.on,
      neededOldG: was.needed[one.stage]?.usual ?? null,
      neededNewG: is.needed[one.stage]?.usual ?? null,
    })),
    findings: today.findings.map((finding) => findingJson(finding, today.job)),
  };
}

const SUFFIXES: Readonly<Record<RowKind, string>> = {
  bars: "",
  mass: "G",
  length: "Mm",
  place: "Mm",
  count: "",
  verdict: "",
};

function figureJson(when: "old" | "new", row: PlanRow | undefined): object {
  if (row === undefined) return { [when]: null };
  const suffix = SUFFIXES[row.kind];
  return {
    [`${when}${suffix}`]: row.value ?? null,
    ...(row.interval === undefined ? {} : { [`${when}Interval${suffix}`]: row.interval }),
  };
}

function causeJson(cause: Cause, { was, is }: Reorder): object {
  if (cause.kind === "input") return { kind: "input", ...inputJson(cause.input) };
  if (cause.kind === "choice")
    return { kind: "choice", oldPlan: cause.was ?? null, newPlan: cause.is ?? null };
  return { kind: "program", old: cause.was, new: cause.is, losses: changedLosses(was.losses, is.losses) };
}

/** As the files write it; `null` where a file has nothing there. A drawing and a whole file are only named. */
function inputJson({ file, path, was, is }: ChangedInput): object {
  const whole = path.length === 0;
  return {
    file,
    path: formatPath(path),
    ...(whole ? {} : { old: was ?? null, new: is ?? null }),
  };
}
