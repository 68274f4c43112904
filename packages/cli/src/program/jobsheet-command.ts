import { CARD_FORMATS, type JobsheetOptions } from "../options.js";
import type { Declaring } from "./declaring.js";
import { common, examples, formatOption, paperOption, planOption } from "./shared-options.js";

export function declareJobsheet({ program, io, answered }: Declaring): void {
  common(
    program.command("jobsheet"),
    "the bench card to hang up: set-ups in the order of use, with boxes to write in",
  )
    .addOption(formatOption("card", CARD_FORMATS, "pdf"))
    .addOption(paperOption("paper of the shop file"))
    .addOption(planOption())
    .addHelpText(
      "after",
      examples(
        "jobsheet",
        "jobsheet harvest.knife.yaml",
        "jobsheet harvest.knife.yaml --plan 2 --paper letter",
      ),
    )
    .action(async (file: string, options: JobsheetOptions) => {
      const { jobsheet } = await import("../commands/jobsheet.js");
      answered(await jobsheet(io, file, options));
    });
}
