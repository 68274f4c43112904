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
/** Name of a row of the steel ledger. */
export type LedgerRowName = (typeof LEDGER_ROWS)[number];

/** One row of the steel ledger: its name, mm³ and g. */
export interface LedgerRow {
  readonly row: LedgerRowName;
  readonly volume: number;
  readonly mass: number;
}

export type { ForgedStation, LedgerBodies } from "../blade/ledger-bodies.js";
