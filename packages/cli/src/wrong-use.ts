import { nearestWord } from "@scantling/geometry/units";
import type { Command } from "commander";
import { CommanderError } from "commander";
import { EXIT } from "./exit-code.js";
import { CommandFailure } from "./failure.js";
import { type CommandFacts, factsOf } from "./manual/facts.js";

/**
 * What the command-line library found wrong, in our words where its own do not say what to do: from what is declared of the
 * command.
 *
 * @param program - As it was declared; it must not be run afterwards.
 */
export function wrongUse(error: CommanderError, argv: readonly string[], program: Command): CommandFailure {
  const facts = factsOf(program);
  const name = argv.find((word) => !word.startsWith("-"));
  // Of `help` nothing more is to be said than the program's own help says.
  const command = facts.commands.find((known) => known.name === name && name !== "help");
  const said = error.message.replace(/^error: /u, "").replaceAll("\n", " ");
  const see = `scantling ${command === undefined ? "" : `${command.name} `}--help`;
  return new CommandFailure(
    EXIT.usage,
    error.code.replace("commander.", "").replace(/[A-Z]/gu, (letter) => `-${letter.toLowerCase()}`),
    (command && inOurWords(error.code, said, command)) ?? said,
    todoFor(error.code, command, see, argv),
  );
}

/** What is missing, with what it is. */
function inOurWords(code: string, said: string, command: CommandFacts): string | undefined {
  const [named = ""] = /(?<=')[^']+(?=')/u.exec(said) ?? [];
  if (code === "commander.missingArgument") {
    const argument = command.arguments.find(({ name }) => name === named);
    return argument && `${command.name} needs ${argument.name}: ${argument.about}`;
  }
  if (code === "commander.invalidArgument") {
    const [, given, name] =
      /^command-argument value '(.*)' is invalid for argument '(.*?)'/u.exec(said) ?? [];
    const argument = command.arguments.find((one) => one.name === name);
    if (given !== undefined && argument !== undefined && argument.words.length > 0)
      return `${command.name} ${given}: ${argument.name} is one of ${argument.words.join(", ")}`;
  }
  const option = command.options.find(({ long }) => named.split(/[ ,]/u).includes(long));
  if (option === undefined) return undefined;
  if (code === "commander.missingMandatoryOptionValue") {
    return `${command.name} needs ${option.long} ${option.value}: ${option.about.replace(" (must be given)", "")}`;
  }
  if (code === "commander.optionMissingArgument") {
    return `${option.long} needs ${option.value} behind it: ${option.about}`;
  }
  return undefined;
}

const NEEDS_EXAMPLE = ["commander.missingArgument", "commander.missingMandatoryOptionValue"];

function todoFor(
  code: string,
  command: CommandFacts | undefined,
  see: string,
  argv: readonly string[],
): string {
  const [example] = command?.examples ?? [];
  if (NEEDS_EXAMPLE.includes(code) && example !== undefined) return `For example: ${example}. More: ${see}`;
  if (code === "commander.excessArguments")
    return `${hasSplitSize(argv) ? SIZE_IN_QUOTES : "Put quotes around a name with blanks in it."} See: ${see}`;
  return `See: ${see}`;
}

const SIZE_IN_QUOTES =
  'Put quotes around a size with blanks in it, as "11.2 oz", or leave the blanks out: 11.2oz.';

/** What follows the number of a size: a unit, a mark, or the rest of a fraction. */
const SECOND_HALF =
  /^(?:oz|lbs?|k?g|[mc]m|in(?:ch|ches)?|deg|h|hrs?|hours?|hrc|[%°"'x×±]|\d+(?:\/\d+)?\w*)$/iu;

/** Whether the value of an option is a number and what follows it is no option: `--mass 11.2 oz`, `--hours 3 1/2`. */
const hasSplitSize = (argv: readonly string[]): boolean =>
  argv.some(
    (word, at) =>
      /^--[a-z-]+$/u.test(argv[at - 1] ?? "") &&
      /^(?:[\w%.]+=)?[<>]?-?[\d.,/:]+$/u.test(word) &&
      SECOND_HALF.test(argv[at + 1] ?? ""),
  );

/** Help for a command that there is none of, which the library would answer with the help of all. */
export function refuseUnknownHelp([first, second]: readonly string[], program: Command): void {
  const names = program.commands.map((command) => command.name());
  if (first !== "help" || second === undefined || second.startsWith("-")) return;
  if (second === "help" || names.includes(second)) return;
  const near = nearestWord(second, names);
  const meant = near === undefined ? "" : ` (Did you mean ${near}?)`;
  throw new CommanderError(EXIT.usage, "commander.unknownCommand", `unknown command '${second}'${meant}`);
}
