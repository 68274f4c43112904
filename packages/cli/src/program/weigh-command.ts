import type { WeighOptions } from "../options.js";
import type { Declaring } from "./declaring.js";
import { common, examples, stateOption } from "./shared-options.js";

export function declareWeigh({ program, io, answered }: Declaring): void {
  common(
    program.command("weigh"),
    "volume, mass with its interval, balance, what the interval comes from, and sections along the blade",
  )
    .option("--at <PLACES>", "sections at these places too: heel, tip, handle, butt, 60 %, 80 mm, ...")
    .addOption(stateOption("weighed"))
    .addHelpText(
      "after",
      examples(
        "weigh",
        "weigh harvest.knife.yaml",
        'weigh harvest.knife.yaml --json --at "60 mm,75 %"',
        "weigh harvest.knife.yaml --state forged",
      ),
    )
    .action(async (file: string, options: WeighOptions) => {
      const { weigh } = await import("../commands/weigh.js");
      answered(await weigh(io, file, options));
    });
}
