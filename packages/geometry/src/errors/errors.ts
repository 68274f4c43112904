import type { Issue } from "./issue.js";

/**
 * What the smith wrote breaks rules; carries every problem found, not only the first.
 *
 * @example
 * new SpecError([{ code: "no-edge", path: "blade.edgeAngle", text: "The blade has no edge." }]).message;
 * // "no-edge at blade.edgeAngle"
 */
export class SpecError extends Error {
  override readonly name = "SpecError";
  readonly issues: readonly Issue[];
  /** Whether because of these something was not looked at yet, so that more may be found once they are mended. */
  readonly hidesMore: boolean;

  constructor(issues: readonly Issue[], hidesMore = false) {
    super(issues.map((issue) => `${issue.code} at ${issue.path || "(whole file)"}`).join("; "));
    this.issues = issues;
    this.hidesMore = hidesMore;
  }
}

/**
 * A valid description that makes geometry which cannot be built or measured.
 *
 * @example
 * new GeometryError("no-area", "the path encloses no area").code; // "no-area"
 */
export class GeometryError extends Error {
  override readonly name = "GeometryError";
  readonly code: string;

  constructor(code: string, message: string, options?: { cause?: unknown }) {
    super(message, options);
    this.code = code;
  }
}

/**
 * Our own mistake: an assumption of the program did not hold.
 *
 * @example
 * new InternalError("assumption does not hold: a law has stations").name; // "InternalError"
 */
export class InternalError extends Error {
  override readonly name = "InternalError";
}

/**
 * States an assumption; throws {@link InternalError} when it does not hold.
 *
 * @example
 * const nodes = [0.5];
 * invariant(nodes.length > 0, "a quadrature rule has nodes");
 */
export function invariant(condition: boolean, assumption: string): asserts condition {
  if (!condition) throw new InternalError(`assumption does not hold: ${assumption}`);
}
