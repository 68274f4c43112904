import type { ExitCode } from "./exit-code.js";
import { nodeIo } from "./io/node-io.js";
import { run } from "./run.js";

/** Runs the command on the real streams and the real disk. */
export function main(argv: readonly string[]): Promise<ExitCode> {
  return run(argv, nodeIo());
}
