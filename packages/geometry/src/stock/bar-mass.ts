/** Design convention of the European section tables, g/mm³ (7.85 kg/dm³). */
export const SECTION_TABLE_DENSITY = 0.00785;

/**
 * Nominal mass of a flat bar for each unit of its length.
 *
 * @param width - mm
 * @param thickness - mm
 * @param density - g/mm³; EN 10058 nominal masses use 0.00785.
 * @returns g/mm, which is the same number in kg/m. Nominal: a thickness limit of ±0.5 mm on 6 mm stock is ±8 %.
 *
 * @example
 * massPerLength(50, 10); // 3.925: a 50 × 10 flat has 3.925 kg a metre
 */
export function massPerLength(width: number, thickness: number, density = SECTION_TABLE_DENSITY): number {
  return width * thickness * density;
}

/**
 * Nominal mass of a piece of flat bar, g.
 *
 * @example
 * flatMass({ width: 50, thickness: 10, length: 6000 }); // 23 550 g
 */
export function flatMass(
  piece: { readonly width: number; readonly thickness: number; readonly length: number },
  density = SECTION_TABLE_DENSITY,
): number {
  return massPerLength(piece.width, piece.thickness, density) * piece.length;
}
