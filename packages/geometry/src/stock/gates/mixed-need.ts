import type { LedgerBodies } from "../blade-states.js";
import { type MixedTrace, makeMixedChain, traceMixed } from "../mixed/mixed-chain.js";
import { stackSteels } from "../mixed/stack-steels.js";
import type { Banded } from "../shop.js";
import type { GateRoute, StageNeed } from "./stage-need.js";

/** What one steel of a stack has to weigh at the saw, all its bars together. */
export interface SteelNeed {
  readonly steel: string;
  readonly pieces: number;
  /** By the steel's own density, g. */
  readonly need: StageNeed;
}

/** What a stack of two or more steels has to have before it is the dressed billet, at each side of the losses. */
export interface MixedNeed {
  /** Of every bar at the saw, mm. */
  readonly length: Banded;
  readonly steels: readonly SteelNeed[];
  /** The billet after each weld, first weld first, by the knife's own density, g; the last with its grooves not ground. */
  readonly welds: readonly StageNeed[];
  /** Whether grooves are ground after the last weld. */
  readonly grooved: boolean;
}

/**
 * What the bars of a stack need, steel by steel, and the billet after each weld; undefined where the route has no stack of
 * two or more steels, or where no length of it feeds the blade.
 *
 * @example
 * const [core, cladding] = [{ steel: { name: "1095" }, thickness: 2.5 }, { steel: { name: "1020" }, thickness: 3 }];
 * const { losses, limits, kerf } = DEFAULT_SHOP;
 * const mixed = { stack: { kind: "clad", core, cladding, width: 30 }, kerf } as const;
 * const route = { losses, limits, forging: knife.forging, mixed };
 * mixedNeed(ledgerBodies(knife), route)?.steels.length; // 2
 */
export function mixedNeed(bodies: LedgerBodies, route: GateRoute): MixedNeed | undefined {
  const { mixed, losses, limits, forging } = route;
  if (mixed === undefined) return undefined;
  const { stack, kerf } = mixed;
  const shop = { losses, limits, kerf };
  const at = (side: keyof Banded): MixedTrace =>
    traceMixed(makeMixedChain(bodies, shop, forging, stack, side));
  const traces = { low: at("low"), value: at("value"), high: at("high") };
  const banded = (figure: (trace: MixedTrace) => number): Banded => ({
    low: figure(traces.low),
    value: figure(traces.value),
    high: figure(traces.high),
  });
  const length = banded((trace) => trace.length);
  if (!Object.values(length).every(Number.isFinite)) return undefined;
  return {
    length,
    steels: stackSteels(stack).map(({ steel, pieces, massPerLength }) => ({
      steel,
      pieces,
      need: banded((trace) => massPerLength * trace.length),
    })),
    welds: traces.value.stages.map((_, weld) =>
      banded((trace) => (trace.stages[weld]?.out ?? Number.NaN) * bodies.density),
    ),
    grooved: traces.value.grooves > 0,
  };
}
