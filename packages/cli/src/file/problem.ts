/** A place in a file, both from 1. */
export interface Position {
  readonly line: number;
  readonly column: number;
}

/** One thing that is wrong with a file, where it stands, and what to do about it. */
export interface Problem {
  /** Stable kebab-case name of the rule. */
  readonly code: string;
  /** The file as it was named by whoever gave it. */
  readonly file: string;
  /** In the file's own terms, for example `tang.holes[1].at`; empty for the whole file. */
  readonly path: string;
  /** From 1; undefined where the problem has no one place. */
  readonly line: number | undefined;
  readonly column: number | undefined;
  /** A short sentence, with the path in it. */
  readonly message: string;
  readonly hint?: string;
}

/** The file cannot be used as it is; carries every problem found, in the order of the file. */
export class FileError extends Error {
  override readonly name = "FileError";
  readonly fileName: string;
  readonly problems: readonly Problem[];
  /** What could not be looked at because of these problems; undefined where that is nothing. */
  readonly notReached: string | undefined;

  constructor(fileName: string, problems: readonly Problem[], notReached?: string) {
    super(problems.map((problem) => `${problem.code} at ${problem.path || "(whole file)"}`).join("; "));
    this.fileName = fileName;
    this.problems = [...problems].sort(inFileOrder);
    this.notReached = notReached;
  }
}

function inFileOrder(a: Problem, b: Problem): number {
  return (a.line ?? 0) - (b.line ?? 0) || (a.column ?? 0) - (b.column ?? 0);
}

const WIDTH = 80;
const MOST_SHOWN = 50;

/**
 * Problems as text for a terminal, one paragraph each, at most 80 columns wide, without colours.
 *
 * @example
 * formatProblems(problems);
 * // knife.yaml:14:5  blade.bevel.heigth is not a key here; did you mean height?
 */
export function formatProblems(problems: readonly Problem[]): string {
  const shown = problems.slice(0, MOST_SHOWN).flatMap((problem) => {
    const place = problem.line === undefined ? "" : `:${problem.line}:${problem.column ?? 1}`;
    const lines = wrap(`${problem.file}${place}  ${problem.message}`, "    ");
    return problem.hint === undefined ? lines : [...lines, ...wrap(`    ${problem.hint}`, "    ")];
  });
  const rest = problems.length - MOST_SHOWN;
  return [...shown, ...(rest > 0 ? [`and ${rest} more`] : [])].join("\n");
}

/** Breaks a line at spaces; following lines are indented. A word longer than a line is cut. */
function wrap(text: string, indent: string): string[] {
  const lines: string[] = [];
  let rest = text;
  while (rest.length > WIDTH) {
    const space = rest.lastIndexOf(" ", WIDTH);
    const usable = rest.slice(0, Math.max(space, 0)).trim() !== "" && space > indent.length;
    const cut = usable ? space : WIDTH;
    lines.push(rest.slice(0, cut).trimEnd());
    rest = `${indent}${rest.slice(cut).trimStart()}`;
  }
  return [...lines, rest];
}

/** Text from a file inside a message: short, and without characters that could steer a terminal. */
export function showText(text: string, longest = 40): string {
  const visible = text.replace(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/gu, "\uFFFD");
  return visible.length > longest ? `${visible.slice(0, longest - 1)}…` : visible;
}
