/** Density of water, g/mm³: 1000 kg/m³. */
const WATER = 0.001;
/** Moisture at which the tables give the density of air-dry wood, as a share of the oven-dry mass. */
export const AIR_DRY = 0.12;
/** Above this moisture wood swells no further. */
const FIBRE_SATURATION = 0.3;
/** Volume lost from green to oven-dry for each unit of basic specific gravity. */
const SHRINKAGE = 0.265;
/** Assumption: no wood loses more of its volume than this; without a limit the rule has dense tropical woods lose a quarter. */
const MOST_SHRINKAGE = 0.15;

/**
 * Density of wood, g/mm³: ρ = ρ_w · G_x · (1 + x).
 *
 * Source: Wood Handbook (FPL-GTR-190), chapter 4, as quoted on a university forestry page (secondary copy).
 *
 * @param specificGravity - G_x: oven-dry mass over the mass of water that fills the volume at this moisture.
 * @param moisture - x, water as a share of the oven-dry mass, 0 or more.
 *
 * @example
 * woodDensity(0.4, 0.12); // 0.000448 g/mm³: 448 kg/m³
 */
export const woodDensity = (specificGravity: number, moisture: number): number =>
  WATER * specificGravity * (1 + moisture);

/**
 * Density of a wood at another moisture, g/mm³: dry substance and water change the mass, swelling the volume.
 *
 * The specific gravity follows the shrinkage relation G_x = G_b / (1 − a·s), s = 0.265·G_b, a = (30 − x)/30 with x in
 * per cent, a = 0 from 30 % on (Wood Handbook, chapter 4; from memory, unconfirmed), s kept to 0.15.
 *
 * @param density - at `from`, g/mm³.
 * @param moisture - the moisture to convert to, as a share.
 * @param from - the moisture at which the density holds: air-dry, unless told.
 *
 * @example
 * // ash, 0.68 g/cm³ air-dry, in a heated shop at 7 %
 * woodDensityAt(0.00068, 0.07); // 0.000668
 */
export function woodDensityAt(density: number, moisture: number, from = AIR_DRY): number {
  const given = density / (WATER * (1 + from));
  const before = dryness(from);
  const free = given / (1 + SHRINKAGE * before * given);
  const shrinkage = Math.min(SHRINKAGE * free, MOST_SHRINKAGE);
  const basic = given * (1 - before * shrinkage);
  return woodDensity(basic / (1 - dryness(moisture) * shrinkage), moisture);
}

/** How far below fibre saturation: 0 green, 1 oven-dry. */
const dryness = (moisture: number): number => Math.max(0, (FIBRE_SATURATION - moisture) / FIBRE_SATURATION);
