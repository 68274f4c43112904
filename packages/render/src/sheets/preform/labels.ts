import { crossingsAtX, type Path } from "@scantling/geometry";
import { type Callout, calloutRow } from "../../callouts.js";
import { type DrawingItem, lettering, strokes } from "../../drawing.js";
import { linesOf } from "../../label-text.js";
import { SMALL } from "../../lettering-size.js";
import type { PreformModel } from "../../models/preform-model.js";
import type { Silhouette } from "../../silhouette.js";
import { textReach, textWidth } from "../../text-metrics.js";
import { dot } from "../pattern/outlines.js";
import { ruleText } from "./figures.js";
import { bentSpine, heelLevel, hotSizeOf } from "./view.js";
import { temperatureWords } from "./words.js";

/** Above the outline the lines to the labels begin to fan out, mm. */
const ABOVE = 4;
/** Labels get at least this much room along x, mm, before they are turned upright. */
const LEAST_ROOM = 220;

/** The row above the preform: its ends and marks, the bent spine. */
export function preformLabels(model: PreformModel, silhouette: Silhouette): DrawingItem[] {
  const { bounds } = silhouette;
  const lines = [...levelCallouts(model, silhouette), ...bendCallouts(model, silhouette)];
  const callouts = [...markCallouts(model, silhouette), ...lines];
  const room = Math.max(LEAST_ROOM, 1.15 * (bounds.maxX - bounds.minX));
  const row = calloutRow(callouts, bounds.maxY + ABOVE, room);
  return [...lines.map(({ from }) => dot(from)), ...row.items];
}

function markCallouts(model: PreformModel, silhouette: Silhouette): Callout[] {
  const { shoulder, heel, length } = model;
  const hot = hotSizeOf(model);
  const onTop = (cold: number, lines: readonly string[]): Callout => ({
    from: { x: hot(cold), y: silhouette.topAt(hot(cold)) },
    lines,
  });
  return [
    onTop(0, ["BUTT END", "saw off", "what is over"]),
    onTop(shoulder, heel === undefined ? ["SHOULDER,", "HEEL"] : ["SHOULDER"]),
    ...(heel === undefined ? [] : [onTop(heel, ["HEEL"])]),
    onTop(length, ["END", "the spare", "is left here"]),
  ];
}

/** Share of the bent spine at which its label points to it. */
const BEND_AT = 0.85;

function levelCallouts(model: PreformModel, silhouette: Silhouette): Callout[] {
  const level = heelLevel(model, silhouette);
  if (level === undefined) return [];
  const drop = ruleText(hotSizeOf(model)(model.pointDrop), model.units);
  const lines = [
    "spine at the heel;",
    ...linesOf({ ...drop, main: `the end, hot, ${drop.main}` }),
    "below it",
  ];
  return [{ from: level.labelAt, lines }];
}

function bendCallouts(model: PreformModel, silhouette: Silhouette): Callout[] {
  const { bendDown } = model;
  const bend = bentSpine(model, silhouette);
  if (bend === undefined || bendDown === undefined) return [];
  const drop = ruleText(hotSizeOf(model)(bendDown), model.units);
  const lines = ["spine bent down,", ...linesOf({ ...drop, main: `at the end, hot, ${drop.main}` })];
  const from = bend[Math.round(BEND_AT * (bend.length - 1))];
  return from === undefined ? [] : [{ from, lines }];
}

/** From the lowest thing in the view to the labels under it, mm. */
const LABEL_DROP = 2;
/** Clear space between the end of a leader and its words, mm. */
const UNDER_LEADER = 0.5;
/** Clear space beside a label, mm. */
const CLEAR = 1;
/** Shares of the sections between which the lines are told apart. */
const COLD_AT = 0.25;
const HOT_AT = 0.65;

/**
 * Which line is hot and which is cold, under the bar: at the spine they run together. Each leader goes down half way between
 * two sections, clear of their numbers; where the blade is too short for that the note has to do.
 */
export function lineLabels(model: PreformModel, hotLine: Path, lowest: number): DrawingItem[] {
  const hot = hotSizeOf(model);
  const { marks, shoulder, length, outline } = model;
  const spans = marks.length - 1;
  if (spans < 2) return [];
  const between = (share: number): number => {
    const index = Math.floor(share * spans);
    const [a, b] = [marks[index]?.fromShoulder ?? 0, marks[index + 1]?.fromShoulder ?? 0];
    return hot(shoulder + (a + b) / 2);
  };
  const foot = lowest - LABEL_DROP;
  const [from, to] = [hot(shoulder) + CLEAR, hot(length) - CLEAR];
  const label = (path: Path, share: number, text: string) => {
    const x = between(share);
    const half = textWidth(text, SMALL) / 2;
    // Clear of the extension lines at both ends of the blade.
    const middle = Math.min(Math.max(x, from + half), to - half);
    const on = { x, y: crossingsAtX(path, x)[0]?.point.y ?? 0 };
    const y = foot - UNDER_LEADER - textReach(text, SMALL).over;
    const items: DrawingItem[] = [
      dot(on),
      strokes("thin", [[on, { x, y: foot }]]),
      lettering(text, { x: middle, y }, { height: SMALL, anchor: "middle" }),
    ];
    return { left: middle - half, right: middle + half, items };
  };
  const cold = label(outline, COLD_AT, "cold");
  const warm = label(hotLine, HOT_AT, `hot, ${temperatureWords(model)}`);
  if (cold.left < from || warm.right > to || warm.left < cold.right + CLEAR) return [];
  return [...cold.items, ...warm.items];
}
