import { wrap } from "../report/layout.js";
import type { ArgumentFacts, CommandFacts, OptionFacts, ProgramFacts } from "./facts.js";
import { FILES, MANNERS } from "./program-words.js";

/** Lines of prose in the repository are no longer. */
const WIDTH = 120;

/** The page of one command, for `docs/commands`. */
export function commandPage(command: CommandFacts, program: ProgramFacts): string {
  return page([
    `# ${program.name} ${command.name}`,
    paragraph(sentence(command.about)),
    ...fence("text", [`${program.name} ${command.name} ${command.usage}`]),
    ...table("Argument", command.arguments.map(argumentRow)),
    ...table("Option", command.options.map(optionRow)),
    ...command.sections.flatMap(({ title, lines }) => [`## ${title}`, ...fence("text", lines)]),
    ...(command.examples.length === 0 ? [] : ["## Examples", ...fence("sh", command.examples)]),
    "## Exit codes",
    ...table(
      "Code",
      program.exitCodes.map(({ code, about }) => [code, about] as const),
    ),
    "## Files",
    ...table(
      "File",
      FILES.map(([name, about]) => [`\`${name}\``, about] as const),
    ),
    "[All commands](README.md)",
  ]);
}

/** The list of all commands. */
export function indexPage(program: ProgramFacts): string {
  return page([
    "# Commands",
    paragraph(
      "These pages are written by `npm run docs` from what the program declares, as its help and the man page `packages/cli/man/scantling.1` are. At hand: `scantling help COMMAND`, and `man packages/cli/man/scantling.1`.",
    ),
    ...table(
      "Command",
      program.commands
        .filter(({ name }) => name !== "help")
        .map(({ name, about }) => [`[${program.name} ${name}](${name}.md)`, about] as const),
    ),
    paragraph(MANNERS),
  ]);
}

const argumentRow = ({ name, about, isRequired }: ArgumentFacts): readonly [string, string] => [
  `\`${name}\``,
  `${about}${isRequired ? "" : "; may be left out"}`,
];

const optionRow = ({ long, short, value, about }: OptionFacts): readonly [string, string] => [
  `\`${[...(short === undefined ? [] : [short]), long].join(", ")}${value === undefined ? "" : ` ${value}`}\``,
  about,
];

/** Blocks parted by a blank line. */
const page = (blocks: readonly string[]): string => `${blocks.join("\n\n")}\n`;

const paragraph = (text: string): string => wrap(text, WIDTH).join("\n");

const fence = (language: string, lines: readonly string[]): string[] =>
  lines.length === 0 ? [] : [[`\`\`\`${language}`, ...lines, "```"].join("\n")];

function table(head: string, rows: readonly (readonly [string, string])[]): string[] {
  if (rows.length === 0) return [];
  const lines = rows.map(([first, second]) => `| ${cell(first)} | ${cell(second)} |`);
  return [[`| ${head} | |`, "|---|---|", ...lines].join("\n")];
}

/** Bars would part cells, angle brackets would be taken for markup. */
const cell = (text: string): string => text.replaceAll("|", "\\|").replace(/<(?=\w)/gu, "&lt;");

const sentence = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
