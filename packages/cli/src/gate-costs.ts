import {
  answerReading,
  type Finding,
  type GateRoute,
  type GateStage,
  GeometryError,
  gateLimits,
  type KnifeSpec,
  largestSimilar,
  type ReadingAnswer,
  SIMILAR_CHANGES,
  type SimilarFound,
  type SimilarRefused,
  SpecError,
  type WeighIn,
  withReading,
} from "@scantling/geometry";
import { type AskAnswer, answerAsk, type Verdict } from "./asks.js";
import { CommandFailure } from "./failure.js";
import { FileError } from "./file/index.js";
import { type GateReading, isCaliperStage } from "./gate-input.js";
import { readingSlip } from "./gate-slip.js";
import { type Measured, measure } from "./measure.js";
import { isStop } from "./report/findings.js";

/** An ask of a changed knife that is not met for sure, and what it was before. */
export interface OpenAsk {
  readonly answer: AskAnswer;
  readonly was: Verdict;
}

/** What a change costs against the order. */
export interface AskCost {
  readonly answers: readonly AskAnswer[];
  /** Asks that are at risk or not met, those that were so before as well. */
  readonly open: readonly OpenAsk[];
  /** Findings that say stop, and that the knife as drawn does not have. */
  readonly stops: readonly Finding[];
  /** Mass of the whole knife, g. */
  readonly knifeMass: number;
}

/** What a finished blade that is light says of the order: its mass, for where the steel is missing no scale can tell. */
export interface AsWeighed {
  /** Lighter than drawn, g. */
  readonly lightBy: number;
  /** Mass of the whole knife with this blade, g. */
  readonly knifeMass: number;
  /** The ask of the mass, if there is one, and what it was as drawn. */
  readonly mass?: OpenAsk;
  /** The others as drawn. */
  readonly others: readonly AskAnswer[];
}

/** A smaller knife with what it costs, or why there is none. */
export type SimilarReport = (SimilarFound & { readonly cost: AskCost }) | SimilarRefused;

/** A reading with what it costs, where the blade comes out otherwise than drawn. */
export interface ReadingReport extends ReadingAnswer {
  readonly cost?: AskCost;
}

/**
 * The order held against a finished blade that is lighter than drawn. What is weighed has no band of its own any more: of the
 * knife's band that of its steel is taken out, in squares.
 */
export function asWeighed({ weight, answers }: Measured, { spare, knifeBand }: WeighIn): AsWeighed {
  const rest = (whole: number, steel: number): number => Math.sqrt(Math.max(0, whole ** 2 - steel ** 2));
  const knifeMass = weight.knife.mass + spare;
  const drawn = answers.find(({ ask }) => ask.name === "mass");
  const [low, high] = drawn?.figure.interval ?? [weight.knife.mass, weight.knife.mass];
  const interval = [
    knifeMass - rest(weight.knife.mass - low, knifeBand.minus),
    knifeMass + rest(high - weight.knife.mass, knifeBand.plus),
  ] as const;
  return {
    lightBy: -spare,
    knifeMass,
    ...(drawn === undefined
      ? {}
      : { mass: { answer: answerAsk(drawn.ask, { value: knifeMass, interval }), was: drawn.verdict } }),
    others: answers.filter((answer) => answer !== drawn),
  };
}

/** The largest knives of the same design that the steel makes, each with what it costs against the asks. */
export function similarReports(measured: Measured, route: GateRoute, found: WeighIn): SimilarReport[] {
  const { job, knife } = measured;
  const least = gateLimits(job.shop.gates).leastSimilar;
  // Of a mass that rose what is steel for sure.
  const question = { knife, route, stage: found.stage, mass: found.least, least };
  return SIMILAR_CHANGES.map((change): SimilarReport => {
    const one = largestSimilar(question, change);
    if (!one.possible) return one;
    const cost = costOf(measured, one.spec);
    return cost === undefined ? { change, possible: false, issue: BROKEN } : { ...one, cost };
  });
}

const BROKEN = {
  code: "breaks-rules",
  path: "",
  text: "The knife would break its own rules at that size. Change the drawing.",
} as const;

/** A reading, and what it costs where it is under size, or at a stage where nothing more comes off. */
export function readingReport(
  measured: Measured,
  stage: GateStage,
  reading: GateReading,
): ReadingReport | undefined {
  if (!isCaliperStage(stage)) return undefined;
  const { knife, job } = measured;
  const answer = answerReading(knife, stage, reading, job.tolerances);
  if (answer.questioned) {
    const slip = readingSlip(answer, reading, job.knife.units);
    return slip === undefined ? answer : { ...answer, findings: [slip] };
  }
  const stays = stage === "finished" || answer.kept;
  const off = reading.thickness - answer.finished;
  if (!(off < -HAIR || (stays && off > HAIR))) return answer;
  const cost = costOf(measured, withReading(knife, reading));
  return cost === undefined ? answer : { ...answer, cost };
}

/** What a caliper does not show, mm. */
const HAIR = 1e-6;

/** The asks held against a changed knife; undefined where that cannot be built. */
function costOf(measured: Measured, spec: KnifeSpec): AskCost | undefined {
  try {
    const changed = measure({ ...measured.job, spec });
    const known = new Set(measured.findings.filter(isStop).map(({ code, path }) => `${code} ${path}`));
    return {
      answers: changed.answers,
      open: changed.answers.flatMap((answer, i) =>
        answer.verdict === "met" ? [] : [{ answer, was: measured.answers[i]?.verdict ?? answer.verdict }],
      ),
      stops: changed.findings.filter((one) => isStop(one) && !known.has(`${one.code} ${one.path}`)),
      knifeMass: changed.weight.knife.mass,
    };
  } catch (error) {
    if (error instanceof FileError || error instanceof CommandFailure) return undefined;
    if (error instanceof SpecError || error instanceof GeometryError) return undefined;
    throw error;
  }
}
