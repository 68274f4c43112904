import { describe, expect, test } from "vitest";
import { fileAnswer, hardnessByFiles, USUAL_FILES } from "../../../src/materials/hardness/file-hardness.js";

describe("files", () => {
  // SAE J864 (2018), as a laboratory's page sums it up: file, prover, what it just cuts, what it does not cut. The middle of
  // the file's own range is meant by its number (65: 65 to 68).
  test.each([
    [65, 63, 67],
    [62, 60, 64],
    [58, 56, 60],
    [55, 53, 57],
    [50, 48, 52],
  ])("file %d just cuts %d HRC and not %d HRC", (file, cuts, not) => {
    expect(fileAnswer(file, cuts)).toBe("cuts");
    expect(fileAnswer(file, cuts + 0.1)).toBe("barely cuts");
    expect(fileAnswer(file, not)).toBe("skates");
    expect(fileAnswer(file, not - 0.1)).toBe("barely skates");
  });

  test("a blade that a 60 file barely skates on and a 65 file cuts is about 60 to 61 (common practice, no source)", () => {
    const found = hardnessByFiles([
      { file: 60, answer: "barely skates" },
      { file: 65, answer: "cuts" },
    ]);
    expect(found).toEqual({ low: 60, high: 62 });
    for (const hardness of [60, 61]) {
      expect(fileAnswer(60, hardness)).toBe("barely skates");
      expect(fileAnswer(65, hardness)).toBe("cuts");
    }
  });

  test("what files answer on a blade brackets its hardness, to one step of the set at the most", () => {
    for (let hardness = 38; hardness <= 67; hardness += 0.25) {
      const told = USUAL_FILES.map((file) => ({ file, answer: fileAnswer(file, hardness) }));
      const found = hardnessByFiles(told);
      expect(found?.low ?? Number.NaN).toBeLessThanOrEqual(hardness);
      expect(found?.high ?? Number.NaN).toBeGreaterThanOrEqual(hardness);
      const width = (found?.high ?? 0) - (found?.low ?? 0);
      if (hardness >= 42 && hardness <= 63) expect(width).toBeLessThanOrEqual(6);
    }
  });

  test("says so where the answers cannot all be right, and leaves open what nothing tells of", () => {
    expect(
      hardnessByFiles([
        { file: 50, answer: "cuts" },
        { file: 60, answer: "skates" },
      ]),
    ).toBeUndefined();
    expect(hardnessByFiles([])).toEqual({ low: Number.NEGATIVE_INFINITY, high: Number.POSITIVE_INFINITY });
  });
});
