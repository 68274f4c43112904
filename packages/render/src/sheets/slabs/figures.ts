import type { HandleBlank } from "@scantling/geometry";
import { type FileUnits, formatLength, inchesToMm } from "@scantling/geometry/units";
import { type DualText, dualText } from "../../label-text.js";
import { inDecimals, type SheetUnits } from "../../sheet-units.js";

/** What wood is sawn to, mm and in: no less than it is, for what is sawn too small is lost. */
const SAW = { mm: 1, fractions: 1 / 16, decimals: 0.05 } as const;
/** A length this little over a step, in steps, is a double's last digit. */
const HAIR = 1e-6;

/** A size to saw wood to, rounded up: to whole mm, to the next 1/16 in, or to 0.05 in where inches are decimals. */
export const sawText = (mm: number, units: SheetUnits): DualText =>
  dualText(units, (shown) => sawnText(mm, units, shown));

/**
 * Thickness of a block for a pair of slabs: two slabs as each is told to be sawn, so that both come out of it, and the saw
 * cut between them; rounded up once more. Undefined where the blank is none of a pair.
 */
export function pairText(blank: HandleBlank, units: SheetUnits): DualText | undefined {
  const kerf = pairKerf(blank);
  if (kerf === undefined) return undefined;
  return dualText(units, (shown) =>
    sawnText(2 * sawnSize(blank.thickness, units, shown) + kerf, units, shown),
  );
}

/** Width of the saw cut between a pair of slabs, mm; undefined where the blank is none of a pair. */
export const pairKerf = ({ thickness, bookMatched }: HandleBlank): number | undefined =>
  bookMatched === undefined ? undefined : bookMatched - 2 * thickness;

const inchStep = (units: SheetUnits): number => (inDecimals(units) ? SAW.decimals : SAW.fractions);

function sawnSize(mm: number, units: SheetUnits, shown: FileUnits): number {
  const step = shown === "mm" ? SAW.mm : inchesToMm(inchStep(units));
  return Math.ceil(mm / step - HAIR) * step;
}

const sawnText = (mm: number, units: SheetUnits, shown: FileUnits): string =>
  formatLength(sawnSize(mm, units, shown), shown, {
    resolution: shown === "mm" ? SAW.mm : inchStep(units),
    remainder: false,
  });
