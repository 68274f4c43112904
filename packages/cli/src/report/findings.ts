import type { Finding, QuantityValue, Severity } from "@scantling/geometry";
import { describeIssue, radiansToDegrees } from "@scantling/geometry/units";
import { acceptedReason } from "../accepted.js";
import { namesIn, placeFinding } from "../finding-place.js";
import type { Job } from "../load.js";
import { REPORT_WIDTH, wrap } from "./layout.js";

export const SEVERITY_WORDS: Readonly<Record<Severity, string>> = {
  stop: "STOP",
  warn: "warning",
  note: "note",
};
const ORDER: readonly Severity[] = ["stop", "warn", "note"];

/** What stops first, notes after that, what the knife file accepts last; within a severity as they were found. */
export function bySeverity(findings: readonly Finding[]): Finding[] {
  const open = ORDER.flatMap((severity) =>
    findings.filter((finding) => finding.severity === severity && !isAccepted(finding)),
  );
  return [...open, ...findings.filter(isAccepted)];
}

const isAccepted = ({ accepted }: Finding): boolean => accepted !== undefined;

/** Whether a finding stops the order: nobody has taken its risk. */
export function isStop(finding: Finding): boolean {
  return finding.severity === "stop" && !isAccepted(finding);
}

/**
 * How many of each kind there are, gravest first, and where they are told: for reports that do not list them. Nothing
 * where there are none.
 */
export function findingCounts(findings: readonly Finding[]): string[] {
  const counts = ORDER.flatMap((severity) => {
    const count = findings.filter((finding) => finding.severity === severity && !isAccepted(finding)).length;
    return count === 0
      ? []
      : [`${count} ${SEVERITY_WORDS[severity]}${count > 1 && severity !== "stop" ? "s" : ""}`];
  });
  const accepted = findings.filter(isAccepted).length;
  const all = [...counts, ...(accepted === 0 ? [] : [`${accepted} accepted`])];
  return all.length === 0 ? [] : [`${all.join(", ")}: scantling check FILE`];
}

/** A finding in words: how grave, what, where, and what to do. */
export function findingText(finding: Finding, job: Job): string {
  const { name, position } = placeFinding(finding, job);
  const stands = position === undefined ? "" : `${position.file}:${position.line}:${position.column}`;
  const place = [name, stands].filter((part) => part !== "").join(", ");
  const reason = acceptedReason(finding, job);
  const text = namesIn(describeIssue(finding, job.units), job);
  return `${reason === undefined ? "" : "accepted "}${SEVERITY_WORDS[finding.severity]}: ${text}${place === "" ? "" : ` (${place})`}${reason === undefined ? "" : ` Accepted: ${reason.replace(/\.$/u, "")}.`}`;
}

/** The first sentence of a finding. */
export const firstSentence = (finding: Finding, job: Job): string => sentencesOf(finding, job)[0] ?? "";

/** The first two: what is wrong, and then what to do about it, where anything can be done. */
export const firstTwoSentences = (finding: Finding, job: Job): string =>
  sentencesOf(finding, job).slice(0, 2).join(" ");

const sentencesOf = (finding: Finding, job: Job): string[] =>
  namesIn(describeIssue(finding, job.units), job).split(/(?<=[.?!]) (?=\p{Lu})/u);

/** How grave and the first sentence on one line; what does not fit on it is left to where all is told. */
export function findingHeadline(finding: Finding, job: Job): string {
  const [line = "", ...more] = wrap(
    `${SEVERITY_WORDS[finding.severity]}: ${firstSentence(finding, job)}`,
    REPORT_WIDTH - MORE.length,
  );
  return more.length === 0 ? line : `${line}${MORE}`;
}

const MORE = " …";

/** The same as a paragraph; with `basis`, where its limit comes from. */
export function findingLines(finding: Finding, job: Job, options: { basis: boolean }): string[] {
  const basis = options.basis ? ` Limit: ${finding.basis}.` : "";
  return wrap(findingText(finding, job) + basis, undefined, "  ");
}

/** A finding for programs; the message is in mm and g, its numbers stand in `values` with their units in the keys. */
export function findingJson(finding: Finding, job: Job): unknown {
  const { position } = placeFinding(finding, job);
  const accepted = acceptedReason(finding, job);
  return {
    severity: finding.severity,
    code: finding.code,
    path: finding.path,
    file: position?.file ?? null,
    line: position?.line ?? null,
    column: position?.column ?? null,
    message: namesIn(describeIssue(finding, "mm"), job),
    basis: finding.basis,
    ...(accepted === undefined ? {} : { accepted }),
    values: Object.fromEntries(
      Object.entries(finding.values ?? {})
        // JSON has no infinity: a number that there is not is left out.
        .filter(([, value]) => typeof value === "string" || Number.isFinite(value.value))
        .map(([name, value]) => (typeof value === "string" ? [name, value] : namedValue(name, value))),
    ),
  };
}

const SUFFIXES: Readonly<Record<QuantityValue["quantity"], string>> = {
  length: "Mm",
  angle: "Deg",
  mass: "G",
  temperature: "C",
  "temperature difference": "K",
  time: "Hours",
  share: "Share",
  count: "",
  area: "Mm2",
  volume: "Mm3",
};

const SECONDS_PER_HOUR = 3600;

function inNamedUnit(quantity: QuantityValue["quantity"], value: number): number {
  if (quantity === "angle") return radiansToDegrees(value);
  return quantity === "time" ? value / SECONDS_PER_HOUR : value;
}

/** The name with its unit, and the value in that unit: `["wallMm", 3.2]`. */
function namedValue(name: string, { quantity, value }: QuantityValue): [string, number] {
  return [`${name}${SUFFIXES[quantity]}`, inNamedUnit(quantity, value)];
}
