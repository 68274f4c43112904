import { GeometryError } from "@scantling/geometry";
import { EXIT } from "../exit-code.js";
import { CommandFailure } from "../failure.js";

/**
 * Lays out, and answers what does not go on the paper with what to do.
 *
 * @param advice - What to do, by the code of the error.
 * @throws {CommandFailure} exit code 2.
 */
export function inPaperTerms<T>(layOut: () => T, advice: (code: string) => string): T {
  try {
    return layOut();
  } catch (error) {
    if (!(error instanceof GeometryError)) throw error;
    throw new CommandFailure(EXIT.usage, error.code, error.message, advice(error.code));
  }
}
