import type { FitOptions } from "../options.js";
import type { Declaring } from "./declaring.js";
import { collect, common, examples } from "./shared-options.js";

export function declareFit({ program, io, answered }: Declaring): void {
  common(
    program.command("fit"),
    "change sizes within ranges until mass, balance, bevel or steel are as asked",
  )
    .option("--mass <MASS>", 'of the whole knife: 480g, "<480g", 450..480g, "480g ± 5g"')
    .option("--balance <LENGTH>", "ahead of the heel: 20..30mm; negative behind it")
    .option("--bevel-angle <ANGLE>", "of the ground bevel, per side, at the heel: 3.5deg")
    .option("--behind-edge <LENGTH>", "thickness 1 mm above the edge, at the heel: 0.4mm")
    .option("--steel <MASS>", 'bars as cut, at the usual losses: "<700g"')
    .option("--at <PLACE>", "where bevel angle and thickness are asked for: 50%, 80mm")
    .option("--above <LENGTH>", "how far above the edge the thickness is asked for (default: 1 mm)")
    .option(
      "--change <NAME=LOW..HIGH>",
      "what may be changed, and how far; may be repeated; help lists the names (default: the usual sizes)",
      collect,
    )
    .option("--sure", "the whole band has to lie inside what is asked")
    .addHelpText(
      "after",
      examples(
        "fit",
        "fit harvest.knife.yaml",
        "fit harvest.knife.yaml --mass 480g --balance 45..60mm",
        "fit harvest.knife.yaml --mass '<520g' --change thickness=85%..100% \\\n      --change tang.buttThickness=1.8..3mm --out fitted",
        "fit harvest.knife.yaml --change help",
      ),
    )
    .action(async (file: string, options: FitOptions) => {
      const { fit } = await import("../commands/fit.js");
      answered(await fit(io, file, options));
    });
}
