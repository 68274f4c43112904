import { describe, expect, it } from "vitest";
import { FileError, readKnifeFile, readShopFile } from "../../src/file/index.js";
import { demoWith } from "../support/demo.js";

const demo = demoWith();
const withStack = (stack: string): string => `${demo}\nstack:\n${stack.replace(/^/gmu, "  ")}\n`;
const stackOf = (stack: string) => readKnifeFile(withStack(stack), "a.yaml").stack;

function problemsOf(text: string): readonly string[] {
  try {
    readKnifeFile(text, "a.yaml");
    return [];
  } catch (error) {
    if (!(error instanceof FileError)) throw error;
    return error.problems.map(({ path, code, message }) => `${path} ${code}: ${message}`);
  }
}

describe("a core with cladding", () => {
  it("is read in mm, with the steels' own densities", () => {
    const stack = stackOf(
      [
        'core: { steel: "1095", thickness: 0.140 in }',
        "cladding: { steel: { name: iron of ours, density: 7.86 g/cm3 }, thickness: 1/8 in }",
        "width: 1 1/4 in",
        "cleaning: 0.2 ± 0.05",
      ].join("\n"),
    );
    expect(stack).toMatchObject({
      kind: "clad",
      core: { steel: { name: "1095" }, thickness: expect.closeTo(3.556, 9) },
      cladding: { steel: { name: "iron of ours", density: 0.00786 }, thickness: 3.175 },
      width: 31.75,
      cleaning: { value: 0.2, low: expect.closeTo(0.15, 9), high: 0.25 },
    });
  });

  it("leaves the tolerances of the knife alone", () => {
    const file = readKnifeFile(
      withStack(
        'core: { steel: "1095", thickness: 3 }\ncladding: { steel: "1020", thickness: 3 }\nwidth: 30\nyield: 60 ± 5 %',
      ),
      "a.yaml",
    );
    expect(file.tolerances.filter(({ path }) => path.startsWith("stack"))).toEqual([]);
    expect(file.spec).not.toHaveProperty("stack");
  });
});

describe("a pattern-welded stack", () => {
  const turn =
    'alternate:\n  - { steel: "1084", thickness: 1/8 in, count: 7 }\n  - { steel: 15N20, thickness: 1.57, count: 6 }\nwidth: 1 3/4 in';

  it("lays the bars in turn, and takes restacks, yields, grooves and the last bar", () => {
    const stack = stackOf(
      `${turn}\nrestacks: [4, { pieces: 3, bar: 7 x 45 mm }]\nyield: [85 %, 80 +5/-10 %, 85 %]\ngrooves: { depth: 2, width: 6, pitch: 12 }\nlastBar: 12.7 x 38.1`,
    );
    if (stack?.kind !== "pattern-welded") throw new Error("no layers");
    expect(stack.layers.map(({ thickness }) => thickness)).toEqual([
      ...Array.from({ length: 6 }, () => [3.175, 1.57]).flat(),
      3.175,
    ]);
    expect(stack.restacks).toEqual([{ pieces: 4 }, { pieces: 3, bar: { width: 45, thickness: 7 } }]);
    // The cautious side of a yield is the lower one.
    expect(stack.yields?.[1]).toEqual({
      value: 0.8,
      low: expect.closeTo(0.85, 9),
      high: expect.closeTo(0.7, 9),
    });
    expect(stack.grooves).toEqual({ form: "round", depth: 2, width: 6, pitch: 12, faces: 2 });
    expect(stack.lastBar).toEqual({ width: 38.1, thickness: 12.7 });
  });

  it("can be written bar by bar", () => {
    const stack = stackOf(
      'layers:\n  - { steel: "1084", thickness: 3 }\n  - { steel: 15N20, thickness: 2 }\nwidth: 40',
    );
    expect(stack).toMatchObject({
      kind: "pattern-welded",
      restacks: [],
      layers: [{ thickness: 3 }, { thickness: 2 }],
    });
  });

  it.each([
    ["counts that do not go in turn", turn.replace("count: 6", "count: 4"), "stack.alternate not-in-turn"],
    [
      "both ways of writing",
      `${turn}\nlayers: [{ steel: a, thickness: 3 }, { steel: b, thickness: 3 }]`,
      "stack one-of",
    ],
    ["grooves without pitch or count", `${turn}\ngrooves: { depth: 2, width: 5 }`, "stack.grooves one-of"],
    ["a yield over 1", `${turn}\nyield: 120 %`, "stack.yield"],
    ["a key that is not known", `${turn}\nrestack: [4]`, "stack.restack unknown-key"],
    ["no width", turn.replace(/\nwidth.*/u, ""), "stack.width missing"],
  ])("%s: refused", (_, stack, wanted) => {
    const problems = problemsOf(withStack(stack));
    expect(problems).toHaveLength(1);
    expect(problems[0]).toContain(wanted);
  });

  it("names the key that was meant", () => {
    expect(problemsOf(withStack(`${turn}\nrestack: [4]`))[0]).toContain("did you mean restacks?");
  });
});

describe("asks of a stack", () => {
  const asking = (ask: string): string => demoWith(["asks:", `asks:\n    ${ask}`]);

  it("are read with their place", () => {
    const { asks } = readKnifeFile(asking("coreLine: { at: 40 %, about: 9 ± 2 }"), "a.yaml").order;
    expect(asks.find(({ name }) => name === "coreLine")).toEqual({
      name: "coreLine",
      test: { kind: "about", value: 9, plus: 2, minus: 2 },
      should: false,
      at: { kind: "fraction", share: 0.4 },
      path: "order.asks.coreLine",
    });
    const { asks: layers } = readKnifeFile(
      asking("layers: { between: [180, 260], should: true }"),
      "a.yaml",
    ).order;
    expect(layers.find(({ name }) => name === "layers")).toMatchObject({
      test: { kind: "between", low: 180, high: 260 },
      should: true,
    });
  });

  it.each([
    ["layers: { between: [260, 180] }", "limits-swapped"],
    ["layers: { between: [1.5, 180] }", "not-a-count"],
    ["layers: {}", "one-condition"],
    ["coreLine: { about: 9 }", "tolerance-missing"],
    ["coreLine: { at: nowhere, about: 9 ± 2 }", "unknown-place"],
  ])("%s: refused", (ask, code) => {
    const problems = problemsOf(asking(ask));
    expect(problems).toHaveLength(1);
    expect(problems[0]).toContain(code);
  });
});

describe("limits of the shop for stacks", () => {
  it("are read", () => {
    const text =
      "scantling: 1\nlimits: { mixed: { coreCentring: 0.005 in, minLayerThickness: 0.03, maxGrooveDepth: 25 % } }\n";
    expect(readShopFile(text, "shop.yaml").shop.limits?.mixed).toEqual({
      coreCentring: expect.closeTo(0.127, 9),
      minLayerThickness: 0.03,
      maxGrooveDepth: 0.25,
    });
  });
});
