import { describe, expect, it } from "vitest";
import { Chance } from "../../../../tests/reference/random/chance.js";
import { unifiedDiff } from "../../src/report/unified-diff.js";

describe("a change", () => {
  it("is shown with three lines around it", () => {
    const before = ["a", "b", "c", "d", "e", "f", "g", "h", ""].join("\n");
    expect(unifiedDiff(before, before.replace("e", "E"), "shop.yaml")).toEqual([
      "--- shop.yaml",
      "+++ shop.yaml",
      "@@ -2,7 +2,7 @@",
      " b",
      " c",
      " d",
      "-e",
      "+E",
      " f",
      " g",
      " h",
    ]);
  });

  it("of two places far apart is two stretches", () => {
    const before = Array.from({ length: 30 }, (_, i) => `line ${i}\n`).join("");
    const after = before.replace("line 2\n", "").replace("line 25\n", "line 25\nnew\n");
    expect(unifiedDiff(before, after, "x").filter((line) => line.startsWith("@@"))).toEqual([
      "@@ -1,6 +1,5 @@",
      "@@ -24,6 +23,7 @@",
    ]);
  });

  it("is nothing where nothing changed, and all of a file that is new", () => {
    expect(unifiedDiff("a\n", "a\n", "x")).toEqual([]);
    expect(unifiedDiff("", "a\nb\n")).toEqual([
      "--- /dev/null",
      "+++ shop.yaml",
      "@@ -0,0 +1,2 @@",
      "+a",
      "+b",
    ]);
  });
});

/** A patch put on by its words alone: stretches by their line numbers, each line that stays or goes held against the text. */
function patched(before: string, diff: readonly string[]): string {
  const lines = before.match(/[^\n]*\n|[^\n]+$/gu) ?? [];
  const made: string[] = [];
  let at = 0;
  for (const [index, line] of diff.entries()) {
    const head = /^@@ -(\d+)(?:,(\d+))? \+\d+(?:,\d+)? @@$/u.exec(line);
    if (head !== null) {
      const start = Number(head[1]) - (head[2] === "0" ? 0 : 1);
      made.push(...lines.slice(at, start));
      at = start;
    } else if (index > 1 && !line.startsWith("\\")) {
      const end = diff[index + 1]?.startsWith("\\") === true ? "" : "\n";
      if (line[0] !== "+") {
        expect(lines[at]).toBe(line.slice(1) + end);
        at++;
      }
      if (line[0] !== "-") made.push(line.slice(1) + end);
    }
  }
  return [...made, ...lines.slice(at)].join("");
}

it("makes the new text of the old one, for texts of any lines", () => {
  const chance = new Chance(20261128);
  const text = (): string => {
    const lines = Array.from({ length: Math.floor(chance.between(0, 40)) }, () =>
      chance.pick("a", "b", "c: 1", "  - d", "", "é ± %"),
    );
    return lines.join("\n") + (lines.length > 0 && chance.in(0.8) ? "\n" : "");
  };
  for (let round = 0; round < 400; round++) {
    const before = text();
    const lines = before.split("\n");
    // Half of them are other texts, half the same with a line changed, as the command makes them.
    const after = chance.in(0.5)
      ? text()
      : lines.toSpliced(Math.floor(lines.length / 2), 1, "new").join("\n");
    expect(patched(before, unifiedDiff(before, after, "shop.yaml"))).toBe(after);
  }
});

/** The longest list of lines that two texts have in common, by the table of all pairs: a second method. */
function inCommon(before: readonly string[], after: readonly string[]): number {
  let row = after.map(() => 0);
  for (const line of before) {
    const next: number[] = [];
    for (const [j, other] of after.entries()) {
      const [left = 0, above = 0, both = 0] = [next[j - 1], row[j], row[j - 1]];
      next.push(line === other ? both + 1 : Math.max(left, above));
    }
    row = next;
  }
  return row.at(-1) ?? 0;
}

it("takes out and puts in as few lines as can be", () => {
  const chance = new Chance(20261129);
  const lines = (): string[] =>
    Array.from({ length: Math.floor(chance.between(0, 30)) }, () => chance.pick("a", "b", "c", "d"));
  for (let round = 0; round < 300; round++) {
    const [before, after] = [lines(), lines()];
    const [one, other] = [before, after].map((each) => each.map((line) => `${line}\n`).join(""));
    const diff = unifiedDiff(one ?? "", other ?? "", "x").slice(2);
    const count = (mark: string): number => diff.filter((line) => line.startsWith(mark)).length;
    const kept = inCommon(before, after);
    expect([count("-"), count("+")]).toEqual([before.length - kept, after.length - kept]);
  }
});

it("of a long file that is changed at both ends takes no longer than a blink", () => {
  // By the table of all pairs this took 25 s.
  const comments = Array.from({ length: 20_000 }, (_, i) => `# ${i}\n`).join("");
  const began = performance.now();
  const diff = unifiedDiff(`a: 1\n${comments}b: 2\n`, `a: 2\n${comments}b: 2\nc: 3\n`, "x");
  expect(performance.now() - began).toBeLessThan(2000);
  expect(diff.filter((line) => /^[-+][a-c]/u.test(line))).toEqual(["-a: 1", "+a: 2", "+c: 3"]);
});
