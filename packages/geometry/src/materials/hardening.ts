import { fromFahrenheit } from "./heat-treatment/heat-step.js";
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

/** A figure of a source that gives °F, °C. */
const f = fromFahrenheit;

/** Hardening temperatures, °C; sources differ, so that only differences larger than an oven's error mean anything. */
export const HARDENING_RANGES: readonly HardeningRange[] = [
  carbon("1075", [800, 815], MEMORY, "from memory"),
  carbon("1080", [f(1500), f(1500)], MEMORY, "from memory"),
  carbon("1084", [f(1500), f(1500)], MEMORY, "from memory"),
  carbon("1095", [f(1475), f(1475)], BLADESMITH, "secondary copy"),
  carbon("15N20", [800, 825], MEMORY, "from memory"),
  carbon("80CrV2", [830, 845], MEMORY, "from memory"),
  carbon("5160", [f(1525), f(1525)], "a bladesmiths' society page", "secondary copy"),
  carbon("52100", [f(1475), f(1550)], BLADESMITH, "secondary copy"),
  carbon("O1", [f(1450), f(1500)], "three distributors' sheets", "secondary copy"),
  carbon("W2", [f(1450), f(1450)], "a distributor's sheet, quoted", "secondary copy"),
  carbon("D2", [f(1850), f(1875)], "mill data sheet for D2", "secondary copy"),
  {
    steel: "AEB-L",
    low: f(1940),
    high: f(1940),
    stainless: true,
    source: "mill data sheet for the same steel under its other name",
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
 * const [a, b] = [hardeningOf("15N20"), hardeningOf("80CrV2")];
 * a && b && hardeningGap(a, b); // 5
 */
export function hardeningGap(a: HardeningRange, b: HardeningRange): number | undefined {
  if (a.low === undefined || a.high === undefined || b.low === undefined || b.high === undefined)
    return undefined;
  return Math.max(0, a.low - b.high, b.low - a.high);
}
