import type { FitDimension, FittedDimension } from "@scantling/geometry";
import { MATERIALS } from "@scantling/geometry";
import type { FileUnits } from "@scantling/geometry/units";
import { limitsOf } from "../asks.js";
import type { FitReport, FittedTarget } from "../fit/fit-report.js";
import type { FitTarget } from "../fit/targets.js";
import type { Job } from "../load.js";
import { answerCells, askTable } from "./asks-text.js";
import { fixed } from "./figures.js";
import { bySeverity, findingLines } from "./findings.js";
import { whyLines } from "./fit-why.js";
import { layOutTable, REPORT_WIDTH, wrap } from "./layout.js";
import { limitText } from "./outward-text.js";
import { sizeText } from "./size-text.js";

/** What was asked before and after, what changes, what is new to know; where it cannot be, what stands in the way. */
export function fitText(report: FitReport, job: Job): string[] {
  const { findings, isMet } = report;
  const { units } = job;
  return [
    ...verdictLines(report),
    ...targetLines(report, units),
    ...steelLines(report),
    ...missedLines(report, units),
    "",
    isMet ? "CHANGE" : "NEAREST, with these changes",
    ...changeLines(report, units),
    ...reachLines(report, units),
    ...(isMet ? [] : ["", ...whyLines(report, units)]),
    ...(findings.length === 0 ? [] : ["", "NEW WITH THIS CHANGE"]),
    ...bySeverity(findings).flatMap((finding) => findingLines(finding, job, { basis: true })),
  ];
}

function verdictLines({ isMet, isSure, answer, missed }: FitReport): string[] {
  const isDrawn = answer.knife.dimensions.every(({ sizes }) => sizes === undefined);
  if (!isMet) return wrap(`FIT: cannot be met${isSure ? " for sure" : ""} by these changes`);
  const sure = isSure ? ", each with its whole band" : "";
  const but = missed.length === 0 ? "" : "; not all that the order asks: see below";
  return wrap(`FIT: all met${sure}${isDrawn ? "; nothing has to be changed" : ""}${but}`);
}

/** What the order asks and the fitted knife misses, though nothing was looked for to meet it. */
function missedLines({ missed, targets }: FitReport, units: FileUnits): string[] {
  if (missed.length === 0) return [];
  const isReplaced = (name: string): boolean =>
    targets.some(({ target }) => target.source === "command" && target.name === name);
  const replaced = missed.filter(({ ask }) => isReplaced(ask.name));
  return [
    "",
    "NOT MET OF THE ORDER",
    ...askTable(missed, units),
    ...wrap(
      replaced.length === missed.length
        ? "What was asked here is not what the order asks: change one of them."
        : "Not looked for here, since other things were asked. Without targets scantling fit FILE looks for all that the order asks.",
    ),
  ];
}

/** Each target with what is asked, the figure with its band and the verdict, and below it the same as drawn. */
function targetLines({ targets, isMet, isSure }: FitReport, units: FileUnits): string[] {
  const rows = targets.flatMap(({ target, before, after }) => {
    const drawn = answerCells(before, target.kind, units);
    const { condition, value, verdict } = answerCells(after, target.kind, units);
    const isSame = drawn.value === value && drawn.verdict === verdict;
    return [
      [`${target.words}${isKept(target, targets) ? "*" : ""}`, condition, value, verdict],
      ...(isSame ? [] : [["  as drawn", "", drawn.value, drawn.verdict]]),
    ];
  });
  const column = isMet ? "fitted" : "nearest";
  const table = layOutTable([["", "asked", column, ""], ...rows], ["left", "left", "left", "left"]);
  const isWide = table.some((line) => line.length > REPORT_WIDTH);
  const kept = targets.some(({ target }) => isKept(target, targets))
    ? ["* asked by the order, and to stay met"]
    : [];
  const isOpen = isMet && !isSure && targets.some(({ after }) => after.verdict === "at-risk");
  return [
    ...(isWide ? conditionsBelow(rows, column) : table),
    ...kept,
    ...(isOpen
      ? wrap(
          "At risk: computed inside, but a limit lies within the band; --sure keeps the whole band inside.",
        )
      : []),
  ];
}

/** The same where it is too wide: what is asked stands below the figure. */
function conditionsBelow(rows: readonly (readonly string[])[], column: string): string[] {
  const below = rows.flatMap(([words = "", condition = "", value = "", verdict = ""]) => [
    [words, value, verdict],
    ...(condition === "" ? [] : [["  asked", condition, ""]]),
  ]);
  return layOutTable([["", column, ""], ...below], ["left", "left", "left"]);
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
  const table = layOutTable([["", "drawn", "set to", "by", "may be"], ...rows], COLUMNS);
  const isWide = table.some((line) => line.length > REPORT_WIDTH);
  return [
    ...(rows.length === 0 ? ["Nothing."] : isWide ? withoutRange(rows) : table),
    ...(left.length === 0
      ? []
      : wrap(`As drawn: ${left.map(({ dimension }) => dimension.name).join(", ")}.`)),
    ...(fineness === 0 ? [] : finerLines(changed, fineness, units)),
    ...changed.flatMap((each) => materialLines(each, units)),
  ];
}

const COLUMNS = ["left", "right", "right", "right", "left"] as const;

/** Long names leave no room for the range beside them: it stands below. */
function withoutRange(rows: readonly (readonly string[])[]): string[] {
  const table = layOutTable(
    [["", "drawn", "set to", "by"], ...rows.map((row) => row.slice(0, 4))],
    COLUMNS.slice(0, 4),
  );
  const ranges = rows.flatMap(([name, , , , range]) => (range === "" ? [] : [`${name} ${range}`]));
  return [...table, ...wrap(`May be: ${ranges.join("; ")}.`)];
}

function rangeText(dimension: FitDimension, units: FileUnits): string {
  const { kind, sizes, least, most } = dimension;
  const [first] = sizes;
  if (sizes.length > 1) return `${fixed(least * 100, 0)} to ${fixed(most * 100, 0)} %`;
  const [low, high] = [sizeText(kind, least, units), sizeText(kind, most, units)];
  // One unit for both, where it stands behind a blank.
  const unit = / \S+$/u.exec(high)?.[0] ?? "";
  const range = `${unit !== "" && low.endsWith(unit) ? low.slice(0, -unit.length) : low} to ${high}`;
  const isOutside = first !== undefined && (first.drawn < least || first.drawn > most);
  return isOutside ? `${range}; drawn outside` : range;
}

/** How many materials are named for a density. */
const MOST_NAMED = 4;
/** How far a material may be off the density that is looked for, as a share. */
const ALIKE = 0.05;

/** What there is of about a density that was found. */
function materialLines({ dimension, sizes = [] }: FittedDimension, units: FileUnits): string[] {
  const [density] = sizes;
  if (dimension.kind !== "density" || density === undefined) return [];
  const off = (of: number): number => Math.abs(of - density);
  const near = MATERIALS.filter(({ kind, density: of }) => kind !== "steel" && off(of) <= ALIKE * density)
    .toSorted((a, b) => off(a.density) - off(b.density))
    .slice(0, MOST_NAMED);
  const shown = near.map((one) => `${one.name} (${sizeText("density", one.density, units)})`);
  return wrap(
    `${shown.length === 0 ? "No material of the table is of" : "Of"} about ${sizeText("density", density, units)}${shown.length === 0 ? "" : `: ${shown.join(", ")}`}. Densities differ from piece to piece: weigh the one you take.`,
  );
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
