/** Rows of the steel ledger, finished blade first. */
export const LEDGER_ROWS = [
  "finished-blade",
  "sharpening",
  "finish-grinding",
  "heat-treatment-scale",
  "ready-to-harden",
  "drilling",
  "bevel-grinding",
  "tang-grinding",
  "face-grinding",
  "profile-trimming",
  "forged-blade",
  "forging-scale",
  "dressed-billet",
  "cropping",
  "weld-dressing",
  "welding-scale",
  "bar-cleaning",
  "spare",
  "bars-as-cut",
] as const;
export type LedgerRowName = (typeof LEDGER_ROWS)[number];

export interface LedgerRow {
  readonly row: LedgerRowName;
  readonly volume: number;
  readonly mass: number;
}

/** One station of the forged blade: what the planner needs to know about its section. */
export interface ForgedStation {
  /** mm from the heel, negative in the tang. */
  readonly x: number;
  /** Section height, mm. */
  readonly height: number;
  /** Section area, mm². */
  readonly area: number;
  /** Greatest thickness of the section, mm; left out: the mean thickness (area ÷ height) stands in for it. */
  readonly thickness?: number;
}

/**
 * What the stock side knows of the knife: volumes that the geometry measured. Differences between successive bodies
 * are the upper ledger rows; heat-treatment scale is not among them, for it depends on the shop's losses.
 */
export interface LedgerBodies {
  /** g/mm³ */
  readonly density: number;
  /** Finished steel, blade and tang, mm³. */
  readonly finished: number;
  /** Surface of the finished steel before heat treatment, mm² (skin model). */
  readonly readySurface: number;
  /** Added volumes by row, mm³. */
  readonly sharpening: number;
  readonly finishGrinding: number;
  readonly drilling: number;
  readonly bevelGrinding: number;
  readonly tangGrinding: number;
  readonly faceGrinding: number;
  readonly profileTrimming: number;
  /** Surface of the forged blade, mm² (skin model). */
  readonly forgedSurface: number;
  /** Stations of the forged body ahead of the heel and through ricasso and tang, in order of x. */
  readonly stations: readonly ForgedStation[];
}
