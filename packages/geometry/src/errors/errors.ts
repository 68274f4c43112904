import type { Issue } from "./issue.js";

/** What the smith wrote breaks rules; carries every problem found, not only the first. */
export class SpecError extends Error {
  override readonly name = "SpecError";
  readonly issues: readonly Issue[];

  constructor(issues: readonly Issue[]) {
    super(issues.map((issue) => `${issue.code} at ${issue.path || "(whole file)"}`).join("; "));
    this.issues = issues;
  }
}

/** A valid description that makes geometry which cannot be built or measured. */
export class GeometryError extends Error {
  override readonly name = "GeometryError";
  readonly code: string;

  constructor(code: string, message: string, options?: { cause?: unknown }) {
    super(message, options);
    this.code = code;
  }
}

/** Our own mistake: an assumption of the program did not hold. */
export class InternalError extends Error {
  override readonly name = "InternalError";
}

/**
 * States an assumption; throws {@link InternalError} when it does not hold.
 *
 * @example
 * invariant(nodes.length > 0, "a quadrature rule has nodes");
 */
export function invariant(condition: boolean, assumption: string): asserts condition {
  if (!condition) throw new InternalError(`assumption does not hold: ${assumption}`);
}
