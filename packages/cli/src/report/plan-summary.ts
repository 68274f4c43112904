import type { Finding } from "@scantling/geometry";
import { type FileUnits, formatNumber } from "@scantling/geometry/units";
import type { Drawing } from "@scantling/render";
import type { Job } from "../load.js";
import type { Measured } from "../measure.js";
import type { Bars } from "../stock-report.js";
import { verdictOf } from "../verdict.js";
import { askRemarks, askTable, VERDICTS } from "./asks-text.js";
import { CAUTIONS } from "./cautions.js";
import { inBoth, massText, range, volumeText } from "./figures.js";
import { bySeverity, findingHeadline, findingLines, isStop } from "./findings.js";
import { hardnessRows } from "./hardness-text.js";
import { headingLines } from "./heading.js";
import { layOutTable, wrap } from "./layout.js";
import { ledgerTotals } from "./ledger-text.js";
import { mixedSummary } from "./mixed-text.js";
import { costText, cutText, jointsText, noPlanLines, reachText, sawLength } from "./stock-text.js";
import { balanceLines, causeLines } from "./weigh-text.js";

export interface PlanParts {
  readonly measured: Measured;
  readonly bars: Bars;
  /** Of the knife and of its stock. */
  readonly findings: readonly Finding[];
  /** The page of the pattern. */
  readonly sheet: Drawing;
  /** Paths of all files, and of those to print among them. */
  readonly files: readonly string[];
  readonly drawing: string;
  readonly sheets: string;
  readonly card: string;
}

/** The summary of the main job: one screen of 80 columns, in the order in which a smith asks. */
export function planSummary(parts: PlanParts): string[] {
  const { measured, findings } = parts;
  const { units } = measured.job;
  return [
    ...headingLines(measured),
    "",
    `ASKED: ${measured.answers.length === 0 ? "nothing" : VERDICTS[verdictOf(measured.answers, [])]}${findings.some(isStop) ? "; but see STOP below" : ""}`,
    ...(measured.answers.length === 0 && measured.hardness === undefined
      ? []
      : askTable(measured.answers, units, hardnessRows(measured, units))),
    ...askRemarks(measured.answers, units),
    "",
    ...weightLines(measured, units),
    "",
    ...barLines(parts, units),
    ...CAUTIONS,
    "",
    ...findingSection(parts.findings, measured.job),
    ...drawingLines(parts),
  ];
}

function weightLines(measured: Measured, units: FileUnits): string[] {
  const { steel, knife } = measured.weight;
  return [
    "WEIGHT",
    ...layOutTable(
      [
        [
          "knife",
          inBoth(massText, knife.mass, units),
          `95 in 100: ${range(massText, measured.interval.massInterval, units)}`,
        ],
        ["its steel", inBoth(massText, steel.mass, units), inBoth(volumeText, steel.volume, units)],
      ],
      ["left", "left", "left"],
    ),
    ...balanceLines(measured, units),
    ...causeLines(measured),
  ];
}

function barLines({ bars, measured }: PlanParts, units: FileUnits): string[] {
  if (bars.mixed !== undefined) return ["BARS TO CUT", ...mixedSummary(bars.mixed, measured.job)];
  const [best] = bars.plans;
  if (best === undefined) return ["BARS TO CUT: none", ...noPlanLines(bars, units)];
  const others = bars.plans.length - 1;
  return [
    ...wrap(
      `BARS TO CUT, from the rack of ${measured.job.shopPlaces?.fileName ?? "the shop"}`,
      undefined,
      "  ",
    ),
    ...wrap(cutText(best, units), undefined, "  "),
    ...wrap(
      `${sawLength(best.cutLengthNominal, units)} would do at the usual losses; the rest covers high ones`,
      undefined,
      "  ",
    ),
    ...wrap(
      `${inBoth(massText, best.mass, units)} of bar; ${jointsText(best)}, ${best.heats} heats${costText(best, measured.job.shop.currency)}`,
      undefined,
      "  ",
    ),
    ...wrap(`Reach: ${reachText(best)}`, undefined, "  "),
    ...(others > 0
      ? [`${others} other ${others === 1 ? "plan" : "plans"}, with reasons: scantling stock FILE`]
      : []),
    ...wrap(`Steel: ${ledgerTotals(best, units)}`, undefined, "  "),
  ];
}

/** Notes that say why a part of the plan is missing. */
const NEEDED_NOTES: readonly string[] = ["rack-empty"];

/** What stops the job in full, every warning on a line of its own; notes are counted, and where all is told. */
function findingSection(findings: readonly Finding[], job: Job): string[] {
  if (findings.length === 0) return [];
  const shown = bySeverity(findings).filter(
    ({ severity, code, accepted }) =>
      accepted === undefined && (severity !== "note" || NEEDED_NOTES.includes(code)),
  );
  const notes = findings.length - shown.length;
  const counted = notes === 1 ? "1 note" : `${notes} notes`;
  return [
    shown.length === 0
      ? `WARNINGS: none; ${counted}: scantling check FILE`
      : `WARNINGS; in full${notes === 0 ? "" : `, with ${counted}`}: scantling check FILE`,
    ...shown.flatMap((finding) =>
      finding.severity === "warn"
        ? [findingHeadline(finding, job)]
        : findingLines(finding, job, { basis: false }),
    ),
    "",
  ];
}

/** The paper as it lies in the printer: `A3 420 × 297 mm`. */
function paperWords({ width, height, paper, correction }: Drawing): string {
  const [across, up] = [width * (correction?.across ?? 1), height * (correction?.up ?? 1)];
  return `${paper ?? "paper"} ${formatNumber(across, 0.1)} × ${formatNumber(up, 0.1)} mm`;
}

function drawingLines({ drawing, sheets, card, files, sheet }: PlanParts): string[] {
  const others = files.filter((file) => ![drawing, sheets, card].includes(file));
  return [
    "TO PRINT at 100 %",
    ...wrap(`${drawing}: the pattern, true size on ${paperWords(sheet)}`, undefined, "  "),
    ...wrap(`${sheets}, ${card}: every sheet, the bench card`, undefined, "  "),
    ...wrap(`Also: ${others.join(", ")}`, undefined, "  "),
  ];
}
