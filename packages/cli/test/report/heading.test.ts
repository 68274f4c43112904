import { patternContents } from "@scantling/render";
import { expect, it } from "vitest";
import { makePatternModel } from "../../src/models/pattern-model.js";
import { knifeWords } from "../../src/report/heading.js";
import { DEMO_KNIFE, demoWith } from "../support/demo.js";
import { measured } from "../support/sample-job.js";

const HIDDEN = [
  ["form: full", "form: hidden"],
  ["heights: { front: 28, middle: 25, butt: 30 }", "heights: { front: 16, middle: 14, butt: 10 }"],
  [/ {2}holes:.*\n(?: {4}- .*\n)+/u.exec(DEMO_KNIFE)?.[0] ?? "none", ""],
] as const;
const SLABS =
  "  slabs: { material: European ash, thickness: 8, edgeRadius: 6 }\n  pins: { material: brass }\n";
const withHandle = (handle: string): string => demoWith(...HIDDEN, [SLABS, handle]);

it("a knife is called by its overall length only where the file says how far its handle reaches", async () => {
  // Tip at 225, butt of the tang at −138.
  expect(knifeWords(await measured(DEMO_KNIFE))).toMatch(/, overall 363\.0 mm$/u);
  const block = "  block: { material: European ash, section: oval, length: 150, height: 34, width: 24 }\n";
  const whole = await measured(withHandle(block));
  // The handle begins 10 behind the heel.
  expect(knifeWords(whole)).toMatch(/, overall 385\.0 mm$/u);
  const parts = await measured(withHandle("  parts: [{ name: handle, mass: 60 g, at: [-70, 76] }]\n"));
  expect(knifeWords(parts)).toMatch(/, with tang 363\.0 mm$/u);
  // A through tang comes out behind its handle.
  const through = [["form: full", "form: through"], ...HIDDEN.slice(1)] as const;
  const seen = demoWith(...through, [SLABS, "  parts: [{ name: handle, mass: 60 g, at: [-70, 76] }]\n"]);
  expect(knifeWords(await measured(seen))).toMatch(/, overall 363\.0 mm$/u);
});

it("the pattern tells the length of the blade with its tang by that name", async () => {
  const block = "  block: { material: European ash, section: oval, length: 150, height: 34, width: 24 }\n";
  const [content] = patternContents(makePatternModel(await measured(withHandle(block))));
  const told = content?.describe({ page: 1, pages: 1, paper: undefined } as never);
  expect(told).toContain("Blade with tang 363 mm");
  expect(told).not.toMatch(/overall/iu);
});
