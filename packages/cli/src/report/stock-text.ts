import { lossFindings, type ReachClass, type StockPlan, type StockReport } from "@scantling/geometry";
import {
  describeIssue,
  type FileUnits,
  formatLength,
  inchesToMm,
  mmToInches,
} from "@scantling/geometry/units";
import type { Job } from "../load.js";
import { type Bars, rackEmpty, refusalWithNearest } from "../stock-report.js";
import { CAUTIONS } from "./cautions.js";
import { inBoth, lengthText, massText, percentText } from "./figures.js";
import { findingLines, findingText } from "./findings.js";
import { item, layOutTable, wrap } from "./layout.js";
import { ledgerLines } from "./ledger-text.js";
import { whatIfLines } from "./what-if-text.js";

/** Plans shown in full; the others get a line each. */
const MOST_IN_FULL = 3;
const MOST_LINES = 12;

/** The stock report for people: plans best first, the steel ledger of the first one, and what was refused. */
export function stockText(report: Bars, job: Job): string[] {
  const { units, shop, shopPlaces } = job;
  const [first] = report.plans;
  if (first === undefined) {
    return [
      ...lossLines(job),
      ...noPlanLines(report, units),
      ...(shop.rack.length === 0 ? findingLines(rackEmpty(job), job, { basis: false }) : []),
      "",
      ...refusalLines(report, job),
    ];
  }
  return [
    ...lossLines(job),
    ...(shopPlaces === undefined ? [] : [...wrap(`Bars from the rack of ${shopPlaces.fileName}`), ""]),
    ...report.plans.slice(0, MOST_IN_FULL).flatMap((plan, index) => [...planLines(plan, index + 1, job), ""]),
    ...otherPlans(report.plans, units),
    ...ledgerLines(first, units),
    "",
    ...whatIfLines(first, units),
    ...refusalLines(report, job),
    "",
    ...CAUTIONS,
  ];
}

/** Losses that no shop has: whatever lengths follow from them are no use. */
const lossLines = (job: Job): string[] =>
  lossFindings(job.shop.losses, job.shop.limits.findings).flatMap((finding) => [
    ...findingLines(finding, job, { basis: true }),
    "",
  ]);

/** What to say where there is no plan: at least what the bars would have to become. */
export function noPlanLines({ forgedMass, considered }: Bars, units: FileUnits): string[] {
  const why =
    considered === 0 ? "No plan: no bars are known." : "No plan: nothing on the rack can become this blade.";
  return wrap(
    `${why} The forged blade has to weigh ${inBoth(massText, forgedMass, units)}.`,
    undefined,
    "  ",
  );
}

function otherPlans(plans: readonly StockPlan[], units: FileUnits): string[] {
  const others = plans.slice(MOST_IN_FULL, MOST_IN_FULL + MOST_LINES);
  if (others.length === 0) return [];
  const more = plans.length - MOST_IN_FULL - others.length;
  const rows = others.map((plan, index) => [
    `${MOST_IN_FULL + index + 1}.`,
    `${plan.bars} × ${sawLength(plan.cutLength, units)} of ${plan.bar.name}`,
    massText(plan.mass, units),
    `${plan.joints}`,
    percentText(plan.reach.wholeShare),
  ]);
  return [
    ...layOutTable(
      [["", "Also", "bar", "joints", "reach"], ...rows],
      ["right", "left", "right", "right", "right"],
    ),
    ...(more > 0 ? [`and ${more} more in the JSON report (--json)`] : []),
    "",
  ];
}

/** `5 pieces, each 150 mm (5 29/32") long, of 2 x 1/4 in flat`. */
export function cutText(plan: StockPlan, units: FileUnits): string {
  const pieces = plan.bars === 1 ? "1 piece" : `${plan.bars} pieces, each`;
  return `${pieces} ${inBoth(sawLength, plan.cutLength, units)} long, of ${plan.bar.name}`;
}

/** Inches are cut to this. */
const SAW_STEP = 1 / 32;
/** A length this little over a step, in steps, is a double's last digit. */
const HAIR = 1e-6;

/** A length as it is set on a saw, never shorter than it is: up to the next 0.1 mm or 1/32 in. */
export function sawLength(
  mm: number,
  units: FileUnits,
  inches: "fractions" | "decimals" = "fractions",
): string {
  if (units === "mm") return formatLength(Math.ceil(mm * 10 - HAIR) / 10, "mm", { resolution: 0.1 });
  const steps = Math.ceil(mmToInches(mm) / SAW_STEP - HAIR);
  const format = inches === "decimals" ? { resolution: 0.001 } : { remainder: false };
  return formatLength(inchesToMm(steps * SAW_STEP), "in", format);
}

const REACH_WORDS: Readonly<Record<ReachClass, string>> = {
  easy: "easy",
  "flat dies": "flat dies, with bites longer than the bar is wide",
  fullers: "only with fullers laid along the bar",
  refused: "out of reach",
};

/**
 * The reach in words; for a stack with one bar fewer and one more: `49 % of the thinning has to go into height: flat dies, with
 * bites longer than the bar is wide; with 2 bars 74 %; with 4 bars 40 %`.
 */
export function reachText({ bars, reach }: StockPlan): string {
  // More than the whole of the thinning cannot go into height.
  const share = (value: number): string => (value <= 1 ? percentText(value) : "out of reach");
  const own = `${share(reach.wholeShare)} of the thinning has to go into height: ${REACH_WORDS[reach.class]}`;
  if (bars === 1) return own;
  return [
    own,
    ...(reach.oneFewer === undefined ? [] : [`with ${barCount(bars - 1)} ${share(reach.oneFewer)}`]),
    `with ${barCount(bars + 1)} ${share(reach.oneMore)}`,
  ].join("; ");
}

const barCount = (bars: number): string => (bars === 1 ? "1 bar" : `${bars} bars`);

function planLines(plan: StockPlan, place: number, job: Job): string[] {
  const { billet } = plan;
  const { units } = job;
  // Sections to 0.01 mm: a bar of 1/4 in is 6.35 mm.
  const size = (a: number, b: number): string => `${formatLength(a, units)} × ${formatLength(b, units)}`;
  const worked = (a: number, b: number): string => `${lengthText(a, units)} × ${lengthText(b, units)}`;
  const stack =
    plan.bars === 1
      ? "One solid bar, nothing to weld"
      : `Stack ${lengthText(billet.stackHeight, units)} high, welded and dressed to ${worked(billet.dressedWidth, billet.weldedHeight)}; layers ${plan.layers === "flat" ? "flat" : "on edge"} in the blade; ${jointsText(plan)}`;
  const body = [
    `Bar ${size(plan.width, plan.thickness)}; ${sawLength(plan.cutLengthNominal, units)} would do at the usual losses, the rest covers high ones.`,
    ...cutsText(plan, units),
    `${stack}, ${plan.heats} heats.`,
    `${inBoth(massText, plan.mass, units)} of bar, of which ${massText(plan.waste, units)} does not end in the blade${costText(plan, job.shop.currency)}.`,
    `Reach: ${reachText(plan)}.`,
    ...plan.why.map((reason) => describeIssue(reason, units)),
  ];
  return [
    ...item(`${place}. `, `Cut ${cutText(plan, units)}`),
    ...body.flatMap((line) => item("   ", line)),
    ...plan.findings.flatMap((finding) => item("   ", findingText(finding, job))),
  ];
}

/** `2 joints`; a solid bar has nothing to weld. */
export function jointsText({ joints }: Pick<StockPlan, "joints">): string {
  if (joints === 0) return "nothing to weld";
  return joints === 1 ? "1 joint" : `${joints} joints`;
}

/** `; cost 10.78 EUR, saw cuts included`, or nothing where the bar has no price. */
export function costText({ cost }: StockPlan, currency: string | undefined): string {
  if (cost === undefined) return "";
  return `; cost ${cost.toFixed(2)}${currency === undefined ? "" : ` ${currency}`}, saw cuts included`;
}

function cutsText({ cuts }: StockPlan, units: FileUnits): string[] {
  if (cuts === undefined) return [];
  const show = (mm: number): string =>
    formatLength(mm, units, units === "mm" ? { resolution: 1 } : { remainder: false });
  const inHand = cuts.flatMap(({ length = 0, remainder }) =>
    remainder === undefined ? [] : [{ length, remainder }],
  );
  const endless = cuts.find(({ remainder }) => remainder === undefined);
  const lengths = new Set(inHand.map(({ length }) => show(length)));
  const bars = inHand.length === 1 ? "one bar" : `${inHand.length} bars`;
  // Leftovers beside whole bars: which of them is worth saying.
  const which = lengths.size > 1 ? ` (${inHand.map(({ length }) => show(length)).join(" and ")})` : "";
  const left = inHand.map(({ remainder }) => show(remainder)).join(" and ");
  const more =
    endless === undefined
      ? ""
      : `; ${endless.pieces === 1 ? "1 piece" : `${endless.pieces} pieces`} from a bar whose length the rack does not say`;
  return inHand.length === 0 ? [] : [`Sawn from ${bars} of the rack${which}; ${left} left over${more}.`];
}

function refusalLines(report: StockReport, { units, spec }: Job): string[] {
  if (report.rejected.length === 0) return [];
  const { considered, superfluous } = report;
  const idle =
    superfluous === 0
      ? ""
      : `; ${superfluous} could be made but ${superfluous === 1 ? "is" : "are"} better in nothing`;
  const tried = `${considered === 1 ? "1 stack was" : `${considered} stacks were`} tried${idle}`;
  return [
    ...wrap(`Refused (${tried})`),
    ...report.rejected.flatMap((refusal) =>
      item(
        `${String(refusal.count).padStart(4)}  `,
        describeIssue(refusalWithNearest(refusal, spec.steel.name), units),
      ),
    ),
  ];
}
