import { heatRecipe } from "@scantling/geometry";
import { describe, expect, it } from "vitest";
import { quenchMedia, quenchTools } from "../../src/card/quench-media.js";
import { answer } from "../support/answer.js";
import { DEMO_FILES, DEMO_KNIFE } from "../support/demo.js";

const mediaOf = (steel: string) => {
  const recipe = heatRecipe(steel);
  return quenchMedia(recipe === undefined ? [] : [recipe]);
};

describe("what a blade is quenched in", () => {
  // The recipes' own words: published figures, each with its source beside it in the table of recipes.
  it.each([
    ["5160", ["oil"]],
    ["W2", ["water"]],
    ["1095", ["oil", "water"]],
    ["A2", []],
    ["no such steel", []],
  ])("of %s is %j", (steel, media) => {
    expect(mediaOf(steel)).toEqual(media);
  });

  it("is what the shop's own recipe says, plates and air too", () => {
    const step = { step: "harden", low: 955, high: 970, source: "own", mark: "looked up" } as const;
    const recipe = (cooling: string) => [{ steel: "A2", steps: [{ ...step, cooling }] }];
    expect(quenchMedia(recipe("between plates"))).toEqual(["plates"]);
    expect(quenchMedia(recipe("still air"))).toEqual(["air"]);
    expect(quenchTools(quenchMedia(recipe("boiling kettle of quenchant")))).toBe("oven, quench by the sheet");
  });
});

describe("the heat sheet", () => {
  const setup = async (steel: string): Promise<string> => {
    const text = DEMO_KNIFE.replace('steel: "1084"', `steel: { name: ${steel}, density: 7.8 g/cm3 }`);
    expect(text).not.toBe(DEMO_KNIFE);
    return (
      await answer(["setup", "harvest.knife.yaml"], { files: { ...DEMO_FILES, "harvest.knife.yaml": text } })
    ).out;
  };

  it("tells nobody to quench in oil what wants water, or of which nothing is known", async () => {
    const water = await setup("W2");
    expect(water).toContain("Harden, W2 (oven, water)");
    expect(water).not.toMatch(/^\s*Oil \d/mu);
    expect(water).toMatch(/^ {2}Water or brine \d+ mm deep\. It cracks what oil would not/mu);
    const unknown = await setup("A2");
    expect(unknown).toContain("(if so hot), long");
    expect(unknown).not.toMatch(/oil deep|warms the oil/u);
    expect(unknown).toContain("Harden and temper (oven, quench by the sheet)");
    expect(unknown.replace(/\s+/gu, " ")).toContain(
      "Quench in what the sheet says and nothing else; if in oil,",
    );
  });
});
