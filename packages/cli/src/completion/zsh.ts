import type { CommandFacts, OptionFacts, ProgramFacts } from "../manual/facts.js";
import { shellQuoted } from "../shell-words.js";
import {
  headLine,
  KNIFE_ENDINGS,
  type Offer,
  offerForArgument,
  offerForOption,
  SHOP_ENDINGS,
} from "./answers.js";

/**
 * Completion for zsh, from what is declared: for a folder of `$fpath`, or to be sourced after `compinit`.
 *
 * @example
 * source <(scantling completion zsh)
 */
export function zshScript(program: ProgramFacts): string {
  const { name, commands } = program;
  return `#compdef ${name}
${headLine(program, "zsh")}

_${name}() {
  local curcontext=$curcontext state line
  local -A opt_args
  local -a commands
  commands=(
${commands.map((command) => `    ${shellQuoted(`${command.name}:${escaped(command.about)}`)}`).join("\n")}
  )
  _arguments -C -s -S \\
${program.options.map((option) => `    ${optionSpec(option)} \\`).join("\n")}
    '1:command:->command' \\
    '*::argument:->argument' && return

  case $state in
    command) _describe -t commands command commands ;;
    argument)
      case $line[1] in
${commands.map(commandCase).join("\n")}
      esac
      ;;
  esac
}

if [[ $funcstack[1] == _${name} ]]; then
  _${name} "$@"
else
  compdef _${name} ${name}
fi
`;
}

function commandCase(command: CommandFacts): string {
  const specs = [
    ...command.options.map(optionSpec),
    ...command.arguments.map((argument, index) => {
      const place = argument.isVariadic ? "*" : String(index + 1);
      return shellQuoted(`${place}:${escaped(argument.name)}:${actionFor(offerForArgument(argument))}`);
    }),
  ];
  const lines = specs.map((spec) => `            ${spec}`).join(" \\\n");
  return `        ${command.name})
          _arguments -s -S \\
${lines}
          ;;`;
}

function optionSpec(option: OptionFacts): string {
  const { long, short, value, isRepeatable } = option;
  const about = `[${escaped(option.brief)}]`;
  if (short !== undefined) return `'(- *)'{${short},${long}}${shellQuoted(about)}`;
  const often = isRepeatable ? "*" : "";
  const offer = offerForOption(option);
  if (offer === undefined || value === undefined) return shellQuoted(`${often}${long}${about}`);
  return shellQuoted(`${often}${long}=${about}:${escaped(value)}:${actionFor(offer)}`);
}

function actionFor(offer: Offer): string {
  switch (offer.kind) {
    case "words":
      return `(${offer.words.map(blanksEscaped).join(" ")})`;
    case "list":
      return `_values -s , word ${offer.words.map(blanksEscaped).join(" ")}`;
    case "folders":
      return "_files -/";
    case "files":
      return { knife: globbed(KNIFE_ENDINGS), shop: globbed(SHOP_ENDINGS, "~*.knife.*"), any: "_files" }[
        offer.files
      ];
    case "nothing":
      return " ";
  }
}

/** Files with one of some endings, without those of a further pattern. */
const globbed = (endings: readonly string[], without = ""): string =>
  `_files -g "*(${endings.join("|")})${without}"`;

/** For a place where brackets and colons part things. */
const escaped = (text: string): string => text.replace(/[\\:[\]]/gu, "\\$&");

const blanksEscaped = (word: string): string => word.replace(/[\s\\()'"]/gu, "\\$&");
