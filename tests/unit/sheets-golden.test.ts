import { type Drawing, toSvg } from "@scantling/render";
import { describe, expect, test } from "vitest";
import { measure } from "../../packages/cli/src/measure.js";
import { drawSheets } from "../../packages/cli/src/sheets/draw-sheets.js";
import type { SheetName } from "../../packages/cli/src/sheets/sheet-names.js";
import { jobOf } from "../reference/sheets/sheet-set.js";
import { ROOT } from "./repository.js";

// One page of each sheet of the demo, as it was looked at. These only prove that nothing has changed; what the sheets
// have to be is in the other tests.
const DEMO = `${ROOT}/examples/market-garden/harvest.knife.yaml`;
const GOLDEN = `${ROOT}/packages/render/test/golden`;

/** Sheets that have no golden drawing of their own beside the render package's tests. */
const SHEETS: readonly SheetName[] = [
  "mirrored",
  "preform",
  "drilling",
  "slabs",
  "gauges",
  "sections",
  "sheath",
];

/** Numbers to three decimals: no eye and no tool sees more on paper. */
const rounded = (svg: string): string =>
  svg.replace(/-?\d+\.\d{4,}/g, (number) => String(Number(Number(number).toFixed(3))));

const written = async (page: Drawing | undefined): Promise<string> => {
  if (page === undefined) throw new Error("no page");
  return rounded(await toSvg(page));
};

describe("the golden drawings of the demo", () => {
  test.each(SHEETS)("%s", async (sheet) => {
    const measured = measure(await jobOf(DEMO));
    const { drawn } = await drawSheets(measured, {
      sheets: [sheet],
      states: ["finished"],
      cutOffset: 0,
      format: "svg",
    });
    await expect(await written(drawn[0]?.pages[0])).toMatchFileSnapshot(`${GOLDEN}/demo-${sheet}.svg`);
  });
});
