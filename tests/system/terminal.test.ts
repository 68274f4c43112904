import { spawn } from "node:child_process";
import { cpSync, mkdtempSync, readdirSync, readFileSync, realpathSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { ROOT } from "../unit/repository.js";

// The built command on a terminal of 80 columns, which `script` (util-linux) makes.
const BIN = join(ROOT, "packages", "cli", "dist", "bin.js");
const ESCAPE = String.fromCharCode(27);
const CTRL_C = String.fromCharCode(3);
const CTRL_D = String.fromCharCode(4);
let folder = "";

beforeAll(() => {
  folder = realpathSync(mkdtempSync(join(tmpdir(), "scantling-terminal-")));
  cpSync(join(ROOT, "examples", "market-garden"), folder, { recursive: true });
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Runs it, typing each text once what it waits for has been shown; answers with all that was shown, and its exit code. */
function onTerminal(
  words: string,
  typing: readonly (readonly [waitFor: string, text: string])[] = [],
  env: Readonly<Record<string, string>> = {},
): Promise<{ shown: string; code: number | null }> {
  const { NO_COLOR: _, CI: __, ...rest } = process.env;
  const child = spawn(
    "script",
    ["-qec", `stty cols 80 rows 40; "${process.execPath}" "${BIN}" ${words}`, "/dev/null"],
    {
      cwd: folder,
      env: { ...rest, TERM: "xterm", ...env },
    },
  );
  const left = [...typing];
  let shown = "";
  let seen = 0;
  child.stdout.on("data", (chunk) => {
    shown += String(chunk);
    for (let next = left[0]; next !== undefined && shown.indexOf(next[0], seen) >= 0; next = left[0]) {
      seen = shown.indexOf(next[0], seen) + next[0].length;
      child.stdin.write(next[1]);
      left.shift();
    }
  });
  return new Promise((resolve, reject) => {
    child.on("error", (cause) => reject(new Error("script cannot be run; on Debian: bsdutils", { cause })));
    child.on("close", (code) => resolve({ shown: shown.replaceAll("\r\n", "\n"), code }));
  });
}

const plain = (text: string): string => text.replaceAll(new RegExp(`${ESCAPE}\\[[\\d;]*[A-Za-z]`, "gu"), "");
const widest = (text: string): number =>
  Math.max(
    ...plain(text)
      .split("\n")
      .map((line) => line.length),
  );

test("colours a few words, and says the same without them", async () => {
  const colours = await onTerminal("check harvest.knife.yaml");
  expect(colours.shown).toContain(`${ESCAPE}[33mwarning${ESCAPE}[0m: `);
  const none = await onTerminal("check harvest.knife.yaml", [], { NO_COLOR: "1" });
  expect(none.shown).not.toContain(ESCAPE);
  expect(plain(colours.shown)).toBe(none.shown);
  expect(widest(colours.shown)).toBeLessThanOrEqual(80);
});

test("asks, and writes what was answered", async () => {
  const { shown, code } = await onTerminal("new", [
    ["What kind of knife", "bowie\r"],
    ["Units", "in\r"],
    ["Edge length", "9 1/4\r"],
    ["Height at the heel", "\r"],
    ["Thickness at the heel", "?\r"],
    ["Thickness at the heel", "\r"],
    ["Tang", "hidden\r"],
    ["Steel", "80crv2\r"],
    ["Handle", "walnut\r"],
    ["Mass must be below", "1 lb 4 oz\r"],
    ["Name of the file", "first\r"],
  ]);
  expect(code, shown).toBe(0);
  expect(plain(shown)).toContain('= 9 1/4" (235.0 mm)');
  expect(widest(shown)).toBeLessThanOrEqual(80);
  const text = readFileSync(join(folder, "first.knife.yaml"), "utf8");
  expect(text).toContain("edgeLength: 9 1/4 ");
  expect(text).toContain("mass: { below: 1 lb 4 oz }");
  expect((await onTerminal("weigh first.knife.yaml")).code).toBe(0);
});

test.each([
  ["Ctrl-C", CTRL_C],
  ["the end of input", CTRL_D],
])("%s stops the questions and leaves nothing behind", async (_, key) => {
  const before = readdirSync(folder);
  const { shown, code } = await onTerminal("new", [
    ["What kind of knife", "\r"],
    ["Units", key],
  ]);
  expect(code).toBe(2);
  expect(plain(shown)).toContain("stopped; nothing was written");
  expect(readdirSync(folder)).toEqual(before);
});
