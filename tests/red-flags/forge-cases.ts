// Flags of what is weighed and pressed, just over and just under their limits.
import type { GateOptions } from "../../packages/cli/src/options.js";
import type { LimitCase } from "./cases.js";
import type { Case, Node } from "./world.js";

const findings = (limits: Node): Node => ({ findings: limits });
const rise = (mass: string): Case => ({
  gate: { stage: "forged", mass, tare: "0g", before: ["billet=400g"], json: false } as GateOptions,
});
const weighed = (mass: string, options: Partial<GateOptions>): Case => ({
  gate: { stage: "billet", mass, json: false, ...options } as GateOptions,
});
const welded = (crop: number): Case => ({
  ...weighed("900g", { tare: "0g" }),
  shop: { rack: [{ size: "4 x 25 mm" }], losses: { cropPerEnd: crop } },
});
/** Forged thickness at the heel: the drawing's 4 mm and the allowances of both faces. mm */
const FORGED = 4 + 2 * (0.5 + 0.1);
/** mm: elongation from 20 °C to 950 °C after EN 1993-1-2:2005, 3.4.1.1, is 2 · 10⁻⁵ · 950 − 6.2 · 10⁻³. */
const HOT = FORGED * (1 + 2e-5 * 950 - 6.2e-3);
const laidIn = (stop: number): Case => ({ knife: { forging: { stop } } });

export const FORGE_CASES: readonly LimitCase[] = [
  {
    flag: "R37",
    code: "mass-rose",
    over: rise("401g"),
    under: rise("399g"),
    fixed: "any rise is told; the limit decides whether the mass is used: below",
  },
  // 4 mm at the heel with the allowances of both faces; hot at 950 °C 1.278 % longer by the elongation of EN 1993-1-2.
  {
    flag: "R8",
    code: "stop-under-hot-height",
    over: laidIn(HOT - 0.0102),
    under: laidIn(HOT - 0.0098),
    moved: { limits: findings({ stopUnder: 0.02 }), turns: "over" },
  },
  // 2 % of 400 g.
  {
    flag: "R37, a mass that is not used",
    code: "mass-rose",
    severity: "warn",
    over: rise("408.1g"),
    under: rise("407.9g"),
    moved: { limits: {}, shop: { gates: { massRise: "1.9 %" } }, turns: "under" },
  },
  {
    flag: "R5",
    code: "tare-missing",
    over: weighed("900g", {}),
    under: weighed("900g", { tare: "0g" }),
    fixed: "a tare is given or it is not",
  },
  {
    flag: "R5, its weld",
    code: "handling-weld-left-in",
    over: welded(7.9),
    under: welded(8.1),
    moved: { limits: findings({ handlingWeld: 7.5 }), turns: "over" },
  },
];
