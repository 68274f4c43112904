import type { QuoteOptions } from "../options.js";
import type { Declaring } from "./declaring.js";
import { common, examples, planOption } from "./shared-options.js";

export function declareQuote({ program, io, answered }: Declaring): void {
  common(program.command("quote"), "price, hours and dates; with --out the customer's sheet, as HTML and PDF")
    .option("--from <DATE>", "when work begins, 2026-12-01 (default: order.started, else today)")
    .option("--paper <PAPER>", "of the customer's PDF: a4, letter, ... (default: paper of the shop file)")
    .addOption(planOption())
    .addHelpText(
      "after",
      examples(
        "quote",
        "quote harvest.knife.yaml",
        "quote harvest.knife.yaml --from 2026-12-01",
        "quote harvest.knife.yaml --out offers --paper letter",
      ),
    )
    .action(async (file: string, options: QuoteOptions) => {
      const { quote } = await import("../commands/quote.js");
      answered(await quote(io, file, options));
    });
}
