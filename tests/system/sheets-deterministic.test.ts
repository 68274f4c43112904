import { createHash } from "node:crypto";
import { afterAll, describe, expect, test } from "vitest";
import { runBuilt, type Written } from "./sheets-files.js";

// The same knife gives the same bytes, in processes that know nothing of each other.
const made: Written[] = [];
afterAll(() => {
  for (const each of made) each.remove();
});

function hashes(...words: Parameters<typeof runBuilt>): Record<string, string> {
  const written = runBuilt(...words);
  made.push(written);
  return Object.fromEntries(
    written.names.map((name) => [name, createHash("sha256").update(written.bytes(name)).digest("hex")]),
  );
}

const DEMO = "market-garden/harvest.knife.yaml";

describe("two runs of the command", () => {
  test.each([
    ["pattern", "svg", "a4", 20],
    ["pattern", "pdf", "a4", 1],
    ["pattern", "dxf", undefined, 9],
    ["jobsheet", "pdf", "a4", 1],
    ["jobsheet", "svg", "letter", 1],
  ] as const)("write the same bytes: %s, %s", (command, format, paper, least) => {
    const words = [
      ...(command === "pattern" ? ["--sheet", "all"] : []),
      "--format",
      format,
      ...(paper === undefined ? [] : ["--paper", paper]),
    ];
    const first = hashes(command, DEMO, ...words);
    expect(Object.keys(first).length).toBeGreaterThanOrEqual(least);
    expect(hashes(command, DEMO, ...words)).toEqual(first);
  });
});
