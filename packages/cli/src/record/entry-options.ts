import { type FileUnits, parseQuantity, type QuantityKind } from "@scantling/geometry/units";
import type { z } from "zod";
import { EXIT } from "../exit-code.js";
import { CommandFailure } from "../failure.js";
import { numberIn } from "../file/fields.js";
import { liftTolerances } from "../file/lift.js";
import { type Problem, showText } from "../file/problem.js";
import type { RecordEntry } from "../file/record-file.js";
import { entrySchema } from "../file/record-schema.js";
import { twoSides } from "../file/two-sides.js";
import type { RecordOptions } from "../options.js";

/** An entry as the file will hold it, number and day left out: keys in the order of the file, values as typed, with units. */
export type WrittenEntry = Readonly<Record<string, unknown>>;

/** What an entry is before it has its number. */
export interface ReadEntry {
  readonly written: WrittenEntry;
  /** The same in g, mm and hours; its revision is that which it would have in an empty record. */
  readonly entry: RecordEntry;
}

/** Options that say what is entered, each with the key of the file that it becomes. */
const OPTION_OF: Readonly<Record<string, string>> = {
  on: "--on",
  stage: "--stage",
  mass: "--mass",
  tare: "--tare",
  heats: "--heats",
  weldingHeats: "--welding-heats",
  sizes: "--size",
  drawn: "--drawn",
  task: "--task",
  hours: "--hours",
  hardness: "--hardness",
  batch: "--batch",
  note: "--note",
  correctsRevision: "--corrects",
};

/** Whether anything is to be entered. */
export function isEntering(options: RecordOptions): boolean {
  const {
    json: _json,
    out: _out,
    units: _units,
    shop: _shop,
    force: _force,
    sure: _sure,
    plan: _plan,
    ...entered
  } = options;
  return Object.values(entered).some((value) => value !== undefined);
}

/**
 * Reads what is to be entered, by the very rules of the file.
 *
 * @param units - Of the record: what bare numbers are in.
 * @param days - Today, and the entries so far: one that is corrected keeps its day where none is given.
 * @throws {CommandFailure} exit code 2 with everything that is wrong, each with its option.
 */
export function readEntryOptions(
  options: RecordOptions,
  units: FileUnits,
  { today, entries = [] }: { readonly today: string; readonly entries?: readonly RecordEntry[] },
): ReadEntry {
  const problems: Problem[] = [];
  const complain = (option: string, code: string, message: string): undefined => {
    problems.push({ code, file: option, path: option, line: undefined, column: undefined, message });
    return undefined;
  };
  const corrects = asNumber(options.corrects);
  const day = entries.find(({ revision }) => revision === corrects)?.on ?? today;
  const written = writtenEntry(options, units, day, complain);
  const result = entrySchema(units).safeParse({ revision: 1, ...written });
  for (const issue of result.error?.issues ?? []) complainOfIssue(issue, written, complain);
  const { on } = options;
  if (on !== undefined && on.trim() > today && problems.every(({ file }) => file !== "--on")) {
    complain("--on", "day-to-come", `${showText(on)} is still to come; today is ${today}`);
  }
  if (problems.length === 0 && !result.success) {
    complain("the entry", "entry-empty", "says nothing but its day");
  }
  if (problems.length > 0 || !result.success) throw wrongEntry(problems);
  return { written, entry: liftTolerances(result.data).plain };
}

type Complain = (option: string, code: string, message: string) => undefined;

function writtenEntry(
  options: RecordOptions,
  units: FileUnits,
  day: string,
  complain: Complain,
): WrittenEntry {
  const {
    stage,
    mass,
    tare,
    heats,
    weldingHeats,
    size = [],
    drawn,
    task,
    hours,
    batch,
    note,
    corrects,
  } = options;
  const sizes = size.flatMap((text) => readSize(text, units, complain) ?? []);
  const all = {
    on: options.on?.trim() ?? day,
    stage,
    mass: mass === undefined ? undefined : withUnit(mass, "mass", units),
    tare: tare === undefined ? undefined : withUnit(tare, "mass", units),
    heats: asNumber(heats),
    weldingHeats: asNumber(weldingHeats),
    sizes: sizes.length === 0 ? undefined : sizes,
    drawn: readDrawn(drawn, options.drawnWith, units, complain),
    task,
    hours: readHours(hours, complain),
    hardness: readHardness(options, complain),
    batch: oneLine(batch),
    note: oneLine(note),
    correctsRevision: asNumber(corrects),
  };
  return Object.fromEntries(Object.entries(all).filter(([, value]) => value !== undefined));
}

/** Digits without a unit or a mark. */
const BARE = /^[+-]?[\d\s./-]+$/u;

/** A quantity as it was typed; a bare number gets the unit that it is in, so that it stays true in any file. */
function withUnit(text: string, kind: QuantityKind & ("mass" | "length"), units: FileUnits): string {
  const typed = text.trim().replace(/\s+/gu, " ");
  if (!BARE.test(typed)) return spaced(typed, kind, units);
  // What cannot be read as it stands, such as 3/16 in mm, must not become readable by a unit that nobody wrote.
  if (!parseQuantity(typed, kind, units).ok) return typed;
  return `${typed} ${kind === "mass" ? { mm: "g", in: "oz" }[units] : units}`;
}

/** `702g` as `702 g`, where that says the same. */
function spaced(typed: string, kind: QuantityKind, units: FileUnits): string {
  const apart = typed.replace(/(\d)(?=[a-z]+(?:\s|\d|$))/giu, "$1 ").replace(/([a-z])(?=\d)/giu, "$1 ");
  const [one, other] = [typed, apart].map((text) => parseQuantity(text, kind, units));
  const same = one?.ok === true && other?.ok === true && one.quantity.value === other.quantity.value;
  return same ? apart : typed;
}

const oneLine = (text: string | undefined): string | undefined => text?.trim().replace(/\s+/gu, " ");

/** A number as a number, anything else as it stands, for the file's rules to refuse. */
function asNumber(text: string | undefined): number | string | undefined {
  return text === undefined ? undefined : (numberIn(text) ?? text);
}

const SIZE_FORM = '"heel=5.6 mm", or with the height "60 %=4.6 x 88 mm"';

function readSize(text: string, units: FileUnits, complain: Complain): object | undefined {
  const at = text.indexOf("=");
  const [place, rest] = [text.slice(0, at).trim(), text.slice(at + 1).trim()];
  if (at <= 0 || rest === "")
    return complain("--size", "no-pair", `"${showText(text)}" is not understood; write ${SIZE_FORM}`);
  if (!/[x×]/iu.test(rest))
    return { at: placeWithUnit(place, units), thickness: withUnit(rest, "length", units) };
  const sides = twoSides(rest);
  if (typeof sides === "number") {
    return complain("--size", "no-pair", `"${showText(text)}" is not understood; write ${SIZE_FORM}`);
  }
  return {
    at: placeWithUnit(place, units),
    thickness: withUnit(sides.first, "length", units),
    height: withUnit(sides.second, "length", units),
  };
}

const placeWithUnit = (place: string, units: FileUnits): string =>
  /^[a-z]+$/iu.test(place) || place.includes("%") ? place : withUnit(place, "length", units);

const DRAWN_FORM = '"40 x 30 mm = 48 x 20 mm": height and thickness before, then after';

function readDrawn(
  text: string | undefined,
  tool: string | undefined,
  units: FileUnits,
  complain: Complain,
): object | undefined {
  if (text === undefined) {
    if (tool !== undefined) complain("--drawn-with", "drawn-missing", "needs --drawn beside it");
    return undefined;
  }
  const [from, to] = text.split("=").map((section) => twoSides(section));
  if (typeof from !== "object" || typeof to !== "object" || text.split("=").length !== 2) {
    return complain("--drawn", "no-pair", `"${showText(text)}" is not understood; write ${DRAWN_FORM}`);
  }
  const section = ({ first, second }: { readonly first: string; readonly second: string }): object => ({
    height: withUnit(first, "length", units),
    thickness: withUnit(second, "length", units),
  });
  return { from: section(from), to: section(to), ...(tool === undefined ? {} : { with: tool }) };
}

const MINUTES = 60;

/** `3.5`, or as a clock shows it, `3:30`. */
function readHours(text: string | undefined, complain: Complain): number | string | undefined {
  const [, hours, minutes] = /^\s*(\d+):(\d{2})\s*$/u.exec(text ?? "") ?? [];
  if (hours === undefined || minutes === undefined)
    return asNumber(text?.replace(/\s*h(?:ours?)?\s*$/iu, ""));
  if (Number(minutes) >= MINUTES)
    return complain("--hours", "not-a-time", `"${text}" has more than 59 minutes`);
  return Math.round((Number(hours) + Number(minutes) / MINUTES) * 1000) / 1000;
}

const FILES_FORM =
  "60/65: the hardest file that skates, then the softest that cuts; - for one that is not known";

function readHardness({ hardness, files, after }: RecordOptions, complain: Complain): object | undefined {
  if (hardness === undefined && files === undefined) {
    if (after !== undefined) complain("--after", "hardness-missing", "needs --hardness or --files beside it");
    return undefined;
  }
  const HRC = hardness === undefined ? {} : { HRC: asNumber(hardness.replace(/\s*HRC\s*/iu, "")) };
  const [, skates, cuts] = /^\s*(\d+|-)\s*\/\s*(\d+|-)\s*$/u.exec(files ?? "") ?? [];
  if (files !== undefined && (skates === undefined || cuts === undefined)) {
    return complain("--files", "no-pair", `"${showText(files)}" is not understood; write ${FILES_FORM}`);
  }
  return {
    ...HRC,
    ...(cuts === undefined || cuts === "-" ? {} : { filesCut: Number(cuts) }),
    ...(skates === undefined || skates === "-" ? {} : { filesSkate: Number(skates) }),
    ...(after === undefined ? {} : { after }),
  };
}

/** A finding of the file's rules, in the words of the command line. */
function complainOfIssue(issue: z.core.$ZodIssue, written: WrittenEntry, complain: Complain): void {
  const key = String(issue.path[0] ?? "");
  const files = key === "hardness" && /^files/u.test(String(issue.path[1] ?? "")) ? "--files" : undefined;
  const option = files ?? OPTION_OF[key];
  // What could not be taken apart is told already.
  if (option === undefined || !(key in written)) return;
  const params: unknown = issue.code === "custom" ? issue.params : undefined;
  const code =
    typeof params === "object" && params !== null && "code" in params ? String(params.code) : "wrong-value";
  const words =
    issue.code === "invalid_value" ? `must be one of ${issue.values.map(String).join(", ")}` : issue.message;
  complain(option, code, words);
}

function wrongEntry(problems: readonly Problem[]): CommandFailure {
  const many = problems.length === 1 ? "an option" : `${problems.length} options`;
  return new CommandFailure(
    EXIT.usage,
    "wrong-entry",
    `${many} cannot be taken; nothing was stored`,
    "See: scantling record --help",
    { problems },
  );
}
