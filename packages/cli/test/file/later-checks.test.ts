import { describe, expect, it } from "vitest";
import { FileError, readKnifeFile } from "../../src/file/index.js";
import { placeOf } from "../support/demo.js";
import { HARVEST, knifeProblems, SMALL } from "./files.js";

const HOLE = "at: [-26, 76]";

/** The demo's knife with some of its text replaced; each piece must be there. */
function harvestWith(...changes: readonly (readonly [string, string])[]): string {
  return changes.reduce((text, [from, to]) => {
    if (!text.includes(from)) throw new Error(`the demo has no "${from}"`);
    return text.replace(from, to);
  }, HARVEST);
}

const codes = (text: string): string[] => knifeProblems(text).map(({ path, code }) => `${path} ${code}`);

function notReached(text: string): string | undefined {
  try {
    readKnifeFile(text, "knife.yaml");
  } catch (error) {
    if (error instanceof FileError) return error.notReached;
    throw error;
  }
  throw new Error("nothing is wrong with the file");
}

describe("what is wrong beside the keys and values that are wrong", () => {
  it("finds a hole outside the steel beside a misspelt key and an angle that is a length", () => {
    const text = harvestWith(["ricasso:", "ricaso:"], ["16 deg ", "18 mm "], [HOLE, "at: [-26, 20]"]);
    expect(codes(text)).toEqual([
      "blade.ricaso unknown-key",
      "blade.edgeAngle quantity-unit-wrong-kind",
      "tang.holes[0].at hole-outside-steel",
    ]);
    expect(notReached(text)).toBeUndefined();
    const [line, column] = placeOf(text, "[-26, 20]").split(":").map(Number);
    expect(knifeProblems(text)[2]).toMatchObject({ line, column });
  });

  it("takes the value under the wrong name for the right one, and tells its faults there", () => {
    const text = harvestWith(
      ["  ricasso: 10 ", "  ricaso: 10 "],
      ["thickness:  ", "thicknes:  "],
      ["at: 60 %, is: 3.6", "at: 400, is: 3.6"],
    );
    const [key, , station] = knifeProblems(text);
    expect(key?.code).toBe("unknown-key");
    expect(station).toMatchObject({ code: "station-outside", path: "blade.thickness[1].at" });
    const [line] = placeOf(text, "at: 400").split(":").map(Number);
    expect(station?.line).toBe(line);
  });

  it("does not take an ask's fault for a fault of the shape", () => {
    expect(codes(harvestWith(["below: 600 g", "below: 600 mm"], [HOLE, "at: [-26, 20]"]))).toEqual([
      "order.asks.mass.below quantity-unit-wrong-kind",
      "tang.holes[0].at hole-outside-steel",
    ]);
  });

  it("always looks at the materials, and says what it could not look at", () => {
    const text = harvestWith(
      ["form: full", "form: fulll"],
      ['steel: "1084"', 'steel: "1048"'],
      ["European ash", "Europan asch"],
      [HOLE, "at: [-26, 20]"],
    );
    expect(codes(text)).toEqual([
      "steel unknown-material",
      "tang.form unknown-word",
      "handle.slabs.material unknown-material",
    ]);
    expect(notReached(text)).toBe("outline, stations, holes");
  });

  it("brings no false alarm of a shape that it had to guess", () => {
    // Without its heights the tang has those of the family, and a hole may lie outside it.
    const text = harvestWith(["heights: { front: 28,", "heights: { front: 28 g,"]);
    expect(codes(text)).toEqual(["tang.heights.front quantity-unit-wrong-kind"]);
    expect(notReached(text)).toBe("outline, stations, holes");
  });

  it("says nothing about a material that is itself written wrongly", () => {
    expect(codes(SMALL.replace('"1084"', "{ name: stuff, density: 7 mm }"))).toEqual([
      "steel.density quantity-unit-wrong-kind",
    ]);
  });
});
