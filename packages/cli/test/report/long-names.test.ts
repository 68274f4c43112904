import { expect, it } from "vitest";
import { answer, wideLines } from "../support/answer.js";
import { DEMO_FILES, demoWith } from "../support/demo.js";

const NAME = "Abcdefgh".repeat(12);
const FILE = "harvest.knife.yaml";
const KNIVES = {
  handle: demoWith(["material: European ash", `material: { name: ${NAME}, density: 0.6 g/cm3 }`]),
  steel: demoWith(['steel: "1084"', `steel: { name: ${NAME}, density: 7.85 g/cm3 }`]),
};

// A name that cannot be broken at a blank is broken all the same: what is wider is cut or wrapped by the terminal.
it.each(
  Object.entries(KNIVES).flatMap(([part, knife]) =>
    ["check", "weigh", "stock", "setup", "quote"].map((command) => [command, part, knife] as const),
  ),
)("%s keeps to 80 columns with a %s of a long name", async (command, _, knife) => {
  const { out, err } = await answer([command, FILE], { files: { ...DEMO_FILES, [FILE]: knife } });
  expect(wideLines(out + err)).toEqual([]);
  // Weighing names all materials; the others only what they have to do with.
  if (command === "weigh") expect(out).toContain(NAME.slice(0, 20));
});
