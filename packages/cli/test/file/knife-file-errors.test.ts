import { describe, expect, it } from "vitest";
import { readKnifeFile } from "../../src/file/index.js";
import { issuesOf } from "../../src/file/knife-issues.js";
import { HARVEST, inShort, knifeProblems, SMALL, smallWith } from "./files.js";
import { ROWS } from "./single-mistakes.js";

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
    expect(ask("600 g ± 5 %")).toEqual([
      "13:24 wrong-type | order.asks.mass needs a condition, such as { about: 600 g ± 5 % }",
    ]);
    expect(ask("light")).toEqual([
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

describe("the tolerance that a complaint proposes", () => {
  const cases = [
    ["mass", "600 g"],
    ["balance", "0"],
    ["balance", "-12"],
    ["sharpeningAngle", "16 deg"],
    ["hardness", "60"],
    ["hardness", "60.5 HRC"],
    ["handleLength", "4 3/8 in"],
  ] as const;
  for (const units of ["mm", "in"] as const) {
    it.each(cases)(`can be typed as told, in a file in ${units}: %s about %s`, (name, value) => {
      const problems = (about: string): string[] =>
        inShort(
          knifeProblems(
            `${smallWith({ 2: `units: ${units}` })}order: { asks: { ${name}: { about: '${about}' } } }\n`,
          ),
        ).filter((problem) => problem.includes("order.asks"));
      const [told = ""] = problems(value);
      const [, example = ""] = /such as (.*)$/u.exec(told) ?? [];
      expect(example).toContain("±");
      expect(problems(example)).toEqual([]);
    });
  }
});

describe("asks in a file in inches", () => {
  it("are answered with what was written, or with inches", () => {
    const ask = (text: string): string[] =>
      inShort(
        knifeProblems(`${smallWith({ 2: "units: in" })}order: { asks: { edgeLength: ${text} } }\n`),
      ).filter((problem) => problem.includes("order.asks"));
    expect(ask("4 ± 1/32")).toEqual([
      "13:30 wrong-type | order.asks.edgeLength needs a condition, such as { about: 4 ± 1/32 }",
    ]);
    expect(ask("long")).toEqual([
      "13:30 wrong-type | order.asks.edgeLength needs a condition, such as { below: 14 1/2 }",
    ]);
    expect(ask("{ about: 1 3/8 }")).toEqual([
      '13:39 tolerance-missing | order.asks.edgeLength.about needs a tolerance, such as 1 3/8" ± 5 %',
    ]);
  });
});

describe("a decimal comma between braces", () => {
  it("is told as one, and as nothing else", () => {
    expect(inShort(knifeProblems(smallWith({ 7: "    - { at: heel, is: 4,6 }" })))).toEqual([
      '7:23 quantity-comma | blade.thickness[1st].is: "4,6" has a comma; write decimals with a point, such as 4.6',
    ]);
    expect(inShort(knifeProblems(smallWith({ 7: "    - { at: heel, is: 4,6 mm }" })))).toEqual([
      '7:23 quantity-comma | blade.thickness[1st].is: "4,6 mm" has a comma; write decimals with a point, such as 4.6 mm',
    ]);
    // With a blank it may be a key that is wrong.
    expect(inShort(knifeProblems(smallWith({ 7: "    - { at: heel, is: 4, 6 }" })))[0]).toContain(
      "unknown-key",
    );
  });
});

describe("unknown materials", () => {
  it("are told of steel and handle at once", () => {
    const text = `${smallWith({ 3: "steel: 1085" })}handle: { slabs: { material: irnwood, thickness: 8 } }\n`;
    const { spec } = readKnifeFile(text, "knife.yaml");
    expect(issuesOf(spec).map(({ path }) => path)).toEqual(["steel", "handle.slabs.material"]);
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
