import type { DensityMark } from "./material.js";
import { isSameMaterial } from "./materials.js";

/** At what temperature a steel is hardened, °C; or that it does not harden. */
export interface HardeningRange {
  readonly steel: string;
  /** Left out together with `high`: it does not harden when quenched. */
  readonly low?: number;
  readonly high?: number;
  readonly stainless: boolean;
  readonly source: string;
  readonly mark: DensityMark;
}

const MEMORY = "from memory, unconfirmed: prefer the sheet that came with the bar";
const BLADESMITH = "a bladesmith's data page, which draws on published handbooks";

const carbon = (
  steel: string,
  [low, high]: readonly [number, number],
  source: string,
  mark: DensityMark,
): HardeningRange => ({ steel, low, high, stainless: false, source, mark });

const soft = (steel: string, stainless: boolean): HardeningRange => ({
  steel,
  stainless,
  source: MEMORY,
  mark: "from memory",
});

/** Hardening temperatures, °C; sources differ, so that only differences larger than an oven's error mean anything. */
export const HARDENING_RANGES: readonly HardeningRange[] = [
  carbon("1075", [800, 815], MEMORY, "from memory"),
  carbon("1080", [815, 815], MEMORY, "from memory"),
  carbon("1084", [815, 815], MEMORY, "from memory"),
  carbon("1095", [800, 800], `${BLADESMITH} (1475 °F)`, "secondary copy"),
  carbon("15N20", [800, 825], MEMORY, "from memory"),
  carbon("80CrV2", [830, 845], MEMORY, "from memory"),
  carbon("5160", [830, 830], "a bladesmiths' society page (1525 °F)", "secondary copy"),
  carbon("52100", [800, 845], `${BLADESMITH} (1475 to 1550 °F)`, "secondary copy"),
  carbon("O1", [788, 816], "three distributors' sheets", "secondary copy"),
  carbon("W2", [788, 788], "a distributor's sheet, quoted (1450 °F)", "secondary copy"),
  carbon("D2", [1010, 1024], "mill data sheet for D2", "secondary copy"),
  {
    steel: "AEB-L",
    low: 1060,
    high: 1060,
    stainless: true,
    source: "mill data sheet for the same steel under its other name (1940 °F)",
    mark: "secondary copy",
  },
  soft("1020", false),
  soft("pure iron", false),
  soft("wrought iron", false),
  soft("304", true),
  soft("316", true),
];

/**
 * Hardening temperature of a steel.
 *
 * @returns undefined where the table does not know it.
 *
 * @example
 * hardeningOf("75Ni8")?.high; // 825
 */
export function hardeningOf(steel: string): HardeningRange | undefined {
  return HARDENING_RANGES.find((row) => isSameMaterial(row.steel, steel));
}

/**
 * How far the hardening ranges of two steels lie apart, °C; 0 where they overlap, undefined where one does not harden.
 *
 * @example
 * const [a, b] = [hardeningOf("1095"), hardeningOf("5160")];
 * a && b && hardeningGap(a, b); // 30
 */
export function hardeningGap(a: HardeningRange, b: HardeningRange): number | undefined {
  if (a.low === undefined || a.high === undefined || b.low === undefined || b.high === undefined)
    return undefined;
  return Math.max(0, a.low - b.high, b.low - a.high);
}
