import { nearestWord } from "@scantling/geometry/units";
import { Command, InvalidArgumentError, Option } from "commander";
import type { ExitCode } from "./exit-code.js";
import type { Io } from "./io/io.js";
import {
  CALIBRATE_FORMATS,
  CARD_FORMATS,
  type CalibrateOptions,
  type CommonOptions,
  type GateOptions,
  type JobsheetOptions,
  type PatternOptions,
  type SetupOptions,
  type WeighOptions,
} from "./options.js";
import { SHEET_NAMES, SHEET_WORDS } from "./sheets/sheet-names.js";
import { DRAWING_FORMATS } from "./sheets/write-drawings.js";
import { version } from "./version.js";

const EXIT_CODES = `
Exit codes: 0 done; 1 our bug; 2 wrong use; 3 a file has errors or cannot be
read; 4 an ask is not met or a finding says stop (check, plan), or the steel is
short at the usual losses or its mass cannot be (gate); 5 would overwrite or
cannot write.`;

/**
 * The command line: commands, options, help. Each command's own code is loaded when it is called, so that help and
 * wrong words are answered at once.
 */
export function makeProgram(io: Io, answered: (code: ExitCode) => void): Command {
  const program = new Command("scantling");
  program
    .description("For one custom knife: what it will weigh, the bars to cut, and true-size sheets.")
    .version(version(), "-V, --version", "print the version")
    .helpOption("-h, --help", "print help")
    .helpCommand("help [command]", "print help for a command")
    .addHelpText("after", EXIT_CODES);
  output(program, io);

  common(program.command("plan"), "the main job: everything below into one folder, and a summary")
    .addHelpText(
      "after",
      examples(
        "plan",
        "plan harvest.knife.yaml --out out",
        "plan harvest.knife.yaml --out out --force --units in",
      ),
    )
    .action(async (file: string, options: CommonOptions) => {
      const { plan } = await import("./commands/plan.js");
      answered(await plan(io, file, options));
    });
  common(
    program.command("weigh"),
    "volume, mass with its interval, balance, what the interval comes from, and sections along the blade",
  )
    .option("--at <PLACES>", "sections at these places too: heel, tip, handle, butt, 60 %, 80 mm, ...")
    .addOption(stateOption("weighed"))
    .addHelpText(
      "after",
      examples(
        "weigh",
        "weigh harvest.knife.yaml",
        'weigh harvest.knife.yaml --json --at "60 mm,75 %"',
        "weigh harvest.knife.yaml --state forged",
      ),
    )
    .action(async (file: string, options: WeighOptions) => {
      const { weigh } = await import("./commands/weigh.js");
      answered(await weigh(io, file, options));
    });
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
      const { stock } = await import("./commands/stock.js");
      answered(await stock(io, files, options));
    });
  common(
    program.command("setup"),
    "the forge card: marks, press stops, preform, shoulder, heats left, in the order of use",
  )
    .addOption(new Option("--plan <N>", "which plan of stock (default: the best)").argParser(planPlace))
    .addHelpText("after", examples("setup", "setup harvest.knife.yaml", "setup harvest.knife.yaml --plan 2"))
    .action(async (file: string, options: SetupOptions) => {
      const { setup } = await import("./commands/setup.js");
      answered(await setup(io, file, options));
    });
  common(
    program.command("gate"),
    "steel to spare or short at a stage, what can still be made of it, and what is left to take off",
  )
    .addOption(new Option("--stage <stage>", "what is on the scale").choices(GATES).makeOptionMandatory(true))
    .requiredOption("--mass <MASS>", "what the scale shows: 702g, 24.8 oz, 1 lb 8 oz")
    .option("--tare <MASS>", "the handling bar's own mass, 0g for none")
    .addOption(new Option("--plan <N>", "which plan of stock (default: the best)").argParser(planPlace))
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
      const { gate } = await import("./commands/gate.js");
      answered(await gate(io, file, options));
    });
  common(program.command("pattern"), "true-size drawings to trace, cut out and hold against the work")
    .addOption(
      new Option("--sheet <NAMES>", "sheets to draw, parted by commas, or all (default: pattern)").argParser(
        (value: string) => wordList(value, SHEET_NAMES, "sheets"),
      ),
    )
    .addOption(formatOption("drawings", DRAWING_FORMATS, "svg"))
    .option(
      "--paper <PAPER>",
      "a4, letter, a3, tabloid, 300x600mm, fit, ... (default: the smallest that holds the sheet; for pdf that of the shop file, tiled)",
    )
    .addOption(
      new Option(
        "--state <STATES>",
        "size states of the blade, nested in one another: finished, ready, forged (default: finished)",
      ).argParser((value: string) => wordList(value, STATES, "states")),
    )
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
      const { pattern } = await import("./commands/pattern.js");
      answered(await pattern(io, file, options));
    });
  common(
    program.command("jobsheet"),
    "the bench card to hang up: set-ups in the order of use, with boxes to write in",
  )
    .addOption(formatOption("card", CARD_FORMATS, "pdf"))
    .option("--paper <PAPER>", "a4, letter, ... (default: paper of the shop file)")
    .addOption(new Option("--plan <N>", "which plan of stock (default: the best)").argParser(planPlace))
    .addHelpText(
      "after",
      examples(
        "jobsheet",
        "jobsheet harvest.knife.yaml",
        "jobsheet harvest.knife.yaml --plan 2 --paper letter",
      ),
    )
    .action(async (file: string, options: JobsheetOptions) => {
      const { jobsheet } = await import("./commands/jobsheet.js");
      answered(await jobsheet(io, file, options));
    });
  common(program.command("check"), "what was asked, one by one, and every warning with the number behind it")
    .addHelpText("after", examples("check", "check harvest.knife.yaml", "check - < harvest.knife.yaml"))
    .action(async (file: string, options: CommonOptions) => {
      const { check } = await import("./commands/check.js");
      answered(await check(io, file, options));
    });
  shared(
    program.command("calibrate"),
    "a sheet to check the printer with, and from two lengths measured on it what sets the printer right",
  )
    .option("--paper <PAPER>", "a4, letter, a3, tabloid, 300x600mm, ... (default: paper of the shop file)")
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
      const { calibrate } = await import("./commands/calibrate.js");
      answered(await calibrate(io, options));
    });
  return program;
}

/** Written out, so that help does not load the geometry. */
const STATES = ["finished", "ready", "forged"] as const;

const GATES = ["cut", "billet", "forged", "ready", "finished"] as const;

/** All values of an option that is given several times. */
const collect = (value: string, before: readonly string[] = []): readonly string[] => [...before, value];

const ONE_FILE = ["<FILE>", "the knife file (YAML or JSON), or - for standard input"] as const;

/** What all commands share: the knife file, the options, and where output goes. */
function common(
  command: Command,
  description: string,
  [name, about]: readonly [string, string] = ONE_FILE,
): Command {
  return shared(command.argument(name, about), description);
}

/** The options that every command has. */
function shared(command: Command, description: string): Command {
  return command
    .description(description)
    .option("--json", "print the report as JSON (mm and g), one document")
    .option("--out <DIR>", "write into this folder, which is made if missing")
    .addOption(
      new Option("--units <units>", "units of reports and drawings (default: those of the file)").choices([
        "in",
        "mm",
      ]),
    )
    .option("--shop <FILE>", "the shop file (default: shop.yaml beside the knife file or above it)")
    .option("--force", "overwrite files that exist")
    .allowExcessArguments(false);
}

function output(program: Command, io: Io): void {
  program.exitOverride().configureOutput({
    writeOut: (text) => io.stdout.write(text),
    writeErr: (text) => io.stderr.write(text),
    // Errors are told by `run`, as text and as JSON.
    outputError: () => undefined,
    getOutHelpWidth: () => Math.min(80, io.stdout.columns ?? 80),
    getErrHelpWidth: () => Math.min(80, io.stderr.columns ?? 80),
    getOutHasColors: () => false,
    getErrHasColors: () => false,
  });
}

function examples(command: string, ...lines: readonly string[]): string {
  return `\nExamples:\n${lines.map((line) => `  scantling ${line}`).join("\n")}\n${["check", "plan", "gate"].includes(command) ? EXIT_CODES : ""}`;
}

/** The blade in hand: finished, ready to harden with what is ground afterwards still on, or as it leaves the anvil. */
function stateOption(done: string): Option {
  return new Option("--state <state>", `size state that is ${done} (default: finished)`).choices(STATES);
}

function planPlace(value: string): number {
  const place = Number(value);
  if (/^\d+$/u.test(value) && place >= 1) return place;
  throw new InvalidArgumentError("Give the place of a plan: 1 is the best, 2 the next one.");
}

/** `--format`, with the nearest word for one that is none. */
function formatOption<T extends string>(what: string, formats: readonly T[], usual: T): Option {
  return new Option("--format <format>", `format of the ${what}: ${formats.join(", ")}`)
    .default(usual)
    .argParser((value: string) => knownWord(value.toLowerCase(), formats, "formats"));
}

/** Words of a list parted by commas, each once, in the order of the list that they are from. */
function wordList<T extends string>(value: string, known: readonly T[], what: string): readonly T[] {
  const asked = value.split(",").map((word) => word.trim().toLowerCase());
  if (asked.includes("all")) return known;
  const found = asked.map((word) => knownWord(word, known, what));
  return known.filter((name) => found.includes(name));
}

function knownWord<T extends string>(word: string, known: readonly T[], what: string): T {
  const found = known.find((name) => name === word);
  if (found !== undefined) return found;
  const near = nearestWord(word, known);
  const meant = near === undefined ? "" : `Did you mean ${near}? `;
  throw new InvalidArgumentError(`${meant}The ${what} are: ${known.join(", ")}.`);
}
