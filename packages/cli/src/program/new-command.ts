import type { NewOptions } from "../options.js";
import { FAMILY_CHOICES, FAMILY_WORDS } from "../starter/family-words.js";
import type { Declaring } from "./declaring.js";
import { examples, shared, TANG_FORMS } from "./shared-options.js";
import { oneOf } from "./word-option.js";

export function declareNew({ program, io, answered }: Declaring): void {
  shared(
    program.command("new").argument("[FILE]", "the new file, NAME.knife.yaml or shop.yaml; - prints it"),
    "a knife file to begin with, full of comments: asks on a terminal, else writes a usual one",
  )
    .addOption(
      oneOf("--family <NAME>", "a usual knife of this family, without questions", FAMILY_CHOICES, "families"),
    )
    .addOption(oneOf("--tang <FORM>", "its tang (default: that of the family)", TANG_FORMS, "tangs"))
    .option("--from <FILE>", "a knife file to copy; what was asked for is left out")
    .option("--shop-file", "a shop file instead: rack, losses, press, tools")
    .option("--code <CODE>", "code of the order (default: from the file's name)")
    .option("--title <TITLE>", "title of the order (default: from the file's name)")
    .addHelpText(
      "after",
      `\nFamilies:\n${FAMILY_CHOICES.map((name) => `  ${name.padEnd(16)}${FAMILY_WORDS[name]}`).join("\n")}\n${examples(
        "new",
        "new",
        "new hunter.knife.yaml --family drop-point --units in",
        "new second.knife.yaml --from first.knife.yaml --title Second",
        "new shop.yaml --units in",
      )}`,
    )
    .action(async (file: string | undefined, options: NewOptions) => {
      const { newFile } = await import("../commands/new.js");
      answered(await newFile(io, file, options));
    });
}
