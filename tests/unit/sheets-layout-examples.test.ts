import { describe, expect, test } from "vitest";
import { measure } from "../../packages/cli/src/measure.js";
import { jobOf, namesOf, setFaults, sheetSet } from "../reference/sheets/sheet-set.js";
import { filesBelow, ROOT } from "./repository.js";

// Every sheet of every example on paper: can be read, nothing of it cut off, keeps to the paper, carries its check bars.
const EXAMPLES = filesBelow("examples", ".knife.yaml");
const PAPERS = ["a4", "letter", "a3"] as const;

test("there are seven examples", () => expect(EXAMPLES).toHaveLength(7));

describe.each(["mm", "in"] as const)("the sheets of an example in %s", (units) => {
  test.each(EXAMPLES)(
    "%s: in order on A4, Letter and A3",
    async (file) => {
      const set = await sheetSet(measure(await jobOf(`${ROOT}/${file}`, units)));
      expect(namesOf(set)).toEqual(
        expect.arrayContaining(["pattern", "mirrored", "preform", "gauges", "sections", "sheath", "plots"]),
      );
      for (const paper of PAPERS) expect(await setFaults(set, paper, { whole: true })).toEqual([]);
    },
    120_000,
  );
});
