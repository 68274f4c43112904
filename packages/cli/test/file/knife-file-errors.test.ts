import { describe, expect, it } from "vitest";
import { HARVEST, inShort, knifeProblems, SMALL, smallWith } from "./files.js";

type Row = readonly [what: string, line: number, text: string, problem: string];

/** One line of the small file changed, and the one problem that this gives. */
const ROWS: readonly Row[] = [
  // keys
  [
    "a misspelt key",
    8,
    "  bevel: { form: flat, heigth: 48, edgeThickness: 0.5 }",
    "8:24 unknown-key | blade.bevel.heigth is not a key here; did you mean height?",
  ],
  [
    "a key in the wrong case",
    8,
    "  bevel: { form: flat, height: 48, edgethickness: 0.5 }",
    "8:36 unknown-key | blade.bevel.edgethickness is not a key here; did you mean edgeThickness?",
  ],
  [
    "a key that belongs deeper",
    9,
    "  edgeThickness: 0.5\n  edgeAngle: 16 deg",
    "9:3 unknown-key | blade.edgeThickness is not a key here; it belongs under blade.bevel",
  ],
  [
    "a key that belongs higher up",
    11,
    "  form: full\n  ricasso: 10",
    "12:3 unknown-key | tang.ricasso is not a key here; it belongs under blade",
  ],
  [
    "a key of the shop file",
    2,
    "units: mm\nrack: []",
    "3:1 unknown-key | rack belongs in the shop file, not in this file",
  ],
  [
    "a key like no other",
    11,
    "  form: full\n  colour: blue",
    "12:3 unknown-key | tang.colour is not a key here; the keys are form, length, heights, drop, buttThickness, thickness, between, holes",
  ],
  [
    "a key set twice",
    12,
    "  length: 128\n  form: full",
    "13:3 duplicate-key | tang.form is already set on line 11; keep one of them",
  ],
  [
    "a key of JavaScript's",
    2,
    "units: mm\n__proto__: { a: 1 }",
    "3:1 unknown-key | __proto__ is not a key here",
  ],
  [
    "another of them",
    11,
    "  form: full\n  constructor: 1",
    "12:3 unknown-key | tang.constructor is not a key here",
  ],
  [
    "a key that is a list",
    2,
    "units: mm\n? [a, b]\n: 1",
    "3:3 key-not-a-word | the file has a key that is not a word",
  ],
  // missing and empty
  ["no units", 2, "", "1:1 missing | units is missing; it needs mm or in, for the numbers without a unit"],
  [
    "no steel",
    3,
    "",
    '1:1 missing | steel is missing; it needs a name, such as "1084", or { name: …, density: 7.83 g/cm3 }',
  ],
  [
    "no edge angle",
    9,
    "",
    "4:1 missing | blade.edgeAngle is missing; it needs an angle per side, such as 16 deg, or { included: 32 deg }",
  ],
  [
    "half a station",
    7,
    "    - { at: heel }",
    '7:7 missing | blade.thickness[0].is is missing; it needs a length, for example 190 mm, 7 1/2 in or 3/16"',
  ],
  [
    "a key without a value",
    12,
    "  length:",
    '12:3 no-value | tang.length has no value; it needs a length, for example 190 mm, 7 1/2 in or 3/16"',
  ],
  [
    "a list without entries",
    7,
    "    []",
    "7:5 wrong-type | blade.thickness needs at least one place: - { at: heel, is: 4.6 }",
  ],
  // version and words
  [
    "another version",
    1,
    "scantling: 2",
    '1:12 unknown-word | scantling: "2" is not known here; it needs 1, the version of the file',
  ],
  [
    "other units",
    2,
    "units: cm",
    '2:8 unknown-word | units: "cm" is not known here; it needs mm or in, for the numbers without a unit',
  ],
  [
    "a misspelt word",
    8,
    "  bevel: { form: flt, height: 48, edgeThickness: 0.5 }",
    '8:18 unknown-word | blade.bevel.form: "flt" is not known here; did you mean flat?',
  ],
  [
    "a misspelt full",
    8,
    "  bevel: { form: flat, height: ful, edgeThickness: 0.5 }",
    '8:32 unknown-word | blade.bevel.height: "ful" is not known here; did you mean full?',
  ],
  [
    "a place that is none",
    7,
    "    - { at: heal, is: 4.6 }",
    '7:13 unknown-place | blade.thickness[0].at: "heal" is not a place on the blade; did you mean heel?',
  ],
  [
    "a place of the tang on the blade",
    7,
    "    - { at: butt, is: 4.6 }",
    '7:13 unknown-place | blade.thickness[0].at: "butt" is not a place on the blade; use heel, tip, 60 % or a distance',
  ],
  [
    "a place beyond the tip",
    7,
    "    - { at: 120 %, is: 4.6 }",
    '7:13 out-of-range | blade.thickness[0].at: "120 %" must be 100 % or less',
  ],
  // kinds of value
  [
    "a mass for a length",
    12,
    "  length: 480 g",
    '12:11 quantity-unit-wrong-kind | tang.length: "480 g" is a mass; a length belongs here, for example 190 mm, 7 1/2 in or 3/16"',
  ],
  [
    "a length for an angle",
    9,
    "  edgeAngle: 16 mm",
    '9:14 quantity-unit-wrong-kind | blade.edgeAngle: "16 mm" is a length; an angle belongs here, for example 15 deg',
  ],
  [
    "a unit misspelt",
    12,
    "  length: 128 mn",
    '12:11 quantity-unit-unknown | tang.length: "mn" is not a unit of length; did you mean mm?',
  ],
  [
    "a decimal comma",
    12,
    '  length: "128,5"',
    '12:11 quantity-comma | tang.length: "128,5" has a comma; write decimals with a point, such as 6.4, and thousands without a mark',
  ],
  [
    "an inch fraction without its mark",
    7,
    "    - { at: heel, is: 3/16 }",
    '7:23 quantity-fraction-without-unit | blade.thickness[0].is: "3/16" has no unit in a file in mm; write 3/16 in, or a decimal number of mm',
  ],
  [
    "a switch for a length",
    12,
    "  length: true",
    '12:11 wrong-type | tang.length needs a length, for example 190 mm, 7 1/2 in or 3/16"',
  ],
  [
    "a list for a group",
    5,
    "  outline: [1, 2]",
    "5:12 wrong-type | blade.outline needs a family with its sizes, or { runs: { edge: …, … } }",
  ],
  [
    "a number for a list",
    6,
    "  thickness: 4.6",
    "6:14 wrong-type | blade.thickness needs a list of places: - { at: heel, is: 4.6 }",
  ],
  // numbers
  [
    "not a number",
    12,
    "  length: .nan",
    '12:11 quantity-not-finite | tang.length: NaN is not a number that can be measured; it needs a length, for example 190 mm, 7 1/2 in or 3/16"',
  ],
  [
    "infinity",
    12,
    "  length: .inf",
    '12:11 quantity-not-finite | tang.length: Infinity is not a number that can be measured; it needs a length, for example 190 mm, 7 1/2 in or 3/16"',
  ],
  [
    "a number beyond all numbers",
    12,
    "  length: 1e999",
    '12:11 quantity-not-finite | tang.length: Infinity is not a number that can be measured; it needs a length, for example 190 mm, 7 1/2 in or 3/16"',
  ],
  ["a negative length", 12, "  length: -128", '12:11 out-of-range | tang.length: "-128" must be more than 0'],
  [
    "a length of nothing",
    12,
    "  length: 0 mm",
    '12:11 out-of-range | tang.length: "0 mm" must be more than 0',
  ],
  [
    "a negative edge",
    8,
    "  bevel: { form: flat, height: 48, edgeThickness: -0.1 }",
    '8:51 out-of-range | blade.bevel.edgeThickness: "-0.1" must not be negative',
  ],
  [
    "a sharpening angle of 0",
    9,
    "  edgeAngle: 0",
    '9:14 out-of-range | blade.edgeAngle: "0" must be more than 0',
  ],
  [
    "a sharpening angle of 90°",
    9,
    "  edgeAngle: 90 deg",
    '9:14 out-of-range | blade.edgeAngle: "90 deg" must be less than 90°',
  ],
  [
    "a negative sharpening angle",
    9,
    "  edgeAngle: -16°",
    '9:14 out-of-range | blade.edgeAngle: "-16°" must be more than 0',
  ],
  [
    "an included angle of 180°",
    9,
    "  edgeAngle: { included: 180 }",
    '9:26 out-of-range | blade.edgeAngle.included: "180" must be less than 180°',
  ],
  [
    "a tolerance that reaches through zero",
    7,
    "    - { at: heel, is: 4 ± 5 }",
    '7:23 tolerance-out-of-range | blade.thickness[0].is: "4 ± 5" reaches beyond what is possible; give a closer tolerance',
  ],
  [
    "a station's place with a tolerance",
    7,
    "    - { at: 10 ± 1, is: 4 }",
    '7:13 tolerance-not-taken | blade.thickness[0].at: "10 ± 1" has a tolerance; none can be given here',
  ],
  [
    "half a heat",
    12,
    "  length: 128\nforging: { heats: 2.5 }",
    '13:19 not-a-count | forging.heats: "2.5" must be a whole number from 0 to 1000',
  ],
  [
    "a hole with one coordinate",
    12,
    "  length: 128\n  holes: [{ kind: pin, at: [-26], diameter: 4 }]",
    "13:28 wrong-type | tang.holes[0].at needs two lengths, [x, y], from the heel",
  ],
  [
    "a hole of no size",
    12,
    "  length: 128\n  holes: [{ kind: pin, at: [-26, 76], diameter: 0 }]",
    '13:49 out-of-range | tang.holes[0].diameter: "0" must be more than 0',
  ],
  ["a name of nothing", 3, 'steel: ""', "3:8 name-empty | steel needs a name"],
  [
    "a name that cannot be printed",
    3,
    'steel: "10\\u000084"',
    "3:8 name-unprintable | steel has a character in it that cannot be printed",
  ],
  // not in this version
  [
    "a hidden tang",
    11,
    "  form: hidden",
    "11:9 not-in-this-version | tang.form: hidden is not in this version; use full",
  ],
  [
    "a hollow bevel",
    8,
    "  bevel: { form: hollow, height: 48, edgeThickness: 0.5 }",
    "8:18 not-in-this-version | blade.bevel.form: hollow is not in this version; use flat, convex",
  ],
  [
    "a drawing",
    5,
    "  outline: { drawing: sketch.svg }",
    "5:14 not-in-this-version | blade.outline.drawing is not in this version; leave it out",
  ],
  [
    "another family",
    5,
    "  outline: { family: cleaver, edgeLength: 225, heelHeight: 92 }",
    "5:22 not-in-this-version | blade.outline.family: cleaver is not in this version; use vegetable, straight-back, drop-point",
  ],
  [
    "a swedge",
    9,
    "  edgeAngle: 16 deg\n  swedge: { angle: 30 deg }",
    "10:3 not-in-this-version | blade.swedge is not in this version; leave it out",
  ],
  [
    "a slot",
    12,
    "  length: 128\n  holes: [{ kind: pin, at: [-26, 76], to: [-30, 76], diameter: 4 }]",
    "13:39 not-in-this-version | tang.holes[0].to is not in this version; leave it out",
  ],
  // marks of YAML
  [
    "an anchor",
    12,
    "  length: &l 128",
    "12:14 yaml-anchor | tang.length: leave out the mark &l and write each value out",
  ],
  [
    "a tag",
    12,
    "  length: !!int 128",
    "12:17 yaml-tag | tang.length: leave out the tag:yaml.org,2002:int mark",
  ],
  [
    "a merge",
    11,
    "  form: full\n  <<: { length: 3 }",
    "12:3 yaml-merge | << is not followed; write the keys out",
  ],
];

/** Lines that have to go with the change. */
const EXTRA: Readonly<Record<string, Readonly<Record<number, string>>>> = {
  "a number for a list": { 7: "" },
};

describe("one mistake gives one problem at its place", () => {
  it.each(ROWS)("%s", (what, line, text, problem) => {
    expect(inShort(knifeProblems(smallWith({ [line]: text, ...EXTRA[what] })))).toEqual([problem]);
  });

  it("in asks", () => {
    const ask = (text: string): string[] =>
      inShort(knifeProblems(`${SMALL}order: { asks: { mass: ${text} } }\n`));
    expect(ask("600 g")).toEqual([
      "13:24 wrong-type | order.asks.mass needs a condition, such as { below: 600 g }",
    ]);
    expect(ask("{ below: 600 g, above: 1 g }")).toEqual([
      "13:24 one-condition | order.asks.mass needs exactly one of below, above, between, about",
    ]);
    expect(ask("{ should: true }")).toEqual([
      "13:24 one-condition | order.asks.mass needs exactly one of below, above, between, about",
    ]);
    expect(ask("{ between: [65 g, 45 g] }")).toEqual([
      "13:35 limits-swapped | order.asks.mass.between has the greater value first; write [least, most]",
    ]);
    expect(ask("{ between: 65 g }")).toEqual([
      "13:35 wrong-type | order.asks.mass.between needs two values, [least, most]",
    ]);
    expect(ask("{ about: 600 g }")).toEqual([
      "13:33 tolerance-missing | order.asks.mass.about needs a tolerance, such as 600 g ± 5 %",
    ]);
    expect(ask("{ below: 60 mm }")).toEqual([
      '13:33 quantity-unit-wrong-kind | order.asks.mass.below: "60 mm" is a length; a mass belongs here, for example 480 g, 17 oz or 1 lb 2 oz',
    ]);
    expect(ask("{ below: 600 g, should: maybe }")).toEqual([
      "13:48 wrong-type | order.asks.mass.should needs true or false",
    ]);
  });
});

describe("many mistakes", () => {
  it("are all reported at once, in the order of the file", () => {
    const text = HARVEST.replace("mass: { below: 600 g }", "mass: { below: 600 mm }")
      .replace("family: vegetable", "famly: vegetable")
      .replace("ricasso: 10", "ricasso: -10")
      .replace("height: 48", "height: tall")
      .replace("edgeAngle: 16 deg", "edgeAngle: 90 deg")
      .replace("buttThickness: 2.4", "buttThickness: 2.4\n  length: 3");
    expect(knifeProblems(text).map(({ code, path }) => `${path} ${code}`)).toEqual([
      "order.asks.mass.below quantity-unit-wrong-kind",
      "blade.outline.famly unknown-key",
      "blade.ricasso out-of-range",
      "blade.bevel.height quantity-number-unreadable",
      "blade.edgeAngle out-of-range",
      "tang.length duplicate-key",
    ]);
  });

  it("of unknown keys beyond measure are one mistake: the wrong file", () => {
    const keys = Array.from({ length: 5000 }, (_, index) => `k${index}: 1\n`).join("");
    const problems = knifeProblems(SMALL + keys);
    expect(problems).toHaveLength(21);
    expect(problems.map(({ message }) => message)).toContain(
      "the file has 4980 more keys that are not known here",
    );
  });

  it("stay one problem each where a key is there under another name", () => {
    expect(knifeProblems(smallWith({ 4: "blad:" })).map(({ path }) => path)).toEqual(["blad"]);
  });
});
