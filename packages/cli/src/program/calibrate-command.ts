import { CALIBRATE_FORMATS, type CalibrateOptions } from "../options.js";
import type { Declaring } from "./declaring.js";
import { examples, formatOption, paperOption, shared } from "./shared-options.js";

export function declareCalibrate({ program, io, answered }: Declaring): void {
  shared(
    program.command("calibrate"),
    "a sheet to check the printer with, and from two lengths measured on it what sets the printer right",
  )
    .addOption(paperOption("paper of the shop file"))
    .option("--short <LENGTH>", "what the bar along the short side of the paper measures")
    .option("--long <LENGTH>", "what the bar along the long side measures")
    .option("--corrected", "the sheet with the stored correction, to prove it")
    .addOption(formatOption("sheet", CALIBRATE_FORMATS, "svg"))
    .addHelpText(
      "after",
      examples(
        "calibrate",
        "calibrate --paper a4 --format pdf",
        "calibrate --paper a4 --short 179.6mm --long 269.3mm --force",
        "calibrate --paper a4 --corrected",
      ),
    )
    .action(async (options: CalibrateOptions) => {
      const { calibrate } = await import("../commands/calibrate.js");
      answered(await calibrate(io, options));
    });
}
