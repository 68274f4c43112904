import { describe, expect, it } from "vitest";
import { inShort, knifeProblems, SMALL, smallWith } from "./files.js";

/** Runs a read and says how long it took, ms. */
function timed<T>(read: () => T): { result: T; ms: number } {
  const started = performance.now();
  return { result: read(), ms: performance.now() - started };
}

describe("files that say nothing", () => {
  it.each([
    ["", "1:1 file-empty | the file is empty; its first key is scantling: 1"],
    ["  \n\n", "1:1 file-empty | the file is empty; its first key is scantling: 1"],
    [
      "# a comment\n\n# another\n",
      "1:1 file-empty | the file has only comments in it; its first key is scantling: 1",
    ],
    ["~\n", "1:1 file-empty | the file has only comments in it; its first key is scantling: 1"],
    ["---\n", "1:1 file-empty | the file has only comments in it; its first key is scantling: 1"],
  ])("%j", (text, problem) => {
    expect(inShort(knifeProblems(text))).toEqual([problem]);
  });

  it.each([
    ["just words", "1:1"],
    ["- a\n- b\n", "1:1"],
    ["[1, 2]", "1:1"],
    ["42", "1:1"],
    ['"scantling: 1"', "1:1"],
  ])("%j is no group of keys", (text, place) => {
    expect(inShort(knifeProblems(text))).toEqual([
      `${place} wrong-type | the file needs to be a group of keys, beginning with scantling: 1`,
    ]);
  });
});

describe("broken notation", () => {
  it.each([
    ["a tab to indent", smallWith({ 11: "\tform: full" }), "11:1", /a tab is used to indent; use spaces/],
    [
      "a bracket left open",
      smallWith({ 5: "  outline: { family: vegetable" }),
      "6:3",
      /a closing } is missing above this line/,
    ],
    [
      "a quote left open",
      smallWith({ 3: 'steel: "1084' }),
      "13:1",
      /cannot be read as YAML: missing closing "quote/,
    ],
    ["a colon in a value", smallWith({ 3: "steel: 1084: fresh" }), "3:8", /two keys on one line/],
    ["a key without a colon", smallWith({ 11: "  form" }), "11:3", /a key needs a colon/],
    ["crooked indentation", smallWith({ 11: "    form: full" }), "12:1", /this line is indented differently/],
    ["a directive", `%YAML 1.1\n---\n${SMALL}`, "1:1", /begin with %/],
    ["two documents", `${SMALL}---\n${SMALL}`, "13:1", /second document/],
  ])("%s", (_, text, place, message) => {
    const [first] = knifeProblems(text);
    expect(`${first?.line}:${first?.column}`).toBe(place);
    expect(first?.message).toMatch(message);
  });
});

describe("hostile files", () => {
  it("an alias bomb is refused without being unfolded", () => {
    const levels = Array.from(
      { length: 30 },
      (_, level) => `l${level + 1}: &l${level + 1} [${Array(10).fill(`*l${level}`).join(", ")}]`,
    );
    const bomb = `${SMALL}l0: &l0 boom\n${levels.join("\n")}\n`;
    const { result, ms } = timed(() => knifeProblems(bomb));
    expect(ms).toBeLessThan(1000);
    expect(inShort(result)[0]).toBe("13:9 yaml-anchor | l0: leave out the mark &l0 and write each value out");
    expect(result).toHaveLength(31);
  });

  it("an alias is refused where it stands, and hides no other problem", () => {
    const text = smallWith({ 7: "    - { at: heel, is: *t }", 12: "  length: 480 g" });
    expect(knifeProblems(text).map(({ line, column, code }) => `${line}:${column} ${code}`)).toEqual([
      "7:23 yaml-alias",
      "12:11 quantity-unit-wrong-kind",
    ]);
  });

  it.each([
    ["[", 1],
    ["{", 1],
    ["- ", 2],
    ["? ", 2],
    ["a: ", 3],
    ["[{a: ", 5],
  ])("nesting with %j without end is refused at once", (piece, size) => {
    const { result, ms } = timed(() => knifeProblems(piece.repeat(Math.floor(1_000_000 / size))));
    expect(ms).toBeLessThan(1000);
    expect(result).toMatchObject([{ code: "too-deep", line: 1 }]);
  });

  it("nesting by indentation is refused at its line", () => {
    const text = Array.from({ length: 100 }, (_, level) => `${" ".repeat(level)}a:\n`).join("");
    expect(knifeProblems(text)).toMatchObject([{ code: "too-deep" }]);
    expect(knifeProblems(text)[0]?.line).toBeGreaterThan(30);
  });

  it("a hundred thousand bytes of the same key are answered in a few seconds", () => {
    const { result, ms } = timed(() => knifeProblems("k: 1\n".repeat(20_000)));
    expect(result.length).toBeGreaterThan(0);
    expect(ms).toBeLessThan(5000);
  });

  it("no object's prototype is touched", () => {
    knifeProblems(`${SMALL}__proto__: { polluted: 1 }\nconstructor: { prototype: { polluted: 1 } }\n`);
    expect("polluted" in {}).toBe(false);
  });

  it("control characters of a file do not reach the message", () => {
    const [problem] = knifeProblems(`${SMALL}"\\u001b[31mred": 1\n`);
    expect(problem?.message).not.toContain("\u001b");
  });
});
