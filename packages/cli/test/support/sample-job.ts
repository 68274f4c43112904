import type { FileUnits } from "@scantling/geometry/units";
import { type Job, loadJob } from "../../src/load.js";
import { type Measured, measure } from "../../src/measure.js";
import { DEMO_FILES, DEMO_SHOP } from "./demo.js";
import { fakeIo } from "./fake-io.js";
import { SAMPLE_SHOP } from "./sample-stock.js";

const FILE = "harvest.knife.yaml";

/** The demo's knife in the shop of the sample bars, of which no file is known. */
export async function sampleJob(units: FileUnits): Promise<Job> {
  const job = await loadJob(fakeIo({ files: DEMO_FILES }), FILE, { units });
  return { ...job, shop: SAMPLE_SHOP, shopPlaces: undefined };
}

/** A knife file beside a shop file, measured. */
export async function measured(knife: string, shop: string = DEMO_SHOP): Promise<Measured> {
  return measure(await loadJob(fakeIo({ files: { [FILE]: knife, "shop.yaml": shop } }), FILE, {}));
}
