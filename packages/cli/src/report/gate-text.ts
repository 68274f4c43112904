import {
  type MixedNeed,
  type SimilarChange,
  STAGE_WORDS,
  type StageNeed,
  type WeighIn,
} from "@scantling/geometry";
import { describeIssue, type FileUnits } from "@scantling/geometry/units";
import type { AskCost, ReadingReport, SimilarReport } from "../gate-costs.js";
import type { GateReport, GateStackReport } from "../gate-report.js";
import type { Job } from "../load.js";
import { ASK_WORDS } from "../wishes.js";
import { VERDICTS } from "./asks-text.js";
import { LENGTH_FIGURES, lengthText, massText } from "./figures.js";
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
          `Heats more than planned that the spare pays for: ${extra.count}, about ${massText(extra.massPerHeat, units)} each.`,
          undefined,
          "  ",
        )),
    ...(similar.length === 0 ? [] : ["", ...similarLines(similar, found, job)]),
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
  const used = found !== undefined && found.mass !== net;
  return layOutTable(
    [
      ["on the scale", massText(scale, units)],
      ...(tare === undefined ? [] : [["handling bar", `− ${massText(tare, units)}`]]),
      ["steel", massText(net, units)],
      ...(used ? [["counted with", massText(found.mass, units)]] : []),
      ...(need === undefined ? [] : [["needed", massText(need.value, units), needBand(need, units)]]),
    ],
    ["left", "right", "left"],
  );
}

function needBand({ low, high }: StageNeed, units: FileUnits): string {
  if (high - low < TELLABLE) return "";
  return `(${massText(low, units)} at low losses, ${massText(high, units)} at high)`;
}

/** Differences below this are not told, g. */
const TELLABLE = 0.05;

function verdictLines(found: WeighIn, units: FileUnits): string[] {
  const { verdict, spare, spareBand, knifeBand } = found;
  const within = spare < 0 && verdict !== "short";
  const by = `${massText(Math.abs(spare), units)} ${spare >= 0 ? "to spare" : within ? "less than drawn" : "short"}`;
  const [low, high] = spareBand.map((value) => signed(value, units));
  const words = {
    enough: "ENOUGH",
    "enough-at-usual-losses": "ENOUGH AT THE USUAL LOSSES",
    short: "SHORT",
  }[verdict];
  return [
    ...wrap(`${words}: ${by} (band ${low} to ${high})`, undefined, "  "),
    ...(within
      ? wrap(
          `That is within the knife's own band of −${massText(knifeBand.minus, units)} to +${massText(knifeBand.plus, units)}.`,
          undefined,
          "  ",
        )
      : []),
  ];
}

const signed = (grams: number, units: FileUnits): string =>
  `${grams < 0 ? "−" : "+"}${massText(Math.abs(grams), units)}`;

const CHANGE_WORDS: Readonly<Record<SimilarChange, readonly [name: string, size: string, less: string]>> = {
  shorter: ["Shorter", "edge", "less"],
  lower: ["Lower", "heel height", "less, tang and bevels in proportion"],
  "thinner-tip": ["Thinner to the tip", "tip", "less, the heel as it was"],
};

function similarLines(similar: readonly SimilarReport[], found: WeighIn | undefined, job: Job): string[] {
  const { units } = job;
  return [
    ...wrap(`CAN STILL BE MADE of ${massText(found?.mass ?? 0, units)}, at the usual losses`),
    ...similar.flatMap((one) => {
      const [name, size, less] = CHANGE_WORDS[one.change];
      if (!one.possible) return item("- ", `${name}: not so. ${describeIssue(one.issue, units)}`);
      const show = one.change === "thinner-tip" ? fine(units) : (mm: number) => lengthText(mm, units);
      const sure =
        one.toBeSure === undefined || show(one.toBeSure) === show(one.to)
          ? ""
          : `; ${show(one.toBeSure)} to be sure at high losses`;
      return [
        ...item("- ", `${name}: ${size} ${show(one.to)}, ${show(one.from - one.to)} ${less}${sure}`),
        ...costLines(one.cost, job),
      ];
    }),
  ];
}

/** Thickness to what a caliper shows. */
const fine =
  (units: FileUnits) =>
  (mm: number): string =>
    (LENGTH_FIGURES[1] ?? lengthText)(mm, units);

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

function readingLines(readings: readonly ReadingReport[], job: Job): string[] {
  const { units } = job;
  const show = (mm: number): string => fine(units)(mm).replace(/^-/u, "−");
  const rows = readings.map((one) => [
    lengthText(one.x, units),
    show(one.thickness),
    show(one.target),
    show(one.finished),
    one.kept ? "none: forge finish" : show(one.left.inAll),
    one.kept ? "" : show(one.left.beforeHardening),
    one.kept ? "" : show(one.left.afterHardening),
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
  const row = (name: string, need: StageNeed | undefined): string[] =>
    need === undefined
      ? [name, unknown, "", ""]
      : [name, massText(need.value, units), massText(need.low, units), massText(need.high, units)];
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
