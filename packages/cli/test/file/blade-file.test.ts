import { FAMILY_NAMES } from "@scantling/geometry";
import { describe, expect, it } from "vitest";
import { EXIT } from "../../src/exit-code.js";
import { readKnifeFile } from "../../src/file/index.js";
import { answer } from "../support/answer.js";
import { inShort, knifeProblems, SMALL } from "./files.js";

/** Every key of the blade that is not in the demo. */
const ALL = `scantling: 1
units: mm
steel: "1084"
blade:
  outline: { family: clip-point, edgeLength: 180, heelHeight: 34 }
  ricasso: 18
  thickness:
    - { at: heel, is: 5 }
    - { at: tip, is: 2.4 }
  bevel:
    form: hollow
    height: 20
    edgeThickness: 0.5
    wheelRadius: 5 in
    left: { form: convex, height: [{ at: heel, is: 16 }, { at: 50 %, is: 18 }], crown: 10 % }
    right: { wheelRadius: 150 ± 2 }
    apex: -0.25
  edgeAngle: { right: 18 deg, left: 12 deg }
  microbevel: { height: 0.3, angle: 22 deg }
  swedge: { from: 60 %, to: tip, angle: 25 deg, thickness: [{ at: 60 %, is: 2.4 }, { at: tip, is: 1 }] }
  fullers:
    - { from: [15, 27], to: [80 ± 1, 27], radius: 6, depth: 0.5, faces: left }
  holes:
    - { kind: lightening, at: [-12, 26], to: [-6, 26], diameter: 4 }
  choil: { radius: 4 }
  easedSpine: 0.6
tang:
  form: full
  length: 110
`;

const lineOf = (text: string): number => ALL.split("\n").findIndex((line) => line.includes(text)) + 1;
const deg = (n: number): number => (n * Math.PI) / 180;
const withBlade = (lines: string): string => SMALL.replace("tang:\n", `${lines}tang:\n`);
const withBevel = (keys: string): string => SMALL.replace("form: flat, height: 48", keys);
const withAngle = (angle: string): string => SMALL.replace("16 deg", angle);

describe("the blade of a knife file", () => {
  it("takes every key into the spec", () => {
    const { spec, tolerances, positionOf } = readKnifeFile(ALL, "order.knife.yaml");
    const { edgeAngle, microbevel, swedge, ...blade } = spec.blade;
    expect(blade).toEqual({
      outline: { family: "clip-point", edgeLength: 180, heelHeight: 34 },
      ricasso: 18,
      thickness: [
        { at: { kind: "heel" }, is: 5 },
        { at: { kind: "tip" }, is: 2.4 },
      ],
      bevel: {
        form: "hollow",
        height: 20,
        edgeThickness: 0.5,
        wheelRadius: 127,
        left: {
          form: "convex",
          height: [
            { at: { kind: "heel" }, is: 16 },
            { at: { kind: "fraction", share: 0.5 }, is: 18 },
          ],
          crown: { share: 0.1 },
        },
        right: { wheelRadius: 150 },
        apex: -0.25,
      },
      fullers: [{ from: { x: 15, y: 27 }, to: { x: 80, y: 27 }, radius: 6, depth: 0.5, faces: "left" }],
      holes: [{ kind: "lightening", at: { x: -12, y: 26 }, to: { x: -6, y: 26 }, diameter: 4 }],
      choil: { radius: 4 },
      easedSpine: 0.6,
    });
    expect(edgeAngle).toEqual({ right: expect.closeTo(deg(18), 12), left: expect.closeTo(deg(12), 12) });
    expect(microbevel).toEqual({ height: 0.3, angle: expect.closeTo(deg(22), 12) });
    expect(swedge).toEqual({
      from: { kind: "fraction", share: 0.6 },
      to: { kind: "tip" },
      angle: expect.closeTo(deg(25), 12),
      thickness: [
        { at: { kind: "fraction", share: 0.6 }, is: 2.4 },
        { at: { kind: "tip" }, is: 1 },
      ],
    });
    expect(tolerances).toEqual([
      { path: "blade.bevel.right.wheelRadius", plus: 2, minus: 2 },
      { path: "blade.fullers[0].to.x", plus: 1, minus: 1 },
    ]);
    // Points are groups in the spec and lists in the file.
    expect(positionOf("blade.fullers[0].to.x")).toMatchObject({ line: lineOf("to: [80") });
    expect(positionOf("blade.holes[0].to.y")).toMatchObject({ line: lineOf("kind: lightening") });
  });

  it.each(FAMILY_NAMES)("takes the family %s", (family) => {
    const { spec } = readKnifeFile(SMALL.replace("vegetable", family), "order.knife.yaml");
    expect(spec.blade.outline).toMatchObject({ family });
  });

  it("takes the edge angle in three forms", () => {
    const read = (angle: string) => readKnifeFile(withAngle(angle), "a.knife.yaml").spec.blade.edgeAngle;
    expect(read("15")).toBeCloseTo(deg(15), 12);
    expect(read("{ included: 32 deg }")).toBeCloseTo(deg(16), 12);
    expect(read("{ right: 15 deg, left: flat }")).toEqual({
      right: expect.closeTo(deg(15), 12),
      left: "flat",
    });
  });

  it.each([
    ["a family", SMALL.replace("vegetable", "clip"), "5:22 unknown-word | blade.outline.family"],
    ["a form", withBevel("form: holow, height: 48"), "8:18 unknown-word | blade.bevel.form"],
    [
      "a wheel",
      withBevel("form: hollow, height: 48, wheelRadius: 0"),
      '8:51 out-of-range | blade.bevel.wheelRadius: "0" must be more than 0',
    ],
    [
      "a face",
      withBevel("form: flat, height: 48, left: { hight: 30 }"),
      "8:44 unknown-key | blade.bevel.left.hight is not a key here; did you mean height?",
    ],
    [
      "what both faces share",
      withBevel("form: flat, height: 48, right: { edgeThickness: 1 }"),
      "8:45 unknown-key | blade.bevel.right.edgeThickness is not a key here; it belongs under blade.bevel",
    ],
    [
      "an apex",
      withBevel("form: flat, height: 48, apex: 1.5"),
      "8:42 out-of-range | blade.bevel.apex needs a number from -1 (on the left face) to 1 (on the right face)",
    ],
    [
      "one side of the edge",
      withAngle("{ right: 15 deg }"),
      "9:14 missing | blade.edgeAngle.left is missing; it needs an angle, for example 15 deg, or flat",
    ],
    [
      "an angle of a side",
      withAngle("{ right: 95 deg, left: flat }"),
      '9:23 out-of-range | blade.edgeAngle.right: "95 deg" must be less than 90°, for example 15 deg per side',
    ],
    [
      "a word for a side",
      withAngle("{ right: 15 deg, left: flatt }"),
      '9:37 unknown-word | blade.edgeAngle.left: "flatt" is not known here; did you mean flat?',
    ],
    [
      "a microbevel",
      withBlade("  microbevel: { height: 0, angle: 20 deg }\n"),
      '10:25 out-of-range | blade.microbevel.height: "0" must be more than 0',
    ],
    [
      "a place of a swedge",
      withBlade("  swedge: { from: middle, to: tip, angle: 25 deg, thickness: 1 }\n"),
      '10:19 unknown-place | blade.swedge.from: "middle" is not a place on the blade; use heel, tip, 60 % or a distance',
    ],
    [
      "a swedge without its thickness",
      withBlade("  swedge: { from: 60 %, to: tip, angle: 25 deg }\n"),
      "10:11 missing | blade.swedge.thickness is missing; it needs a length, or a list of places: - { at: heel, is: 4.6 }",
    ],
    [
      "a swedge elsewhere",
      SMALL.replace("  form: full", "  swedge: { angle: 25 deg }\n  form: full"),
      "11:3 unknown-key | tang.swedge is not a key here; it belongs under blade",
    ],
    [
      "fullers",
      withBlade("  fullers: { from: [15, 60], to: [80, 60], radius: 6, depth: 1 }\n"),
      "10:12 wrong-type | blade.fullers needs a list: - { from: [20, 30], to: [90, 30], radius: 5, depth: 0.8 }",
    ],
    [
      "a fuller's face",
      withBlade("  fullers: [{ from: [15, 60], to: [80, 60], radius: 6, depth: 1, faces: top }]\n"),
      '10:73 unknown-word | blade.fullers[1st].faces: "top" is not known here; it must be both, left, right',
    ],
    [
      "one fuller",
      withBlade("  fuller: { radius: 6 }\n"),
      "10:3 unknown-key | blade.fuller is not a key here; did you mean fullers?",
    ],
    [
      "an eased spine",
      withBlade("  easedSpine: -1\n"),
      '10:15 out-of-range | blade.easedSpine: "-1" must not be negative',
    ],
    ["a choil", withBlade("  choil: 4\n"), "10:10 wrong-type | blade.choil needs a group of keys"],
    [
      "a slot",
      withBlade("  holes: [{ kind: lightening, at: [30, 60], to: 40, diameter: 4 }]\n"),
      "10:49 wrong-type | blade.holes[1st].to needs two lengths, [x, y], from the heel",
    ],
  ] as const)("says what is wrong with %s", (_what, text, expected) => {
    const found = inShort(knifeProblems(text));
    expect(found).toHaveLength(1);
    expect(found[0]?.slice(0, expected.length)).toBe(expected);
  });
});

interface Contribution {
  readonly input: string;
  readonly share: number;
}

describe("a knife with every key of the blade", () => {
  const weigh = (text: string) =>
    answer(["weigh", "k.knife.yaml", "--json"], { files: { "k.knife.yaml": text } });
  const massOf = async (text: string): Promise<number> => {
    const { code, out, err } = await weigh(text);
    expect(code, err).toBe(EXIT.done);
    const report = JSON.parse(out) as { knife: { massG: number } };
    return report.knife.massG;
  };
  const without = (key: string): string => {
    const changed = ALL.replace(new RegExp(`^  ${key}:.*\n(?:    .*\n)*`, "mu"), "");
    expect(changed).not.toBe(ALL);
    return changed;
  };

  it.each(["swedge", "fullers", "holes", "choil", "easedSpine"])("is heavier without its %s", async (key) => {
    expect(await massOf(without(key))).toBeGreaterThan((await massOf(ALL)) + 1e-3);
  });

  it("has a band from every input, with a damp wood too", async () => {
    const handle = `handle:
  block: { material: { name: ash, moisture: 8 % }, section: oval, length: 120, height: 30, width: 22 ± 1 }
`;
    const { code, out, err } = await weigh(`${ALL.replace("form: full", "form: hidden")}${handle}`);
    expect(code, err).toBe(EXIT.done);
    const { interval } = JSON.parse(out) as { interval: Contribution[] };
    const shareOf = (input: string) => interval.find((other) => other.input === input)?.share;
    expect(shareOf("blade.thickness")).toBeGreaterThan(0.01);
    expect(shareOf("handle.block.width")).toBeGreaterThan(0.001);
  });

  it("is lighter without its microbevel: steeper planes at the same edge leave more steel", async () => {
    expect(await massOf(without("microbevel"))).toBeLessThan((await massOf(ALL)) - 1e-3);
  });

  it.each([
    ["hollow without a wheel", withBevel("form: hollow, height: 48"), "8:"],
    ["no edge at all", withAngle("{ right: flat, left: flat }"), "9:"],
    ["a microbevel no steeper", withBlade("  microbevel: { height: 0.3, angle: 12 deg }\n"), "10:"],
    [
      "a choil beside runs",
      withBlade("  choil: { radius: 4 }\n")
        .replace(
          /outline: .*/u,
          'outline: { runs: { edge: "M0 0 L90 0", front: "L90 20", spine: "L-10 20", tangTop: "L-100 20", butt: "L-100 4", tangBottom: "L-10 4" } }',
        )
        .replace("  length: 128\n", "")
        .replace("height: 48", "height: 15"),
      "10:",
    ],
    ["a choil without a ricasso", withBlade("  choil: { radius: 4 }\n"), "10:"],
  ])("is refused with its place: %s", async (_what, text, place) => {
    const { code, err } = await weigh(text);
    expect(code).toBe(EXIT.file);
    expect(err).toContain(`k.knife.yaml:${place}`);
  });
});
