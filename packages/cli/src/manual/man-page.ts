import { wrap } from "../report/layout.js";
import type { CommandFacts, OptionFacts, ProgramFacts } from "./facts.js";
import { ENVIRONMENT, FILES, MANNERS } from "./program-words.js";

/** So narrow that 80 bytes hold a line with its hyphens escaped. */
const SOURCE_WIDTH = 68;

/** The man page, in the language of `man(7)`: read by groff and by mandoc alike. */
export function manPage(program: ProgramFacts): string {
  const { name, commands } = program;
  const lines = [
    `.\\" Written by npm run docs from what the program declares: change that instead.`,
    `.TH ${name.toUpperCase()} 1 "" "${name} ${program.version}"`,
    ".SH NAME",
    ...prose(`${name} - ${program.about.replace(/\.$/u, "").replace(/^For/u, "for")}`),
    ".SH SYNOPSIS",
    ...commands.flatMap((command, index) => [
      ...(index === 0 ? [] : [".br"]),
      `${bold(`${name} ${command.name}`)} ${escaped(command.usage)}`,
    ]),
    ".SH DESCRIPTION",
    ...prose(MANNERS),
    ".SH OPTIONS",
    ...program.options.flatMap(optionLines),
    ".SH COMMANDS",
    ...commands.flatMap((command) => commandLines(command, name)),
    ".SH ENVIRONMENT",
    ...ENVIRONMENT.flatMap(([variable, about]) => tagged(bold(variable), about)),
    ".SH FILES",
    ...FILES.flatMap(([file, about]) => tagged(italic(file), about)),
    ".SH EXIT STATUS",
    ...program.exitCodes.flatMap(({ code, about }) => tagged(bold(code), about)),
  ];
  return `${lines.join("\n")}\n`;
}

function commandLines(command: CommandFacts, name: string): string[] {
  return [
    `.SS ${name} ${command.name}`,
    ...prose(`${command.about.charAt(0).toUpperCase()}${command.about.slice(1)}.`),
    ...command.arguments.flatMap((argument) =>
      tagged(italic(argument.name), `${argument.about}${argument.isRequired ? "" : "; may be left out"}`),
    ),
    ...command.options.filter(({ long }) => long !== "--help").flatMap(optionLines),
    ...command.sections.flatMap(({ title, lines }) => [".PP", escaped(`${title}:`), ...asTyped(lines)]),
    ...(command.examples.length === 0 ? [] : [".PP", "Examples:", ...asTyped(command.examples)]),
  ];
}

const optionLines = ({ long, short, value, about }: OptionFacts): string[] =>
  tagged(
    `${[...(short === undefined ? [] : [short]), long].map(bold).join(", ")}${value === undefined ? "" : ` ${italic(value)}`}`,
    about,
  );

const tagged = (tag: string, about: string): string[] => [".TP", tag, ...prose(about)];

/** Text over several lines of the source: long ones are bad style to those who read it. */
const prose = (text: string): string[] => wrap(text, SOURCE_WIDTH).map(escaped);

/** Lines as they stand, indented. */
const asTyped = (lines: readonly string[]): string[] => [
  ".RS 4",
  ".nf",
  ...lines.flatMap((line) => line.split("\n")).map((line) => escaped(line)),
  ".fi",
  ".RE",
];

const bold = (text: string): string => `\\fB${escaped(text)}\\fR`;
const italic = (text: string): string => `\\fI${escaped(text)}\\fR`;

/** Backslashes, hyphens that are typed, quotes, and characters that begin a request at the start of a line. */
function escaped(text: string): string {
  return text
    .replaceAll("\\", "\\e")
    .replaceAll("-", "\\-")
    .replaceAll("`", "\\(ga")
    .replaceAll("^", "\\(ha")
    .replaceAll("~", "\\(ti")
    .replace(/^(?=[.'])/u, "\\&");
}
