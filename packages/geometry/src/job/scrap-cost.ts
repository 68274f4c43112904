/** A stage of the work: what it costs, and the chance that it fails. */
export interface CostStage {
  /** Money spent in it. */
  readonly cost: number;
  /** Chance that all that was spent up to and in it has to be spent anew; 0 to less than 1. */
  readonly scrapShare: number;
}

/** What the chance of failing adds to a stage, on the average of many. */
export interface StageRisk {
  /** Spent up to and in this stage, earlier failures counted. */
  readonly spent: number;
  /** `spent · p/(1 − p)` */
  readonly expected: number;
}

/**
 * What failures cost on the average, stage by stage: whoever fails begins again with the first stage.
 *
 * A stage that fails with the chance p is passed after `1/(1 − p)` tries on the average, and each try needs all that goes before it:
 * `E = (E_before + cost)/(1 − p)`, so the stage adds `(E_before + cost)·p/(1 − p)`. Over all stages a cost is spent
 * `1/Π(1 − p)` times, with the chances of its own stage and of all that follow.
 *
 * @throws {RangeError} of a chance outside 0 to less than 1: what always fails is never paid for.
 *
 * @example
 * scrapCosts([{ cost: 100, scrapShare: 0 }, { cost: 50, scrapShare: 0.25 }]);
 * // [{ spent: 100, expected: 0 }, { spent: 150, expected: 50 }]
 */
export function scrapCosts(stages: readonly CostStage[]): StageRisk[] {
  let spent = 0;
  return stages.map(({ cost, scrapShare }) => {
    if (!(scrapShare >= 0 && scrapShare < 1)) throw new RangeError(`a chance of ${scrapShare} to fail`);
    spent += cost;
    const risk = { spent, expected: (spent * scrapShare) / (1 - scrapShare) };
    spent += risk.expected;
    return risk;
  });
}
