// The same test over a range of random knives; the ranges are files of their own, so that they run side by side.
import { beforeAll, describe, expect, test } from "vitest";
import type { Job } from "../../../packages/cli/src/load.js";
import { SEED } from "../random/knives.js";
import { randomJob } from "./random-job.js";
import { jobOf, namesOf, setFaults, sheetSet } from "./sheet-set.js";

/** Sheets that any knife has; handle and holes are not on every one. */
const ALWAYS = ["pattern", "mirrored", "gauges", "sections", "sheath", "plots"];

/** All sheets of every knife from one index up to before another: on A4 those in mm, on Letter those in inches. */
export function randomSheets(shop: string, from: number, to: number): void {
  describe(`sheets of random knives ${from} to ${to - 1} (seed ${SEED})`, () => {
    let base: Job;
    beforeAll(async () => {
      base = await jobOf(shop);
    });
    test.each(Array.from({ length: to - from }, (_, index) => from + index))(
      "of number %i can be read, keep to the paper and carry their check bars",
      async (index) => {
        const { name, measured } = randomJob(base, index);
        const set = await sheetSet(measured);
        expect(namesOf(set)).toEqual(expect.arrayContaining(ALWAYS));
        expect(await setFaults(set, measured.job.units === "mm" ? "a4" : "letter"), name).toEqual([]);
      },
      120_000,
    );
  });
}
