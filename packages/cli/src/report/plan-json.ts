/** Everything of one plan, for programs: `scantling/plan/1`; each part is the document of its own command. */
export interface PlanDocument {
  readonly weigh: unknown;
  readonly stock: unknown;
  readonly check: unknown;
  readonly setup: unknown;
  readonly pattern: unknown;
  /** Paths of all files written. */
  readonly files: readonly string[];
}

export function planJson({ weigh, stock, check, setup, pattern, files }: PlanDocument): unknown {
  return { schema: "scantling/plan/1", weigh, stock, check, setup, pattern, files };
}
