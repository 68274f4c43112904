import type { DensityMark } from "../material.js";
import { isSameMaterial } from "../materials.js";
import type { HeatSource } from "./heat-step.js";

/** How hard a steel comes out of the quench, HRC, before any temper. */
export interface AsQuenched extends HeatSource {
  readonly steel: string;
  readonly hardness: number;
}

const row = (steel: string, hardness: number, source: string, mark: DensityMark): AsQuenched => ({
  steel,
  hardness,
  source,
  mark,
});

const BLADESMITH = "a bladesmith's data page, which draws on published handbooks";
const DEALER = "a tool-steel dealer's page on 1080, quenched in water or brine";

/** Small sections, quenched as the steel wants it. */
export const AS_QUENCHED: readonly AsQuenched[] = [
  row("1080", 65, DEALER, "secondary copy"),
  row("1084", 65, `${DEALER}; 1084 is taken to be alike`, "secondary copy"),
  row("1095", 66, BLADESMITH, "secondary copy"),
  row("5160", 63, "a bladesmiths' society page: 58 to 63 HRC", "secondary copy"),
  row("52100", 66, `${BLADESMITH}: up to 66 HRC`, "secondary copy"),
  row("O1", 65, "a distributor's sheet", "secondary copy"),
  row("W2", 67, "a distributor's sheet, quoted", "secondary copy"),
  row("80CrV2", 65, "a metallurgist's page: 65 HRC and more", "secondary copy"),
];

/**
 * How hard a steel comes out of the quench; undefined where no source is known.
 *
 * @example
 * asQuenched("O1")?.hardness; // 65
 */
export const asQuenched = (steel: string): AsQuenched | undefined =>
  AS_QUENCHED.find((each) => isSameMaterial(each.steel, steel));
