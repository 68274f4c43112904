import type { SetupOptions } from "../options.js";
import type { Declaring } from "./declaring.js";
import { common, examples, planOption } from "./shared-options.js";

export function declareSetup({ program, io, answered }: Declaring): void {
  common(
    program.command("setup"),
    "what tools are set to at the forge, at the bench and in the oven, in the order of use",
  )
    .addOption(planOption())
    .addHelpText("after", examples("setup", "setup harvest.knife.yaml", "setup harvest.knife.yaml --plan 2"))
    .action(async (file: string, options: SetupOptions) => {
      const { setup } = await import("../commands/setup.js");
      answered(await setup(io, file, options));
    });
}
