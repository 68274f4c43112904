import { type Finding, length, type QuantityValue, share } from "../errors/issue.js";
import { findingLimit, type GivenLimits } from "../limits/finding-limits.js";
import type { LOSS_LIMITS } from "../limits/loss-limits.js";
import { LOSS_DEFAULTS } from "./defaults.js";
import type { LossSpec } from "./shop.js";

type LossName = keyof typeof LOSS_DEFAULTS;

/** What each is lost by, and the limit above which it is hardly a loss but a slip of the pen. */
const GREATEST: Readonly<
  Record<LossName, { readonly limit: keyof typeof LOSS_LIMITS; readonly where: string }>
> = {
  scalePerHeat: { limit: "mostScalePerHeat", where: "of the mass in a forging heat" },
  scalePerWeldingHeat: { limit: "mostScalePerWeldingHeat", where: "of the mass in a welding heat" },
  heatTreatmentScale: { limit: "mostHeatTreatmentScale", where: "of the mass in heat treatment" },
  skinPerHeat: { limit: "mostSkinPerHeat", where: "off every surface in a forging heat" },
  skinPerWeldingHeat: { limit: "mostSkinPerWeldingHeat", where: "off every surface in a welding heat" },
  skinHeatTreatment: { limit: "mostSkinHeatTreatment", where: "off every surface in heat treatment" },
  cropPerEnd: { limit: "mostCropPerEnd", where: "off each end of the billet" },
  weldDressingPerSide: { limit: "mostWeldDressingPerSide", where: "off each long side of the billet" },
  cleaningPerFace: { limit: "mostCleaningPerFace", where: "off each face of a joint" },
};

/** What the other scale model counts instead. */
const ONLY_IN: Readonly<Partial<Record<LossName, LossSpec["scaleModel"]>>> = {
  scalePerHeat: "fraction",
  scalePerWeldingHeat: "fraction",
  heatTreatmentScale: "fraction",
  skinPerHeat: "skin",
  skinPerWeldingHeat: "skin",
  skinHeatTreatment: "skin",
};

const NAMES = Object.keys(LOSS_DEFAULTS).filter((name): name is LossName => name in GREATEST);

/**
 * Losses that can be reckoned with but that no shop has: a per cent too many becomes a bar as long as a street. Asked
 * of the high side, which lengths are cut for.
 *
 * @example
 * const scalePerHeat = { low: 0.6, value: 0.6, high: 0.6 };
 * lossFindings({ ...DEFAULT_SHOP.losses, scalePerHeat }).map(({ path }) => path); // ["losses.scalePerHeat"]
 */
export function lossFindings(losses: LossSpec, given: GivenLimits = {}): Finding[] {
  return NAMES.flatMap((name): Finding[] => {
    const { limit, where } = GREATEST[name];
    const { value: most, basis } = findingLimit(limit, given);
    const model = ONLY_IN[name];
    const { high, value } = losses[name];
    if (high <= most || (model !== undefined && model !== losses.scaleModel)) return [];
    const usual = LOSS_DEFAULTS[name];
    const show = (size: number): QuantityValue => (usual.quantity === "share" ? share(size) : length(size));
    return [
      {
        code: "loss-unusual",
        path: `losses.${name}`,
        severity: "warn",
        text: `${value > most ? "{value}" : "{value}, the most that the shop file allows for,"} is far more than is usually lost ${where}: {low} to {high}. Weigh or measure a piece before and after, and put that in.`,
        values: {
          value: show(value > most ? value : high),
          low: show(usual.low),
          high: show(usual.high),
          most: show(most),
        },
        basis,
      },
    ];
  });
}
