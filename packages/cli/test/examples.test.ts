import { describe, expect, it } from "vitest";
import { EXIT } from "../src/exit-code.js";
import { factsOf } from "../src/manual/facts.js";
import { makeProgram } from "../src/program.js";
import { answer } from "./support/answer.js";
import { DEMO_KNIFE, DEMO_SHOP } from "./support/demo.js";
import { fakeIo } from "./support/fake-io.js";

// Examples are what people type first: each of them has to run as it stands.
const facts = factsOf(makeProgram(fakeIo(), () => undefined));
const examples = facts.commands.flatMap((command) =>
  command.examples.map((line) => ({ line, command: command.name })),
);

/** Words as a shell parts them: quotes taken off, line ends joined, what is piped or redirected left out. */
function wordsOf(line: string): string[] {
  const [job = ""] = line.replaceAll("\\\n", " ").split(/\s[|<>]\s/u);
  return [...job.matchAll(/"([^"]*)"|(\S+)/gu)].map(([, quoted, plain]) => quoted ?? plain ?? "");
}

/** A shop whose printer was measured before. */
const SHOP = `${DEMO_SHOP}\nprinter:\n  - { paper: a4, shortSide: 1.002, longSide: 0.998 }\n`;

/** The files that an example names as there. */
const filesOf = (words: readonly string[]): Record<string, string> =>
  Object.fromEntries([
    // One that is about to be written is not there yet.
    ...(words.includes("shop.yaml") ? [] : [["shop.yaml", SHOP]]),
    ["/shop.yaml", SHOP],
    ...words
      .filter((word, at) => word.endsWith(".knife.yaml") && words[at - 1] !== "new")
      .map((word) => [word, DEMO_KNIFE]),
  ]);

it("every command has examples", () => {
  for (const { name, examples: lines } of facts.commands) {
    if (name !== "help") expect(lines, name).not.toEqual([]);
  }
});

describe("examples in help and manual", () => {
  it.each(examples)("$line", async ({ line, command }) => {
    const [program, ...words] = wordsOf(line);
    expect(program).toBe("scantling");
    expect(words[0]).toBe(command);
    const stdin = words.includes("-") ? { stdin: DEMO_KNIFE } : {};
    const { code, err } = await answer(words, { files: filesOf(words), ...stdin });
    expect([EXIT.done, EXIT.notMet], err).toContain(code);
  });
});
