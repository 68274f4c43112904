import { describe, expect, it } from "vitest";
import { HARVEST, knifeProblems, projectFile, shopProblems } from "./files.js";

/** Numbers from 0 to 1, the same ones every time (Park and Miller's generator). */
function* numbers(seed: number): Generator<number, never> {
  for (let state = seed; ; ) {
    state = (state * 48271) % 2147483647;
    yield state / 2147483647;
  }
}

const PIECES = [
  "",
  " ",
  "\n",
  "\t",
  ":",
  "-",
  "{",
  "}",
  "[",
  "]",
  '"',
  "'",
  "#",
  "&a",
  "*a",
  "!",
  "|",
  ">",
  "?",
  "½",
  "0",
  ".nan",
  "~",
  "\u0000",
  "__proto__",
];

describe("a file with typing mistakes anywhere", () => {
  it.each([
    ["knife", HARVEST, knifeProblems],
    ["shop", projectFile("examples/market-garden/shop.yaml"), shopProblems],
  ])("%s: is read, or answered with problems that lie inside it", (_, text, problemsOf) => {
    const random = numbers(1959);
    const next = (below: number): number => Math.floor(random.next().value * below);
    for (let round = 0; round < 200; round++) {
      const at = next(text.length);
      const changed = `${text.slice(0, at)}${PIECES[next(PIECES.length)]}${text.slice(at + next(3))}`;
      const lines = changed.split("\n").length;
      for (const { line, column, message } of problemsOf(changed)) {
        expect(line, changed.slice(at - 20, at + 20)).toBeLessThanOrEqual(lines);
        expect(line).toBeGreaterThanOrEqual(1);
        expect(column).toBeGreaterThanOrEqual(1);
        expect(message).not.toMatch(/undefined|\[object|Invalid input/u);
      }
    }
  });
});
