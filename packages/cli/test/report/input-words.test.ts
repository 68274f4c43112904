import { describe, expect, it } from "vitest";
import { inputWords } from "../../src/report/input-words.js";
import { DEMO_KNIFE, demoWith } from "../support/demo.js";
import { measured } from "../support/sample-job.js";

const { spec } = (await measured(DEMO_KNIFE)).job;

describe("inputs of the interval in words", () => {
  const cases: readonly (readonly [string, string])[] = [
    ["outline", "each side of the outline"],
    ["blade.thickness", "thickness at the spine"],
    ["blade.thickness[1].is", "thickness at the spine (2nd station)"],
    ["blade.thickness, other stations", "thickness at the spine (other stations)"],
    ["blade.bevel.crown.mm[0].is", "crown (1st station)"],
    ["blade.flankTaper[12].is", "flank taper (13th station)"],
    ["tang.heights.butt", "tang height at the butt"],
    ["handle.slabs.material.density", "density of the slabs"],
    ["tang.holes[1].diameter", "diameter of hole B"],
    ["tang.holes[2].at.x", "place of hole C"],
    ["blade.bevel.right.wheelRadius", "radius of the wheel of the right face"],
    ["blade.swedge.thickness[0].is", "thickness left by the swedge (1st station)"],
    ["blade.fullers[1].to.x", "place of the 2nd fuller"],
    ["handle.block.width[1].is", "width of the handle (2nd station)"],
    ["something.new", "something.new"],
  ];
  for (const [input, words] of cases) {
    it(`${input}: ${words}`, () => {
      expect(inputWords(input, spec)).toBe(words);
    });
  }

  it("counts the blade's holes before the tang's, as the drawing does, and names parts", () => {
    const holes = [{ kind: "hanging", at: { x: 200, y: 70 }, diameter: 6 }] as const;
    const parts = [{ name: "lanyard bead", mass: 3, at: { x: -120, y: 70 } }];
    const changed = { ...spec, blade: { ...spec.blade, holes }, handle: { parts } };
    expect(inputWords("blade.holes[0].diameter", changed)).toBe("diameter of hole A");
    expect(inputWords("tang.holes[0].diameter", changed)).toBe("diameter of hole B");
    expect(inputWords("handle.parts[0].mass", changed)).toBe("mass of lanyard bead");
  });

  it("knows every input that a file with tolerances everywhere gives", async () => {
    const text = demoWith(
      ["edgeLength: 225 ", "edgeLength: 225 ± 1 "],
      ["straightEdge: 150 ", "straightEdge: 150 ± 1 "],
      ["tipHeight: 80 ", "tipHeight: 80 ± 1 "],
      ["ricasso: 10 ", "ricasso: 10 ± 1 "],
      ["flankTaper: 0.3 ", "flankTaper: 0.3 ± 0.1 "],
      ["is: 3.6", "is: 3.6 ± 0.1"],
      ["16 deg ", "16 deg ± 1 deg "],
      ["length: 128", "length: 128 ± 1"],
      ["front: 28", "front: 28 ± 1"],
      ["diameter: 6", "diameter: 6 ± 0.1"],
      ["edgeRadius: 6", "edgeRadius: 6 ± 1"],
    );
    const { interval, job } = await measured(text);
    expect(interval.contributions.length).toBeGreaterThan(15);
    for (const { input } of interval.contributions) {
      const words = inputWords(input, job.spec);
      expect(words).not.toMatch(/[[\]]|\w\.\w/u);
    }
  });
});
