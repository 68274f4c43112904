import { mkdirSync, mkdtempSync, realpathSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { EXIT } from "../../packages/cli/src/exit-code.js";
import { answer } from "../../packages/cli/test/support/answer.js";
import { FACTS } from "../../packages/cli/test/support/examples.js";
import { offered, type Shell } from "./shells.js";

// The scripts in the shells that they are for: what a smith is offered after a press of the tab key.
let folder = "";

beforeAll(() => {
  folder = realpathSync(mkdtempSync(join(tmpdir(), "scantling-words-")));
  for (const name of ["petty.knife.yaml", "two words.knife.yml", "shop.yaml", "notes.txt"])
    writeFileSync(join(folder, name), "");
  mkdirSync(join(folder, "orders"));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const KNIVES = ["orders", "petty.knife.yaml", "two words.knife.yml"];
const SHOPS = ["orders", "shop.yaml"];

const CASES: readonly (readonly [string, readonly string[]])[] = [
  ["scantling pl", ["plan"]],
  ["scantling pattern --st", ["--state"]],
  ["scantling gate --stage ", ["billet", "cut", "finished", "forged", "ready"]],
  ["scantling weigh --state f", ["finished", "forged"]],
  ["scantling pattern --format=p", ["pdf"]],
  ["scantling pattern --paper l", ["legal", "letter"]],
  ["scantling pattern --paper fi", ["fit"]],
  ["scantling calibrate --c", ["--corrected"]],
  ["scantling completion ", ["bash", "fish", "zsh"]],
  ["scantling help ga", ["gate"]],
  ["scantling weigh ", KNIVES],
  ["scantling weigh pet", ["petty.knife.yaml"]],
  ["scantling weigh --json --units mm ", KNIVES],
  ["scantling gate --mass 700g ", KNIVES],
  ["scantling stock petty.knife.yaml ", KNIVES],
  ["scantling weigh --shop ", SHOPS],
  ["scantling weigh --shop=", SHOPS],
  ["scantling weigh --out ", ["orders"]],
  ["/opt/smithy/bin/scantling weigh --units ", ["in", "mm"]],
];

/** Every option that takes words, with those that are declared. */
const OPTIONS = FACTS.commands.flatMap(({ name: command, options }) =>
  options.filter(({ words }) => words.length > 0).map((option) => ({ command, ...option })),
);

test("each word that is offered is taken", async () => {
  for (const { command, long, words } of OPTIONS) {
    for (const word of words) {
      const { code, err } = await answer([command, long, word, "--help"]);
      expect([code, err], `${command} ${long} ${word}`).toEqual([EXIT.done, ""]);
    }
  }
  // Help would not be shown where the line before it is refused.
  expect((await answer(["weigh", "--units", "ells", "--help"])).code).toBe(EXIT.usage);
});

const SHEETS = [
  "all",
  "drilling",
  "gauges",
  "mirrored",
  "pattern",
  "plots",
  "preform",
  "sections",
  "sheath",
  "slabs",
];

describe.each<Shell>(["bash", "zsh", "fish"])("%s", (shell) => {
  test.each(CASES)("%s", (line, words) => {
    expect(offered(shell, folder, line)).toEqual(words);
  });

  test("commands", () => {
    const commands = offered(shell, folder, "scantling ");
    expect(commands).toEqual(
      expect.arrayContaining(["calibrate", "check", "completion", "help", "plan", "weigh"]),
    );
    expect(commands.filter((word) => /\.|^-/.test(word))).toEqual([]);
  });

  test("a list parted by commas goes on behind the last one", () => {
    expect(offered(shell, folder, "scantling pattern --sheet ")).toEqual(SHEETS);
    const more = offered(shell, folder, "scantling pattern --sheet slabs,g").map((word) =>
      word.split(",").at(-1),
    );
    expect(more).toEqual(["gauges"]);
  });

  test("every word of every option, whole, and none besides", () => {
    const told = OPTIONS.map(({ command, long, words, form }) => {
      const line = `scantling ${command} ${long} `;
      expect(offered(shell, folder, line), line).toEqual(
        [...words, ...(form === "list" ? ["all"] : [])].sort(),
      );
      return [command, long, words.length] as const;
    });
    expect(told.length).toBeGreaterThan(20);
  });

  test("a word with a blank is offered whole", () => {
    expect(offered(shell, folder, "scantling record --drawn-with fl")).toEqual(["flat dies"]);
  });

  test("nothing is offered where only a figure can stand", () => {
    expect(offered(shell, folder, "scantling gate --mass ")).toEqual([]);
  });
});
