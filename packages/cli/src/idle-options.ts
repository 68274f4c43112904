import { EXIT } from "./exit-code.js";
import { CommandFailure } from "./failure.js";

/** Options that mean nothing where they stand, by their long names with dashes; those that were not given are undefined. */
export interface IdleOptions {
  readonly given: Readonly<Record<string, unknown>>;
  /** What is wrong with one of them. */
  readonly says: (option: string) => string;
  readonly todo: string;
}

/**
 * Refuses options that would be taken for done and mean nothing.
 *
 * @throws {CommandFailure} exit code 2 for the first that was given.
 */
export function refuseIdle(...all: readonly IdleOptions[]): void {
  for (const { given, says, todo } of all) {
    const idle = Object.keys(given).find((option) => given[option] !== undefined);
    if (idle !== undefined) throw new CommandFailure(EXIT.usage, "not-together", says(idle), todo);
  }
}
