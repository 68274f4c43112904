import { readdirSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { nodeIo } from "../../packages/cli/src/io/node-io.js";
import { manualFiles, PAGES } from "../../packages/cli/src/manual/manual-files.js";
import { ROOT, readText } from "./repository.js";

// The manual says what the program declares today.
const files = manualFiles(nodeIo());

describe("the manual is up to date; if not: npm run docs", () => {
  test.each(files.map(({ path, content }) => ({ path, content })))("$path", ({ path, content }) => {
    expect(readText(path)).toBe(content);
  });

  test("and has no page of a command that is no more", () => {
    const pages = files.filter(({ path }) => path.startsWith(`${PAGES}/`)).map(({ path }) => path);
    expect(
      readdirSync(join(ROOT, PAGES))
        .map((name) => `${PAGES}/${name}`)
        .sort(),
    ).toEqual(pages.sort());
  });
});

test("every page has usage, options, examples, exit codes and files", () => {
  const commands = files.filter(({ path }) => path.startsWith(`${PAGES}/`) && !path.endsWith("README.md"));
  expect(commands.length).toBeGreaterThan(8);
  for (const { path, content } of commands) {
    for (const part of [
      "| Option |",
      "```text\nscantling ",
      "## Examples",
      "## Exit codes",
      "## Files",
      "`--json`",
    ])
      expect(content, path).toContain(part);
  }
});
