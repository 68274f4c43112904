import { spawnSync } from "node:child_process";
import { existsSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { ROOT } from "../unit/repository.js";

export type Shell = "bash" | "zsh" | "fish";

/** What a shell offers at the end of a line that is being typed in a folder, sorted. */
export function offered(shell: Shell, folder: string, line: string): string[] {
  const lines = { bash: byBash, zsh: byZsh, fish: byFish }[shell](folder, scriptFor(shell, folder), line);
  // Files are offered with a slash behind folders by some, with blanks behind backslashes by others.
  const words = lines
    .map((word) => word.replaceAll("\\ ", " ").replace(/\/$/u, ""))
    .filter((word) => word !== "");
  return [...new Set(words)].sort();
}

/** The script as the command prints it today. */
function scriptFor(shell: Shell, folder: string): string {
  const file = join(folder, `.words.${shell}`);
  if (!existsSync(file)) {
    const bin = join(ROOT, "packages", "cli", "dist", "bin.js");
    writeFileSync(file, run(process.execPath, [bin, "completion", shell], folder));
  }
  return file;
}

function run(program: string, args: readonly string[], cwd: string): string {
  const result = spawnSync(program, args, { cwd, encoding: "utf8", timeout: 60_000 });
  if (result.error !== undefined) {
    throw new Error(`${program} cannot be run; on Debian: apt-get install ${program}`, {
      cause: result.error,
    });
  }
  if (result.stderr !== "") throw new Error(`${program}: ${result.stderr}`);
  return result.stdout;
}

/** As bash calls it: the words of the line, with equal signs as words of their own. */
function byBash(folder: string, script: string, line: string): string[] {
  const words = line.split(" ").flatMap((word) => word.split(/(=)/u).filter((part) => part !== ""));
  if (line.endsWith(" ")) words.push("");
  const call = `source "$1"; shift; COMP_WORDS=("$@"); COMP_CWORD=$(($# - 1)); _scantling; printf '%s\\n' "\${COMPREPLY[@]}"`;
  return run("bash", ["--norc", "-c", call, "bash", script, ...words], folder).split("\n");
}

function byFish(folder: string, script: string, line: string): string[] {
  const call = `source $argv[1]; complete -C $argv[2]`;
  return run("fish", ["--no-config", "-c", call, script, line], folder)
    .split("\n")
    .map((each) => (each.split("\t")[0] ?? "").replace(/^--[\w-]+=/u, ""));
}

/** On a terminal of its own: zsh completes nowhere else. What it would show is caught where it gathers it. */
function byZsh(folder: string, script: string, line: string): string[] {
  const caught = join(folder, ".caught");
  for (const name of [caught, `${caught}.end`]) rmSync(name, { force: true });
  const catching = join(folder, ".catching.zsh");
  writeFileSync(
    catching,
    `compadd() {
  if [[ \${@[1,(i)(-|--)]} == *-(O|A|D)\\ * ]]; then builtin compadd "$@"; return $?; fi
  local -a found
  builtin compadd -A found "$@"
  (( $#found )) && print -rl -- $found >> ${caught}
  builtin compadd "$@"
}
capture() { zle complete-word; print end > ${caught}.end; zle send-break }
zle -N capture
bindkey '^I' capture
`,
  );
  const driving = `
zmodload zsh/zpty
zpty shell zsh -f -i
zpty -w shell "PS1=; setopt nobeep; cd ${folder}; autoload -Uz compinit; compinit -u -D; source ${script}; source ${catching}; print rea''dy"
zpty -r -m shell seen "*ready*"
zpty -w -n shell "$1"$'\\t'
for turn in {1..600}; do [[ -e ${caught}.end ]] && break; sleep 0.05; done
zpty -d shell`;
  run("zsh", ["-f", "-c", driving, "zsh", line], folder);
  if (!existsSync(`${caught}.end`)) throw new Error(`zsh did not complete "${line}"`);
  return existsSync(caught) ? readFileSync(caught, "utf8").split("\n") : [];
}
