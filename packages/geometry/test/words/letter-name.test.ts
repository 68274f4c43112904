import { describe, expect, it } from "vitest";
import { letterName } from "../../src/words/letter-name.js";

describe("letterName", () => {
  it.each([
    [0, "A"],
    [25, "Z"],
    [26, "A2"],
    [51, "Z2"],
    [52, "A3"],
  ])("calls %i %s", (index, name) => {
    expect(letterName(index)).toBe(name);
  });

  it("calls no two alike", () => {
    const names = Array.from({ length: 300 }, (_, index) => letterName(index));
    expect(new Set(names).size).toBe(300);
  });
});
