import { describe, expect, it } from "vitest";
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
