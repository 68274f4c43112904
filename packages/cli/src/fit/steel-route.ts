import type { GateRoute } from "@scantling/geometry";
import { EXIT } from "../exit-code.js";
import { CommandFailure } from "../failure.js";
import { routeOf } from "../gate-report.js";
import type { Measured } from "../measure.js";
import { planBars } from "../stock-report.js";

/** The bars that steel to be cut is counted for: the best plan of the knife as drawn, or its own stack. */
export function steelRoute(measured: Measured): GateRoute {
  const { plans } = planBars(measured);
  const route = routeOf(measured.job, measured, plans[0]);
  if (route.stack === undefined && route.mixed === undefined && route.losses.scaleModel === "skin")
    throw new CommandFailure(
      EXIT.usage,
      "need-unknown",
      "the steel to cut cannot be told without a plan: scale counted as a skin depends on the section of the bars",
      "List the bars in shop.yaml; scantling stock FILE shows the plans.",
    );
  return route;
}
