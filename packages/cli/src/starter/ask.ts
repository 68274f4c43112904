import { EXIT } from "../exit-code.js";
import { CommandFailure } from "../failure.js";
import type { LineReader, OutStream } from "../io/io.js";
import { item, wrap } from "../report/layout.js";

/** What was made of an answer: a value, with what is to be said of it; or what is wrong with it. */
export type Taken<T> =
  | { readonly ok: true; readonly value: T; readonly echo?: string }
  | { readonly ok: false; readonly why: string };

export interface Question<T> {
  /** What is asked, short: the answer is typed behind it. */
  readonly ask: string;
  /** What is taken where nothing is typed. */
  readonly usual: string;
  /** What `?` tells. */
  readonly help: readonly string[];
  readonly take: (typed: string) => Taken<T>;
}

/** What questions are asked through. */
export interface Talk {
  readonly lines: LineReader;
  readonly out: OutStream;
}

/** Says something beside the questions, no wider than the terminal. */
export function say({ out }: Talk, text: string, indent = "  "): void {
  const mark = text === "" ? "" : indent;
  out.write(`${(mark === "" ? wrap(text) : item(mark, text)).join("\n")}\n`);
}

/**
 * Asks until the answer can be used: nothing typed takes what is usual, `?` explains, what cannot be is explained and asked
 * again.
 *
 * @throws {CommandFailure} exit code 2 where nobody answers any more: Ctrl-C, or the end of input.
 */
export async function askFor<T>(talk: Talk, question: Question<T>): Promise<T> {
  for (;;) {
    const typed = (await talk.lines.ask(`${question.ask} [${question.usual}]: `))?.trim();
    if (typed === undefined) throw stopped(talk);
    if (typed === "?") {
      for (const text of question.help) say(talk, text);
      continue;
    }
    const taken = question.take(typed === "" ? question.usual : typed);
    if (taken.ok) {
      if (taken.echo !== undefined) say(talk, `= ${taken.echo}`);
      return taken.value;
    }
    say(talk, taken.why);
  }
}

function stopped({ out }: Talk): CommandFailure {
  // The cursor stands behind the question.
  out.write("\n");
  return new CommandFailure(
    EXIT.usage,
    "stopped",
    "stopped; nothing was written",
    "To write a starter without questions: scantling new NAME --family drop-point",
  );
}
