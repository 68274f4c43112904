import { count, type Issue, length, type QuantityValue, share } from "../errors/issue.js";
import { checkBenchTools } from "./check-bench-tools.js";
import { checkForge } from "./check-forge.js";
import { checkLimits } from "./check-limits.js";
import { checkPress } from "./check-press.js";
import { lengthIssues, positiveIssues } from "./number-issues.js";
import type { Banded, LossSpec, ShopSpec } from "./shop.js";

const SHARES = ["scalePerHeat", "scalePerWeldingHeat", "heatTreatmentScale"] as const;
const DEPTHS = [
  "skinPerHeat",
  "skinPerWeldingHeat",
  "skinHeatTreatment",
  "cropPerEnd",
  "weldDressingPerSide",
  "cleaningPerFace",
] as const satisfies readonly (keyof LossSpec)[];

function wrong(code: string, path: string, text: string, value: QuantityValue): Issue {
  return { code, path, text, values: { value } };
}

function checkBand(
  path: string,
  band: Banded,
  kind: (value: number) => QuantityValue,
  most: number,
): Issue[] {
  const numbers = [band.low, band.value, band.high];
  if (!numbers.every((number) => number >= 0 && number < most))
    return [
      wrong(
        "loss-out-of-range",
        path,
        most === 1
          ? "{value} is no share of the mass that can be lost: give 0 % or more, less than 100 %."
          : "{value} is no depth or length that can be lost: give 0 or more.",
        kind(numbers.find((number) => !(number >= 0 && number < most)) ?? band.value),
      ),
    ];
  if (band.low > band.value || band.value > band.high)
    return [
      wrong("loss-band-disordered", path, "{value} does not lie within its own band.", kind(band.value)),
    ];
  return [];
}

function checkShare(path: string, value: number): Issue[] {
  if (value >= 0 && value < 1) return [];
  return [
    wrong("share-out-of-range", path, "{value} has to be 0 % or more and less than 100 %.", share(value)),
  ];
}

/**
 * Rule by rule what has to hold of a shop before stock can be planned; every problem, in the order of the file.
 *
 * @example
 * checkShop({ ...DEFAULT_SHOP, cutStep: 0 }); // [{ code: "not-positive", path: "cutStep", … }]
 */
export function checkShop(shop: ShopSpec): Issue[] {
  const { limits, press, losses } = shop;
  const { easy, flatDies, fullers } = limits.reach;
  const whole = Number.isInteger(limits.maxBars) && limits.maxBars >= 1 && limits.maxBars <= 100;
  return [
    ...shop.rack.flatMap((bar, i) => [
      ...positiveIssues(`rack[${i}].width`, bar.width),
      ...positiveIssues(`rack[${i}].thickness`, bar.thickness),
      ...positiveIssues(`rack[${i}].length`, bar.length),
      ...(bar.count === undefined || (Number.isInteger(bar.count) && bar.count >= 1)
        ? []
        : [
            wrong(
              "not-a-count",
              `rack[${i}].count`,
              "{value} has to be a whole number, 1 or more.",
              count(bar.count),
            ),
          ]),
      ...(bar.pricePerKg === undefined || (bar.pricePerKg >= 0 && Number.isFinite(bar.pricePerKg))
        ? []
        : [
            wrong(
              "price-negative",
              `rack[${i}].pricePerKg`,
              "A price cannot be {value}.",
              count(bar.pricePerKg),
            ),
          ]),
    ]),
    ...SHARES.flatMap((key) => checkBand(`losses.${key}`, losses[key], share, 1)),
    ...DEPTHS.flatMap((key) => checkBand(`losses.${key}`, losses[key], length, Number.POSITIVE_INFINITY)),
    ...checkPress(press),
    ...checkForge(shop),
    ...checkBenchTools(shop),
    ...(whole
      ? []
      : [
          wrong(
            "not-a-count",
            "limits.maxBars",
            "{value} has to be a whole number from 1 to 100.",
            count(limits.maxBars),
          ),
        ]),
    ...checkShare("limits.minWeldReduction", limits.minWeldReduction),
    ...checkShare("limits.weldSpreadShare", limits.weldSpreadShare),
    ...lengthIssues("limits.minBilletLength", limits.minBilletLength),
    ...positiveIssues("limits.maxSlenderness", limits.maxSlenderness, count),
    ...checkShare("limits.mostNarrowing", limits.mostNarrowing),
    ...(easy >= 0 && easy <= flatDies && flatDies <= fullers && fullers <= 1
      ? []
      : [
          wrong(
            "reach-limits-disordered",
            "limits.reach",
            "The limits have to rise from easy over flat dies to fullers, which is {value}, and stay within 0 and 100 %.",
            share(fullers),
          ),
        ]),
    ...checkLimits(shop),
    ...positiveIssues("cutStep", shop.cutStep),
    ...lengthIssues("kerf", shop.kerf),
    ...positiveIssues("minKeep", shop.minKeep),
  ];
}
