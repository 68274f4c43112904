import {
  benchSetUp,
  forgeCard,
  type GateStage,
  ledgerBodies,
  mixedCardStack,
  type StageNeed,
  stageNeed,
} from "@scantling/geometry";
import { drillSizes } from "@scantling/geometry/units";
import { isFailed } from "./asks.js";
import { EXIT } from "./exit-code.js";
import { CommandFailure } from "./failure.js";
import { routeOf } from "./gate-report.js";
import { inFileTerms, type Measured } from "./measure.js";
import { isStop } from "./report/findings.js";
import type { Setup, StageMass } from "./report/setup-json.js";
import { allFindings, type Bars } from "./stock-report.js";

/** Where the steel is weighed between the saw and the hardening. */
const WEIGHED: readonly GateStage[] = ["billet", "forged", "ready"];

/** Forge card of the plan that was asked for, the best one by default, and the bench; without a card where the rack gives none. */
export function setupOf(measured: Measured, bars: Bars, place = 1): Setup {
  const { job, knife } = measured;
  const { plans, mixed } = bars;
  const plan = plans[place - 1];
  const count = mixed === undefined ? plans.length : 1;
  if (place > Math.max(1, count)) {
    throw new CommandFailure(
      EXIT.usage,
      "no-such-plan",
      `there is no plan ${place}: there ${count === 1 ? "is 1 plan" : `are ${count} plans`}`,
      "scantling stock FILE lists them.",
    );
  }
  return inFileTerms(job, () => {
    const bodies = ledgerBodies(knife);
    const stack = mixed === undefined ? plan : mixedCardStack(mixed, bodies, job.shop, knife.forging);
    const common = {
      place,
      stops: allFindings(measured, bars).filter(isStop),
      notMet: measured.answers.filter(isFailed).map(({ ask }) => ask.name),
      bench: benchSetUp(knife, job.shop, drillSizes()),
    };
    if (stack === undefined) return { ...common, masses: [] };
    const route = routeOf(job, measured, plan);
    const masses = WEIGHED.flatMap((stage): StageMass[] => {
      const need: StageNeed | undefined = stageNeed(bodies, route, stage);
      return need === undefined ? [] : [{ stage, need }];
    });
    return {
      ...common,
      ...(plan === undefined ? {} : { plan }),
      ...(mixed === undefined ? {} : { mixed }),
      masses,
      card: forgeCard(knife, bodies, job.shop, stack),
    };
  });
}
