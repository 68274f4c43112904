import { formatLength, inchesToMm } from "@scantling/geometry/units";
import { type DualText, dualText } from "../../label-text.js";
import { inDecimals, type SheetUnits } from "../../sheet-units.js";

/** What wood is sawn to, mm and in: no less than it is, for what is sawn too small is lost. */
const SAW = { mm: 1, fractions: 1 / 16, decimals: 0.05 } as const;
/** A length this little over a step, in steps, is a double's last digit. */
const HAIR = 1e-6;

/** A size to saw wood to, rounded up: to whole mm, to the next 1/16 in, or to 0.05 in where inches are decimals. */
export const sawText = (mm: number, units: SheetUnits): DualText =>
  dualText(units, (shown) => {
    const inches = inDecimals(units) ? SAW.decimals : SAW.fractions;
    const step = shown === "mm" ? SAW.mm : inchesToMm(inches);
    const up = Math.ceil(mm / step - HAIR) * step;
    return formatLength(up, shown, { resolution: shown === "mm" ? SAW.mm : inches, remainder: false });
  });
