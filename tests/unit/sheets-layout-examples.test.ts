import { describe, expect, test } from "vitest";
import { everySheet, exampleJob, PAPERS, setFaults } from "../reference/sheets/sheet-set.js";
import { filesBelow, ROOT } from "./repository.js";

// Every sheet of every example on every paper: can be read, keeps to the paper, carries its check bars.
const EXAMPLES = filesBelow("examples", ".knife.yaml");

test("there are seven examples", () => expect(EXAMPLES).toHaveLength(7));

describe.each(["mm", "in"] as const)("the sheets of the examples in %s", (units) => {
  test.each(EXAMPLES)("of %s can be read on every paper", async (file) => {
    const measured = await exampleJob(`${ROOT}/${file}`, units);
    const sheets = await everySheet(measured);
    expect(sheets.filter((sheet) => "contents" in sheet).length).toBeGreaterThanOrEqual(7);
    const t0=performance.now();
    for (const paper of PAPERS) {
      const { faults, pages } = await setFaults(measured, sheets, paper);
      console.log(file, units, paper, pages, (performance.now()-t0).toFixed(0), faults.slice(0,5).join("\n"));
      expect.soft(faults).toEqual([]);
    }
  });
});
