import { changeables, type FitRelaxation } from "@scantling/geometry";
import type { FileUnits } from "@scantling/geometry/units";
import { limitsOf } from "../asks.js";
import { ownChanges } from "../conflict/conflict-changes.js";
import { placeName } from "../fit/changes.js";
import type { FitReport } from "../fit/fit-report.js";
import type { FitTarget } from "../fit/targets.js";
import { item, wrap } from "./layout.js";
import { limitText, relaxedText } from "./outward-text.js";
import { sizeText } from "./size-text.js";

/** Why not all that is asked can be met: what is out of reach or quarrels, and what would settle it. */
export function whyLines(report: FitReport, units: FileUnits): string[] {
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
  const sure = isSure ? ", each with its whole band" : "";
  const quarrel =
    alone.length > 0
      ? `OUT OF REACH ${alone.length === 1 ? "by itself" : "each by itself"}${isSure ? " with the whole band" : ""}: ${listed(alone)}.`
      : `CANNOT HOLD TOGETHER${sure}: ${listed(conflict.asks.map(({ name }) => words(name)))}.`;
  const relaxed = conflict.relaxations.flatMap((each) => {
    const target = targets.find(({ target: one }) => one.name === each.ask.name)?.target;
    return target === undefined ? [] : [relaxationText(each, target, report, units)];
  });
  return [
    ...wrap(quarrel),
    ...unmovedLines(report),
    ...bandLines(report),
    ...(relaxed.length === 0
      ? wrap("No single one of them that gives way settles it.")
      : wrap(relaxed.length === 1 ? "What would settle it:" : "Any one of these would settle it:")),
    ...relaxed.flatMap((text) => item("- ", text)),
    ...more,
  ];
}

/** Shares of a figure: what is no more than the last digits of a double. */
const SAME = 1e-9;

/** Figures that none of the changes moves ask for other changes. */
function unmovedLines({ targets, answer, fitted }: FitReport): string[] {
  const names = (answer.conflict?.outOfReach ?? []).map(({ ask }) => ask.name);
  const unmoved = targets.filter(({ target, before, after }) => {
    const moved = Math.abs(after.figure.value - before.figure.value);
    return names.includes(target.name) && moved <= SAME * Math.abs(before.figure.value);
  });
  if (unmoved.length === 0) return [];
  const all = changeables(fitted.knife, placeName(fitted.job.knife.units));
  const asks = fitted.answers.filter(({ ask }) => unmoved.some(({ target }) => target.path === ask.path));
  const named = new Set(asks.flatMap(({ ask }) => ownChanges(ask.name, all).map(({ name }) => name)));
  const hint = named.size === 0 ? "" : ` Add --change ${[...named].join(" or --change ")}.`;
  return wrap(
    `Nothing that may be changed here moves: ${listed(unmoved.map(({ target }) => target.words))}.${hint}`,
  );
}

/** A window that is narrower than the band of its figure can never be met for sure. */
function bandLines({ targets, isSure }: FitReport): string[] {
  if (!isSure) return [];
  const narrow = targets.filter(({ target, after }) => {
    const { atLeast, atMost } = limitsOf(target.test);
    return atMost - atLeast < 2 * after.band;
  });
  if (narrow.length === 0) return [];
  return wrap(
    `The band is wider than what is asked of: ${listed(narrow.map(({ target }) => target.words))}. Nothing but closer tolerances makes that sure.`,
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
  const between = knife === undefined ? ", and closer steps than the bench can set: give a little more" : "";
  return `${target.words} ${isUp ? "up" : "down"} to ${shown.to} instead of ${shown.from}${sizes.length === 0 ? between : `, with ${sizes.join(", ")}`}`;
}

const listed = (words: readonly string[]): string =>
  words.length < 2 ? words.join("") : `${words.slice(0, -1).join(", ")} and ${words.at(-1)}`;
