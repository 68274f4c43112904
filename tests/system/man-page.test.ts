import { spawnSync } from "node:child_process";
import { join } from "node:path";
import { expect, test } from "vitest";
import { ROOT, readText } from "../unit/repository.js";

const STEP_BACK = String.fromCharCode(8);
const PAGE = join(ROOT, "packages", "cli", "man", "scantling.1");

function mandoc(...args: readonly string[]): string {
  const result = spawnSync("mandoc", [...args, PAGE], { encoding: "utf8" });
  if (result.error !== undefined) {
    throw new Error("mandoc cannot be run; on Debian: apt-get install mandoc", { cause: result.error });
  }
  return result.stdout;
}

test("mandoc has nothing against the man page but that it has no date", () => {
  // A date would make another page of it every day.
  const complaints = mandoc("-T", "lint")
    .split("\n")
    .filter((line) => line !== "");
  expect(complaints.filter((line) => !line.includes("missing date"))).toEqual([]);
});

test("the man page reads as plain text, with every command and option in it", () => {
  // Letters are printed over themselves to make them bold: a letter, a step back, the letter.
  const text = mandoc("-T", "utf8", "-O", "width=80").replace(new RegExp(`.${STEP_BACK}`, "gu"), "");
  const commands = [...readText("docs/commands/README.md").matchAll(/\[scantling ([a-z]+)\]/gu)].map(
    ([, name]) => name,
  );
  expect(commands.length).toBeGreaterThan(8);
  for (const name of commands) expect(text).toContain(`scantling ${name} [options]`);
  for (const heading of ["NAME", "SYNOPSIS", "COMMANDS", "ENVIRONMENT", "FILES", "EXIT STATUS"])
    expect(text).toMatch(new RegExp(`^${heading}$`, "mu"));
  // Hyphens that are typed come out as hyphens, quotes and backslashes as they were.
  expect(text).toContain('--at "heel=5.6 mm" --at "60 %=4.6 mm"');
  expect(text).toContain("--mass 690g \\\n");
});
