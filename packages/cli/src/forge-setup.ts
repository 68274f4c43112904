import { forgeCard, ledgerBodies, mixedCardStack } from "@scantling/geometry";
import { EXIT } from "./exit-code.js";
import { CommandFailure } from "./failure.js";
import { inFileTerms, type Measured } from "./measure.js";
import type { Setup } from "./report/setup-json.js";
import type { Bars } from "./stock-report.js";

/** The card of the plan that was asked for, the best one by default; undefined where the rack gives none. */
export function setupOf(measured: Measured, { plans, mixed }: Bars, place = 1): Setup | undefined {
  const { job, knife } = measured;
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
    if (stack === undefined) return undefined;
    return {
      place,
      ...(plan === undefined ? {} : { plan }),
      card: forgeCard(knife, bodies, job.shop, stack),
    };
  });
}
