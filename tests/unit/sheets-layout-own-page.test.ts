import { describe, expect, test } from "vitest";
import { measure } from "../../packages/cli/src/measure.js";
import { jobOf, setFaults, sheetSet } from "../reference/sheets/sheet-set.js";
import { filesBelow, ROOT } from "./repository.js";

// Every sheet of every example on a page of its own size, which grows until all of it has room.
describe.each(["mm", "in"] as const)("the sheets of an example in %s", (units) => {
  test.each(filesBelow("examples", ".knife.yaml"))(
    "%s: in order on pages of their own",
    async (file) => {
      const set = await sheetSet(measure(await jobOf(`${ROOT}/${file}`, units)));
      expect(await setFaults(set, "fit")).toEqual([]);
    },
    120_000,
  );
});
