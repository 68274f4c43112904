import { beforeAll, describe, expect, test } from "vitest";
import type { Job } from "../../packages/cli/src/load.js";
import { type Measured, measure } from "../../packages/cli/src/measure.js";
import { makePlotsModel } from "../../packages/cli/src/models/plots-model.js";
import { planBars } from "../../packages/cli/src/stock-report.js";
import { hunter } from "../reference/sheets/hunters.js";
import { nameFaults } from "../reference/sheets/plot-names.js";
import { randomJob } from "../reference/sheets/random-job.js";
import { jobOf } from "../reference/sheets/sheet-set.js";
import { filesBelow, ROOT } from "./repository.js";

// The name of a curve on a plot is nearer to it than to any other, none runs through it, and what is farther off is tied.
const faultsOf = (measured: Measured): string[] => nameFaults(makePlotsModel(measured, planBars(measured)));
const upTo = (count: number): number[] => Array.from({ length: count }, (_, index) => index);

describe("the names on the plots cannot be misread", () => {
  let base: Job;
  beforeAll(async () => {
    base = await jobOf(`${ROOT}/examples/market-garden/harvest.knife.yaml`);
  });

  describe.each(["mm", "in"] as const)("in %s", (units) => {
    test.each(filesBelow("examples", ".knife.yaml"))("of %s", async (file) => {
      expect(faultsOf(measure(await jobOf(`${ROOT}/${file}`, units)))).toEqual([]);
    });
  });

  test.each(upTo(40))("of random knife %i", (index) => {
    expect(faultsOf(randomJob(base, index).measured)).toEqual([]);
  });

  test.each(upTo(20))("of random hunter %i", (index) => {
    expect(faultsOf(hunter(base, index))).toEqual([]);
  });
});
