import { Command, InvalidArgumentError, Option } from "commander";
import type { ExitCode } from "./exit-code.js";
import type { Io } from "./io/io.js";
import {
  type CommonOptions,
  PATTERN_FORMATS,
  type PatternFormat,
  type PatternOptions,
  type WeighOptions,
} from "./options.js";
import { version } from "./version.js";

const EXIT_CODES = `
Exit codes: 0 done; 1 our bug; 2 wrong use; 3 a file has errors or cannot be
read; 4 an ask is not met or a finding says stop (check, plan); 5 would
overwrite or cannot write.`;

/**
 * The command line: commands, options, help. Each command's own code is loaded when it is called, so that help and
 * wrong words are answered at once.
 */
export function makeProgram(io: Io, answered: (code: ExitCode) => void): Command {
  const program = new Command("scantling");
  program
    .description("For one custom knife: what it will weigh, the bars to cut, and a true-size pattern.")
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
    .addHelpText(
      "after",
      examples("weigh", "weigh harvest.knife.yaml", 'weigh harvest.knife.yaml --json --at "60 mm,75 %"'),
    )
    .action(async (file: string, options: WeighOptions) => {
      const { weigh } = await import("./commands/weigh.js");
      answered(await weigh(io, file, options));
    });
  common(program.command("stock"), "the steel ledger and ranked plans of bars to cut and weld")
    .addHelpText(
      "after",
      examples("stock", "stock harvest.knife.yaml", "stock harvest.knife.yaml --shop ../shop.yaml"),
    )
    .action(async (file: string, options: CommonOptions) => {
      const { stock } = await import("./commands/stock.js");
      answered(await stock(io, file, options));
    });
  common(program.command("pattern"), "the true-size drawing to trace")
    .addOption(
      new Option("--format <format>", `format of the drawing: ${PATTERN_FORMATS.join(", ")}`)
        .default("svg")
        .argParser(patternFormat),
    )
    .addHelpText(
      "after",
      examples(
        "pattern",
        "pattern harvest.knife.yaml",
        "pattern harvest.knife.yaml --format svg --out drawings",
      ),
    )
    .action(async (file: string, options: PatternOptions) => {
      const { pattern } = await import("./commands/pattern.js");
      answered(await pattern(io, file, options));
    });
  common(program.command("check"), "what was asked, one by one, and every warning with the number behind it")
    .addHelpText("after", examples("check", "check harvest.knife.yaml", "check - < harvest.knife.yaml"))
    .action(async (file: string, options: CommonOptions) => {
      const { check } = await import("./commands/check.js");
      answered(await check(io, file, options));
    });
  return program;
}

/** What all commands share: the knife file, the options, and where output goes. */
function common(command: Command, description: string): Command {
  return command
    .description(description)
    .argument("<FILE>", "the knife file (YAML or JSON), or - for standard input")
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
  return `\nExamples:\n${lines.map((line) => `  scantling ${line}`).join("\n")}\n${command === "check" || command === "plan" ? EXIT_CODES : ""}`;
}

function patternFormat(value: string): PatternFormat {
  const known = PATTERN_FORMATS.find((format) => format === value);
  if (known !== undefined) return known;
  const later = value === "pdf" || value === "dxf" ? `${value} comes later. ` : "";
  throw new InvalidArgumentError(`${later}Formats there are: ${PATTERN_FORMATS.join(", ")}.`);
}
