import type { Knife } from "../../blade/knife.js";
import { isSameMaterial } from "../../materials/materials.js";
import { flatSection } from "../search.js";
import type { RackBar } from "../shop.js";
import { coreForLine, coreLinesAt, coreShare } from "./core-line.js";
import { type AskedCoreLine, forgedThicknessAt } from "./core-report.js";
import type { CladSpec } from "./spec.js";

/** A bar of the rack that would put the core line into the band. */
export interface CoreBar {
  readonly part: "core" | "cladding";
  readonly bar: RackBar;
  /** Core that it gives, and the height of its line, mm. */
  readonly core: number;
  readonly height: number;
}

/** What would put the core line into its band; mm. */
export interface CoreAdvice {
  /** Core bar for the middle of the band with the cladding as it is; undefined where none is thick enough. */
  readonly core: number;
  /** Cladding bar for the middle of the band with the core as it is. */
  readonly cladding: number;
  /** Bars of the rack, of each part the one whose line comes nearest to the middle of the band. */
  readonly bars: readonly CoreBar[];
}

/**
 * Sizes of core or cladding that put the core line into its band: exact ones, and what the rack has.
 *
 * @param cleaning - Ground off each face of a joint, mm.
 *
 * @example
 * const [core, cladding] = [{ steel: { name: "1095" }, thickness: 4 }, { steel: { name: "1020" }, thickness: 3 }];
 * const stack = { kind: "clad", core, cladding, width: 30 } as const;
 * // 1.2 mm of the 4.4 that are forged: 2·3·1.2/(4.4 − 1.2)
 * coreAdvice(knife, stack, 0, { x: 0, low: 7, high: 9 }, []).core; // 2.25
 */
export function coreAdvice(
  knife: Knife,
  stack: CladSpec,
  cleaning: number,
  asked: AskedCoreLine,
  rack: readonly RackBar[],
): CoreAdvice {
  const middle = (asked.low + asked.high) / 2;
  const forged = forgedThicknessAt(knife, asked.x);
  const share = coreForLine(knife, asked.x, middle) / forged;
  const [core, cladding] = [stack.core.thickness - 2 * cleaning, stack.cladding.thickness - cleaning];
  const heightWith = (coreBar: number, claddingBar: number): { core: number; height: number } => {
    const thickness = forged * coreShare(coreBar, claddingBar, cleaning);
    const { right, left } = coreLinesAt(knife, asked.x, thickness);
    return {
      core: thickness,
      height: Math.max(right ?? Number.POSITIVE_INFINITY, left ?? Number.POSITIVE_INFINITY),
    };
  };
  const candidates = rack.flatMap((bar): CoreBar[] => {
    const { width, thickness } = flatSection(bar);
    if (bar.steel === undefined || width < stack.width - SAME_SIZE) return [];
    return (["core", "cladding"] as const).flatMap((part): CoreBar[] => {
      if (!isSameMaterial(bar.steel ?? "", stack[part].steel.name)) return [];
      const found =
        part === "core"
          ? heightWith(thickness, stack.cladding.thickness)
          : heightWith(stack.core.thickness, thickness);
      return found.height < asked.low || found.height > asked.high ? [] : [{ part, bar, ...found }];
    });
  });
  const nearest = (part: CoreBar["part"]): CoreBar[] =>
    candidates
      .filter((candidate) => candidate.part === part)
      .sort((a, b) => Math.abs(a.height - middle) - Math.abs(b.height - middle))
      .slice(0, 1);
  return {
    core: (2 * cladding * share) / (1 - share) + 2 * cleaning,
    cladding: (core * (1 - share)) / (2 * share) + cleaning,
    bars: [...nearest("core"), ...nearest("cladding")],
  };
}

/** Sizes closer than this are one: a rack's label rounds, mm. */
export const SAME_SIZE = 0.06;
