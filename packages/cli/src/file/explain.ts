import { editDistance, nearestWord } from "@scantling/geometry/units";
import type { z } from "zod";
import type { JsonSchema } from "./json-schema.js";
import { groupsOf, keysAt } from "./known-keys.js";
import { isKeyNotYet } from "./not-yet.js";
import { type FilePath, formatPath, parsePath, pathWords, valueAt } from "./path.js";
import { type Problem, showText } from "./problem.js";
import type { FileTree } from "./yaml-tree.js";

type Issue = z.core.$ZodIssue;

/** What is needed to explain a finding of the schema to someone who wrote the file by hand. */
export interface ExplainContext {
  readonly tree: FileTree;
  readonly schema: JsonSchema;
  /** Keys of the other kind of file, and what that is called. */
  readonly other: { readonly schema: JsonSchema; readonly called: string };
}

/** More unknown keys than this in one group are one mistake: the wrong file. */
const MOST_KEYS = 20;

/** A key that stands under a wrong name, and where it was meant to stand. */
export interface Rename {
  readonly from: FilePath;
  readonly to: FilePath;
}

export interface Explained {
  readonly problems: readonly Problem[];
  /** Wrong keys of which only one thing can be meant. */
  readonly renames: readonly Rename[];
}

/** Findings of the schema as problems of the file, each with its place. */
export function explainIssues(issues: readonly Issue[], context: ExplainContext): Explained {
  const { leftOut } = context.tree;
  const flat = issues.flatMap((issue) => flatten(issue, [], context));
  const drafts = flat.flatMap((issue) => explain(issue, context));
  const guesses = new Set(drafts.flatMap(({ guess }) => guess ?? []));
  const wrongKeys = new Set(
    drafts.flatMap(({ problem, group }) => (problem.code === "unknown-key" ? (group ?? []) : [])),
  );
  const kept = drafts.filter(({ problem, missing, path }) => {
    // A condition under a wrong key is not missing either.
    if (problem.code === "one-condition" && wrongKeys.has(formatPath(path))) return false;
    // One mistake, one problem: a key that is there under a wrong name or could not be read is not missing too.
    if (missing && (guesses.has(formatPath(path)) || guesses.has(formatPath(path.slice(0, -1)))))
      return false;
    return !leftOut.some((out) => out.every((step, index) => path[index] === step));
  });
  const renames = kept.flatMap(({ problem, path, guess = [] }) => {
    const [only] = guess;
    const certain = problem.code === "unknown-key" && guess.length === 1 && only !== undefined;
    return certain ? [{ from: path, to: parsePath(only) }] : [];
  });
  return { problems: kept.map(({ problem }) => problem), renames };
}

interface FlatIssue {
  readonly issue: Issue;
  readonly path: FilePath;
}

/** Replaces a finding about alternatives by those about the alternative that was most likely meant. */
function flatten(issue: Issue, base: FilePath, context: ExplainContext): FlatIssue[] {
  const path = [...base, ...issue.path.map((step) => (typeof step === "number" ? step : String(step)))];
  if (issue.code !== "invalid_union") return [{ issue, path }];
  const value = valueAt(context.tree.data, path);
  if (value === undefined || value === null) return [{ issue, path }];
  const likely = issue.errors.filter((errors) => errors.length > 0 && !errors.some(isWrongShape));
  const ranked = likely.sort((a, b) => unknownKeys(a) - unknownKeys(b) || a.length - b.length);
  const [best] = ranked;
  return best === undefined ? [{ issue, path }] : best.flatMap((inner) => flatten(inner, path, context));
}

/** Whether a value is not even of the alternative's kind: a list where a group belongs. */
function isWrongShape(issue: Issue): boolean {
  if (issue.path.length > 0) return false;
  return (
    issue.code === "invalid_type" ||
    (issue.code === "invalid_union" && issue.errors.every((e) => e.some(isWrongShape)))
  );
}

function unknownKeys(issues: readonly Issue[]): number {
  return issues.reduce((sum, issue) => sum + (issue.code === "unrecognized_keys" ? issue.keys.length : 0), 0);
}

interface Draft {
  readonly problem: Problem;
  readonly path: FilePath;
  readonly missing?: boolean;
  /** Of an unknown key, where it stands. */
  readonly group?: string;
  /** Paths that this problem accounts for. */
  readonly guess?: readonly string[];
}

function explain({ issue, path }: FlatIssue, context: ExplainContext): Draft[] {
  if (issue.code === "unrecognized_keys") return explainKeys(issue.keys, path, context);
  const { tree } = context;
  const value = valueAt(tree.data, path);
  const name = pathWords(path) || "the file";
  const needs = issue.message.startsWith("Invalid") ? undefined : issue.message;
  if (value === undefined && path.length > 0) {
    const place = nearestPosition(tree, path.slice(0, -1));
    const message = `${name} is missing${needs === undefined ? "" : `; it ${needs}`}`;
    return [
      {
        problem: { code: "missing", file: tree.fileName, path: formatPath(path), ...place, message },
        path,
        missing: true,
      },
    ];
  }
  const place = nearestPosition(tree, path);
  const problem = (code: string, message: string): Draft[] => [
    { problem: { code, file: tree.fileName, path: formatPath(path), ...place, message }, path },
  ];
  if (issue.code === "custom") {
    const { code = "invalid" }: { code?: string } = issue.params ?? {};
    return problem(code, `${name}${/^["<]/u.test(issue.message) ? ":" : ""} ${issue.message}`);
  }
  if (value === null)
    return problem(
      "no-value",
      `${name} has no value; ${needs === undefined ? "write one, or leave the key out" : `it ${needs}`}`,
    );
  if (typeof value === "number" && !Number.isFinite(value)) {
    return problem(
      "quantity-not-finite",
      `${name}: ${value} is not a number that can be measured; it ${needs ?? "needs a number"}`,
    );
  }
  if (issue.code === "invalid_value" && path.length > 0)
    return explainWord(issue.values, needs, value, path, problem);
  if (needs !== undefined) return problem("wrong-type", `${name} ${needs}`);
  return problem("wrong-type", `${name}: ${describeValue(value)} cannot stand here`);
}

function explainWord(
  values: readonly unknown[],
  needs: string | undefined,
  value: unknown,
  path: FilePath,
  problem: (code: string, message: string) => Draft[],
): Draft[] {
  const name = pathWords(path);
  const words = values.map(String);
  const near = typeof value === "string" ? nearestWord(value, words) : undefined;
  if (near !== undefined)
    return problem(
      "unknown-word",
      `${name}: ${describeValue(value)} is not known here; did you mean ${near}?`,
    );
  return problem(
    "unknown-word",
    `${name}: ${describeValue(value)} is not known here; it ${needs ?? `must be ${words.join(", ")}`}`,
  );
}

/** `at and about`, each at most as long as a message bears. */
const listed = (keys: readonly string[]): string => {
  const names = keys.map((key) => showText(key, 20));
  return names.length === 1 ? (names[0] ?? "") : `${names.slice(0, -1).join(", ")} and ${names.at(-1)}`;
};

/** Where one thing that was asked for is written: its conditions are keys of the other asks too, which is no advice. */
const isAsk = (group: FilePath): boolean => group.length === 3 && group[0] === "order" && group[1] === "asks";

/** Keys of an ask that none of its own comes near to: one problem, with the keys that it has. */
function explainAskKeys(keys: readonly string[], group: FilePath, { tree, schema }: ExplainContext): Draft {
  const path = [...group, keys[0] ?? ""];
  const place = tree.keyPositionOf(path) ?? nearestPosition(tree, group);
  const are = keys.length === 1 ? "is not a key" : "are not keys";
  const message = `${pathWords(group)}: ${listed(keys)} ${are} here; the keys are ${keysAt(schema, group).join(", ")}`;
  const problem = { code: "unknown-key", file: tree.fileName, path: formatPath(path), ...place, message };
  return { problem, path, group: formatPath(group) };
}

function explainKeys(given: readonly string[], group: FilePath, context: ExplainContext): Draft[] {
  const { tree } = context;
  const known = keysAt(context.schema, group);
  const far = isAsk(group) ? given.filter((key) => !isNear(key, known)) : [];
  if (far.length > 0) {
    const near = given.filter((key) => !far.includes(key));
    const rest = near.length === 0 ? [] : explainKeys(near, group, context);
    return [explainAskKeys(far.slice(0, MOST_KEYS), group, context), ...rest];
  }
  const keys = given;
  const drafts = keys.slice(0, MOST_KEYS).map((key): Draft => {
    const path = [...group, key];
    const name = showText(pathWords(path), 60);
    const { code, sentence, guess } = adviseOnKey(key, group, context);
    const place = tree.keyPositionOf(path) ?? nearestPosition(tree, group);
    const problem = {
      code,
      file: tree.fileName,
      path: formatPath(path),
      ...place,
      message: `${name} ${sentence}`,
    };
    return { problem, path, guess, group: formatPath(group) };
  });
  if (keys.length <= MOST_KEYS) return drafts;
  const message = `${pathWords(group) || "the file"} has ${keys.length - MOST_KEYS} more keys that are not known here`;
  const rest = {
    code: "unknown-key",
    file: tree.fileName,
    path: formatPath(group),
    ...nearestPosition(tree, group),
    message,
  };
  return [...drafts, { problem: rest, path: group }];
}

/** Whether a key is a slip of the pen of a known one. */
function isNear(key: string, known: readonly string[]): boolean {
  const near = nearestWord(key, known);
  return near !== undefined && editDistance(key, near) <= 2;
}

interface KeyAdvice {
  readonly code: string;
  readonly sentence: string;
  readonly guess: readonly string[];
}

function adviseOnKey(key: string, group: FilePath, { tree, schema, other }: ExplainContext): KeyAdvice {
  // A form that is to come brings keys of its own: those of the other forms are not missing.
  if (isKeyNotYet(group, key)) {
    return {
      code: "not-in-this-version",
      sentence: "is not in this version; leave it out",
      guess: [formatPath(group)],
    };
  }
  const here = keysAt(schema, group);
  const present = valueAt(tree.data, group);
  const free = here.filter(
    (known) => !(typeof present === "object" && present !== null && Object.hasOwn(present, known)),
  );
  const advice = (sentence: string, guess: readonly string[] = []): KeyAdvice => ({
    code: "unknown-key",
    sentence,
    guess,
  });
  const meant = (near: string): KeyAdvice =>
    advice(`is not a key here; did you mean ${near}?`, [formatPath([...group, near])]);
  const near = nearestWord(key, free);
  if (near !== undefined && editDistance(key, near) <= 2) return meant(near);
  const groups = groupsOf(schema, key).filter((place) => place !== formatPath(group));
  if (groups.length > 0) {
    const places = groups.map((place) => place || "the top of the file").slice(0, 3);
    // Where the key is needed there, it was written here.
    return advice(
      `is not a key here; it belongs under ${places.join(" or ")}`,
      groups.map((place) => (place === "" ? key : `${place}.${key}`)),
    );
  }
  const farther = near ?? nearestWord(key, here);
  if (farther !== undefined) return meant(farther);
  if (group.length === 0 && keysAt(other.schema, []).includes(key)) {
    return advice(`belongs in ${other.called}, not in this file`);
  }
  return advice(here.length > 0 ? `is not a key here; the keys are ${here.join(", ")}` : "is not a key here");
}

function nearestPosition(tree: FileTree, path: FilePath): { line: number; column: number } {
  for (let length = path.length; length >= 0; length--) {
    const position = tree.positionOf(path.slice(0, length));
    if (position !== undefined) return position;
  }
  return { line: 1, column: 1 };
}

function describeValue(value: unknown): string {
  if (Array.isArray(value)) return "a list";
  if (typeof value === "object") return "a group of keys";
  return `"${showText(String(value))}"`;
}
