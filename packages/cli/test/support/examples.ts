import { factsOf } from "../../src/manual/facts.js";
import { makeProgram } from "../../src/program.js";
import { DEMO_KNIFE, DEMO_RECORD, DEMO_SHOP } from "./demo.js";
import { type FakeIoOptions, fakeIo } from "./fake-io.js";

/** All that is declared of the program. */
export const FACTS = factsOf(makeProgram(fakeIo(), () => undefined));

/** An example of the help. */
export interface Example {
  readonly line: string;
  readonly command: string;
  /** Without the program's own name. */
  readonly words: readonly string[];
}

/** Every example that help and manual show. */
export const EXAMPLES: readonly Example[] = FACTS.commands.flatMap((command) =>
  command.examples.map((line) => ({ line, command: command.name, words: wordsOf(line).slice(1) })),
);

/** Words as a shell parts them: quotes taken off, line ends joined, what is piped or redirected left out. */
function wordsOf(line: string): string[] {
  const [job = ""] = line.replaceAll("\\\n", " ").split(/\s[|<>]\s/u);
  const parts = job.matchAll(/"([^"]*)"|'([^']*)'|(\S+)/gu);
  return [...parts].map(([, double, single, plain]) => double ?? single ?? plain ?? "");
}

/** A shop whose printer was measured before. */
const SHOP = `${DEMO_SHOP}\nprinter:\n  - { paper: a4, shortSide: 1.002, longSide: 0.998 }\n`;

/** The files that an example names, with what stands in a knife file and in a shop file. */
function filesOf(words: readonly string[], knife: string, shop: string): Record<string, string> {
  return Object.fromEntries([
    // One that is about to be written is not there yet.
    ...(words[0] === "new" && words.includes("shop.yaml") ? [] : [["shop.yaml", shop]]),
    ...(words[0] === "reorder" ? [["harvest.record.yaml", DEMO_RECORD]] : []),
    ...(words.includes("orders/2026") ? [["orders/2026/harvest.record.yaml", DEMO_RECORD]] : []),
    ["/shop.yaml", shop],
    ...words
      .filter((word, at) => word.endsWith(".knife.yaml") && words[at - 1] !== "new")
      .map((word) => [word, knife]),
  ]);
}

/** The world in which an example runs, with other texts in its knife files and its shop if need be. */
export function worldOf(
  words: readonly string[],
  knife: string = DEMO_KNIFE,
  shop: string = SHOP,
): FakeIoOptions {
  return { files: filesOf(words, knife, shop), ...(words.includes("-") ? { stdin: knife } : {}) };
}
