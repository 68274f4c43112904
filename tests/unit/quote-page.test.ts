import {
  CALENDAR_DEFAULTS,
  clockText,
  OIL_COATS,
  PROMISE_DEFAULTS,
  SCRAP_SHARES,
  TASK_HOURS,
  TASK_WORDS,
  WAIT_HOURS,
  WAIT_WORDS,
} from "@scantling/geometry";
import { describe, expect, test } from "vitest";
import { shopJsonSchema } from "../../packages/cli/src/file/index.js";
import { readText } from "./repository.js";

// docs/quote.md publishes what a quote reckons with where the files say nothing: its tables are those of the code.
const page = readText("docs/quote.md");

/** Rows of the table under a heading, as cells. */
function rowsUnder(heading: string): string[][] {
  const [, after = ""] = page.split(`### ${heading}\n`);
  const [section = ""] = after.split(/^#/mu);
  return section
    .split("\n")
    .filter((line) => line.startsWith("| `"))
    .map((line) => line.slice(2, -2).split(" | "));
}

const shown = (value: number): string => String(Math.round(value * 100) / 100);
const entries = <T extends object>(table: T) => Object.entries(table) as [keyof T & string, T[keyof T]][];

describe("the page about quotes", () => {
  test("has every task with its hours", () => {
    expect(rowsUnder("Hours where the files say nothing")).toEqual(
      entries(TASK_HOURS).map(([key, { low, value, high }]) => [
        `\`${key}\``,
        TASK_WORDS[key],
        ...[low, value, high].map(shown),
      ]),
    );
  });

  test("has every wait with its basis", () => {
    expect(rowsUnder("Waits where the files say nothing")).toEqual(
      entries(WAIT_HOURS).map(([key, { low, value, high, basis }]) => [
        `\`${key}\``,
        WAIT_WORDS[key],
        ...[low, value, high].map(shown),
        basis,
      ]),
    );
  });

  test("has the chances that something fails", () => {
    expect(rowsUnder("What fails")).toEqual(
      entries(SCRAP_SHARES).map(([key, share]) => [
        `\`${key}\``,
        `${shown((share?.value ?? 0) * 100)} %`,
        share?.basis,
      ]),
    );
  });

  test("has calendar, coats and tolerances as they are", () => {
    const { fromMinute, minutesPerDay, days } = CALENDAR_DEFAULTS;
    expect(page).toContain(`${days[0]} to ${days.at(-1)}, ${clockText(fromMinute)}, ${minutesPerDay / 60} h`);
    expect(page).toContain(`Coats of oil: ${OIL_COATS.value} on a wood`);
    const { length, height, thickness, balance, mass } = PROMISE_DEFAULTS;
    const lengths = [length, height, thickness, balance].map(({ value }) => value).join(", ");
    expect(page).toContain(`| ${lengths} mm, ${mass.value * 100} % |`);
  });

  test("names every key of the shop file's work", () => {
    const { work } = shopJsonSchema().properties ?? {};
    const keys = Object.keys(work?.properties ?? {});
    expect(keys.length).toBeGreaterThan(15);
    const [, section = ""] = page.split("## Keys");
    for (const key of keys) expect(section, key).toContain(`\`${key}\``);
  });
});
