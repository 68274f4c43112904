import type { LearnOptions } from "../options.js";
import type { Declaring } from "./declaring.js";
import { examples, shared } from "./shared-options.js";

export function declareLearn({ program, io, answered }: Declaring): void {
  shared(
    program
      .command("learn")
      .argument("[RECORDS...]", "records, or folders of them (default: all below the shop file's folder)"),
    "learn the shop's own losses, allowances and hours from the records of its knives",
  )
    .option("--write", "write the change into the shop file (default: only show it)")
    .addHelpText(
      "after",
      `
What is learnt is held together with what the shop reckons with now, and moves
it little while records are few; one record moves nothing. Readings that cannot
be, slips of the hand and jobs far from all others are named and left out.
${examples("learn", "learn", "learn --write", "learn orders/2026 --shop shop.yaml --json")}`,
    )
    .action(async (records: readonly string[], options: LearnOptions) => {
      const { learn } = await import("../commands/learn.js");
      answered(await learn(io, records, options));
    });
}
