import { describe, expect, it } from "vitest";
import { editDistance, nearestWord } from "../../src/units/index.js";

describe("editDistance", () => {
  // "kitten" to "sitting" takes three changes: the textbook example of the Levenshtein distance.
  it.each([
    ["kitten", "sitting", 3],
    ["heigth", "height", 1],
    ["", "abc", 3],
    ["same", "same", 0],
    ["ab", "ba", 1],
  ])("%s to %s: %i", (a, b, distance) => {
    expect(editDistance(a, b)).toBe(distance);
    expect(editDistance(b, a)).toBe(distance);
  });
});

describe("nearestWord", () => {
  it("finds what was meant, and nothing where nothing is near", () => {
    expect(nearestWord("Heigth", ["form", "height", "edgeThickness"])).toBe("height");
    expect(nearestWord("edgethickness", ["form", "height", "edgeThickness"])).toBe("edgeThickness");
    expect(nearestWord("colour", ["form", "height"])).toBeUndefined();
  });
});
