import { describe, expect, it } from "vitest";
import { nearestWord } from "../../src/units/index.js";

describe("nearestWord", () => {
  it("finds what was meant, and nothing where nothing is near", () => {
    expect(nearestWord("Heigth", ["form", "height", "edgeThickness"])).toBe("height");
    expect(nearestWord("edgethickness", ["form", "height", "edgeThickness"])).toBe("edgeThickness");
    expect(nearestWord("colour", ["form", "height"])).toBeUndefined();
  });
});
