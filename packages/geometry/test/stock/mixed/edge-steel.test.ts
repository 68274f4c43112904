import { describe, expect, test } from "vitest";
import { type Finding, ledgerBodies } from "../../../src/index.js";
import { planMixed } from "../../../src/stock/mixed/plan-mixed.js";
import type { CladSpec } from "../../../src/stock/mixed/spec.js";
import { edgeSteelFindings } from "../../../src/stock/mixed/steel-findings.js";
import { shopWith } from "../fixtures.js";
import { BOWIE_STACK, petty, pettyStack } from "./stacks.js";

const knife = petty();
const codes = (findings: readonly Finding[]): string[] => findings.map(({ code }) => code);
const pair = (core: string, cladding: string): CladSpec => ({
  ...pettyStack(2.5, 3),
  core: { steel: { name: core }, thickness: 2.5 },
  cladding: { steel: { name: cladding }, thickness: 3 },
});
const plan = (stack: CladSpec) => planMixed(knife, ledgerBodies(knife), shopWith({ rack: [] }), stack);

describe("the core and the steel that the file names", () => {
  test.each([
    ["O1", "52100", ["core-not-the-steel"]],
    ["O1", "O1", []],
    // A name of the smith's own for the whole.
    ["O1", "O1 and low-carbon", []],
  ])("a core of %s in a knife of %s: %o", (core, steel, wanted) => {
    expect(codes(edgeSteelFindings(pair(core, "1020"), steel))).toEqual(wanted);
  });

  test("a core that is not the knife's steel is found by the plan, one of layers is not looked for", () => {
    const { findings } = plan(pair("O1", "1020"));
    expect(findings.find(({ code }) => code === "core-not-the-steel")).toMatchObject({
      severity: "warn",
      path: "stack.core.steel",
      values: { core: "O1", steel: "1095" },
    });
    expect(codes(plan(pair("1095", "1020")).findings)).not.toContain("core-not-the-steel");
    expect(edgeSteelFindings(BOWIE_STACK, "52100")).toEqual([]);
  });
});
