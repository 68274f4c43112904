import type { ExitCode } from "./exit-code.js";
import type { Problem } from "./file/problem.js";

/** The command cannot do what was asked, and says so: an expected outcome with an exit code, not a bug of ours. */
export class CommandFailure extends Error {
  override readonly name = "CommandFailure";
  readonly exitCode: ExitCode;
  /** Stable kebab-case name. */
  readonly code: string;
  /** What the person can do next. */
  readonly todo: string;
  readonly details: FailureDetails;

  constructor(exitCode: ExitCode, code: string, message: string, todo: string, details: FailureDetails = {}) {
    super(message);
    this.exitCode = exitCode;
    this.code = code;
    this.todo = todo;
    this.details = details;
  }
}

export interface FailureDetails {
  /** The file that it is about, as it was given. */
  readonly file?: string;
  readonly problems?: readonly Problem[];
}
