import { type Drawing, type DrawingItem, flattenItems, layOutSheet, paperNamed } from "@scantling/render";
import { beforeAll, describe, expect, test } from "vitest";
import type { Job } from "../../packages/cli/src/load.js";
import { measure } from "../../packages/cli/src/measure.js";
import { makeSheets } from "../../packages/cli/src/sheets/make-sheets.js";
import { lettering, strokes } from "../../packages/render/src/drawing.js";
import { hunter } from "../reference/sheets/hunters.js";
import { pageFaults } from "../reference/sheets/page-faults.js";
import { jobOf } from "../reference/sheets/sheet-set.js";
import { ROOT } from "./repository.js";

const FINISHED = { states: ["finished"], cutOffset: 0 } as const;

describe("what the check of pages finds of a figure by a joint", () => {
  const [low, high, middle] = [90, 100, 95];
  /** Two pages that overlap from 90 to 100 mm and are joined at 95. */
  const pagesWith = (figure: DrawingItem): Drawing[] =>
    [
      { minX: 10, maxX: high },
      { minX: low, maxX: 180 },
    ].map((across) => ({
      width: 200,
      height: 100,
      origin: { x: 0, y: 0 },
      title: "test",
      description: "a test of joints",
      items: [
        { kind: "group", name: "view", clip: { ...across, minY: 10, maxY: 90 }, items: [figure] },
        {
          kind: "group",
          name: "joints",
          ofPaper: true,
          items: [
            strokes("fold", [
              [
                { x: middle, y: 10 },
                { x: middle, y: 30 },
              ],
            ]),
          ],
        },
      ],
    }));
  const figureAt = (x: number): DrawingItem => ({
    ...lettering("52.39", { x, y: 50 }, { height: 2.5 }),
    slide: [{ from: -1, to: 1 }],
  });
  const faultsAt = (x: number): string[] => pageFaults(pagesWith(figureAt(x)), { trueSize: false });

  test("none where it stands before the dashes or behind them", () => {
    expect(faultsAt(84)).toEqual([]);
    expect(faultsAt(96)).toEqual([]);
  });

  test("the joint through it, though it is whole on the page before that is cut", () => {
    expect(faultsAt(91)).toEqual(['a joint goes through "52.39", though it may be moved']);
  });
});

describe("hunters on Letter", () => {
  let base: Job;
  beforeAll(async () => {
    base = await jobOf(`${ROOT}/examples/market-garden/harvest.knife.yaml`);
  });

  // Turned over, hunter 111 has its tip over the place of the upright check bars.
  test.each([...Array.from({ length: 6 }, (_, index) => index), 111])(
    "the left face of hunter %i takes no more joined pages than the right one",
    async (index) => {
      const sheets = await makeSheets(hunter(base, index), ["pattern", "mirrored"], FINISHED);
      const [right, left] = sheets.map((sheet) =>
        "missing" in sheet
          ? undefined
          : layOutSheet(sheet.contents, { kind: "paper", paper: paperNamed("Letter") }).filter(
              ({ joinedAs }) => joinedAs !== undefined,
            ).length,
      );
      expect(left).toBeLessThanOrEqual(right ?? -1);
    },
  );
});

const EXAMPLES = [
  "camp-knife/camp-knife",
  "pattern-welded-bowie/pattern-welded-bowie",
  "long-slicer/long-slicer",
];

describe("the joints of a sheath", () => {
  test.each(["A4", "Letter"] as const)("go between stitch holes, on %s", async (name) => {
    const rooms: number[] = [];
    for (const file of EXAMPLES) {
      const [sheet] = await makeSheets(
        measure(await jobOf(`${ROOT}/examples/${file}.knife.yaml`)),
        ["sheath"],
        FINISHED,
      );
      if (sheet === undefined || "missing" in sheet) throw new Error("each has a sheath");
      const pages = layOutSheet(sheet.contents, { kind: "paper", paper: paperNamed(name) });
      rooms.push(...pages.flatMap(roomByJoints));
    }
    expect(rooms.length).toBeGreaterThan(1);
    expect(Math.min(...rooms)).toBeGreaterThanOrEqual(1.5);
  });
});

/** How far the nearest stitch hole is from each upright joint of a page, mm. */
function roomByJoints({ items }: Drawing): number[] {
  const within = (name: string) =>
    flattenItems(items.flatMap((item) => (item.kind === "group" && item.name === name ? item.items : [])));
  const stitches = within("view").flatMap((item) => (item.kind === "circle" ? [item.centre.x] : []));
  const dashes = within("joints").flatMap((item) =>
    item.kind === "path" && item.role === "fold" ? item.paths.flatMap(({ segments }) => segments) : [],
  );
  const upright = new Set(dashes.flatMap(({ from, to }) => (from.x === to.x ? [from.x] : [])));
  return [...upright].map((at) => Math.min(...stitches.map((x) => Math.abs(x - at))));
}
