import { length } from "@scantling/geometry";
import { describe, expect, it } from "vitest";
import { placeIssues, readKnifeFile } from "../../src/file/index.js";
import { smallWith } from "./files.js";

const file = readKnifeFile(
  smallWith({ 12: "  length: 128\n  holes:\n    - { kind: pin, at: [-26, 76], diameter: 4 }" }),
  "knife.yaml",
);
const issue = (path: string) => ({
  code: "some-rule",
  path,
  text: "It is {size}.",
  values: { size: length(6.35) },
});

describe("placeIssues", () => {
  it("puts an issue where its value stands, in the units asked for", () => {
    expect(placeIssues([issue("tang.holes[0].diameter")], file, "in")).toEqual([
      {
        code: "some-rule",
        file: "knife.yaml",
        path: "tang.holes[0].diameter",
        line: 14,
        column: 45,
        message: 'tang.holes[1st].diameter: It is 1/4".',
      },
    ]);
  });

  it.each([
    ["tang.holes[0].at.x", 14, 25],
    ["tang.holes[0].pin", 14, 7],
    ["tang.holes[7].at", 13, 3],
    ["blade.bevel.crown.mm", 8, 10],
    ["blade.plunge.length", 4, 1],
    ["blade.outline.runs.edge", 5, 12],
  ])("finds the nearest group of %s", (path, line, column) => {
    expect(placeIssues([issue(path)], file, "mm")).toMatchObject([{ line, column }]);
  });

  it("gives no place to what concerns the whole file", () => {
    expect(placeIssues([issue("")], file, "mm")).toMatchObject([
      { line: undefined, column: undefined, message: "It is 6.35 mm." },
    ]);
    expect(placeIssues([issue("handle.slabs")], file, "mm")).toMatchObject([{ line: undefined }]);
  });
});
