import { count, type Finding, length } from "../../errors/issue.js";
import { findingLimit, type GivenLimits } from "../../limits/finding-limits.js";
import { limitBasis } from "../../limits/limit.js";
import { STOCK_LIMITS } from "../../limits/shop-limits.js";

/** A bar to be upset endwise in one blow, any one unit of length. */
export interface Upset {
  /** Length that nothing supports. */
  readonly length: number;
  /** Diameter of the bar, or the least side of its section. */
  readonly diameter: number;
  /** Diameter that the die lets it grow to; left out where no die confines it. */
  readonly upsetDiameter?: number;
  /** Stock that stands out beyond the face of the die; left out where no die confines it. */
  readonly beyondDie?: number;
}

/** What the rules say of an upset, and by which of them. */
export interface UpsetVerdict {
  readonly allowed: boolean;
  /** 1: unsupported length. 2: confined diameter. 3: stock beyond the die. */
  readonly rule: 1 | 2 | 3;
}

/** Limits of the three rules, in diameters of the bar. */
export const UPSET_RULES = { unsupported: 3, upsetDiameter: 1.5, beyondDie: 1.5 } as const;

/** Sizes in inches do not come out whole in mm; a ratio that only rounding puts over the limit is not over. */
const RATIO_WITHIN = 1e-9;

const within = (size: number, diameter: number, most: number): boolean =>
  size / diameter <= most + RATIO_WITHIN;

/**
 * Whether a bar can be upset in one blow without buckling. Rule 1: up to three diameters unsupported. Longer only in a
 * die that confines it, rule 2, to one and a half diameters, and, rule 3, with no more than one and a half diameters
 * standing out of the die.
 *
 * @returns The verdict, and the rule that decides.
 * Source: Forging Industry Association, design rules for parts made by upset forgings.
 *
 * @example
 * upsetRule({ length: 60, diameter: 20 }); // { allowed: true, rule: 1 }
 * upsetRule({ length: 80, diameter: 20, upsetDiameter: 32, beyondDie: 10 }); // { allowed: false, rule: 2 }
 */
export function upsetRule({ length, diameter, upsetDiameter, beyondDie }: Upset): UpsetVerdict {
  if (within(length, diameter, UPSET_RULES.unsupported)) return { allowed: true, rule: 1 };
  if (upsetDiameter === undefined || !within(upsetDiameter, diameter, UPSET_RULES.upsetDiameter))
    return { allowed: false, rule: 2 };
  const allowed = beyondDie !== undefined && within(beyondDie, diameter, UPSET_RULES.beyondDie);
  return { allowed, rule: 3 };
}

/**
 * What is unwise about standing a piece on edge to squeeze its width back: it folds where it is too tall for its
 * thickness. Warned of above the shop's limit, noted above the textbook's.
 *
 * @param piece - Width, which stands upright, and thickness, mm.
 * @param path - Where the finding belongs.
 * @param maxSlenderness - Most times its thickness that a piece on edge may be tall.
 *
 * @example
 * edgeSqueezeFindings({ width: 40, thickness: 10 }, "press").map(({ code }) => code); // ["on-edge-too-tall"]
 */
export function edgeSqueezeFindings(
  piece: { readonly width: number; readonly thickness: number },
  path: string,
  maxSlenderness: number = STOCK_LIMITS.maxSlenderness.value,
  given: GivenLimits = {},
): Finding[] {
  const { width, thickness } = piece;
  const easyOnEdge = findingLimit("easyOnEdge", given);
  const easy = Math.min(easyOnEdge.value, maxSlenderness);
  if (within(width, thickness, easy)) return [];
  const tooTall = !within(width, thickness, maxSlenderness);
  const limit = tooTall ? maxSlenderness : easy;
  return [
    {
      code: tooTall ? "on-edge-too-tall" : "on-edge-tall",
      path,
      severity: tooTall ? "warn" : "note",
      text: `On edge the piece is {width} tall and {thickness} thick, {ratio} times; {limit} times is the most${
        tooTall ? "" : " that goes easily"
      }, which is {tallest}. Squeeze the width back earlier, in light blows.`,
      values: {
        width: length(width),
        thickness: length(thickness),
        ratio: count(Math.round((width / thickness) * 10) / 10),
        limit: count(limit),
        tallest: length(limit * thickness),
      },
      basis: tooTall ? limitBasis(maxSlenderness, STOCK_LIMITS.maxSlenderness) : easyOnEdge.basis,
    },
  ];
}
