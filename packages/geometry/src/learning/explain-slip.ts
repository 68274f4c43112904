import type { Issue } from "../errors/issue.js";
import type { Candidate } from "./candidate.js";
import { type FigurePath, figureOf } from "./figures.js";
import { FAR, type Middle } from "./outliers.js";
import { readingValue } from "./reading.js";
import { type Slip, slipsOf } from "./slips.js";
import { fromWorking, toWorking } from "./working-scale.js";

/** A slip of one number, and what it would have been. */
export interface Explanation extends Slip {
  /** Which of the readings. */
  readonly reading: number;
  /** How far off the middle it would be, on the working scale. */
  readonly off: number;
}

/**
 * A slip explains a reading where what it would have been is an ordinary one: within what is not far from other jobs, or well
 * within the shop's own band, where that alone speaks against the reading.
 */
const ORDINARY = { ofJobs: FAR, ofOwn: 2 } as const;

/**
 * Every slip of one number that would make a reading an ordinary one and can have been, likeliest kind first. Where what else the record holds
 * tells which of two numbers slipped, only that one.
 *
 * @example
 * const record = { file: "a", weighings: [], sizes: [], drawn: [],
 *   hours: [{ task: "forge", hours: 180, on: "2026-11-28" }] as const,
 *   written: { mass: { unit: 1, mixUps: [] }, length: { unit: 1, mixUps: [] } } };
 * const middle = middleOfOwn({ value: 3, low: 1.5, high: 6 }, "ratio");
 * hoursCandidates(record).map((one) => explanations(one, middle)[0]?.words);
 * // ["minutes written as hours"]
 */
export function explanations(candidate: Candidate, middle: Middle): Explanation[] {
  const written = candidate.readings.map(({ value }) => value);
  const found = candidate.readings.flatMap((reading, index) =>
    slipsOf(reading).flatMap((slip): (Explanation & { agrees: boolean })[] => {
      if (candidate.canBe?.(index, slip.meant) === false) return [];
      const values = written.map((value, i) => (i === index ? slip.meant : value));
      const outcome = candidate.compute(values);
      if (!("value" in outcome)) return [];
      const off = Math.abs(toWorking(outcome.value, middle.spreading) - middle.centre);
      if (!(off <= (middle.ofJobs ? ORDINARY.ofJobs : ORDINARY.ofOwn) * middle.deviation)) return [];
      return [{ ...slip, reading: index, off, agrees: candidate.agrees?.(values) ?? true }];
    }),
  );
  const agreeing = found.filter(({ agrees }) => agrees);
  return (agreeing.length > 0 ? agreeing : found).sort((a, b) => a.rank - b.rank || a.off - b.off);
}

/**
 * What is wrong with a reading that lies far from the others, or from the shop's own figure; begins with a small letter.
 *
 * @example
 * farIssue("work.hours.forge", 30, middleOfOwn({ value: 3, low: 1.5, high: 6 }, "ratio")).code; // "far-off"
 */
export function farIssue(of: FigurePath, value: number, middle: Middle): Omit<Issue, "path"> {
  const { quantity } = figureOf(of);
  const shown = (number: number) =>
    ({ quantity: quantity === "hours" ? "count" : quantity, value: number }) as const;
  const hours = quantity === "hours" ? " hours" : "";
  return {
    code: "far-off",
    text: `{is}${hours} is far from ${middle.words} {middle}${hours}`,
    values: { is: shown(value), middle: shown(fromWorking(middle.centre, middle.spreading)) },
  };
}

/**
 * The issue with the slip that would explain it: of one number, or of one of two where nothing tells which.
 *
 * @example
 * withSlips({ code: "far-off", text: "odd" }, [], []).text; // "odd"
 */
export function withSlips(
  issue: Omit<Issue, "path">,
  readings: Candidate["readings"],
  all: readonly Explanation[],
): Omit<Issue, "path"> {
  const [best] = all;
  if (best === undefined) return issue;
  const alike = all.filter(
    ({ reading, words }, index) =>
      words === best.words && all.findIndex((other) => other.reading === reading) === index,
  );
  const meant = alike.slice(0, MOST_NAMED).map(({ reading }, index) => {
    const name = readings[reading]?.of ?? "";
    return `{meant${index}} (${name})`;
  });
  const values = alike.slice(0, MOST_NAMED).map(({ reading, meant: value }, index) => {
    const kind = readings[reading]?.kind ?? "heats";
    return [`meant${index}`, readingValue(kind, value)] as const;
  });
  return {
    code: best.code,
    text: `${issue.text}; ${best.words}? ${meant.join(" or ")} would fit`,
    values: { ...issue.values, ...Object.fromEntries(values) },
  };
}

/** More than two numbers that may be wrong are no help. */
const MOST_NAMED = 2;
