import { describe, expect, it } from "vitest";
import { readKnifeFile, withDrawing } from "../../src/file/index.js";
import { inShort, knifeProblems, smallWith } from "./files.js";

const withOutline = (outline: string): string => smallWith({ 5: `  outline: ${outline}` });
const read = (outline: string) => readKnifeFile(withOutline(outline), "k.knife.yaml");
const CORNERS =
  "corners: { heel: [150, 70], tip: [320, 40.5], handleTop: [-1.5, .5], buttTop: [30, 30], buttBottom: [30, 54], handleBottom: [140, 54] }";

describe("an outline from a drawing", () => {
  it("names a file and the ids of its runs", () => {
    const file = read("{ drawing: sketch.svg, runs: { edge: path12, spine: s, tangTop: 7 } }");
    expect(file.drawing).toBe("sketch.svg");
    // The text comes later, from whoever can read files.
    expect(file.spec.blade.outline).toEqual({
      drawing: "",
      runs: { edge: "path12", spine: "s", tangTop: "7" },
    });
    expect(withDrawing(file, "<svg/>").spec.blade.outline).toMatchObject({ drawing: "<svg/>" });
    expect(withDrawing(file, "<svg/>").spec.tang).toEqual(file.spec.tang);
  });

  it("or a path with its corners in the drawing's own coordinates, and a scale in any unit of length", () => {
    const file = read(
      `{ drawing: a/b.svg, path: outline, ${CORNERS}, scale: { from: [0, 0], to: [100, 0], is: 8 in ± 1/16 in } }`,
    );
    expect(file.spec.blade.outline).toEqual({
      drawing: "",
      path: "outline",
      corners: {
        heel: { x: 150, y: 70 },
        tip: { x: 320, y: 40.5 },
        handleTop: { x: -1.5, y: 0.5 },
        buttTop: { x: 30, y: 30 },
        buttBottom: { x: 30, y: 54 },
        handleBottom: { x: 140, y: 54 },
      },
      scale: { from: { x: 0, y: 0 }, to: { x: 100, y: 0 }, is: 8 * 25.4 },
    });
    expect(file.tolerances).toEqual([{ path: "blade.outline.scale.is", plus: 25.4 / 16, minus: 25.4 / 16 }]);
    expect(file.positionOf("blade.outline.corners.tip")).toMatchObject({ line: 5 });
    expect(file.positionOf("blade.outline.path")).toMatchObject({ line: 5 });
  });

  it("is not what other outlines are", () => {
    expect(readKnifeFile(smallWith({}), "k.yaml").drawing).toBeUndefined();
    const file = readKnifeFile(smallWith({}), "k.yaml");
    expect(withDrawing(file, "<svg/>")).toBe(file);
  });

  it.each<[string, string, string]>([
    [
      "a misspelt run",
      "{ drawing: a.svg, runs: { egde: a } }",
      "5:38 unknown-key | blade.outline.runs.egde is not a key here; did you mean edge?",
    ],
    [
      "a corner with units",
      `{ drawing: a.svg, ${CORNERS.replace("150", "150 mm")} }`,
      '5:48 not-a-number | blade.outline.corners.heel[1st]: "150 mm" is not a plain number; coordinates of a drawing have no unit',
    ],
    [
      "a corner left out",
      `{ drawing: a.svg, ${CORNERS.replace("tip: [320, 40.5], ", "")} }`,
      "5:39 missing | blade.outline.corners.tip is missing; it needs two numbers of the drawing, [x, y], as the editor shows them",
    ],
    [
      "half a scale",
      "{ drawing: a.svg, runs: { edge: a }, scale: { from: [0, 0], is: 200 } }",
      "5:56 missing | blade.outline.scale.to is missing; it needs two numbers of the drawing, [x, y], as the editor shows them",
    ],
    [
      "a distance of nothing",
      "{ drawing: a.svg, runs: { edge: a }, scale: { from: [0, 0], to: [1, 0], is: 0 } }",
      '5:88 out-of-range | blade.outline.scale.is: "0" must be more than 0',
    ],
    [
      "a scale without a drawing",
      '{ runs: { edge: "M0 0 H9" }, scale: { from: [0, 0], to: [1, 0], is: 5 } }',
      "5:48 drawing-missing | blade.outline.scale goes with a drawing only: drawing: sketch.svg",
    ],
    [
      "an id without a drawing",
      "{ runs: { edge: 7 } }",
      '5:28 wrong-type | blade.outline.runs.edge needs SVG path data in quotes, such as "M0 0 L200 0"',
    ],
    [
      "a drawing alone",
      "{ drawing: a.svg }",
      "5:12 missing | blade.outline.runs is missing; it needs a group of keys: edge, spine, …",
    ],
    [
      "an address",
      '{ drawing: "https://example.org/a.svg", runs: { edge: a } }',
      '5:23 drawing-address | blade.outline.drawing: "https://example.org/a.svg" is an address; save the drawing beside this file and write its name',
    ],
  ])("%s", (_, outline, problem) => {
    expect(inShort(knifeProblems(withOutline(outline)))).toEqual([problem]);
  });
});
