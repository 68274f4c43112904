import type { Command } from "commander";
import { bashScript } from "../completion/bash.js";
import { fishScript } from "../completion/fish.js";
import { zshScript } from "../completion/zsh.js";
import { writeOutput } from "../deliver.js";
import { EXIT, type ExitCode } from "../exit-code.js";
import type { Io } from "../io/io.js";
import { factsOf, type ProgramFacts } from "../manual/facts.js";
import type { CompletionOptions, Shell } from "../options.js";
import { jsonText } from "../report/documents.js";

const SCRIPTS: Readonly<Record<Shell, (program: ProgramFacts) => string>> = {
  bash: bashScript,
  zsh: zshScript,
  fish: fishScript,
};

/** Names under which each shell looks for it in its own folder. */
const FILES: Readonly<Record<Shell, string>> = {
  bash: "scantling",
  zsh: "_scantling",
  fish: "scantling.fish",
};

/** `scantling completion SHELL`: what makes a shell complete the commands and options that this program declares. */
export async function completion(
  io: Io,
  shell: Shell,
  program: Command,
  options: CompletionOptions,
): Promise<ExitCode> {
  const script = SCRIPTS[shell](factsOf(program));
  const [file] =
    options.out === undefined
      ? []
      : await writeOutput(io, options.out, [{ name: FILES[shell], content: script }], options);
  if (file !== undefined) io.stderr.write(`Wrote ${file}\n`);
  if (options.json) {
    io.stdout.write(jsonText({ schema: "scantling/completion/1", shell, file: file ?? null, script }));
  } else if (file === undefined) {
    io.stdout.write(script);
  }
  return EXIT.done;
}
