import { describe, expect, it } from "vitest";
import { FileError, formatProblems, type Problem, showText } from "../../src/file/index.js";

const problem = (over: Partial<Problem>): Problem => ({
  code: "some-rule",
  file: "knife.yaml",
  path: "blade",
  line: 14,
  column: 5,
  message: "blade.bevel.heigth is not a key here; did you mean height?",
  ...over,
});

describe("formatProblems", () => {
  it("names file, line and column in front of each sentence", () => {
    expect(
      formatProblems([problem({}), problem({ line: undefined, column: undefined, message: "is empty" })]),
    ).toBe(
      "knife.yaml:14:5  blade.bevel.heigth is not a key here; did you mean height?\nknife.yaml  is empty",
    );
  });

  it("keeps to 80 columns, whatever the words, and puts hints on lines of their own", () => {
    const long = Array.from({ length: 40 }, (_, index) => "word".repeat((index % 5) + 1)).join(" ");
    const text = formatProblems([
      problem({ message: long, hint: "Look it up." }),
      problem({ file: "f".repeat(200) }),
      problem({ file: `${"deep/".repeat(30)}knife.yaml`, message: "x".repeat(300) }),
    ]);
    for (const line of text.split("\n")) expect(line.length).toBeLessThanOrEqual(80);
    expect(text).toContain("\n    Look it up.\n");
    expect(text.replace(/\s+/gu, "")).toContain(long.replace(/\s+/gu, ""));
  });

  it("stops after fifty and says how many more there are", () => {
    const text = formatProblems(Array.from({ length: 70 }, () => problem({ message: "short" })));
    expect(text.split("\n")).toHaveLength(51);
    expect(text).toMatch(/\nand 20 more$/u);
  });
});

describe("FileError", () => {
  it("keeps problems in the order of the file", () => {
    const error = new FileError("knife.yaml", [
      problem({ line: 3, column: 9 }),
      problem({ line: 3, column: 2 }),
      problem({ line: undefined }),
      problem({ line: 1 }),
    ]);
    expect(error.problems.map(({ line, column }) => `${line}:${column}`)).toEqual([
      "undefined:5",
      "1:5",
      "3:2",
      "3:9",
    ]);
  });
});

describe("showText", () => {
  it("cuts long text and marks characters that cannot be shown", () => {
    expect(showText("plain")).toBe("plain");
    expect(showText("x".repeat(100))).toHaveLength(40);
    expect(showText("a\u001b[31m\u202eb")).toBe("a\uFFFD[31m\uFFFDb");
  });
});
