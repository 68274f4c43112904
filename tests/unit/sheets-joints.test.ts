import { type Drawing, type DrawingItem, flattenItems, layOutSheet, paperNamed } from "@scantling/render";
import { beforeAll, describe, expect, test } from "vitest";
import { type Job, loadJob } from "../../packages/cli/src/load.js";
import { type Measured, measure } from "../../packages/cli/src/measure.js";
import { makeSheets } from "../../packages/cli/src/sheets/make-sheets.js";
import { fakeIo } from "../../packages/cli/test/support/fake-io.js";
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

/** Joined pages of the right face and of the left one, on Letter. */
async function joinedOf(measured: Measured): Promise<(number | undefined)[]> {
  const sheets = await makeSheets(measured, ["pattern", "mirrored"], FINISHED);
  const choice = { kind: "paper", paper: paperNamed("Letter") } as const;
  return sheets.map((sheet) =>
    "missing" in sheet
      ? undefined
      : layOutSheet(sheet.contents, choice).filter(({ joinedAs }) => joinedAs !== undefined).length,
  );
}

const HUNTER = `scantling: 1
order: { code: H-41, title: "Hunter for a deer guide, tapered tang" }
units: in
steel: "1095"
blade:
  outline:
    { family: drop-point, edgeLength: 4 1/8, heelHeight: 1 1/16, tipHeight: 11/16, spineBreak: 2 3/8 }
  ricasso: 5/16
  thickness: [{ at: heel, is: 5/32 }, { at: 60 %, is: 1/8 }, { at: tip, is: 1/16 }]
  plunge: { at: 1/16, length: 1/4 }
  bevel: { form: flat, height: 7/8, edgeThickness: 0.018 }
  edgeAngle: 19 deg
tang:
  form: full
  length: 4 1/4
  heights: { front: 15/16, middle: 7/8, butt: 1 1/16 }
  buttThickness: 5/64
  holes:
    - { kind: pin, at: [-7/8, 5/8], diameter: 3/16 }
    - { kind: pin, at: [-2 1/4, 5/8], diameter: 1/8 }
    - { kind: pin, at: [-3 1/2, 5/8], diameter: 3/16 }
    - { kind: lightening, at: [-1 1/2, 5/8], diameter: 3/8 }
    - { kind: thong, at: [-4 1/8, 5/8], diameter: 1/4 }
`;

describe("hunters on Letter", () => {
  let base: Job;
  beforeAll(async () => {
    base = await jobOf(`${ROOT}/examples/market-garden/harvest.knife.yaml`);
  });

  test.each([0, 1, 2, 3])(
    "the left face of hunter %i takes no more joined pages than the right one",
    async (index) => {
      const [right = 0, left] = await joinedOf(hunter(base, index));
      expect(left).toBeLessThanOrEqual(right);
    },
  );

  // Turned over it has its tip over the place of the upright check bars, and less room under the view than they are long.
  test("the left face of a hunter of 8 11/16 in is not joined, as its right one is not", async () => {
    const measured = measure(
      await loadJob(fakeIo({ files: { "h.knife.yaml": HUNTER } }), "h.knife.yaml", {}),
    );
    expect(await joinedOf(measured)).toEqual([0, 0]);
  });
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
