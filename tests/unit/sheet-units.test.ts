import { type Drawing, flattenItems, layOutSheet } from "@scantling/render";
import { describe, expect, test } from "vitest";
import { drawCard } from "../../packages/cli/src/commands/jobsheet.js";
import type { ShopFile } from "../../packages/cli/src/file/index.js";
import { type Measured, measure } from "../../packages/cli/src/measure.js";
import { paperChoiceOf } from "../../packages/cli/src/paper-choice.js";
import { jobOf, type SheetSet, setFaults, sheetSet } from "../reference/sheets/sheet-set.js";
import { ROOT } from "./repository.js";

// What `sheets` of the shop file leaves out is on no sheet, and the sheets stay in order.
const EXAMPLES = ["market-garden/harvest", "pattern-welded-bowie/pattern-welded-bowie"] as const;

type SheetWords = NonNullable<ShopFile["sheets"]>;

async function jobWith(
  example: string,
  units: "mm" | "in",
  sheets: SheetWords | undefined,
): Promise<Measured> {
  const job = await jobOf(`${ROOT}/examples/${example}.knife.yaml`, units);
  if (job.shopPlaces === undefined) throw new Error(`${example} has no shop file`);
  const { sheets: _, ...shopPlaces } = job.shopPlaces;
  return measure({ ...job, shopPlaces: { ...shopPlaces, ...(sheets === undefined ? {} : { sheets }) } });
}

/** Pages on A4, so that the larger sheets are tiled. */
function drawnPages({ measured, sheets }: SheetSet): Drawing[] {
  const choice = paperChoiceOf(measured.job, "a4", "smallest");
  return sheets.flatMap((sheet) => ("contents" in sheet ? layOutSheet(sheet.contents, choice) : []));
}

const wordsOf = (pages: readonly Drawing[]): string[] =>
  pages.flatMap(({ title, description, items }) => [
    title,
    description,
    ...flattenItems(items).flatMap((item) => (item.kind === "text" ? [item.text] : [])),
  ]);

/** Check bars have both units whatever is asked. */
const MM_ALWAYS = /100 mm/;
/** Bars and drills are called what they are called. */
function nameless(words: readonly string[], { job }: Measured): string[] {
  const names = [...(job.shop.rack ?? []), ...(job.shop.drills ?? [])].map(({ name }) => name);
  return words.map((text) => names.reduce((rest, name) => rest.replace(name, ""), text));
}

/** Figures with their unit. */
const METRIC = /\d (?:mm|g|cm³|mm²|°C)(?![\p{L}²³])/u;
const INCHES = /\d"|\b(?:oz|lb|in²|in³|inches|°F)(?![\p{L}²³])/u;
const FRACTION = /\d\/\d+"/;
const SOURCE = /\[[a-z]\d*\]/g;

describe.each(EXAMPLES)("the sheets of %s", (example) => {
  describe.each(["mm", "in"] as const)("in %s", (units) => {
    test.each([
      { units: "own" },
      { units: "own", inches: "decimals" },
      { inches: "decimals" },
    ] as const satisfies readonly SheetWords[])(
      "with %j",
      async (sheets: SheetWords) => {
        const set = await sheetSet(await jobWith(example, units, sheets));
        for (const paper of ["a4", "letter", "fit"] as const) expect(await setFaults(set, paper)).toEqual([]);
        const drawn = wordsOf(drawnPages(set));
        const card = wordsOf(await drawCard(set.measured, set.setup, "a4"));
        expect(drawn.length).toBeGreaterThan(200);
        if (sheets.inches === "decimals") expect(drawn.filter((text) => FRACTION.test(text))).toEqual([]);
        if (sheets.units !== "own") return;
        const other = units === "mm" ? INCHES : METRIC;
        expect(drawn.filter((text) => text.includes("["))).toEqual([]);
        expect(card.filter((text) => text.replaceAll(SOURCE, "").includes("["))).toEqual([]);
        for (const words of [drawn, card]) {
          expect(
            nameless(words, set.measured).filter((text) => other.test(text) && !MM_ALWAYS.test(text)),
          ).toEqual([]);
        }
      },
      120_000,
    );

    test("with nothing asked have both, in fractions", async () => {
      const set = await sheetSet(await jobWith(example, units, undefined));
      const same = await sheetSet(await jobWith(example, units, { units: "both", inches: "fractions" }));
      expect(drawnPages(same)).toEqual(drawnPages(set));
      const words = wordsOf(drawnPages(set));
      expect(words).toContain(units === "mm" ? "mm [inches]" : "inches [mm]");
      expect(words.some((text) => FRACTION.test(text))).toBe(true);
      const card = wordsOf(await drawCard(set.measured, set.setup, "a4"));
      expect(card.some((text) => (units === "mm" ? INCHES : METRIC).test(text))).toBe(true);
    }, 120_000);
  });
});
