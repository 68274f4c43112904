import { spawnSync } from "node:child_process";
import { readdirSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { fences, ROOT, readText } from "./repository.js";

// Each example has a page that shows what the program says of it: copied from the program, and held to that here.
const bin = join(ROOT, "packages", "cli", "dist", "bin.js");
const folders = readdirSync(join(ROOT, "examples"), { withFileTypes: true })
  .filter((entry) => entry.isDirectory() && entry.name !== "node_modules")
  .map(({ name }) => name);

test("there are the demo and the six orders", () => {
  expect(folders).toHaveLength(7);
});

describe.each(folders)("examples/%s/README.md", (folder) => {
  const page = readText(`examples/${folder}/README.md`);
  const knife =
    readdirSync(join(ROOT, "examples", folder)).find((name) => name.endsWith(".knife.yaml")) ?? "";

  test("shows what check says today", () => {
    expect(page).toContain(`\`scantling check ${knife}\``);
    const { stdout, stderr } = spawnSync(process.execPath, [bin, "check", knife], {
      cwd: join(ROOT, "examples", folder),
      encoding: "utf8",
    });
    expect(stderr).toBe("");
    expect(fences(page).map(({ text }) => text)).toEqual([stdout.trimEnd()]);
  });

  test("says what was ordered, and what comes next", () => {
    expect(page).toMatch(/^# .+\n\n.{60,}/su);
    expect(page).toContain("## What the smith does next\n\n");
  });
});
