// A knife that nothing is to be said of, and what is found of it once something is changed.

import type { Finding, FindingCode, Severity } from "@scantling/geometry";
import { forgeCard, ledgerBodies, planStock } from "@scantling/geometry";
import { gateReport } from "../../packages/cli/src/gate-report.js";
import { loadJob } from "../../packages/cli/src/load.js";
import { type Measured, measure } from "../../packages/cli/src/measure.js";
import type { GateOptions } from "../../packages/cli/src/options.js";
import { allFindings, planBars } from "../../packages/cli/src/stock-report.js";
import { fakeIo } from "../../packages/cli/test/support/fake-io.js";

export type Node = { readonly [key: string]: unknown };

/** A knife that nothing is to be said of, but that no bars are known. Files are written in JSON here, which is YAML too. */
export const KNIFE: Node = {
  scantling: 1,
  order: { code: "RF", title: "red flags", type: "field" },
  units: "mm",
  steel: "O1",
  blade: {
    outline: { family: "drop-point", edgeLength: 120, heelHeight: 30 },
    ricasso: 12,
    thickness: [
      { at: "heel", is: 4 },
      { at: "tip", is: 3.5 },
    ],
    bevel: { form: "flat", height: 24, edgeThickness: 0.6 },
    edgeAngle: "18 deg",
  },
  tang: { form: "full", length: 110, heights: { front: 24, middle: 22, butt: 26 } },
};

const isNode = (value: unknown): value is Node =>
  typeof value === "object" && value !== null && !Array.isArray(value);

/** The first with what the second says otherwise; lists are taken whole, `null` takes a key out. */
export function merged(base: Node, change: Node): Node {
  const keys = new Set([...Object.keys(base), ...Object.keys(change)]);
  return Object.fromEntries(
    [...keys].flatMap((key) => {
      const [before, after] = [base[key], change[key]];
      if (!(key in change)) return [[key, before]];
      if (after === null) return [];
      return [[key, isNode(before) && isNode(after) ? merged(before, after) : after]];
    }),
  );
}

/** One knife beside one shop. */
export interface Case {
  readonly knife?: Node;
  readonly shop?: Node;
  /** At the scale instead of at the desk. */
  readonly gate?: GateOptions;
  /** At the forge instead of at the desk. */
  readonly setup?: boolean;
}

/** A mass on the scale at a stage, with nothing else weighed along. */
export const atScale = (stage: GateOptions["stage"], mass: number): Case => ({
  gate: { stage, mass: `${mass}g`, tare: "0g", json: false } as GateOptions,
});

async function measuredOf({ knife = {}, shop = {} }: Case): Promise<Measured> {
  const files = {
    "rf.knife.yaml": JSON.stringify(merged(KNIFE, knife)),
    "shop.yaml": JSON.stringify({ scantling: 1, units: "mm", ...shop }),
  };
  return measure(await loadJob(fakeIo({ files }), "rf.knife.yaml", {}));
}

/** What is found: by `check`, by `gate` where something was weighed, by `setup` at the forge. */
export async function findingsOf(one: Case): Promise<readonly Finding[]> {
  const measured = await measuredOf(one);
  if (one.gate !== undefined) return gateReport(measured, one.gate, () => undefined).findings;
  const bars = planBars(measured);
  if (one.setup !== true) return allFindings(measured, bars);
  const { knife, job } = measured;
  const bodies = ledgerBodies(knife);
  const [plan] = planStock(bodies, job.shop, knife.forging).plans;
  if (plan === undefined) throw new Error("no bar of the case becomes the blade");
  return forgeCard(knife, bodies, job.shop, plan).findings;
}

/** @param severity - left out: any. */
export async function find(one: Case, code: FindingCode, severity?: Severity): Promise<Finding | undefined> {
  return (await findingsOf(one)).find(
    (finding) => finding.code === code && (severity === undefined || finding.severity === severity),
  );
}
