/** Standard atomic masses, g/mol. Source: IUPAC, abridged. */
const IRON = 55.845;
const OXYGEN = 15.999;

/** An oxide of iron as it grows on hot steel. */
export interface FireScale {
  readonly name: string;
  /** Share of its mass that is iron. */
  readonly ironShare: number;
  /** Mass of it for each gram of iron. */
  readonly perIron: number;
}

function oxide(name: string, iron: number, oxygen: number): FireScale {
  const ironShare = (iron * IRON) / (iron * IRON + oxygen * OXYGEN);
  return { name, ironShare, perIron: 1 / ironShare };
}

/**
 * The three layers of fire scale, from the steel outward, by their stoichiometry.
 *
 * @example
 * FIRE_SCALE.wustite.ironShare; // 0.7773
 */
export const FIRE_SCALE = {
  wustite: oxide("wüstite, FeO", 1, 1),
  magnetite: oxide("magnetite, Fe₃O₄", 3, 4),
  haematite: oxide("haematite, Fe₂O₃", 2, 3),
} as const satisfies Record<string, FireScale>;

/**
 * Mass of scale that holds so much oxygen: what a piece must carry to have grown heavier by that, if nothing fell off. Wüstite is
 * nearly all of thick scale, and holds the least oxygen.
 *
 * @param gained - g
 * @returns g of scale, its iron with it.
 *
 * @example
 * scaleThatGains(5); // 22.45, of which 17.45 is iron
 */
export function scaleThatGains(gained: number): number {
  return gained / (1 - FIRE_SCALE.wustite.ironShare);
}
