import type { FitDimension, FitKind, FittedKnife } from "@scantling/geometry";
import { radiansToDegrees } from "@scantling/geometry/units";
import { limitsOf } from "../asks.js";
import { ASK_KINDS } from "../file/index.js";
import { type FitReport, type FittedTarget, hasNewStop } from "../fit/fit-report.js";
import type { Job } from "../load.js";
import type { FigureKind } from "./asks-text.js";
import { findingJson } from "./findings.js";

/** A fit for programs: `scantling/fit/1`. mm, g, degrees, g/cm³ and shares, as the names say. */
export function fitJson(report: FitReport, job: Job, file: string | undefined): unknown {
  const { answer, targets, findings, isMet, isSure, changes, missed } = report;
  const { conflict } = answer;
  const targetOf = (name: string): FittedTarget | undefined =>
    targets.find(({ target }) => target.name === name);
  return {
    schema: "scantling/fit/1",
    verdict: isMet ? "met" : "cannot",
    sure: isSure,
    newStop: hasNewStop(report),
    asks: targets.map(askJson),
    changes: answer.knife.dimensions.map(({ dimension, sizes }) => ({
      name: dimension.name,
      changed: sizes !== undefined,
      ...rangeJson(dimension),
      sizes: sizesJson(dimension, sizes, changes.names),
    })),
    steps: ["coarse", "fine", "finest"][answer.knife.fineness],
    reach: answer.reaches.flatMap(({ ask, low, high }) => {
      const kind = targetOf(ask.name)?.target.kind ?? "length";
      return [{ ask: ask.name, ...named("low", kind, low), ...named("high", kind, high) }];
    }),
    conflict:
      conflict === undefined
        ? null
        : {
            outOfReach: conflict.outOfReach.map(({ ask, nearest }) => ({
              ask: ask.name,
              ...named("nearest", targetOf(ask.name)?.target.kind ?? "length", nearest),
            })),
            asks: conflict.asks.map(({ name }) => name),
            relax: conflict.relaxations.map(({ ask, limit, by, knife }) => {
              const target = targetOf(ask.name)?.target;
              const kind = target?.kind ?? "length";
              const own = target === undefined ? 0 : limitsOf(target.test)[limit];
              return {
                ask: ask.name,
                limit,
                ...named("to", kind, limit === "atMost" ? own + by : own - by),
                ...named("by", kind, by),
                changes: knife === undefined ? null : knifeJson(knife, changes.names),
              };
            }),
          },
    missedOfOrder: missed.map(({ ask, verdict, margin }) => ({
      ask: ask.name,
      path: ask.path,
      verdict,
      ...named("margin", ASK_KINDS[ask.name], margin),
    })),
    findings: findings.map((finding) => findingJson(finding, job)),
    file: file ?? null,
  };
}

function askJson({ target, before, after }: FittedTarget): unknown {
  const { atLeast, atMost } = limitsOf(target.test);
  const { kind } = target;
  const finite = (value: number): number | null => (Number.isFinite(value) ? value : null);
  const interval = (of: typeof after): readonly number[] =>
    of.figure.interval ?? [of.figure.value, of.figure.value];
  return {
    ask: target.name,
    source: target.source,
    verdict: after.verdict,
    ...named("atLeast", kind, finite(atLeast)),
    ...named("atMost", kind, finite(atMost)),
    ...named("drawn", kind, before.figure.value),
    ...named("drawnInterval", kind, interval(before)),
    ...named("fitted", kind, after.figure.value),
    ...named("fittedInterval", kind, interval(after)),
    ...named("margin", kind, after.margin),
  };
}

const FIGURE_UNITS: Readonly<Record<FigureKind, string>> = {
  mass: "G",
  length: "Mm",
  thin: "Mm",
  angle: "Deg",
  count: "",
};

type Value = number | null | readonly number[];

/** A figure under its name with the unit, in that unit. */
function named(name: string, kind: FigureKind, value: Value): Readonly<Record<string, Value>> {
  const shown = (one: number): number => (kind === "angle" ? radiansToDegrees(one) : one);
  const told = value === null ? null : typeof value === "number" ? shown(value) : value.map(shown);
  return { [`${name}${FIGURE_UNITS[kind]}`]: told };
}

const SIZE_UNITS: Readonly<Record<FitKind, readonly [unit: string, factor: number]>> = {
  length: ["Mm", 1],
  mass: ["G", 1],
  angle: ["Deg", radiansToDegrees(1)],
  density: ["GPerCm3", 1000],
  share: ["Share", 1],
};

function rangeJson({ kind, sizes, least, most }: FitDimension): Readonly<Record<string, number>> {
  const [unit, factor] = SIZE_UNITS[sizes.length > 1 ? "share" : kind];
  return { [`least${unit}`]: least * factor, [`most${unit}`]: most * factor };
}

function sizesJson(
  { kind, sizes }: FitDimension,
  set: readonly number[] | undefined,
  names: ReadonlyMap<string, string>,
): unknown[] {
  const [unit, factor] = SIZE_UNITS[kind];
  return sizes.map(({ path, drawn }, i) => ({
    name: names.get(path) ?? path,
    path,
    [`drawn${unit}`]: drawn * factor,
    [`fitted${unit}`]: (set?.[i] ?? drawn) * factor,
  }));
}

const knifeJson = ({ dimensions }: FittedKnife, names: ReadonlyMap<string, string>): unknown[] =>
  dimensions.flatMap(({ dimension, sizes }) =>
    sizes === undefined ? [] : sizesJson(dimension, sizes, names),
  );
