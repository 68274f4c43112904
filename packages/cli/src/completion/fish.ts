import type { CommandFacts, OptionFacts, ProgramFacts } from "../manual/facts.js";
import {
  argumentAt,
  headLine,
  KNIFE_ENDINGS,
  type Offer,
  offerForArgument,
  offerForOption,
  SHOP_ENDINGS,
  takingOptions,
  wordFor,
} from "./answers.js";

/**
 * Completion for fish 3 and later, from what is declared.
 *
 * @example
 * scantling completion fish | source
 */
export function fishScript(program: ProgramFacts): string {
  const { name } = program;
  return `${headLine(program, "fish")}

# COMMAND [FROM [TO]]: whether that command is typed, and its arguments from one place to another; "" for none yet.
function __${name}_at
    set -l words (commandline -opc)
    set -l command ""
    set -l place 0
    set -l skip 0
    for word in $words[2..-1]
        if test $skip -eq 1
            set skip 0
        else if string match -q -- '-?*' $word
            contains -- "$command $word" ${program.commands.flatMap(takingOptions).map(quoted).join(" ")}; and set skip 1
        else if test -z "$command"
            set command $word
        else
            set place (math $place + 1)
        end
    end
    test "$command" = "$argv[1]"; or return 1
    set -q argv[2]; or return 0
    test $place -ge $argv[2]; or return 1
    set -q argv[3]; or return 0
    test $place -le $argv[3]
end

# KIND: folders, and files of that kind.
function __${name}_files
    for offered in (__fish_complete_path (commandline -ct | string replace -r '^--[^=]*=' ''))
        set -l path (string split -m 1 \\t -- $offered)[1]
        switch "$argv[1]:$path"
            case '*/' ${KNIFE_ENDINGS.map((ending) => `'knife:*${ending}'`).join(" ")} 'any:*'
                echo $path
            case ${KNIFE_ENDINGS.map((ending) => `'shop:*${ending}'`).join(" ")}
            case ${SHOP_ENDINGS.map((ending) => `'shop:*${ending}'`).join(" ")}
                echo $path
        end
    end
end

# WORD...: one more of a list parted by commas.
function __${name}_list
    set -l typed (commandline -ct | string replace -r '^--[^=]*=' '')
    set -l before (string replace -r '[^,]*$' '' -- $typed)
    for word in $argv
        echo $before$word
    end
end

complete -c ${name} -f
${program.options.map((option) => optionLine("", option)).join("\n")}
${program.commands.map((command) => `complete -c ${name} -n '__${name}_at ""' -a ${command.name} -d ${quoted(command.about)}`).join("\n")}
${program.commands.flatMap(commandLines).join("\n")}
`;

  function commandLines(command: CommandFacts): string[] {
    return [
      ...command.options.map((option) => optionLine(command.name, option)),
      ...command.arguments.flatMap((argument, place) => {
        const offered = argumentsFor(offerForArgument(argument), name);
        if (offered === undefined) return [];
        const places =
          argumentAt(command, command.arguments.length) === argument ? place : `${place} ${place}`;
        return [`complete -c ${name} -n '__${name}_at ${command.name} ${places}' -a ${quoted(offered)}`];
      }),
    ];
  }

  function optionLine(command: string, option: OptionFacts): string {
    const short = option.short === undefined ? "" : ` -s ${option.short.slice(1)}`;
    const offer = offerForOption(option);
    const offered = offer && argumentsFor(offer, name);
    const takes = offer === undefined ? "" : ` -x${offered === undefined ? "" : ` -a ${quoted(offered)}`}`;
    const at = command === "" ? '""' : command;
    return `complete -c ${name} -n '__${name}_at ${at}'${short} -l ${option.long.slice(2)}${takes} -d ${quoted(option.brief)}`;
  }
}

function argumentsFor(offer: Offer, name: string): string | undefined {
  switch (offer.kind) {
    case "words":
      return offer.words.map((word) => wordFor(word, quoted)).join(" ");
    case "list":
      return `(__${name}_list ${offer.words.map((word) => wordFor(word, quoted)).join(" ")})`;
    case "folders":
      return `(__fish_complete_directories)`;
    case "files":
      return `(__${name}_files ${offer.files})`;
    case "nothing":
      return undefined;
  }
}

const quoted = (text: string): string => `'${text.replaceAll("\\", "\\\\").replaceAll("'", "\\'")}'`;
