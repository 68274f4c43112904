import {
  answerReading,
  type CaliperReading,
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
import type { AskAnswer, Verdict } from "./asks.js";
import { CommandFailure } from "./failure.js";
import { FileError } from "./file/index.js";
import { isCaliperStage } from "./gate-input.js";
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

/** A smaller knife with what it costs, or why there is none. */
export type SimilarReport = (SimilarFound & { readonly cost: AskCost }) | SimilarRefused;

/** A reading with what it costs, where the blade comes out otherwise than drawn. */
export interface ReadingReport extends ReadingAnswer {
  readonly cost?: AskCost;
}

/** The largest knives of the same design that the steel makes, each with what it costs against the asks. */
export function similarReports(measured: Measured, route: GateRoute, found: WeighIn): SimilarReport[] {
  const { job, knife } = measured;
  const least = gateLimits(job.shop.gates).leastSimilar;
  const question = { knife, route, stage: found.stage, mass: found.mass, least };
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
  reading: CaliperReading,
): ReadingReport | undefined {
  if (!isCaliperStage(stage)) return undefined;
  const { knife, job } = measured;
  const answer = answerReading(knife, stage, reading, job.tolerances);
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
