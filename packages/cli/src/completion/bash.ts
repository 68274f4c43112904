import type { CommandFacts, OptionFacts, ProgramFacts } from "../manual/facts.js";
import { shellQuoted } from "../shell-words.js";
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
 * Completion for bash, from what is declared. Kept to what bash 3.2 knows, and to nothing but bash itself.
 *
 * @example
 * source <(scantling completion bash)
 */
export function bashScript(program: ProgramFacts): string {
  const names = program.commands.map(({ name }) => name);
  const cases = program.commands.flatMap((command) => optionCases(command));
  return `${headLine(program, "bash")}

_${program.name}_options() {
  case $1 in
    "") echo "${optionWords(program.options)}" ;;
${program.commands.map((command) => `    ${command.name}) echo "${optionWords(command.options)}" ;;`).join("\n")}
  esac
}

# Whether an option of a command takes a value.
_${program.name}_takes() {
  case "$1 $2" in
${program.commands.flatMap(takingCases).join("\n")}
    *) return 1 ;;
  esac
}

# WORD...: those that begin with what is typed, as they have to be typed.
_${program.name}_words() {
  local word typed
  for word in "$@"; do
    case $cur in
      [\\"\\']*) [[ $word == "\${cur:1}"* ]] && COMPREPLY+=("$word") ;;
      *)
        printf -v typed %q "$word"
        [[ $typed == "$cur"* ]] && COMPREPLY+=("$typed")
        ;;
    esac
  done
}

# WORD...: one more of a list parted by commas.
_${program.name}_list() {
  local before="" word
  [[ $cur == *,* ]] && before="\${cur%,*},"
  for word in $(compgen -W "$*" -- "\${cur##*,}"); do COMPREPLY+=("$before$word"); done
  compopt -o nospace 2>/dev/null
}

# KIND: folders, and files of that kind.
_${program.name}_files() {
  local path
  while IFS= read -r path; do
    if [[ -d \${path/#\\~/$HOME} ]]; then
      COMPREPLY+=("$path")
      continue
    fi
    case "$1:$path" in
      any:* | ${KNIFE_ENDINGS.map((ending) => `knife:*${ending}`).join(" | ")}) COMPREPLY+=("$path") ;;
      ${KNIFE_ENDINGS.map((ending) => `shop:*${ending}`).join(" | ")}) ;;
      ${SHOP_ENDINGS.map((ending) => `shop:*${ending}`).join(" | ")}) COMPREPLY+=("$path") ;;
    esac
  done < <(compgen -f -- "$cur")
  compopt -o filenames 2>/dev/null
}

_${program.name}() {
  COMPREPLY=()
  local cur=\${COMP_WORDS[COMP_CWORD]} command="" option="" place=0 index word
  # --format=pdf comes as three words.
  [[ $cur == "=" ]] && cur=""
  for ((index = 1; index < COMP_CWORD; index++)); do
    word=\${COMP_WORDS[index]}
    if [[ $word == -?* ]]; then
      if [[ \${COMP_WORDS[index + 1]} == "=" ]]; then
        index=$((index + 2))
        [[ $index -ge $COMP_CWORD ]] && option=$word
      elif _${program.name}_takes "$command" "$word"; then
        index=$((index + 1))
        [[ $index -eq $COMP_CWORD ]] && option=$word
      fi
    elif [[ -z $command ]]; then
      command=$word
    else
      place=$((place + 1))
    fi
  done

  if [[ -n $option ]]; then
    case "$command $option" in
${cases.join("\n")}
    esac
    return
  fi
  if [[ $cur == -* ]]; then
    _${program.name}_words $(_${program.name}_options "$command")
    return
  fi
  case $command in
    "") _${program.name}_words ${names.join(" ")} ;;
${program.commands.flatMap(argumentCases).join("\n")}
  esac
}

complete -F _${program.name} ${program.name}
`;

  function takingCases(command: CommandFacts): string[] {
    const taking = takingOptions(command);
    return taking.length === 0 ? [] : [`    ${taking.map((each) => `"${each}"`).join(" | ")}) ;;`];
  }

  function optionCases(command: CommandFacts): string[] {
    return command.options.flatMap((option) => {
      const call = callFor(offerForOption(option));
      return call === undefined ? [] : [`      "${command.name} ${option.long}") ${call} ;;`];
    });
  }

  function argumentCases(command: CommandFacts): string[] {
    const places = command.arguments.flatMap((argument, place) => {
      const call = callFor(offerForArgument(argument));
      if (call === undefined) return [];
      return argumentAt(command, command.arguments.length) === argument
        ? [`if [[ $place -ge ${place} ]]; then ${call}; fi`]
        : [`if [[ $place -eq ${place} ]]; then ${call}; fi`];
    });
    return places.length === 0 ? [] : [`    ${command.name}) ${places.join("; ")} ;;`];
  }

  function callFor(offer: Offer | undefined): string | undefined {
    switch (offer?.kind) {
      case "words":
        return `_${program.name}_words ${offer.words.map((word) => wordFor(word, shellQuoted)).join(" ")}`;
      case "list":
        return `_${program.name}_list ${offer.words.join(" ")}`;
      case "files":
        return `_${program.name}_files ${offer.files}`;
      case "folders":
        return `_${program.name}_files folders`;
      default:
        return undefined;
    }
  }
}

const optionWords = (options: readonly OptionFacts[]): string =>
  options.flatMap(({ long, short }) => [...(short === undefined ? [] : [short]), long]).join(" ");
