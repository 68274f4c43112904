import { type MixedChain, traceMixed } from "./mixed-chain.js";
import { type SimulatedWeld, simulateStack } from "./simulate.js";

/** Blades that one last bar holds, sawn apart: at usual losses and at high ones. */
export interface BladeCount {
  readonly usual: number;
  readonly high: number;
}

/** What lies on the anvil where the bars are cut to a length, at usual losses: more than is needed by all of the spare; mm. */
export interface StackAsCut {
  /** First weld first; as many as the plan's stages. */
  readonly welds: readonly SimulatedWeld[];
  /** The last bar: before its grooves, and with them ground and pressed flat. */
  readonly lastBar: { readonly length: number; readonly dressedLength: number };
  /** Length of the last bar that the blade takes, grooves ground and pressed flat: at usual losses and at high ones. */
  readonly needed: { readonly usual: number; readonly high: number };
  readonly blades: BladeCount;
}

/** Computed lengths carry the last digits of a double, mm. */
const HAIR = 1e-9;

/**
 * Forges a stack forwards from bars of a given length: the length of every billet on its way to the last bar, beside what the
 * blade takes of that, and how many blades the last bar holds. Sawing it takes a kerf between two blades.
 *
 * @param usual - Of the stack at usual losses, made by `makeMixedChain`.
 * @param high - The same at high ones.
 * @param cutLength - Length of each bar of the first stack, mm.
 *
 * @example
 * const [core, cladding] = [{ steel: { name: "1095" }, thickness: 2.5 }, { steel: { name: "1020" }, thickness: 3 }];
 * const stack = { kind: "clad", core, cladding, width: 30 } as const;
 * const bodies = ledgerBodies(knife);
 * const usual = makeMixedChain(bodies, DEFAULT_SHOP, knife.forging, stack, "value");
 * const high = makeMixedChain(bodies, DEFAULT_SHOP, knife.forging, stack, "high");
 * stackAsCut(usual, high, traceMixed(high).length).blades.high; // 1
 */
export function stackAsCut(usual: MixedChain, high: MixedChain, cutLength: number): StackAsCut {
  const { width, thickness } = usual.lastBar;
  const area = width * thickness;
  const forwards = simulateStack(usual, cutLength);
  const traces = { usual: traceMixed(usual), high: traceMixed(high) };
  const needed = { usual: traces.usual.dressed / area, high: traces.high.dressed / area };
  const dressedLength = forwards.dressed / area;
  const highLength = simulateStack(high, cutLength).dressed / area;
  return {
    welds: forwards.welds,
    lastBar: { length: (forwards.welds.at(-1)?.out ?? Number.NaN) / area, dressedLength },
    needed,
    blades: {
      usual: bladesFrom(dressedLength, needed.usual, usual.kerf),
      high: bladesFrom(highLength, needed.high, usual.kerf),
    },
  };
}

/** Pieces of a length from a bar, a kerf between two; none where no length is long enough. */
function bladesFrom(length: number, needed: number, kerf: number): number {
  const pieces = Math.floor((length + kerf + HAIR) / (needed + kerf));
  return Number.isFinite(pieces) ? pieces : 0;
}
