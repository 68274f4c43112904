import { type Finding, GATE_STAGES, STAGE_WORDS } from "@scantling/geometry";
import type { FileUnits } from "@scantling/geometry/units";
import type { AskAnswer } from "../asks.js";
import { isAskName } from "../file/ask-fields.js";
import { formatPath } from "../file/index.js";
import { pathWords } from "../file/path.js";
import { showText } from "../file/problem.js";
import type { Planned, RecordFile } from "../file/record-file.js";
import type { Job } from "../load.js";
import { changedLosses } from "../record/changed-losses.js";
import type { ChangedInput } from "../record/inputs.js";
import type { PlanRow } from "../record/plan-rows.js";
import type { Cause, Reorder, ReorderRow } from "../record/reorder.js";
import { weighingsOf } from "../record/weighings.js";
import { ASK_WORDS } from "../wishes.js";
import { askTable, VERDICTS } from "./asks-text.js";
import { type Figure, fineMassText, LENGTH_FIGURES, MASS_FIGURES, massText, signedText } from "./figures.js";
import { findingCounts, findingLines, isStop } from "./findings.js";
import { item, layOutTable, wrap } from "./layout.js";
import { sawLength } from "./stock-text.js";

/** An order made again, for people: then, today and why; what came out of it the first time. */
export function reorderText(found: Reorder, record: RecordFile, job: Job): string[] {
  const { was, causes, idle, unexplained } = found;
  const changed = found.rows.filter(({ same }) => !same);
  return [
    ...wrap(`MADE AGAIN: planned ${was.on} with scantling ${was.program}, and planned today`),
    ...(changed.length === 0 ? ["Nothing of it changed."] : []),
    "",
    ...rowLines(found, job.units),
    ...(causes.length === 0 ? [] : ["", "WHY"]),
    ...causes.flatMap((cause, index) => item(`${letter(index)}  `, causeWords(cause, found, job))),
    ...(found.rows.some(({ together }) => together)
      ? wrap("*  several of the changes together; none does it alone")
      : []),
    ...(unexplained === undefined ? [] : wrap(`Why is not told: ${unexplained}.`)),
    ...(idle.length === 0 ? [] : idleLines(idle, unexplained !== undefined, job)),
    ...outcomeLines(found, record, job.units),
  ];
}

const letter = (index: number): string => String.fromCharCode("a".charCodeAt(0) + index);

/** Told only where they moved: each follows from the others. */
const ONLY_MOVED: readonly string[] = [
  "heats",
  "weldingHeats",
  ...GATE_STAGES.map((stage) => `needed-${stage}`),
];

/** Cells wider than this would push the table over the page. */
const WIDEST = 21;
/** Letters of one line of the last column. */
const MOST_LETTERS = 4;

function rowLines({ rows }: Reorder, units: FileUnits): string[] {
  const shown = rows
    .filter(({ key, same }) => !same || !ONLY_MOVED.includes(key))
    .map((row) => ({ name: rowName(row.key), cells: cells(row, units), why: whyWords(row) }));
  const fits = (row: (typeof shown)[number]): boolean => row.cells.every((cell) => cell.length <= WIDEST);
  return [
    ...layOutTable(
      [
        ["", "then", "today", "why"],
        ...shown.filter(fits).flatMap((row) => tableRows(row.name, row.cells, row.why)),
      ],
      ["left", "left", "left", "left"],
    ),
    ...shown
      .filter((row) => !fits(row))
      .flatMap(({ name, cells: [was, is], why }) =>
        item(`${name}: `, `${was} then; ${is} today${why.length === 0 ? "" : `; ${why.join(" ")}`}`),
      ),
  ];
}

/** A row, and further ones that hold the letters that do not fit beside it. */
function tableRows(name: string, [was, is]: readonly [string, string], why: readonly string[]): string[][] {
  const rest = why.slice(MOST_LETTERS);
  const first = [name, was, is, why.slice(0, MOST_LETTERS).join(" ")];
  return rest.length === 0 ? [first] : [first, ...tableRows("", ["", ""], rest)];
}

const whyWords = ({ same, causes, together }: ReorderRow): readonly string[] =>
  same ? [] : together ? ["*"] : causes.map(letter);

const NAMES: Readonly<Record<string, string>> = {
  bars: "bars",
  cutLength: "each cut to",
  steelMass: "steel as cut",
  heats: "forging heats",
  weldingHeats: "welding heats",
  knifeMass: "knife",
  balance: "balance from the heel",
};

function rowName(key: string): string {
  const stage = GATE_STAGES.find((each) => key === `needed-${each}`);
  if (stage !== undefined) return `needed, ${STAGE_WORDS[stage]}`;
  const ask = key.replace(/^ask-/u, "");
  if (isAskName(ask) && key.startsWith("ask-")) return `asked: ${ASK_WORDS[ask]}`;
  return NAMES[key] ?? (key.startsWith("bars-") ? "and" : key);
}

/** Then and today, with as many digits as show that they differ; the band only where it is told in the coarsest. */
function cells({ key, was, is, same }: ReorderRow, units: FileUnits): readonly [string, string] {
  const figures = figuresOf(was ?? is);
  const [coarsest = massText] = figures;
  // What a stage needs is told by its usual losses, and by the others only where those alone moved.
  const ownBand = !key.startsWith("needed-") || was?.value === is?.value;
  const texts = (figure: Figure, banded: boolean): readonly [string, string] => [
    rowText(was, figure, units, banded),
    rowText(is, figure, units, banded),
  ];
  const [before, now] = texts(coarsest, ownBand);
  if (same) return [before, "the same"];
  if (before !== now) return [before, now];
  const finer = figures.flatMap((figure) => [texts(figure, false), texts(figure, true)]);
  return finer.find(([one, other]) => one !== other) ?? [before, now];
}

function rowText(row: PlanRow | undefined, figure: Figure, units: FileUnits, banded: boolean): string {
  if (row?.value === undefined) return "–";
  const { kind, value, interval } = row;
  if (kind === "verdict") return VERDICTS[value as keyof typeof VERDICTS] ?? String(value);
  if (typeof value === "string" || kind === "count") return String(value);
  const band = interval === undefined || !banded ? "" : bandText(value, interval, figure, units);
  return `${kind === "place" ? signedText(figure, value, units) : figure(value, units)}${band}`;
}

function bandText(
  value: number,
  [low, high]: readonly [number, number],
  figure: Figure,
  units: FileUnits,
): string {
  const [minus, plus] = [figure(value - low, units), figure(high - value, units)];
  if (!/[1-9]/u.test(minus + plus)) return "";
  return minus === plus ? ` ± ${plus}` : ` +${plus.replace(/\s.*$/u, "")}/−${minus}`;
}

function figuresOf(row: PlanRow | undefined): readonly Figure[] {
  if (row?.kind === "mass") return MASS_FIGURES;
  if (row?.key === "cutLength") return [(mm, units) => sawLength(mm, units), ...LENGTH_FIGURES.slice(1)];
  return LENGTH_FIGURES;
}

function causeWords(cause: Cause, { was, is, causes }: Reorder, job: Job): string {
  if (cause.kind === "choice")
    return `plan ${cause.was ?? "–"} of stock was taken, today plan ${cause.is ?? "–"}`;
  if (cause.kind === "input") return `${inputName(cause.input, job)}: ${inputValues(cause.input)}`;
  const inShop = causes.some((each) => each.kind === "input" && each.input.file === "shop");
  const losses = inShop ? [] : changedLosses(was.losses, is.losses);
  const other =
    losses.length === 0 ? "" : `; it counts on other losses where the shop gives none: ${losses.join(", ")}`;
  const versions =
    cause.was === cause.is
      ? `scantling ${cause.is}, changed since under the same number`
      : `scantling ${cause.was} then, ${cause.is} today`;
  return `${versions}${other}`;
}

/** `losses.scalePerHeat, shop.yaml:34`, as it stands in today's file. */
export function inputName({ file, path }: ChangedInput, job: Job): string {
  const placed = file === "shop" ? job.shopPlaces : job.knife;
  const fileName = file === "drawing" ? (job.knife.drawing ?? "the drawing") : placed?.fileName;
  const where = fileName ?? "the shop file";
  if (path.length === 0) return where;
  const position = file === "drawing" ? undefined : placed?.positionOf(formatPath(path));
  return `${pathWords(path)}, ${where}${position === undefined ? "" : `:${position.line}`}`;
}

/** Longest value of a file that is told. */
const LONGEST = 40;

function inputValues({ file, path, was, is }: ChangedInput): string {
  if (file === "drawing" || path.length === 0)
    return was === undefined ? "new" : is === undefined ? "gone" : "another";
  return `${valueWords(was)} then, ${valueWords(is)} today`;
}

export function valueWords(value: unknown): string {
  if (value === undefined || value === null) return "nothing";
  if (Array.isArray(value)) return `${value.length} entr${value.length === 1 ? "y" : "ies"}`;
  const text = typeof value === "object" ? JSON.stringify(value).replace(/"/gu, "") : String(value);
  return showText(text, LONGEST);
}

function idleLines(idle: readonly ChangedInput[], unexplained: boolean, job: Job): string[] {
  const names = idle.map((input) => inputName(input, job)).join("; ");
  return wrap(`${unexplained ? "Changed since" : "Changed too, and moves nothing here"}: ${names}.`);
}

/** What the record says came out the first time, against what was needed then and is needed today. */
function outcomeLines({ was, is }: Reorder, { entries }: RecordFile, units: FileUnits): string[] {
  const weighings = weighingsOf(entries);
  if (weighings.length === 0) return ["", "Nothing was weighed when it was made."];
  const needed = (planned: Planned, stage: (typeof GATE_STAGES)[number]): string => {
    const need = planned.needed[stage];
    return need === undefined ? "–" : fineMassText(need.usual, units);
  };
  const rows = weighings.map(({ stage, steel }) => [
    STAGE_WORDS[stage],
    fineMassText(steel, units),
    needed(was, stage),
    needed(is, stage),
  ]);
  return [
    "",
    ...layOutTable(
      [["CAME OUT, steel alone", "weighed", "needed then", "needed today"], ...rows],
      ["left", "right", "right", "right"],
    ),
  ];
}

/** How today's plan stands against the order: what `check` tells at length. */
export function todayText(answers: readonly AskAnswer[], findings: readonly Finding[], job: Job): string[] {
  return [
    "ASKED, today",
    ...(answers.length === 0 ? ["Nothing."] : askTable(answers, job.units)),
    ...findings.filter(isStop).flatMap((finding) => findingLines(finding, job, { basis: true })),
    ...findingCounts(findings),
  ];
}
