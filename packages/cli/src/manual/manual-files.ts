import type { Io } from "../io/io.js";
import { makeProgram } from "../program.js";
import { factsOf } from "./facts.js";
import { manPage } from "./man-page.js";
import { commandPage, indexPage } from "./markdown-page.js";

/** A file of the manual. */
export interface ManualFile {
  /** From the root of the repository. */
  readonly path: string;
  readonly content: string;
}

/** Where the pages of the commands are, from the root of the repository. */
export const PAGES = "docs/commands";

/** A page for each command, a list of them, and the man page, from what the program declares today. No command is run. */
export function manualFiles(io: Io): ManualFile[] {
  const program = factsOf(makeProgram(io, () => undefined));
  return [
    { path: `${PAGES}/README.md`, content: indexPage(program) },
    ...program.commands
      .filter(({ name }) => name !== "help")
      .map((command) => ({
        path: `${PAGES}/${command.name}.md`,
        content: commandPage(command, program),
      })),
    { path: "packages/cli/man/scantling.1", content: manPage(program) },
  ];
}
