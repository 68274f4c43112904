import { type Finding, length, type QuantityValue, share } from "../errors/issue.js";
import { LOSS_DEFAULTS } from "./defaults.js";
import type { LossSpec } from "./shop.js";

type LossName = keyof typeof LOSS_DEFAULTS;

const PRACTICE = "common practice, no source";

/** More than this, share or mm, is hardly a loss but a slip of the pen; with what each is lost by. */
export const GREATEST_LOSSES: Readonly<
  Record<LossName, { readonly most: number; readonly where: string; readonly basis: string }>
> = {
  scalePerHeat: { most: 0.05, where: "of the mass in a forging heat", basis: PRACTICE },
  scalePerWeldingHeat: { most: 0.08, where: "of the mass in a welding heat", basis: PRACTICE },
  heatTreatmentScale: { most: 0.05, where: "of the mass in heat treatment", basis: PRACTICE },
  skinPerHeat: { most: 0.25, where: "off every surface in a forging heat", basis: PRACTICE },
  skinPerWeldingHeat: { most: 0.6, where: "off every surface in a welding heat", basis: PRACTICE },
  skinHeatTreatment: { most: 0.1, where: "off every surface in heat treatment", basis: PRACTICE },
  cropPerEnd: { most: 40, where: "off each end of the billet", basis: PRACTICE },
  weldDressingPerSide: { most: 6, where: "off each long side of the billet", basis: PRACTICE },
  cleaningPerFace: { most: 1, where: "off each face of a joint", basis: PRACTICE },
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

const NAMES = Object.keys(LOSS_DEFAULTS).filter((name): name is LossName => name in GREATEST_LOSSES);

/**
 * Losses that can be reckoned with but that no shop has: a per cent too many becomes a bar as long as a street. Asked
 * of the high side, which lengths are cut for.
 *
 * @example
 * const scalePerHeat = { low: 0.6, value: 0.6, high: 0.6 };
 * lossFindings({ ...DEFAULT_SHOP.losses, scalePerHeat }).map(({ path }) => path); // ["losses.scalePerHeat"]
 */
export function lossFindings(losses: LossSpec): Finding[] {
  return NAMES.flatMap((name): Finding[] => {
    const { most, where, basis } = GREATEST_LOSSES[name];
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
