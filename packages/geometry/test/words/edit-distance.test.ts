import { describe, expect, it } from "vitest";
import { editDistance } from "../../src/words/edit-distance.js";

describe("editDistance", () => {
  // "kitten" to "sitting" takes three changes: the textbook example of the Levenshtein distance.
  it.each([
    ["kitten", "sitting", 3],
    ["heigth", "height", 1],
    ["", "abc", 3],
    ["same", "same", 0],
    ["ab", "ba", 1],
    // Two neighbours swapped are one slip: the optimal string alignment distance.
    ["1048", "1084", 1],
  ])("%s to %s: %i", (a, b, distance) => {
    expect(editDistance(a, b)).toBe(distance);
    expect(editDistance(b, a)).toBe(distance);
  });
});
