import type { CommandFailure } from "../failure.js";
import { formatProblems } from "../file/problem.js";
import { withLegend } from "./documents.js";
import { REPORT_WIDTH, wrap } from "./layout.js";

/** A failure for people: what is wrong, each problem with its place, and what to do next. */
export function failureText(failure: CommandFailure): string {
  const { problems = [] } = failure.details;
  const lines = [
    ...wrap(`scantling: ${failure.message}`),
    ...(problems.length > 0 ? [formatProblems(problems)] : []),
    ...wrap(failure.todo, REPORT_WIDTH - 2).map((line) => `  ${line}`),
  ];
  return `${withLegend(lines).join("\n")}\n`;
}

/**
 * A failure for programs. With `--json` standard output always carries exactly one document: the report, or this.
 * `code` and the codes of the problems are stable; the texts are for people and may change.
 *
 * @param also - What is wrong besides.
 */
export function failureJson(failure: CommandFailure, also: readonly CommandFailure[] = []): unknown {
  const { file, problems = [] } = failure.details;
  return {
    schema: "scantling/error/1",
    exitCode: failure.exitCode,
    code: failure.code,
    message: failure.message,
    todo: failure.todo,
    file: file ?? null,
    problems: problems.map((problem) => ({
      code: problem.code,
      file: problem.file,
      path: problem.path,
      line: problem.line ?? null,
      column: problem.column ?? null,
      message: problem.message,
      hint: problem.hint ?? null,
    })),
    also: also.map(({ code, message, todo }) => ({ code, message, todo })),
  };
}
