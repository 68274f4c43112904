import { describe, expect, it } from "vitest";
import { answer } from "../support/answer.js";
import { DEMO_FILES, demoWith } from "../support/demo.js";
import type { FakeIoOptions } from "../support/fake-io.js";

const ESCAPE = String.fromCharCode(27);
const red = (word: string): string => `${ESCAPE}[1;31m${word}${ESCAPE}[0m`;
const yellow = (word: string): string => `${ESCAPE}[33m${word}${ESCAPE}[0m`;

/** An ask that is not met, one at risk, and a hole that would break out of the tang. */
const FILES = {
  ...DEMO_FILES,
  "a.knife.yaml": demoWith(
    ["below: 600 g", "below: 300 g"],
    ["below: 370 mm", "below: 363.1 mm"],
    ["at: [-84, 76]", "at: [-84, 70]"],
  ),
};
const check = (world: FakeIoOptions, ...words: string[]) =>
  answer(["check", "a.knife.yaml", ...words], { files: FILES, ...world });

describe("colours", () => {
  it("mark what is grave on a terminal, and change nothing else", async () => {
    const { out } = await check({ typed: [] });
    expect(out).toContain(red("NOT MET"));
    expect(out).toContain(yellow("at risk"));
    expect(out).toContain(`\n${red("STOP")}: `);
    const plain = (await check({})).out;
    expect(plain).not.toContain(ESCAPE);
    expect(out.replaceAll(new RegExp(`${ESCAPE}\\[[\\d;]*m`, "gu"), "")).toBe(plain);
  });

  it("mark that something went wrong on standard error", async () => {
    const { err } = await answer(["check", "none.knife.yaml"], { typed: [] });
    expect(err.startsWith(`${red("scantling")}: cannot read`)).toBe(true);
  });

  it.each<[string, FakeIoOptions, string[]]>([
    ["with NO_COLOR", { typed: [], env: { NO_COLOR: "1" } }, []],
    ["on a dumb terminal", { typed: [], env: { TERM: "dumb" } }, []],
    ["where it is no terminal", { env: { TERM: "xterm" } }, []],
    ["in JSON", { typed: [] }, ["--json"]],
    ["in files", { typed: [], env: { NO_COLOR: "1" } }, ["--out", "out"]],
  ])("are not there %s", async (_, world, words) => {
    const { out, err } = await check(world, ...words);
    expect(out).not.toBe("");
    expect(out + err).not.toContain(ESCAPE);
  });

  it("are there where NO_COLOR is empty, and never in what is written to files", async () => {
    const { out, io } = await check({ typed: [], env: { NO_COLOR: "" } }, "--out", "out");
    expect(out).toContain(ESCAPE);
    expect(io.disk.text("/shop/out/check.txt")).not.toContain(ESCAPE);
  });
});
