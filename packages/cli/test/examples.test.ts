import { describe, expect, it } from "vitest";
import { EXIT } from "../src/exit-code.js";
import { answer } from "./support/answer.js";
import { EXAMPLES, FACTS, worldOf } from "./support/examples.js";

// Examples are what people type first: each of them has to run as it stands.
it("every command has examples", () => {
  for (const { name, examples: lines } of FACTS.commands) {
    if (name !== "help") expect(lines, name).not.toEqual([]);
  }
});

describe("examples in help and manual", () => {
  it.each(EXAMPLES)("$line", async ({ words, command }) => {
    expect(words[0]).toBe(command);
    const { code, err } = await answer(words, worldOf(words));
    expect([EXIT.done, EXIT.notMet], err).toContain(code);
  });
});
