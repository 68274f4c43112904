import type { PressPasses, PressStop, StopChoice } from "@scantling/geometry";
import {
  type FileUnits,
  formatCaliper,
  formatLength,
  formatTemperature,
  inchesToMm,
} from "@scantling/geometry/units";
import { percentText } from "./figures.js";
import { type Align, layOutTable, REPORT_WIDTH, wrap } from "./layout.js";

/** A size in a table whose head says the unit. */
export const bare = (mm: number, units: FileUnits): string =>
  formatCaliper(mm, units).replace(/(?: mm|")$/u, "");

/**
 * The passes of a press: what the caliper shows after each, cold and hot, and what to lay in for it. With real stops these
 * are the sizes that come out, not those that were aimed at.
 */
export function passTable(pressing: PressPasses, units: FileUnits): string[] {
  const { passes } = pressing;
  const stops = stopsKnown(passes) ? passes.map((pass) => [pass]) : undefined;
  return withLayIn(passRows(pressing, units), stops, units);
}

/** The same as rows, heads first. */
export function passRows({ passes, temperature }: PressPasses, units: FileUnits): string[][] {
  const heads = ["", `cold ${units}`, `at ${formatTemperature(temperature, units)}`, "takes", "stop"];
  const rows = passes.map((pass, i) => [
    `${i + 1}.`,
    bare(pass.out?.cold ?? pass.cold, units),
    bare(pass.out?.hot ?? pass.hot, units),
    percentText(pass.reduction),
    bare(pass.stop?.height ?? pass.wanted, units),
  ]);
  return [heads, ...rows];
}

/** Whether the shop names stops: then each pass has one, or a block to make at the end. */
export const stopsKnown = (stops: readonly PressStop[]): boolean =>
  stops.some(({ stop, make }) => stop !== undefined || make !== undefined);

/** A table, and behind each row what to lay in one after the other; nothing where no stops are known. What is wider than `width` goes on below. */
export function withLayIn(
  rows: readonly (readonly string[])[],
  stops: readonly (readonly PressStop[])[] | undefined,
  units: FileUnits,
  width = REPORT_WIDTH - 2,
): string[] {
  const lines = layOutTable(rows, rightAligned(rows[0]?.length ?? 0));
  if (stops === undefined) return lines;
  const wide = Math.max(...lines.map((line) => line.length)) + 2;
  return lines.flatMap((line, i) => {
    const text = i === 0 ? "lay in" : laidText(stops[i - 1] ?? [], units);
    return wrap(text, width - wide).map((part, n) => `${(n === 0 ? line : "").padEnd(wide)}${part}`);
  });
}

/** What to lay in, one stop after the other. */
export const laidText = (stops: readonly PressStop[], units: FileUnits): string =>
  stops.length === 0 ? "–" : stops.map((stop) => stopText(stop, units)).join(", then ");

function stopText({ stop, make }: PressStop, units: FileUnits): string {
  if (stop !== undefined) return layIn(stop, units);
  return make === undefined ? "none: by caliper" : `make ${bare(make, units)}`;
}

/** `8 + 0.5 + 2×0.2`: the post, then the shims on it, thickest first. */
function layIn({ block, shims }: StopChoice, units: FileUnits): string {
  const sizes = [...new Set(shims)].map((size) => {
    const number = shims.filter((one) => one === size).length;
    return `${number > 1 ? `${number}×` : ""}${marked(size, units)}`;
  });
  return [marked(block, units), ...sizes].join(" + ");
}

/** Of a shim that is no fraction of an inch. */
const INCH_PLACES = 3;

/** What sizes blocks and shims are made in, mm: twentieths of a mm; 64ths or half thousandths of an inch. */
const MADE_IN: Readonly<Record<FileUnits, readonly number[]>> = {
  mm: [0.05],
  in: [inchesToMm(1 / 64), inchesToMm(0.0005)],
};

const isMadeIn = (mm: number, units: FileUnits): boolean =>
  MADE_IN[units].some((step) => Math.abs(mm / step - Math.round(mm / step)) < 1e-6);

/** A size as it is marked on a block: in the other unit, and with it, where that is the one it was made in. */
function marked(mm: number, units: FileUnits): string {
  const other = units === "mm" ? "in" : "mm";
  if (isMadeIn(mm, units) || !isMadeIn(mm, other)) return bareMark(mm, units);
  return other === "mm" ? `${bareMark(mm, other)} mm` : `${bareMark(mm, other)}"`;
}

/** No more digits than it has, in inches the fraction where it is one, else thousandths. */
function bareMark(mm: number, units: FileUnits): string {
  const asFraction = formatLength(mm, units);
  if (units === "in" && /\d"$/u.test(asFraction)) return asFraction.replace('"', "");
  const text = formatLength(mm, units, { resolution: units === "mm" ? 0.001 : 0.0001 }).replace(
    /(?: mm|")$/u,
    "",
  );
  // Shims are sold by thousandths: 0.010, not 0.01.
  return units === "in" && !/\.\d{3}/u.test(text) ? Number(text).toFixed(INCH_PLACES) : text;
}

export const rightAligned = (columns: number): Align[] => Array.from({ length: columns }, () => "right");
