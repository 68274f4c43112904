import { type LimitEntry, PRACTICE } from "./limit.js";

const most = (quantity: "share" | "length", value: number, where: string) => ({
  quantity,
  value,
  about: `Greatest loss ${where} that is no slip of the pen`,
  trips: ["loss-unusual"] as const,
  basis: PRACTICE,
});

/** More than this is hardly a loss but a slip of the pen; shares and mm. */
export const LOSS_LIMITS = {
  mostScalePerHeat: most("share", 0.05, "of the mass in a forging heat"),
  mostScalePerWeldingHeat: most("share", 0.08, "of the mass in a welding heat"),
  mostHeatTreatmentScale: most("share", 0.05, "of the mass in heat treatment"),
  mostSkinPerHeat: most("length", 0.25, "off every surface in a forging heat"),
  mostSkinPerWeldingHeat: most("length", 0.6, "off every surface in a welding heat"),
  mostSkinHeatTreatment: most("length", 0.1, "off every surface in heat treatment"),
  mostCropPerEnd: most("length", 40, "off each end of the billet"),
  mostWeldDressingPerSide: most("length", 6, "off each long side of the billet"),
  mostCleaningPerFace: most("length", 1, "off each face of a joint"),
} as const satisfies Readonly<Record<string, LimitEntry>>;
