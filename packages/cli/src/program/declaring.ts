import type { Command } from "commander";
import type { ExitCode } from "../exit-code.js";
import type { Io } from "../io/io.js";

/** What a command is declared with: where it is hung up, what it touches the world through, and whom it tells its exit code. */
export interface Declaring {
  readonly program: Command;
  readonly io: Io;
  readonly answered: (code: ExitCode) => void;
}
