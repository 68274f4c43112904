import { type Command, InvalidArgumentError, Option } from "commander";
import { listOf, oneOf, usually } from "./word-option.js";

export const EXIT_CODES = `
Exit codes: 0 done; 1 our bug; 2 wrong use; 3 a file has errors or cannot be
read; 4 an ask is not met or a finding says stop (check, plan, reorder, quote),
cannot be met (fit), the steel is short at the usual losses or its mass cannot
be (gate), an entry is doubted and not stored (record), or the promised date
cannot be kept (quote); 5 would overwrite or cannot write.`;

// Written out, so that help does not load the geometry.
export const STATES = ["finished", "ready", "forged"] as const;

export const GATES = ["cut", "billet", "forged", "ready", "finished"] as const;
/** The same. */
export const TANG_FORMS = ["full", "hidden", "through"] as const;

/** All values of an option that is given several times. */
export const collect = (value: string, before: readonly string[] = []): readonly string[] => [
  ...before,
  value,
];

const ONE_FILE = ["<FILE>", "the knife file (YAML or JSON), or - for standard input"] as const;

/** What all commands share: the knife file, the options, and where output goes. */
export function common(
  command: Command,
  description: string,
  [name, about]: readonly [string, string] = ONE_FILE,
): Command {
  return shared(command.argument(name, about), description);
}

/** The options of a command that knows neither units nor shop. */
export function plain(command: Command, description: string): Command {
  return command
    .description(description)
    .option("--json", "print the report as JSON, one document")
    .option("--out <DIR>", "write into this folder, which is made if missing")
    .option("--force", "overwrite files that exist")
    .allowExcessArguments(false);
}

/** The options that every other command has. */
export function shared(command: Command, description: string): Command {
  return command
    .description(description)
    .option("--json", "print the report as JSON (mm and g), one document")
    .option("--out <DIR>", "write into this folder, which is made if missing")
    .addOption(
      new Option("--units <UNITS>", "units of reports and drawings (default: those of the file)").choices([
        "in",
        "mm",
      ]),
    )
    .option("--shop <FILE>", "the shop file (default: shop.yaml beside the knife file or above it)")
    .option("--force", "overwrite files that exist")
    .allowExcessArguments(false);
}

export function examples(command: string, ...lines: readonly string[]): string {
  return `\nExamples:\n${lines.map((line) => `  scantling ${line}`).join("\n")}\n${["check", "fit", "gate", "plan", "quote", "record", "reorder"].includes(command) ? EXIT_CODES : ""}`;
}

/** The blade in hand: finished, ready to harden with what is ground afterwards still on, or as it leaves the anvil. */
export function stateOption(done: string): Option {
  return new Option("--state <STATE>", `size state that is ${done} (default: finished)`).choices(STATES);
}

/** Which of the ranked plans a card is made for. */
export function planOption(): Option {
  return new Option("--plan <N>", "which plan of stock (default: the best)").argParser(planPlace);
}

function planPlace(value: string): number {
  const place = Number(value);
  if (/^\d+$/u.test(value) && place >= 1) return place;
  throw new InvalidArgumentError("Give the place of a plan: 1 is the best, 2 the next one.");
}

/** `--format`, with the nearest word for one that is none. */
export function formatOption<T extends string>(what: string, formats: readonly T[], usual: T): Option {
  return oneOf("--format <FORMAT>", `format of the ${what}`, formats, "formats").default(usual);
}

/** Several size states, parted by commas. */
export function statesOption(about: string): Option {
  return listOf("--state <STATES>", `${about} (default: finished)`, STATES, "states");
}

/** Written out, so that help does not load what draws on them. */
export const PAPERS = ["a4", "a3", "a2", "letter", "legal", "tabloid"] as const;

/** `--paper`: a name or two sides; `others` are words that mean something to this command alone. */
export function paperOption(usual: string, others: readonly string[] = []): Option {
  const named = `the paper: ${["a4", "letter", "a3", "tabloid", "300x600mm", ...others, "..."].join(", ")}`;
  return usually("--paper <PAPER>", `${named} (default: ${usual})`, [...PAPERS, ...others]);
}
