import type { Argument, Command, Option } from "commander";
import { collect, EXIT_CODES } from "../program/shared-options.js";
import { argumentWords, optionWords, type WordForm, wordsOf } from "../program/word-option.js";
import { type Section, sectionsOf } from "./after-help.js";

/** An option as it is declared. */
export interface OptionFacts {
  /** `--out`, with a short form `-h`. */
  readonly long: string;
  readonly short: string | undefined;
  /** What it takes, `DIR`; undefined for a switch. */
  readonly value: string | undefined;
  /** With the words that it takes and what holds without it. */
  readonly about: string;
  /** The description alone. */
  readonly brief: string;
  readonly words: readonly string[];
  readonly form: WordForm;
  readonly isRepeatable: boolean;
}

export interface ArgumentFacts {
  /** `FILE`. */
  readonly name: string;
  readonly about: string;
  readonly words: readonly string[];
  readonly isRequired: boolean;
  readonly isVariadic: boolean;
}

export interface CommandFacts {
  readonly name: string;
  readonly about: string;
  /** `[options] <FILE>`. */
  readonly usage: string;
  readonly arguments: readonly ArgumentFacts[];
  readonly options: readonly OptionFacts[];
  /** What stands after the options in its help, without examples and exit codes. */
  readonly sections: readonly Section[];
  /** Command lines, those of several lines with their line ends. */
  readonly examples: readonly string[];
}

export interface ProgramFacts {
  readonly name: string;
  readonly version: string;
  readonly about: string;
  readonly options: readonly OptionFacts[];
  /** In the order of help, `help` last. */
  readonly commands: readonly CommandFacts[];
  readonly exitCodes: readonly { readonly code: string; readonly about: string }[];
}

/**
 * Everything that is declared of the program: commands, options, words, examples. Completion, the pages of the manual
 * and the man page are made of this alone, so that none of them can say what the program does not know.
 *
 * @param program - As it was declared; it is not run, and must not be run afterwards: its help goes elsewhere.
 */
export function factsOf(program: Command): ProgramFacts {
  const help = program.createHelp();
  const commands = help.visibleCommands(program);
  const names = commands.map((command) => command.name());
  return {
    name: program.name(),
    version: program.version() ?? "",
    about: program.description(),
    options: help.visibleOptions(program).map(optionFacts),
    commands: commands.map((command) => commandFacts(command, names)),
    exitCodes: exitCodes(),
  };
}

function commandFacts(command: Command, names: readonly string[]): CommandFacts {
  const help = command.createHelp();
  const sections = sectionsOf(afterHelp(command));
  const isHelp = command.name() === "help";
  return {
    name: command.name(),
    about: command.description(),
    usage: command.usage(),
    arguments: command.registeredArguments.map((argument) =>
      argumentFacts(argument, isHelp ? names.filter((name) => name !== "help") : (argument.argChoices ?? [])),
    ),
    options: isHelp ? [] : help.visibleOptions(command).map(optionFacts),
    sections: sections.filter(({ title }) => title !== "Examples"),
    examples: examplesIn(sections.find(({ title }) => title === "Examples")?.lines ?? []),
  };
}

const argumentFacts = (argument: Argument, words: readonly string[]): ArgumentFacts => ({
  name: argument.name(),
  // The argument of the library's own help command has no words.
  about: argumentWords(argument) || `a ${argument.name()}`,
  words,
  isRequired: argument.required,
  isVariadic: argument.variadic,
});

function optionFacts(option: Option): OptionFacts {
  const { words, form } = wordsOf(option);
  return {
    long: option.long ?? option.flags,
    short: option.short,
    value: /[<[]([^>\]]+)[>\]]/u.exec(option.flags)?.[1],
    about: optionWords(option),
    brief: option.description.replace(/ \(default: .*\)$/u, ""),
    words,
    form,
    isRepeatable: option.parseArg === collect,
  };
}

/** What help says after the options. */
function afterHelp(command: Command): string {
  let told = "";
  command.configureOutput({
    writeOut: (text) => {
      told += text;
    },
  });
  command.outputHelp();
  return told.slice(command.helpInformation().length);
}

/** Example lines, each with the lines that go on with it. */
function examplesIn(lines: readonly string[]): string[] {
  return lines
    .join("\n")
    .split(/(?<!\\)\n/u)
    .filter((line) => line.trim() !== "");
}

/** The codes and their meanings from the words of help. */
function exitCodes(): { code: string; about: string }[] {
  const words = EXIT_CODES.replace(/\s+/gu, " ").replace(/^ ?Exit codes: /u, "");
  return words.split(/; (?=\d)/u).map((part) => {
    const [, code = "", about = ""] = /^(\d+) (.*?)\.?$/u.exec(part.trim()) ?? [];
    return { code, about };
  });
}
