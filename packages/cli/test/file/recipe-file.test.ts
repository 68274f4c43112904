import { describe, expect, it } from "vitest";
import { readShopFile } from "../../src/file/index.js";
import { inShort, shopProblems } from "./files.js";

const withRecipes = (recipes: string): string => `scantling: 1\nunits: mm\nrecipes:\n${recipes}`;
const recipesOf = (recipes: string) => readShopFile(withRecipes(recipes), "shop.yaml").shop.recipes;
const problems = (recipes: string): string[] => inShort(shopProblems(withRecipes(recipes)));

describe("the recipes of a shop file", () => {
  it("take steps with their temperature, how far it may be off, time, times and cooling", () => {
    expect(
      recipesOf(`  - steel: 80CrV2
    source: sheet of the bar
    steps:
      - { step: normalise, at: 880 ± 10 °C, times: 3, cooling: still air }
      - { step: harden, at: 1545 °F, minutes: 8, cooling: fast oil at 50 °C }
      - { step: temper, at: 200 °C, minutes: 120, times: 2 }
`),
    ).toEqual([
      {
        steel: "80CrV2",
        steps: [
          {
            step: "normalise",
            low: 870,
            high: 890,
            times: 3,
            cooling: "still air",
            source: "sheet of the bar",
            mark: "looked up",
          },
          {
            step: "harden",
            low: expect.closeTo(840.556, 3),
            high: expect.closeTo(840.556, 3),
            soak: { low: 8, high: 8 },
            cooling: "fast oil at 50 °C",
            source: "sheet of the bar",
            mark: "looked up",
          },
          {
            step: "temper",
            low: 200,
            high: 200,
            soak: { low: 120, high: 120 },
            times: 2,
            source: "sheet of the bar",
            mark: "looked up",
          },
        ],
      },
    ]);
  });

  it("are the shop's own where no source is named, and may name a steel by its bare number", () => {
    const [recipe] = recipesOf("  - { steel: 1084, steps: [{ step: harden, at: 815 }] }\n") ?? [];
    expect(recipe?.steel).toBe("1084");
    // A bare number is in the units of the file: °C.
    expect(recipe?.steps).toEqual([
      { step: "harden", low: 815, high: 815, source: "the shop's own recipe", mark: "looked up" },
    ]);
  });

  it.each([
    ["a list that is none", "  steel: 1084\n", /recipes.* needs a list of recipes/u],
    ["a recipe that is a word", "  - 1084\n", /needs a group of keys: steel, source, steps/u],
    ["no steel", "  - { steps: [{ step: harden, at: 815 }] }\n", /steel is missing/u],
    ["no steps", "  - { steel: 1084 }\n", /steps is missing/u],
    ["an empty list of steps", "  - { steel: 1084, steps: [] }\n", /steps/u],
    [
      "a step that is a word",
      "  - { steel: 1084, steps: [harden] }\n",
      /such as \{ step: harden, at: 815 °C/u,
    ],
    ["a step that is none", "  - { steel: 1084, steps: [{ step: hardn, at: 815 }] }\n", /"hardn".*harden/u],
    ["no temperature", "  - { steel: 1084, steps: [{ step: harden }] }\n", /at is missing/u],
    [
      "a temperature in other units",
      "  - { steel: 1084, steps: [{ step: harden, at: 815 mm }] }\n",
      /"815 mm"/u,
    ],
    [
      "hotter than steel is",
      "  - { steel: 1084, steps: [{ step: harden, at: 8150 }] }\n",
      /"8150" must be 1300 °C or less, for example 815 °C/u,
    ],
    [
      "less than no time",
      "  - { steel: 1084, steps: [{ step: harden, at: 815, minutes: -5 }] }\n",
      /minutes/u,
    ],
    ["half a time", "  - { steel: 1084, steps: [{ step: harden, at: 815, times: 1.5 }] }\n", /times/u],
    [
      "more often than anyone does",
      "  - { steel: 1084, steps: [{ step: harden, at: 815, times: 99 }] }\n",
      /times/u,
    ],
    [
      "a key that is none",
      "  - { steel: 1084, steps: [{ step: harden, at: 815, soak: 5 }] }\n",
      /soak is not a key here; the keys are step, at, minutes, times, cooling/u,
    ],
  ])("refuse %s, and say what is needed", (_, recipes, message) => {
    const told = problems(recipes);
    expect(told).toHaveLength(1);
    expect(told[0]).toMatch(message);
    // Each at its line, and in words.
    expect(told[0]).toMatch(/recipes/u);
  });
});
