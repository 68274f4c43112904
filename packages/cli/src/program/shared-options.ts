import { nearestWord } from "@scantling/geometry/units";
import { type Command, InvalidArgumentError, Option } from "commander";

export const EXIT_CODES = `
Exit codes: 0 done; 1 our bug; 2 wrong use; 3 a file has errors or cannot be
read; 4 an ask is not met or a finding says stop (check, plan), the steel is
short at the usual losses or its mass cannot be (gate), or the promised date
cannot be kept (quote); 5 would overwrite or cannot write.`;

/** Written out, so that help does not load the geometry. */
export const STATES = ["finished", "ready", "forged"] as const;

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

/** The options that every command has. */
export function shared(command: Command, description: string): Command {
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

export function examples(command: string, ...lines: readonly string[]): string {
  return `\nExamples:\n${lines.map((line) => `  scantling ${line}`).join("\n")}\n${["check", "plan", "gate", "quote"].includes(command) ? EXIT_CODES : ""}`;
}

/** The blade in hand: finished, ready to harden with what is ground afterwards still on, or as it leaves the anvil. */
export function stateOption(done: string): Option {
  return new Option("--state <state>", `size state that is ${done} (default: finished)`).choices(STATES);
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
  return new Option("--format <format>", `format of the ${what}: ${formats.join(", ")}`)
    .default(usual)
    .argParser((value: string) => knownWord(value.toLowerCase(), formats, "formats"));
}

/** Words of a list parted by commas, each once, in the order of the list that they are from. */
export function wordList<T extends string>(value: string, known: readonly T[], what: string): readonly T[] {
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
