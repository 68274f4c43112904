import { Option } from "commander";
import type { GateOptions } from "../options.js";
import type { Declaring } from "./declaring.js";
import { collect, common, examples, GATES, planOption } from "./shared-options.js";

export function declareGate({ program, io, answered }: Declaring): void {
  common(
    program.command("gate"),
    "steel to spare or short at a stage, what can still be made of it, and what is left to take off",
  )
    .addOption(new Option("--stage <STAGE>", "what is on the scale").choices(GATES).makeOptionMandatory(true))
    .requiredOption("--mass <MASS>", "what the scale shows: 702g, 24.8 oz, 1 lb 8 oz")
    .option("--tare <MASS>", "the handling bar's own mass, 0g for none")
    .addOption(planOption())
    .option("--before <STAGE=MASS>", "steel alone, weighed at an earlier stage; may be repeated", collect)
    .option("--at <PLACE=THICKNESS>", "a caliper reading at the spine or the tang; may be repeated", collect)
    .addHelpText(
      "after",
      examples(
        "gate",
        "gate harvest.knife.yaml --stage billet --mass 902g --tare 200g",
        "gate harvest.knife.yaml --stage forged --mass 690g \\\n      --before billet=702g",
        'gate harvest.knife.yaml --stage forged --mass 690g \\\n      --at "heel=5.6 mm" --at "60 %=4.6 mm"',
      ),
    )
    .action(async (file: string, options: GateOptions) => {
      const { gate } = await import("../commands/gate.js");
      answered(await gate(io, file, options));
    });
}
