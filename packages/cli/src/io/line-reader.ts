import { createInterface } from "node:readline";
import type { Readable, Writable } from "node:stream";
import type { LineReader } from "./io.js";

/**
 * Reads lines as they are typed, with the usual keys for editing them where it is a terminal. Lines that come before they are
 * asked for, as from pasted text, wait.
 *
 * @param isTerminal - Whether keys are read one by one; Ctrl-C then ends the questions and not the process.
 */
export function lineReader(input: Readable, output: Writable, isTerminal: boolean): LineReader {
  const lines = createInterface({ input, output, terminal: isTerminal, historySize: 0 });
  const waiting: string[] = [];
  let answer: ((line: string | undefined) => void) | undefined;
  let closed = false;
  lines.on("line", (line) => {
    if (answer === undefined) waiting.push(line);
    else settle(line);
  });
  lines.on("SIGINT", () => lines.close());
  lines.on("close", () => {
    closed = true;
    settle(undefined);
  });

  function settle(line: string | undefined): void {
    const asked = answer;
    answer = undefined;
    asked?.(line);
  }

  return {
    ask: (prompt) =>
      new Promise((resolve) => {
        const [line] = waiting.splice(0, 1);
        if (line !== undefined || closed) {
          output.write(`${prompt}${line ?? ""}\n`);
          resolve(line);
          return;
        }
        answer = resolve;
        lines.setPrompt(prompt);
        lines.prompt();
      }),
    close: () => lines.close(),
  };
}
