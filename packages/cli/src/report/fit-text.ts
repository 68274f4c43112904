import type { FitDimension, FitRelaxation, FittedDimension } from "@scantling/geometry";
import type { FileUnits } from "@scantling/geometry/units";
import { limitsOf } from "../asks.js";
import type { FitReport, FittedTarget } from "../fit/fit-report.js";
import type { FitTarget } from "../fit/targets.js";
import type { Job } from "../load.js";
import { answerCells } from "./asks-text.js";
import { fixed } from "./figures.js";
import { bySeverity, findingLines } from "./findings.js";
import { item, layOutTable, wrap } from "./layout.js";
import { limitText, relaxedText } from "./outward-text.js";
import { sizeText } from "./size-text.js";

/** What was asked before and after, what changes, what is new to know; where it cannot be, what stands in the way. */
export function fitText(report: FitReport, job: Job): string[] {
  const { findings, isMet } = report;
  const { units } = job;
  return [
    ...verdictLines(report),
    ...targetLines(report, units),
    ...steelLines(report),
    "",
    isMet ? "CHANGE" : "NEAREST, with these changes",
    ...changeLines(report, units),
    ...reachLines(report, units),
    ...(isMet ? [] : ["", ...whyLines(report, units)]),
    ...(findings.length === 0 ? [] : ["", "NEW WITH THIS CHANGE"]),
    ...bySeverity(findings).flatMap((finding) => findingLines(finding, job, { basis: true })),
  ];
}

function verdictLines({ isMet, isSure, answer }: FitReport): string[] {
  const isDrawn = answer.knife.dimensions.every(({ sizes }) => sizes === undefined);
  if (!isMet) return wrap(`FIT: cannot be met${isSure ? " for sure" : ""} by these changes`);
  const sure = isSure ? ", each with its whole band" : "";
  return wrap(`FIT: all met${sure}${isDrawn ? "; nothing has to be changed" : ""}`);
}

/** Each target with what is asked, the figure with its band and the verdict, and below it the same as drawn. */
function targetLines({ targets, isMet }: FitReport, units: FileUnits): string[] {
  const rows = targets.flatMap(({ target, before, after }) => {
    const drawn = answerCells(before, target.kind, units);
    const { condition, value, verdict } = answerCells(after, target.kind, units);
    const isSame = drawn.value === value && drawn.verdict === verdict;
    return [
      [`${target.words}${isKept(target, targets) ? "*" : ""}`, condition, value, verdict],
      ...(isSame ? [] : [["  as drawn", "", drawn.value, drawn.verdict]]),
    ];
  });
  const heads = ["", "asked", isMet ? "fitted" : "nearest", ""];
  const kept = targets.some(({ target }) => isKept(target, targets))
    ? ["* asked by the order, and to stay met"]
    : [];
  return [...layOutTable([heads, ...rows], ["left", "left", "left", "left"]), ...kept];
}

/** Whether a target comes from the order while others come from the command line. */
const isKept = (target: FitTarget, targets: readonly FittedTarget[]): boolean =>
  target.source === "order" && targets.some((other) => other.target.source === "command");

/** What the steel to cut is counted for. */
const steelLines = ({ targets }: FitReport): string[] =>
  targets.some(({ target }) => target.figure.kind === "steel")
    ? wrap(
        "Steel to cut: for the bars of the best plan of the knife as drawn, at the usual losses (band: low to high ones), before lengths are rounded up to the saw's step.",
      )
    : [];

/** Each size that changes, before and after, and how far it may be changed. */
function changeLines({ answer, changes }: FitReport, units: FileUnits): string[] {
  const { dimensions, fineness } = answer.knife;
  const changed = dimensions.filter(({ sizes }) => sizes !== undefined);
  const left = dimensions.filter(({ sizes }) => sizes === undefined);
  const rows = changed.flatMap(({ dimension, sizes = [] }) =>
    dimension.sizes.map(({ path, drawn }, i) => {
      const [before, after] = [drawn, sizes[i] ?? drawn];
      const sign = after < before ? "−" : "+";
      const by = Math.abs(after - before);
      return [
        changes.names.get(path) ?? dimension.name,
        before === 0 ? "none" : sizeText(dimension.kind, before, units),
        sizeText(dimension.kind, after, units),
        by === 0 ? "" : `${sign}${sizeText(dimension.kind, by, units)}`,
        i === 0 ? rangeText(dimension, units) : "",
      ];
    }),
  );
  const heads = ["", "drawn", "set to", "by", "may be"];
  return [
    ...(rows.length === 0
      ? ["Nothing."]
      : layOutTable([heads, ...rows], ["left", "right", "right", "right", "left"])),
    ...(left.length === 0
      ? []
      : wrap(`As drawn: ${left.map(({ dimension }) => dimension.name).join(", ")}.`)),
    ...(fineness === 0 ? [] : finerLines(changed, fineness, units)),
  ];
}

function rangeText(dimension: FitDimension, units: FileUnits): string {
  const { kind, sizes, least, most } = dimension;
  const [first] = sizes;
  if (sizes.length > 1) return `${fixed(least * 100, 0)} to ${fixed(most * 100, 0)} %`;
  const range = `${sizeText(kind, least, units)} to ${sizeText(kind, most, units)}`;
  const isOutside = first !== undefined && (first.drawn < least || first.drawn > most);
  return isOutside ? `${range}; drawn outside` : range;
}

function finerLines(changed: readonly FittedDimension[], fineness: number, units: FileUnits): string[] {
  const [one] = changed.flatMap(({ dimension }) =>
    dimension.sizes.map((size) => ({ size, kind: dimension.kind })),
  );
  if (one === undefined) return [];
  const { steps } = one.size;
  const show = (step: number | undefined): string => sizeText(one.kind, step ?? 0, units);
  return wrap(
    `No sizes in whole ${show(steps[0])} meet all asks: these are set to ${show(steps[Math.min(fineness, steps.length - 1)])}.`,
  );
}

/** A window of which more than this share is within reach needs no words. */
const MUCH = 0.6;

function reachLines({ answer, targets, isSure }: FitReport, units: FileUnits): string[] {
  if (isSure) return [];
  return answer.reaches.flatMap(({ ask, low, high }) => {
    const target = targets.find((each) => each.target.name === ask.name)?.target;
    if (target === undefined) return [];
    const { atLeast, atMost } = limitsOf(target.test);
    if (high - low > MUCH * (atMost - atLeast)) return [];
    const show = (value: number, way: "up" | "down"): string => limitText(target.kind, value, way, units);
    return [
      "",
      ...wrap(
        `Within reach: ${target.words} ${show(low, "up")} to ${show(high, "down")}, of the ${show(atLeast, "up")} to ${show(atMost, "down")} asked.`,
      ),
    ];
  });
}

function whyLines(report: FitReport, units: FileUnits): string[] {
  const { answer, targets, isSure, changes } = report;
  const { conflict } = answer;
  const more = changes.isUsual
    ? wrap("Only the usual sizes were changed. More can be: scantling fit FILE --change help")
    : [];
  if (conflict === undefined) {
    const why = isSure
      ? "The band of the fitted knife reaches past a limit, though it is computed inside. Leave more room, or measure more closely."
      : "Between the steps that can be set there is a knife that meets all, but none on them. Give limits a little farther apart, or a tolerance.";
    return [...wrap(why), ...more];
  }
  const words = (name: string): string =>
    targets.find(({ target }) => target.name === name)?.target.words ?? name;
  const alone = conflict.outOfReach.map(({ ask, nearest }) => {
    const kind = targets.find(({ target }) => target.name === ask.name)?.target.kind ?? "length";
    return `${words(ask.name)} (nearest ${limitText(kind, nearest, "nearest", units)})`;
  });
  const quarrel =
    alone.length > 0
      ? `OUT OF REACH ${alone.length === 1 ? "by itself" : "each by itself"}: ${listed(alone)}.`
      : `CANNOT HOLD TOGETHER: ${listed(conflict.asks.map(({ name }) => words(name)))}.`;
  const relaxed = conflict.relaxations.flatMap((each) => {
    const target = targets.find(({ target: one }) => one.name === each.ask.name)?.target;
    return target === undefined ? [] : [relaxationText(each, target, report, units)];
  });
  return [
    ...wrap(quarrel),
    ...unmovedLines(report),
    ...(relaxed.length === 0
      ? wrap("No single ask that gives way settles it: more than one is out of reach.")
      : wrap(relaxed.length === 1 ? "What would settle it:" : "Any one of these would settle it:")),
    ...relaxed.flatMap((text) => item("- ", text)),
    ...more,
  ];
}

/** Shares of a figure: what is no more than the last digits of a double. */
const SAME = 1e-9;

/** Figures that none of the changes moves ask for other changes. */
function unmovedLines({ targets, answer }: FitReport): string[] {
  const names = (answer.conflict?.outOfReach ?? []).map(({ ask }) => ask.name);
  const unmoved = targets.filter(({ target, before, after }) => {
    const moved = Math.abs(after.figure.value - before.figure.value);
    return names.includes(target.name) && moved <= SAME * Math.abs(before.figure.value);
  });
  if (unmoved.length === 0) return [];
  return wrap(
    `Nothing that may be changed here moves: ${listed(unmoved.map(({ target }) => target.words))}.`,
  );
}

/** `balance up to 23.1 mm instead of 20 mm: handle.parts.mass@1 81 g`. */
function relaxationText(
  { limit, by, knife }: FitRelaxation,
  target: FitTarget,
  { changes }: FitReport,
  units: FileUnits,
): string {
  const { atLeast, atMost } = limitsOf(target.test);
  const isUp = limit === "atMost";
  const [from, to] = isUp ? [atMost, atMost + by] : [atLeast, atLeast - by];
  const shown = relaxedText(target.kind, from, to, units);
  const sizes = (knife?.dimensions ?? []).flatMap(({ dimension, sizes: set = [] }) =>
    set.map((value, i) => {
      const path = dimension.sizes[i]?.path ?? "";
      return `${changes.names.get(path) ?? dimension.name} ${sizeText(dimension.kind, value, units)}`;
    }),
  );
  return `${target.words} ${isUp ? "up" : "down"} to ${shown.to} instead of ${shown.from}${sizes.length === 0 ? "" : `, with ${sizes.join(", ")}`}`;
}

const listed = (words: readonly string[]): string =>
  words.length < 2 ? words.join("") : `${words.slice(0, -1).join(", ")} and ${words.at(-1)}`;
