import {
  type MixedNeed,
  type SimilarChange,
  STAGE_WORDS,
  type StageNeed,
  type WeighIn,
} from "@scantling/geometry";
import { describeIssue, type FileUnits, formatCaliper } from "@scantling/geometry/units";
import type { AskCost, AsWeighed, ReadingReport } from "../gate-costs.js";
import type { GateReport, GateStackReport } from "../gate-report.js";
import type { Job } from "../load.js";
import { ASK_WORDS } from "../wishes.js";
import { VERDICTS } from "./asks-text.js";
import { fineMassText, lengthText, massText, signedText } from "./figures.js";
import { bySeverity, findingLines } from "./findings.js";
import { item, layOutTable, wrap } from "./layout.js";
import { cutText, sawLength } from "./stock-text.js";

/** A weigh-in for people: the sum first, then what can still be made, then what every stage needs. */
export function gateText(report: GateReport, job: Job): string[] {
  const { plan, stack, found, extra, similar, readings, findings } = report;
  const { units } = job;
  return [
    `WEIGHED: ${STAGE_WORDS[report.stage]}`,
    ...sumLines(report, units),
    ...(found === undefined
      ? wrap("QUESTIONED: this mass is not used; see below.", undefined, "  ")
      : verdictLines(found, units)),
    ...(extra === undefined || found === undefined || extra.massPerHeat <= 0
      ? []
      : wrap(
          `Heats more than planned that the spare pays for: ${extra.count}, about ${fineMassText(extra.massPerHeat, units)} each.`,
          undefined,
          "  ",
        )),
    ...(similar.length === 0 ? [] : ["", ...similarLines(report, job)]),
    ...(report.asWeighed === undefined ? [] : ["", ...asWeighedLines(report.asWeighed, units)]),
    ...(readings.length === 0 ? [] : ["", ...readingLines(readings, job)]),
    "",
    ...targetLines(report, units),
    ...(plan === undefined ? [] : wrap(`Plan ${plan.number}: ${cutText(plan.plan, units)}`, undefined, "  ")),
    ...(stack === undefined ? [] : stackLines(stack, units)),
    ...(findings.length === 0 ? [] : ["", "FOUND"]),
    ...bySeverity(findings).flatMap((finding) => findingLines(finding, job, { basis: true })),
  ];
}

function sumLines({ masses, stage, targets, found }: GateReport, units: FileUnits): string[] {
  const { scale, tare } = masses;
  const net = scale - (tare ?? 0);
  const need = targets.find((one) => one.stage === stage)?.need;
  const rose = found !== undefined && found.least !== found.mass;
  const used = found !== undefined && (rose || found.mass !== net);
  return layOutTable(
    [
      ["on the scale", fineMassText(scale, units)],
      ...(tare === undefined ? [] : [["handling bar", `− ${fineMassText(tare, units)}`]]),
      ["steel", fineMassText(net, units)],
      ...(used
        ? [
            rose
              ? [
                  "it may be",
                  fineMassText(found.least, units),
                  `to ${fineMassText(found.mass, units)}: the mass rose`,
                ]
              : ["counted with", fineMassText(found.mass, units)],
          ]
        : []),
      ...(need === undefined ? [] : [["needed", fineMassText(need.value, units), needBand(need, units)]]),
    ],
    ["left", "right", "left"],
  );
}

const hasBand = ({ low, high }: StageNeed): boolean => high - low >= TELLABLE;

function needBand(need: StageNeed, units: FileUnits): string {
  if (!hasBand(need)) return "";
  const [least, most] = [fineMassText(need.low, units), fineMassText(need.high, units)];
  return least === most ? "" : `(${least} at low losses, ${most} at high)`;
}

/** Differences below this are not told, g. */
const TELLABLE = 0.05;

function verdictLines(found: WeighIn, units: FileUnits): string[] {
  const { verdict, spareBand, knifeBand } = found;
  if (verdict === "not-sure") return notSureLines(found, units);
  // Of a mass that rose that much is sure.
  const spare = verdict === "short" ? found.spare : found.leastSpare;
  const light = found.stage === "finished" && verdict === "short";
  const within = spare < 0 && verdict !== "short";
  const by = `${fineMassText(Math.abs(spare), units)} ${spare >= 0 ? "to spare" : within ? "less than drawn" : "short"}`;
  const [low, high] = spareBand.map((value) => signed(value, units));
  if (light)
    return wrap(
      `LIGHT: by ${fineMassText(-spare, units)} against the drawing (band ${low} to ${high})`,
      undefined,
      "  ",
    );
  const words = {
    enough: "ENOUGH",
    "enough-at-usual-losses": "ENOUGH AT THE USUAL LOSSES",
    short: "SHORT",
  }[verdict];
  return [
    ...wrap(`${words}: ${by} (band ${low} to ${high})`, undefined, "  "),
    ...(within
      ? wrap(
          `That is within the knife's own band of ${signed(-knifeBand.minus, units)} to ${signed(knifeBand.plus, units)}.`,
          undefined,
          "  ",
        )
      : []),
  ];
}

/** Where a mass rose and only the more hopeful reading of it is enough. */
function notSureLines(
  { mass, least, need, spare, leastSpare, spareBand }: WeighIn,
  units: FileUnits,
): string[] {
  const [low, high] = spareBand.map((value) => signed(value, units));
  return wrap(
    `NOT SURE: ENOUGH only if ${fineMassText(need.value, units)} or more of it is steel. It may be ${fineMassText(least, units)} to ${fineMassText(mass, units)}: ${fineMassText(-leastSpare, units)} short to ${fineMassText(Math.max(0, spare), units)} to spare (band ${low} to ${high})`,
    undefined,
    "  ",
  );
}

const signed = (grams: number, units: FileUnits): string => signedText(fineMassText, grams, units);

const CHANGE_WORDS: Readonly<Record<SimilarChange, readonly [name: string, size: string, less: string]>> = {
  shorter: ["Shorter", "edge", "less"],
  lower: ["Lower", "heel height", "less, tang and bevels in proportion"],
  "thinner-tip": ["Thinner to the tip", "tip", "less, the heel as drawn"],
};

function similarLines({ similar, found, targets, stage, readings }: GateReport, job: Job): string[] {
  const { units } = job;
  const need = targets.find((one) => one.stage === stage)?.need;
  const atLosses = need === undefined || hasBand(need) ? ", at the usual losses" : "";
  return [
    ...wrap(`CAN STILL BE MADE of ${fineMassText(found?.least ?? 0, units)}${atLosses}`),
    ...similar.flatMap((one) => {
      const [name, size, less] = CHANGE_WORDS[one.change];
      if (!one.possible) return item("- ", `${name}: not so. ${describeIssue(one.issue, units)}`);
      const show = one.change === "thinner-tip" ? formatCaliper : lengthText;
      const sure =
        one.toBeSure === undefined || show(one.toBeSure, units) === show(one.to, units)
          ? ""
          : `; ${show(one.toBeSure, units)} to be sure at high losses`;
      return [
        ...item(
          "- ",
          `${name}: ${size} ${show(one.to, units)}, ${show(one.from - one.to, units)} ${less}${sure}`,
        ),
        ...costLines(one.cost, job),
      ];
    }),
    ...readingsLeftOut(readings, units),
  ];
}

/** Smaller knives keep the thickness as drawn, whatever a caliper found. */
function readingsLeftOut(readings: readonly ReadingReport[], units: FileUnits): string[] {
  const under = readings.filter(({ questioned, left }) => !questioned && left.inAll < -HAIR);
  if (under.length === 0) return [];
  const list = under
    .map(
      (one) =>
        `${formatCaliper(one.thickness, units)} at ${lengthText(one.x, units)} (drawn ${formatCaliper(one.finished, units)})`,
    )
    .join(", ");
  return wrap(
    `The caliper is not in these: they are as thick as drawn, and it found ${list}. Such a blade needs less steel there; draw it as it is, and gate it again.`,
    undefined,
    "  ",
  );
}

/** What a caliper does not show, mm. */
const HAIR = 1e-6;

/** Of a finished blade that is light: there is nothing more to be made, only to be told. */
function asWeighedLines({ lightBy, knifeMass, mass, others }: AsWeighed, units: FileUnits): string[] {
  const asked =
    mass === undefined ? "" : `; mass ${VERDICTS[mass.answer.verdict]} (as drawn ${VERDICTS[mass.was]})`;
  return [
    "AS WEIGHED",
    ...item(
      "- ",
      `The knife comes to ${fineMassText(knifeMass, units)} in place of ${massText(knifeMass + lightBy, units)}${asked}.`,
    ),
    ...(others.length === 0
      ? []
      : item(
          "- ",
          `Not told by the scale, for it depends on where the steel is missing: ${others.map(({ ask, verdict }) => `${ASK_WORDS[ask.name]} (as drawn ${VERDICTS[verdict]})`).join(", ")}. Measure.`,
        )),
  ];
}

function costLines({ answers, open, stops, knifeMass }: AskCost, job: Job): string[] {
  const asks =
    answers.length === 0
      ? "nothing was asked"
      : open.length === 0
        ? "all asks met"
        : open
            .map(({ answer, was }) => {
              const before = was === answer.verdict ? "as before" : `was ${VERDICTS[was]}`;
              return `${ASK_WORDS[answer.ask.name]} ${VERDICTS[answer.verdict]} (${before})`;
            })
            .join(", ");
  return [
    ...item("  ", `knife ${massText(knifeMass, job.units)}; ${asks}`),
    ...stops.flatMap((finding) => findingLines(finding, job, { basis: false }).map((line) => `  ${line}`)),
  ];
}

/** What is left to take off where a caliper was put on. */
export function readingLines(readings: readonly ReadingReport[], job: Job): string[] {
  const { units } = job;
  const show = (mm: number): string => formatCaliper(mm, units).replace(/^-/u, "−");
  const leftCells = ({ kept, left }: ReadingReport): string[] =>
    kept
      ? ["none: forge finish"]
      : [left.inAll, left.beforeHardening, left.afterHardening].map((mm) => show(mm));
  const rows = readings.map((one) => [
    lengthText(one.x, units),
    show(one.thickness),
    show(one.target),
    show(one.finished),
    ...(one.questioned ? ["questioned"] : leftCells(one)),
  ]);
  return [
    "CALIPER: left to take off each face",
    ...layOutTable(
      [["from heel", "read", "meant", "finished", "in all", "before", "after quench"], ...rows],
      ["right", "right", "right", "right", "right", "right", "right"],
    ),
    ...readings.flatMap(({ x, cost }) =>
      cost === undefined
        ? []
        : [
            ...wrap(`As thick as read at ${lengthText(x, units)}, the blade comes out as:`),
            ...costLines(cost, job),
          ],
    ),
  ];
}

function targetLines({ targets, stage, stack }: GateReport, units: FileUnits): string[] {
  const unknown = stack === undefined ? "needs a plan" : "no length does";
  const row = (name: string, need: StageNeed | undefined): string[] => {
    if (need === undefined) return [name, unknown, "", ""];
    // Where no losses are left there are no low and high ones.
    const band = hasBand(need) ? [need.low, need.high] : [];
    return [name, ...[need.value, ...band].map((grams) => fineMassText(grams, units))];
  };
  const rows = targets.flatMap((one) => [
    row(`${one.stage === stage ? ">" : " "} ${STAGE_WORDS[one.stage]}`, one.need),
    ...(one.stage === "cut" ? onTheWay(stack?.need).map(([name, need]) => row(name, need)) : []),
  ]);
  return layOutTable(
    [["NEEDED AT EACH STAGE, steel alone", "usual", "low losses", "high losses"], ...rows],
    ["left", "right", "right", "right"],
  );
}

/** Of a stack, each steel of its bars, and the billet between the welds. */
function onTheWay(need: MixedNeed | undefined): readonly (readonly [string, StageNeed])[] {
  if (need === undefined) return [];
  const { steels, welds, grooved } = need;
  const last = welds.length - 1;
  return [
    ...steels.map((one) => [`    of it ${one.steel}`, one.need] as const),
    // With no grooves the last weld leaves the dressed billet itself.
    ...welds.flatMap((each, weld) => {
      if (weld === last && !grooved) return [];
      return [[`  after weld ${weld + 1}${weld === last ? ", grooves not ground" : ""}`, each] as const];
    }),
  ];
}

/** The stack by name, how long its bars have to be, and how long they are planned. */
function stackLines({ plan, need }: GateStackReport, units: FileUnits): string[] {
  const bars = plan.bars.reduce((sum, { pieces }) => sum + pieces, 0);
  const kind = plan.stack.kind === "clad" ? "a core with cladding" : "pattern-welded";
  if (need === undefined) return wrap(`Stack: ${kind}, ${bars} bars.`, undefined, "  ");
  const { value, low, high } = need.length;
  const [usual, least, most] = [value, low, high].map((mm) => sawLength(mm, units));
  return wrap(
    `Stack: ${kind}, ${bars} bars of one length. Each has to be ${usual} long, ${least} at low losses and ${most} at high; planned is ${sawLength(plan.cutLength, units)}.`,
    undefined,
    "  ",
  );
}
