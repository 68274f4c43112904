import {
  type ExtraHeats,
  extraHeats,
  type Finding,
  GATE_STAGES,
  type GateRoute,
  type GateStage,
  gateLimits,
  handlingBarFindings,
  type LedgerBodies,
  ledgerBodies,
  type MixedNeed,
  type MixedPlan,
  mixedNeed,
  questionRises,
  type StageNeed,
  type StockPlan,
  stageGrowth,
  stageNeed,
  steelBand,
  steelFindings,
  type WeighIn,
  weighIn,
} from "@scantling/geometry";
import { EXIT } from "./exit-code.js";
import { CommandFailure } from "./failure.js";
import {
  type AsWeighed,
  asWeighed,
  type ReadingReport,
  readingReport,
  type SimilarReport,
  similarReports,
} from "./gate-costs.js";
import { type GateMasses, type GateReading, readMasses, readReadings } from "./gate-input.js";
import { unitSlip } from "./gate-slip.js";
import type { Job } from "./load.js";
import { inFileTerms, type Measured } from "./measure.js";
import type { GateOptions } from "./options.js";
import { type Bars, planBars } from "./stock-report.js";

/** The stack of a blade of two or more steels, in place of a plan. */
export interface GateStackReport {
  readonly plan: MixedPlan;
  /** Undefined where no length of it feeds the blade. */
  readonly need: MixedNeed | undefined;
}

/** Everything that is found at a gate. */
export interface GateReport {
  readonly stage: GateStage;
  readonly masses: GateMasses;
  /** The plan that the bars are from, with its number; undefined where no bars are known. */
  readonly plan: { readonly number: number; readonly plan: StockPlan } | undefined;
  /** Undefined for a blade of one steel. */
  readonly stack: GateStackReport | undefined;
  /** What every stage needs; undefined for one that cannot be told. */
  readonly targets: readonly { readonly stage: GateStage; readonly need: StageNeed | undefined }[];
  /** Undefined where the mass is questioned and not used. */
  readonly found: WeighIn | undefined;
  readonly extra: ExtraHeats | undefined;
  readonly similar: readonly SimilarReport[];
  /** Of a finished blade that is light, in place of smaller knives; else undefined. */
  readonly asWeighed: AsWeighed | undefined;
  readonly readings: readonly ReadingReport[];
  readonly findings: readonly Finding[];
}

/**
 * Holds what was weighed and measured at a gate against the job.
 *
 * @param looking - Told that smaller knives are being looked for, which takes a while.
 */
export function gateReport(measured: Measured, options: GateOptions, looking: () => void): GateReport {
  const { job, knife } = measured;
  const { stage, plan } = options;
  const masses = readMasses(options, job.knife.units);
  const readings = readReadings(options, knife, job.knife.units);
  return weighAtGate(measured, { stage, masses, readings, plan }, looking);
}

/** What is held against the job at a gate. */
export interface GateQuestion {
  readonly stage: GateStage;
  readonly masses: GateMasses;
  readonly readings: readonly GateReading[];
  /** Which of the ranked plans, from 1; undefined: the best. */
  readonly plan: number | undefined;
}

/** The same of masses and readings that are read already. */
export function weighAtGate(
  measured: Measured,
  { stage, masses, readings: given, plan: place }: GateQuestion,
  looking: () => void,
): GateReport {
  const { job, knife } = measured;
  const readings = given.flatMap((reading) => readingReport(measured, stage, reading) ?? []);
  return inFileTerms(job, () => {
    const bars = planBars(measured);
    const plan = choosePlan(bars, place);
    const route = routeOf(job, measured, plan?.plan);
    const bodies = ledgerBodies(knife);
    const targets = GATE_STAGES.map((each) => ({ stage: each, need: stageNeed(bodies, route, each) }));
    const need = targets.find((each) => each.stage === stage)?.need;
    if (need === undefined) throw route.mixed === undefined ? needUnknown() : stackUnknown();
    const { found, findings } = weigh(measured, { bodies, route, need, masses, stage });
    const short = found?.verdict === "short" ? found : undefined;
    const finished = stage === "finished";
    if (short !== undefined && !finished) looking();
    const { mixed } = bars;
    return {
      stage,
      masses,
      plan,
      stack: mixed === undefined ? undefined : { plan: mixed, need: mixedNeed(bodies, route) },
      targets,
      found,
      extra: isEnough(found) ? extraHeats(bodies, route, stage, found.least) : undefined,
      similar: short === undefined || finished ? [] : similarReports(measured, route, short),
      asWeighed: short !== undefined && finished ? asWeighed(measured, short) : undefined,
      readings,
      findings: [
        ...findings,
        ...stackFindings(mixed, stage),
        ...readings.flatMap((reading) => reading.findings),
      ],
    };
  });
}

const isEnough = (found: WeighIn | undefined): found is WeighIn =>
  found?.verdict === "enough" || found?.verdict === "enough-at-usual-losses";

/** The plan that was asked for, the best one by default; undefined where the rack gives none. */
export function choosePlan({ plans, mixed }: Bars, place = 1): GateReport["plan"] {
  const plan = plans[place - 1];
  if (plan !== undefined) return { number: place, plan };
  if (place === 1) return undefined;
  if (mixed !== undefined) throw stackIsThePlan(place);
  throw new CommandFailure(
    EXIT.usage,
    "no-such-plan",
    `there is no plan ${place}: the rack gives ${plans.length === 1 ? "1 plan" : `${plans.length} plans`}`,
    "scantling stock FILE lists them.",
  );
}

const stackIsThePlan = (place: number): CommandFailure =>
  new CommandFailure(
    EXIT.usage,
    "no-such-plan",
    `there is no plan ${place}: the stack in the knife file is the only one`,
    "Leave --plan out.",
  );

/** What the knife is to be made by: its bars, or its own stack. */
export function routeOf(
  { shop, knife: file }: Job,
  { knife }: Measured,
  plan: StockPlan | undefined,
): GateRoute {
  const { losses, limits, kerf } = shop;
  if (file.stack !== undefined)
    return { losses, limits, forging: knife.forging, mixed: { stack: file.stack, kerf } };
  const stack =
    plan === undefined ? {} : { stack: { bars: plan.bars, width: plan.width, thickness: plan.thickness } };
  return { losses, limits, forging: knife.forging, ...stack };
}

const needUnknown = (): CommandFailure =>
  new CommandFailure(
    EXIT.usage,
    "need-unknown",
    "what this stage needs cannot be told without a plan: scale counted as a skin depends on the section of the bars",
    "List the bars in shop.yaml (scantling stock FILE shows the plans), or weigh the forged blade.",
  );

const stackUnknown = (): CommandFailure =>
  new CommandFailure(
    EXIT.usage,
    "need-unknown",
    "what this stage needs cannot be told: at high losses no length of the stack's bars feeds the blade",
    "Take wider or more bars in the knife file's stack (scantling stock FILE shows its welds), or weigh the forged blade.",
  );

/** What a stack is weighed with, where that is not the knife's own density: of use until the blade is forged. */
function stackFindings(mixed: MixedPlan | undefined, stage: GateStage): readonly Finding[] {
  if (mixed === undefined || (stage !== "cut" && stage !== "billet")) return [];
  return mixed.findings.filter(({ code }) => code === "stack-density");
}

interface Weighing {
  readonly bodies: LedgerBodies;
  readonly route: GateRoute;
  readonly need: StageNeed;
  readonly masses: GateMasses;
  readonly stage: GateStage;
}

/** The verdict, unless the mass is one that steel cannot have. */
function weigh(
  { job }: Measured,
  { bodies, route, need, masses, stage }: Weighing,
): { readonly found: WeighIn | undefined; readonly findings: readonly Finding[] } {
  const { scale, tare, before } = masses;
  const rises = questionRises({ stage, mass: scale - (tare ?? 0) }, before, gateLimits(job.shop.gates));
  const slip = unitSlip(scale, tare ?? 0, need.value, job.shop.limits.findings);
  const findings = [
    ...(slip === undefined ? [] : [slip]),
    ...rises.findings,
    ...handlingBarFindings(stage, route, tare !== undefined),
    ...(route.stack === undefined && route.mixed === undefined && (stage === "cut" || stage === "billet")
      ? [NO_PLAN]
      : []),
  ];
  if (slip !== undefined || rises.usable === undefined) return { found: undefined, findings };
  const band = steelBand(job.spec, job.knife.tolerances, job.tolerances);
  const growth = stageGrowth(bodies, route, stage);
  const found = weighIn(stage, rises.usable, need, growth, band, rises.least);
  return { found, findings: [...steelFindings(found, job.shop.losses, route.mixed?.stack), ...findings] };
}

const NO_PLAN: Finding = {
  code: "counted-as-solid-bar",
  severity: "note",
  path: "",
  text: "No plan of bars is known for this knife: counted as one solid bar, without crops, beads and welding scale. List the bars in shop.yaml.",
  basis: "the shop file",
};
