/** Records of jobs that lost so much a heat, for a shop that learns from them. */
import { DEMO_SHOP } from "./demo.js";

export interface Job {
  readonly loss?: number;
  readonly billet?: number;
  readonly heats?: number;
  /** Instead of what the loss makes of the billet. */
  readonly forged?: number;
  readonly more?: string;
}

/** A record that was begun by hand: a billet with its handling bar, the forged blade after some heats. */
export function recordText({ loss = 0.018, billet = 900, heats = 8, forged, more = "" }: Job): string {
  const mass = forged ?? Math.round(billet * (1 - loss) ** heats);
  return `scantling: 1
units: mm
knife: none.knife.yaml
entries:
  - { revision: 1, on: 2026-03-02, stage: billet, mass: ${billet + 200} g, tare: 200 g }
  - { revision: 2, on: 2026-03-03, stage: forged, mass: ${mass} g, heats: ${heats} }
${more}`;
}

export const filesOf = (jobs: readonly Job[], folder = "orders"): Record<string, string> =>
  Object.fromEntries(jobs.map((job, i) => [`${folder}/job-${i}.record.yaml`, recordText(job)]));

export const LOSSES = [0.0175, 0.019, 0.0184, 0.017, 0.0192, 0.0181];
export const JOBS = LOSSES.map((loss): Job => ({ loss }));
export const SHOP = { "shop.yaml": DEMO_SHOP };
export const world = (jobs: readonly Job[], more: Record<string, string> = SHOP) => ({
  files: { ...more, ...filesOf(jobs) },
});
