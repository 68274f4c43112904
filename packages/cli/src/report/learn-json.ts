import { figureOf, type LearntFigure } from "@scantling/geometry";
import { describeIssue } from "@scantling/geometry/units";
import type { LearnReport } from "../learn/learn-report.js";

/** What a figure counts: `value`, `low` and `high` beside it are in this. */
const UNITS: Readonly<Record<string, string>> = { length: "mm", hours: "h" };

/** `scantling/learn/1`: figures, what was left out, and the change of the shop file. */
export function learnJson(report: LearnReport): unknown {
  const { shop, records, copies, learnt, proposals, diff, outcome } = report;
  const { models } = learnt;
  return {
    schema: "scantling/learn/1",
    shop: shop ?? null,
    records,
    copies,
    figures: learnt.figures.map((figure) => figureJson(figure, report)),
    leftOut: learnt.leftOut.map(({ of, file, on, issue }) => ({
      figure: of,
      file,
      on,
      code: issue.code,
      message: describeIssue(issue, "mm"),
    })),
    scaleModels:
      models === undefined
        ? null
        : { other: models.other, jobs: models.jobs, apart: models.apart, otherApart: models.otherApart },
    changes: proposals.map(({ path, from, to }) => ({ path, from: from ?? null, to })),
    diff: diff.map((line) => `${line}\n`).join(""),
    written: outcome === "written",
    byHand: outcome === "by-hand",
  };
}

function figureJson(
  { path, own, isNew, estimate, jobs, heldOut, bySteel }: LearntFigure,
  { now }: LearnReport,
): unknown {
  const { value, low, high, ofJobs, scatter, apart, ownWeight } = estimate;
  return {
    path,
    unit: UNITS[figureOf(path).quantity] ?? "share",
    spreading: figureOf(path).spreading,
    own: isNew ? null : own,
    now: now[path] ?? null,
    learnt: { value, low, high },
    ofJobs: ofJobs ?? null,
    scatter,
    apart: apart ?? null,
    ownWeight,
    jobs: jobs.map(({ file, on, steel, value: came, error }) => ({
      file,
      on,
      steel: steel ?? null,
      value: came,
      error,
    })),
    heldOut: heldOut ?? null,
    bySteel,
  };
}
