import { describe, expect, it } from "vitest";
import { EXIT } from "../../src/exit-code.js";
import { answer, flat } from "../support/answer.js";
import { DEMO_FILES } from "../support/demo.js";

const KNIFE = "harvest.knife.yaml";
const HOURS = ["record", KNIFE, "--task", "forge", "--hours", "2"];

describe("an option that means nothing where it stands", () => {
  const idle: readonly (readonly [string, readonly string[]])[] = [
    ["--plan goes with an entry", ["record", KNIFE, "--plan", "99"]],
    ["--sure goes with an entry", ["record", KNIFE, "--sure"]],
    ["--shop goes with an entry", ["record", KNIFE, "--shop", "/nonexistent.yaml"]],
    ["--shop changes nothing: this entry is of no stage", [...HOURS, "--shop", "/nonexistent.yaml"]],
    ["--above says where --behind-edge is asked for", ["fit", KNIFE, "--above", "1mm"]],
    ["--above says where --behind-edge is asked for", ["fit", KNIFE, "--mass", "480g", "--above", "1mm"]],
    ["--at tells where", ["fit", KNIFE, "--mass", "480g", "--at", "50%"]],
    ["--mass does nothing beside --change help", ["fit", KNIFE, "--change", "help", "--mass", "abc"]],
    ["--out does nothing beside --change help", ["fit", KNIFE, "--change", "help", "--out", "zz"]],
    ["--paper is for the customer's sheet", ["quote", KNIFE, "--paper", "nonsense"]],
    ["--paper is for the customer's sheet", ["quote", KNIFE, "--paper", "10x10"]],
  ];
  it.each(idle)("is refused, and nothing is done: %s (%j)", async (words, argv) => {
    const begun = await answer(HOURS, { files: DEMO_FILES });
    const { code, out, err, written } = await answer(argv, begun.io);
    expect(code).toBe(EXIT.usage);
    expect(flat(err)).toContain(words);
    expect(out).toBe("");
    expect(written).toEqual([]);
  });

  it("is taken where it means something: the shop of the first entry, whatever that is of", async () => {
    const { "shop.yaml": shop, ...files } = DEMO_FILES;
    const world = { files: { ...files, "/kept/own.yaml": shop } };
    const { code, err } = await answer([...HOURS, "--shop", "/kept/own.yaml"], world);
    expect(code, err).toBe(EXIT.done);
  });
});
