import { spawnSync } from "node:child_process";
import { describe, expect, it } from "vitest";
import { EXIT } from "../src/exit-code.js";
import { commandLine, commandLines } from "../src/shell-words.js";
import { answer, flat, wideLines } from "./support/answer.js";
import { DEMO_KNIFE, DEMO_RECORD, DEMO_SHOP } from "./support/demo.js";

/** The words that a shell makes of a text. */
const parted = (text: string): string[] =>
  spawnSync("sh", ["-c", `for word in ${text}; do printf '%s\\0' "$word"; done`], { encoding: "utf8" })
    .stdout.split("\0")
    .slice(0, -1);

const LONG = `${"a very long folder name ".repeat(4)}x.knife.yaml`;

describe("a proposed command line", () => {
  it.each([
    [["check", "my knife.yaml"]],
    [["it's", '"', "$HOME", "a;b", "*", "`ls`", "", "~/x", "#no"]],
    [["record", LONG, "--stage", "cut", "--mass", "1215g"]],
  ])("is parted by the shell as it was meant: %s", (words) => {
    expect(parted(commandLine(words))).toEqual(words);
    expect(parted(commandLines(words).join("\n"))).toEqual(words);
  });

  it("keeps to 80 columns wherever no single word is longer", () => {
    const lines = commandLines(["scantling", ..."some words that go on ".repeat(8).trim().split(" ")]);
    expect(lines.length).toBeGreaterThan(1);
    expect(wideLines(lines.join("\n"))).toEqual([]);
  });
});

describe("commands that propose one", () => {
  it("record: with the path as it was given", async () => {
    const files = { "my orders/harvest.knife.yaml": DEMO_KNIFE, "shop.yaml": DEMO_SHOP };
    const { out } = await answer(["record", "my orders/harvest.knife.yaml"], { files });
    expect(flat(out)).toContain("scantling record 'my orders/harvest.knife.yaml' --stage cut --mass 1215g");
    expect(wideLines(out)).toEqual([]);
  });

  it("new: the file in quotes where it needs them, or a copy from one", async () => {
    const { err } = await answer(["new", "my knife"], {});
    expect(err).toContain("\n  scantling check 'my knife.knife.yaml'\n");
    const copy = await answer(["new", "--from", "my knife.knife.yaml"], {
      files: { "my knife.knife.yaml": DEMO_KNIFE },
    });
    expect(flat(copy.err)).toContain("scantling new NAME.knife.yaml --from 'my knife.knife.yaml'");
  });

  it("learn: with records, shop and units as they were given", async () => {
    const files = {
      "my shop.yaml": DEMO_SHOP,
      "my orders/one.record.yaml": DEMO_RECORD,
      // Another order: the same record under two names counts once.
      "my orders/two.record.yaml": DEMO_RECORD.replaceAll("on: 2026-", "on: 2025-"),
      "my orders/harvest.knife.yaml": DEMO_KNIFE,
    };
    const argv = ["learn", "my orders", "--shop", "my shop.yaml", "--units", "in"];
    const { code, out } = await answer(argv, { files });
    expect(code).toBe(EXIT.done);
    expect(flat(out).replaceAll(" \\", "")).toContain(
      "scantling learn 'my orders' --shop 'my shop.yaml' --units in --write",
    );
  });
});
