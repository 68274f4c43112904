import type { CommonOptions } from "../options.js";
import type { Declaring } from "./declaring.js";
import { common, examples } from "./shared-options.js";

export function declarePlan({ program, io, answered }: Declaring): void {
  common(
    program.command("plan"),
    "the main job: weight, bars, forge card, checks and sheets into one folder, and a summary",
  )
    .addHelpText(
      "after",
      examples(
        "plan",
        "plan harvest.knife.yaml --out out",
        "plan harvest.knife.yaml --out out --force --units in",
      ),
    )
    .action(async (file: string, options: CommonOptions) => {
      const { plan } = await import("../commands/plan.js");
      answered(await plan(io, file, options));
    });
}
