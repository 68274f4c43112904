import type { LedgerBodies } from "../blade-states.js";
import { type GateRoute, type GateStage, neededVolume, stageDensity } from "./stage-need.js";

/** Heats beyond those planned that the spare steel pays for. */
export interface ExtraHeats {
  /** Whole heats, at the usual losses; 0 where the steel is short. */
  readonly count: number;
  /** Steel that one more heat costs now, g. */
  readonly massPerHeat: number;
}

/** More than anyone would count, and an end to a loss of nothing. */
const MOST = 99;

/**
 * How many more heats than planned the steel pays for before it is short at the usual losses; undefined at stages that see
 * no more forging, and where the need cannot be told.
 *
 * @param mass - Steel in hand, g.
 *
 * @example
 * const { losses, limits } = DEFAULT_SHOP;
 * const route = { losses, limits, forging: knife.forging };
 * const bodies = ledgerBodies(knife);
 * const need = neededVolume(bodies, route, "forged", "value") ?? 0;
 * // 1.2 % each: two heats need 1/0.988² = 1.0244 times as much
 * extraHeats(bodies, route, "forged", 1.03 * need * bodies.density)?.count; // 2
 */
export function extraHeats(
  bodies: LedgerBodies,
  route: GateRoute,
  stage: GateStage,
  mass: number,
): ExtraHeats | undefined {
  if (stage !== "billet" && stage !== "forged" && stage !== "cut") return undefined;
  const density = stageDensity(bodies, route, stage);
  const volume = mass / density;
  const need = needAfter(bodies, route, stage, 0);
  const once = needAfter(bodies, route, stage, 1);
  if (need === undefined || once === undefined) return undefined;
  let count = 0;
  while (count < MOST) {
    const next = needAfter(bodies, route, stage, count + 1);
    if (next === undefined || next > volume) break;
    count++;
  }
  return { count: need > volume ? 0 : count, massPerHeat: (once - need) * density };
}

/** Volume needed with some heats more than planned; a forged blade goes back into the fire as it is. */
function needAfter(
  bodies: LedgerBodies,
  route: GateRoute,
  stage: GateStage,
  heats: number,
): number | undefined {
  if (stage !== "forged") {
    const forging = { ...route.forging, heats: route.forging.heats + heats };
    return neededVolume(bodies, { ...route, forging }, stage, "value");
  }
  const need = neededVolume(bodies, route, "forged", "value");
  if (need === undefined) return undefined;
  const { losses } = route;
  return losses.scaleModel === "skin"
    ? need + heats * losses.skinPerHeat.value * bodies.forgedSurface
    : need / (1 - losses.scalePerHeat.value) ** heats;
}
