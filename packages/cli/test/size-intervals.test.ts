import { describe, expect, it } from "vitest";
import type { AskAnswer } from "../src/asks.js";
import type { AskName } from "../src/file/index.js";
import { DEMO_SHOP, demoWith } from "./support/demo.js";
import { measured } from "./support/sample-job.js";

const OUTLINE_ASK = "    overallLength: { below: 370 mm }";

/** How one ask of the demo is answered after some changes; the demo's shop says outline ± 0.5 mm, forged ± 0.2 mm. */
async function answered(
  name: AskName,
  condition: string,
  changes: readonly (readonly [string, string])[] = [],
  shop: string = DEMO_SHOP,
): Promise<AskAnswer> {
  const text = demoWith([OUTLINE_ASK, `    ${name}: ${condition}`], ...changes);
  const found = (await measured(text, shop)).answers.find(({ ask }) => ask.name === name);
  if (found === undefined) throw new Error(`${name} was not asked`);
  return found;
}

function bandOf({ figure }: AskAnswer): readonly [number, number] {
  const [low, high] = figure.interval ?? [Number.NaN, Number.NaN];
  return [figure.value - low, high - figure.value];
}

function expectBand(answer: AskAnswer, minus: number, plus: number): void {
  const [below, above] = bandOf(answer);
  expect(below).toBeCloseTo(minus, 9);
  expect(above).toBeCloseTo(plus, 9);
}

describe("intervals of the sizes that are asked for", () => {
  it("puts an edge of 225 ± 2 mm at risk where 225 ± 1 mm is asked", async () => {
    const about = "{ about: 225 mm ± 1 mm }";
    const wide = await answered("edgeLength", about, [["edgeLength: 225 ", "edgeLength: 225 ± 2 "]]);
    expect(wide.verdict).toBe("at-risk");
    expectBand(wide, 2, 2);
    const close = await answered("edgeLength", about, [["edgeLength: 225 ", "edgeLength: 225 ± 1 "]]);
    expect(close.verdict).toBe("met");
  });

  it("takes an uneven tolerance as it is written", async () => {
    const given = await answered("heelHeight", "{ below: 100 }", [
      ["heelHeight: 92 ", "heelHeight: 92 +3/-1 "],
    ]);
    expectBand(given, 1, 3);
  });

  it("moves both ends by the outline's tolerance where none is written", async () => {
    expectBand(await answered("edgeLength", "{ below: 300 }"), 1, 1);
    expectBand(await answered("heelHeight", "{ below: 300 }"), 1, 1);
    const wide = DEMO_SHOP.replace("outline: 0.5", "outline: 2");
    expectBand(await answered("edgeLength", "{ below: 300 }", [], wide), 4, 4);
  });

  it("adds ricasso, tang and edge in squares for the overall length, a free end by the outline", async () => {
    const below = "{ below: 370 }";
    expectBand(await answered("overallLength", below), 1, 1);
    const edge = [["edgeLength: 225 ", "edgeLength: 225 ± 1.2 "]] as const;
    // The butt's end alone errs by 0.5: √(1.2² + 0.5²) = 1.3.
    expectBand(await answered("overallLength", below, edge), 1.3, 1.3);
    const all = [
      ...edge,
      ["ricasso: 10 ", "ricasso: 10 ± 0.4 "],
      ["length: 128", "length: 128 ± 0.3"],
    ] as const;
    // √(1.44 + 0.16 + 0.09) = 1.3.
    expectBand(await answered("overallLength", below, all), 1.3, 1.3);
  });

  it("gives the thickness at the heel its station's tolerance, or that of forged flats", async () => {
    const below = "{ below: 5 }";
    expectBand(await answered("thickness", below), 0.2, 0.2);
    expectBand(await answered("thickness", below, [["is: 4.6 }", "is: 4.6 +0.3/-0.1 }"]]), 0.1, 0.3);
    expectBand(await answered("thickness", below, [["flats: forged", "flats: ground"]]), 0.1, 0.1);
  });

  it("leaves the thickness at the heel alone where another station has a tolerance", async () => {
    const tip = await answered("thickness", "{ below: 5 }", [["is: 2.2 }", "is: 2.2 ± 0.5 }"]]);
    expectBand(tip, 0.2, 0.2);
  });

  it("weighs stations on both sides of the heel where none stands on it", async () => {
    // One station ahead of the heel holds there too; its tolerance is the heel's.
    const ahead = await answered("thickness", "{ below: 5 }", [
      ["at: heel, is: 4.6", "at: 20, is: 4.6 ± 0.4"],
    ]);
    expectBand(ahead, 0.4, 0.4);
  });
});
