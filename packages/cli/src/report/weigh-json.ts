import type { Measured } from "../measure.js";
import { type ReportStation, stationsOf } from "../stations.js";
import { findingJson } from "./findings.js";
import { materialsJson } from "./materials.js";
import { stationsJson } from "./stations.js";

type Point = { readonly x: number; readonly y: number; readonly z: number };

const point = ({ x, y, z }: Point): [number, number, number] => [x, y, z];

/**
 * The weight for programs: `scantling/weigh/1`. `steel` is blade and tang in one piece; `parts` add up to the knife,
 * the steel among them; intervals hold 95 times of 100. mm, mm², mm³, g, g·mm², degrees.
 */
export function weighJson(
  measured: Measured,
  stations: readonly ReportStation[] = stationsOf(measured.knife),
): unknown {
  const { weight, interval, findings, job } = measured;
  const { steel, knife, parts } = weight;
  const { xx, yy, zz, xy, yz, zx } = steel.inertia;
  return {
    schema: "scantling/weigh/1",
    steel: {
      volumeMm3: steel.volume,
      massG: steel.mass,
      surfaceMm2: steel.surface,
      centreMm: point(steel.centre),
      inertiaGMm2: { xx, yy, zz, xy, yz, zx },
    },
    knife: {
      massG: knife.mass,
      massIntervalG: interval.massInterval,
      balanceFromHeelMm: knife.balanceFromHeel,
      balanceFromHandleMm: knife.balanceFromHandle,
      balanceIntervalMm: interval.balanceInterval,
    },
    parts: parts.map(({ name, mass, centre }) => ({ name, massG: mass, centreMm: point(centre) })),
    materials: materialsJson(job.spec),
    stations: stationsJson(measured, stations),
    interval: interval.contributions.map(({ input, share, balanceShare }) => ({
      input,
      share,
      balanceShare,
    })),
    findings: findings.map((finding) => findingJson(finding, job)),
  };
}
