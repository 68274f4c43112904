import { Option } from "commander";
import { DRAWN_WITH } from "../file/drawn-with.js";
import type { RecordOptions } from "../options.js";
import type { Declaring } from "./declaring.js";
import { collect, common, examples, GATES, planOption } from "./shared-options.js";
import { oneOf } from "./word-option.js";

/** Written out, so that help does not load the geometry; a test holds them against the tasks of the job. */
export const TASKS = [
  "design",
  "stack",
  "weld",
  "forge",
  "anneal",
  "profile",
  "drill",
  "rough",
  "harden",
  "temper",
  "finish",
  "etch",
  "fit",
  "glue",
  "shape",
  "oil",
  "sharpen",
  "sheath",
  "pack",
] as const;

const FILE = ["<FILE>", "the knife file, or its record (NAME.record.yaml)"] as const;

export function declareRecord({ program, io, answered }: Declaring): void {
  common(
    program.command("record"),
    "enter what was measured while making the knife, and what it means; alone: what is entered",
    FILE,
  )
    .addOption(new Option("--stage <STAGE>", "what was weighed or measured").choices(GATES))
    .option("--mass <MASS>", "what the scale shows: 702g, 24.8 oz, 1 lb 8 oz")
    .option("--tare <MASS>", "the handling bar's own mass, 0g for none")
    .option("--heats <N>", "forging heats since the stage before")
    .option("--welding-heats <N>", "welding heats since the stage before")
    .option("--size <PLACE=SIZE>", 'thickness, or thickness x height: "heel=5.6 x 96 mm"', collect)
    .option("--drawn <A=B>", 'height x thickness before and after: "40x30=48x20 mm"')
    .addOption(new Option("--drawn-with <TOOL>", "what it was drawn with").choices(DRAWN_WITH))
    .addOption(oneOf("--task <TASK>", "what the hours went into", TASKS, "tasks"))
    .option("--hours <HOURS>", "hours of hand work: 3.5 or 3:30")
    .option("--hardness <HRC>", "as a tester showed it")
    .option("--files <SKATES/CUTS>", "the hardest file that skates, the softest that cuts: 60/65")
    .addOption(new Option("--after <STEP>", "the step before the hardness").choices(["quench", "temper"]))
    .option("--batch <TEXT>", "batch of the steel")
    .option("--note <TEXT>", "anything worth knowing next time")
    .option("--on <DAY>", "2026-11-28 (default: today; with --corrects the day of the entry it replaces)")
    .option("--corrects <N>", "stands in place of the earlier entry N")
    .option("--sure", "it was measured again: store it though it is doubted")
    .addOption(planOption().default(undefined))
    .addHelpText("after", NOTES)
    .addHelpText(
      "after",
      examples(
        "record",
        "record harvest.knife.yaml --stage billet --mass 902g --tare 200g \\\n      --welding-heats 3",
        'record harvest.knife.yaml --stage forged --mass 655g --heats 9 \\\n      --size "heel=5.6 x 96 mm" --size "60 %=4.6 mm"',
        "record harvest.knife.yaml --task forge --hours 3.5",
        'record harvest.knife.yaml --files 60/65 --note "quenched at 800 °C"',
        "record harvest.knife.yaml",
      ),
    )
    .action(async (file: string, options: RecordOptions) => {
      const { record } = await import("../commands/record.js");
      answered(await record(io, file, options));
    });
}

const NOTES = `
An entry is stored once "STORED" is printed. A mass that steel cannot have, or a
slipped unit or point, is not stored (exit code 4) unless --sure says that it
was measured again. Entries are never changed: --corrects N puts a new one in
place of entry N, whole.`;
