import type { PatternModel } from "@scantling/render";
import { describe, expect, it } from "vitest";
import { loadJob } from "../../src/load.js";
import { measure } from "../../src/measure.js";
import { makePatternModel } from "../../src/models/pattern-model.js";
import { DEMO_KNIFE, demoWith } from "../support/demo.js";
import { fakeIo } from "../support/fake-io.js";

const FILE = "harvest.knife.yaml";

const modelOf = async (knife: string): Promise<PatternModel> =>
  makePatternModel(measure(await loadJob(fakeIo({ files: { [FILE]: knife } }), FILE, {})));

/** A height as the file gives it, where it stands; the outline is read to a millionth of a mm. */
function expectHeight(
  height: { x: number; low: number; high: number } | undefined,
  x: number,
  size: number,
): void {
  expect(height?.x).toBeCloseTo(x, 5);
  expect((height?.high ?? Number.NaN) - (height?.low ?? Number.NaN)).toBeCloseTo(size, 5);
}

const OUTLINE = `
    family: vegetable                     # square front; fills in what is left out below
    edgeLength: 225                       # heel to tip
    heelHeight: 92                        # spine above the heel
    straightEdge: 150                     # before the edge begins to lift
    tipHeight: 80                         # height of the square front`;

const TANG_HOLES = `  holes:                                  # [x, y] from the heel; the tang lies at negative x
    - { kind: pin, at: [-26, 76], diameter: 4 }
    - { kind: pin, at: [-84, 76], diameter: 4 }
    - { kind: thong, at: [-116, 76], diameter: 6 }
`;
const HANDLE = `handle:
  slabs: { material: European ash, thickness: 8, edgeRadius: 6 }
  pins: { material: brass }
`;

describe("the further sizes of a pattern", () => {
  it("are those that the demo's file gives", async () => {
    const model = await modelOf(DEMO_KNIFE);
    expectHeight(model.tangHeights?.front, -10, 28);
    expectHeight(model.tangHeights?.middle, -74, 25);
    expectHeight(model.tangHeights?.butt, -138, 30);
    expectHeight(model.frontHeight, 225, 80);
    expectHeight(model.bevelHeight, 0, 48);
    expect(model.straightEdge).toBeCloseTo(150, 9);
    expect(model).not.toHaveProperty("tipHeight");
    expect(model).not.toHaveProperty("greatestHeight");
  });

  it("have a tip where the blade is pointed, and no bevel line where the bevel reaches the spine", async () => {
    const model = await modelOf(
      demoWith(
        [OUTLINE, OUTLINE.replace("vegetable", "drop-point").replace("tipHeight: 80", "tipHeight: 40")],
        ["height: 48, edge", "height: full, edge"],
      ),
    );
    expectHeight(model.tipHeight, 225, 40);
    expect(model).not.toHaveProperty("frontHeight");
    expect(model).not.toHaveProperty("bevelHeight");
  });

  it("say where the bevel begins ahead of the heel", async () => {
    const model = await modelOf(demoWith(["plunge: { at: 0, length: 0 }", "plunge: { at: 4, length: 6 }"]));
    expectHeight(model.bevelHeight, 10, 48);
  });

  it("give a hidden tang's front as the file does, beside the fillets of its shoulders", async () => {
    const model = await modelOf(
      demoWith(["form: full", "form: hidden\n  shoulderRadius: 3"], [TANG_HOLES, ""], [HANDLE, ""]),
    );
    expectHeight(model.tangHeights?.front, -10, 28);
    expectHeight(model.tangHeights?.middle, -74, 25);
  });

  it("are read off an outline of runs: a spine that rises, a round butt, an edge that lifts from the heel", async () => {
    const runs = `
    runs:
      edge: "M0 0 Q150 -1 225 30"
      spine: "Q100 104 -10 92"
      tangTop: "L-126 92"
      butt: "A14 14 0 0 1 -126 64"
      tangBottom: "L-10 64"`;
    const model = await modelOf(
      demoWith(
        [OUTLINE, runs],
        ["  length: 128\n  heights: { front: 28, middle: 25, butt: 30 }\n", ""],
        ["allowances:", "# allowances:"],
        ["  { face", "  # { face"],
      ),
    );
    // From (225, 30) by (100, 104) to (-10, 92): level at t = 74/86, there y = 30 + 74²/86.
    const t = 74 / 86;
    expectHeight(model.greatestHeight, 225 - 250 * t + 15 * t * t, 30 + 74 ** 2 / 86);
    expectHeight(model.tangHeights?.front, -10, 28);
    expectHeight(model.tangHeights?.butt, -126, 28);
    expect(model).not.toHaveProperty("straightEdge");
  });
});
