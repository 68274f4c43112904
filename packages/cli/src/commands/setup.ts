import { forgeCard, ledgerBodies, mixedCardStack } from "@scantling/geometry";
import { deliverReport } from "../deliver.js";
import { EXIT, type ExitCode } from "../exit-code.js";
import { CommandFailure } from "../failure.js";
import type { Io } from "../io/io.js";
import { loadJob } from "../load.js";
import { inFileTerms, type Measured, measure } from "../measure.js";
import type { SetupOptions } from "../options.js";
import { jsonText, reportText } from "../report/documents.js";
import { headingLines } from "../report/heading.js";
import { type Setup, setupJson } from "../report/setup-json.js";
import { setupText } from "../report/setup-text.js";
import { type Bars, planBars } from "../stock-report.js";

/** `scantling setup FILE`: the numbers for the forge, in the order in which they are used. */
export async function setup(io: Io, file: string, options: SetupOptions): Promise<ExitCode> {
  const measured = measure(await loadJob(io, file, options));
  const bars = planBars(measured);
  const found = setupOf(measured, bars, options.plan);
  const report = options.json
    ? { name: "setup.json", content: jsonText(setupJson(found, measured.job)) }
    : {
        name: "setup.txt",
        content: reportText([...headingLines(measured), "", ...setupText(found, bars, measured.job)]),
      };
  await deliverReport(io, report, options);
  return EXIT.done;
}

/** The card of the plan that was asked for, the best one by default; undefined where the rack gives none. */
function setupOf(measured: Measured, { plans, mixed }: Bars, place = 1): Setup | undefined {
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
