import { GeometryError } from "@scantling/geometry";
import {
  type Drawing,
  type DrawingItem,
  layOutSheet,
  type PaperSize,
  paperNamed,
  type SheetContent,
} from "@scantling/render";
import { describe, expect, test } from "vitest";
import { measure } from "../../packages/cli/src/measure.js";
import { barFaults, holdsTrueSize } from "../reference/sheets/page-faults.js";
import { jobOf, sheetSet } from "../reference/sheets/sheet-set.js";
import { filesBelow, ROOT } from "./repository.js";

// A page is held against a rule before anything on it is measured, traced or cut. On small paper a page of tables may go
// without its bars; one that holds anything at true size never does.
const PAPERS: readonly (readonly [string, PaperSize])[] = [
  ["A4", paperNamed("A4")],
  ["Letter", paperNamed("Letter")],
  ["A5", { width: 210, height: 148 }],
];

/** Undefined where a part of the sheet is larger than the paper, which the command answers with what to do. */
function pagesOn(contents: readonly SheetContent[], paper: PaperSize): Drawing[] | undefined {
  try {
    return layOutSheet(contents, { kind: "paper", paper });
  } catch (error) {
    if (error instanceof GeometryError && error.code === "sheet-too-large") return undefined;
    throw error;
  }
}

const withoutBars = ({ items, ...page }: Drawing): Drawing => {
  const rest = (all: readonly DrawingItem[]): DrawingItem[] =>
    all.flatMap((item): DrawingItem[] => {
      if (item.kind === "group") return [{ ...item, items: rest(item.items) }];
      return item.kind === "path" && item.name?.startsWith("check-") === true ? [] : [item];
    });
  return { ...page, items: rest(items) };
};

describe("every page with anything at true size carries both check bars both ways", () => {
  test.each(filesBelow("examples", ".knife.yaml"))(
    "of %s",
    async (file) => {
      const { sheets } = await sheetSet(measure(await jobOf(`${ROOT}/${file}`)));
      for (const [name, paper] of PAPERS) {
        const seen = { measured: 0, tables: 0 };
        for (const sheet of sheets) {
          if ("missing" in sheet || sheet.contents.every(({ trueSize }) => !trueSize)) continue;
          const pages = pagesOn(sheet.contents, paper) ?? [];
          for (const [index, page] of pages.entries()) {
            const where = `${sheet.name} on ${name}, page ${index + 1}`;
            expect(barFaults(page), where).toEqual([]);
            if (!holdsTrueSize(page.items)) {
              seen.tables++;
              continue;
            }
            seen.measured++;
            expect(barFaults(withoutBars(page)), where).toHaveLength(4);
          }
          // What the view is drawn on is at true size, whatever stands in front of it.
          expect(
            pages.filter(({ joinedAs }) => joinedAs !== undefined).every(({ items }) => holdsTrueSize(items)),
          ).toBe(true);
        }
        expect(seen.measured, name).toBeGreaterThan(3);
        if (name === "A5") expect(seen.tables).toBeGreaterThan(0);
      }
    },
    120_000,
  );
});
