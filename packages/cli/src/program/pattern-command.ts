import type { PatternOptions } from "../options.js";
import { SHEET_NAMES, SHEET_WORDS } from "../sheets/sheet-names.js";
import { DRAWING_FORMATS } from "../sheets/write-drawings.js";
import type { Declaring } from "./declaring.js";
import { common, examples, formatOption, paperOption, statesOption } from "./shared-options.js";
import { listOf } from "./word-option.js";

export function declarePattern({ program, io, answered }: Declaring): void {
  common(program.command("pattern"), "true-size drawings to trace, cut out and hold against the work")
    .addOption(
      listOf(
        "--sheet <NAMES>",
        "sheets to draw, parted by commas, or all (default: pattern)",
        SHEET_NAMES,
        "sheets",
      ),
    )
    .addOption(formatOption("drawings", DRAWING_FORMATS, "svg"))
    .addOption(
      paperOption("the smallest that holds the sheet; for pdf that of the shop file, tiled", ["fit"]),
    )
    .addOption(statesOption("size states of the blade, nested in one another, parted by commas"))
    .option("--offset <LENGTH>", "a line to saw or scribe along, this far outside the outline")
    .option("--overlap <LENGTH>", "how much tiled pages overlap (default: 10 mm)")
    .option("--margin <LENGTH>", "white along the edges of tiled pages (default: 6 mm)")
    .option("--at <PLACES>", "sections at these places too: heel, tip, butt, 60 %, 80 mm, ...")
    .addHelpText(
      "after",
      `\nSheets:\n${SHEET_NAMES.map((name) => `  ${name.padEnd(10)}${SHEET_WORDS[name]}`).join("\n")}\n${examples(
        "pattern",
        "pattern harvest.knife.yaml",
        "pattern harvest.knife.yaml --format pdf --paper a4",
        "pattern harvest.knife.yaml --sheet all --format pdf --out drawings",
        "pattern harvest.knife.yaml --state forged,finished --offset 0.5mm",
      )}`,
    )
    .action(async (file: string, options: PatternOptions) => {
      const { pattern } = await import("../commands/pattern.js");
      answered(await pattern(io, file, options));
    });
}
