import { Argument } from "commander";
import { type CompletionOptions, SHELLS, type Shell } from "../options.js";
import type { Declaring } from "./declaring.js";
import { examples, plain } from "./shared-options.js";

export function declareCompletion({ program, io, answered }: Declaring): void {
  plain(
    program.command("completion").addArgument(new Argument("<SHELL>", "the shell").choices(SHELLS)),
    "a script that lets the shell complete commands, options, words and file names",
  )
    .addHelpText("after", `${INSTALL}\n${examples("completion", ...EXAMPLES)}`)
    .action(async (shell: Shell, options: CompletionOptions) => {
      const { completion } = await import("../commands/completion.js");
      answered(await completion(io, shell, program, options));
    });
}

const INSTALL = `
To install:
  bash  add to ~/.bashrc: source <(scantling completion bash)
  zsh   add to ~/.zshrc, below compinit: source <(scantling completion zsh)
  fish  scantling completion fish --out ~/.config/fish/completions
  Then open a new terminal, and again after an update. It works for
  scantling by its name and by a path that ends in it. For another name:
  bash  complete -F _scantling NAME
  zsh   compdef _scantling NAME
  fish  complete -c NAME -w scantling`;

const EXAMPLES = ["completion bash", "completion zsh --out ~/.zfunc", "completion fish | source"];
