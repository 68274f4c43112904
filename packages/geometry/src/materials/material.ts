/**
 * How a density is known. `looked up`: read on the page of a standard body, maker or author. `secondary copy`: read in
 * a copy of such a source. `computed`: arithmetic. `from memory`: a starting value that nobody has confirmed.
 */
export type DensityMark = "looked up" | "secondary copy" | "computed" | "from memory";

/** What a material of the table is. */
export type MaterialKind = "steel" | "metal" | "composite" | "wood" | "other";

/** One row of the materials table. Densities in g/mm³ (7.85 g/cm³ is 0.00785). */
export interface Material {
  readonly name: string;
  readonly aliases: readonly string[];
  readonly kind: MaterialKind;
  readonly density: number;
  /** Lowest and highest of the figures that sources give; only where they differ. */
  readonly low?: number;
  readonly high?: number;
  readonly source: string;
  readonly mark: DensityMark;
}

/** How a row is written in the tables: densities in g/cm³, as the sources print them. */
export interface MaterialRow {
  readonly name: string;
  readonly also?: readonly string[];
  readonly gPerCm3: number;
  readonly band?: readonly [low: number, high: number];
  readonly source: string;
  readonly mark: DensityMark;
}

/** 1 g/cm³ is 0.001 g/mm³. */
const gPerMm3 = (gPerCm3: number): number => gPerCm3 / 1000;

/** Turns table rows into materials of one kind. */
export function makeMaterials(kind: MaterialKind, rows: readonly MaterialRow[]): Material[] {
  return rows.map((row) => ({
    name: row.name,
    aliases: row.also ?? [],
    kind,
    density: gPerMm3(row.gPerCm3),
    ...(row.band ? { low: gPerMm3(row.band[0]), high: gPerMm3(row.band[1]) } : {}),
    source: row.source,
    mark: row.mark,
  }));
}
