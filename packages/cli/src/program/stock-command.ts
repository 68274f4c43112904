import type { CommonOptions } from "../options.js";
import type { Declaring } from "./declaring.js";
import { common, examples } from "./shared-options.js";

export function declareStock({ program, io, answered }: Declaring): void {
  common(
    program.command("stock"),
    "the steel ledger and ranked plans of bars to cut and weld; of several orders, one cut list over all",
    ["<FILE...>", "knife files (YAML or JSON), or - for standard input; the urgent order first"],
  )
    .addHelpText(
      "after",
      examples(
        "stock",
        "stock harvest.knife.yaml",
        "stock harvest.knife.yaml --shop ../shop.yaml",
        "stock first.knife.yaml second.knife.yaml third.knife.yaml",
      ),
    )
    .action(async (files: readonly string[], options: CommonOptions) => {
      const { stock } = await import("../commands/stock.js");
      answered(await stock(io, files, options));
    });
}
