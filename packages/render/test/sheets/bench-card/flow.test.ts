import { describe, expect, it } from "vitest";
import type { CardSide } from "../../../src/models/card-model.js";
import {
  type Area,
  columnWidth,
  type FlowPanel,
  flowPanels,
  GUTTER,
} from "../../../src/sheets/bench-card/flow.js";

const area: Area = { left: 10, right: 200, bottom: 20, top: 220 };

const side: CardSide = { name: "At the forge", panels: [], hazards: [] };

const panel = (height: number, wide = false): FlowPanel => ({
  side,
  placed: { height, items: () => [] },
  wide,
  part: () => undefined,
});

/** One of rows that are 10 mm high each, which may go on in another column behind any of them. */
const ofRows = (count: number, wide = false): FlowPanel => ({
  ...panel(10 * count, wide),
  part: (room) => {
    const here = Math.min(Math.floor(room / 10), count - 1);
    return here < 1 ? undefined : [panel(10 * here, wide), ofRows(count - here, wide)];
  },
});

const rounded = (mm: number): number => Math.round(mm * 1e6) / 1e6;

/** Heights with their corners, page by page. */
const placesOf = (panels: readonly FlowPanel[], mayPart = false) =>
  flowPanels(panels, area, mayPart)?.map((page) =>
    page.map(({ panel: { placed }, corner }) => [placed.height, corner.x, rounded(corner.y)]),
  );

const RIGHT = area.left + columnWidth(area) + GUTTER;

describe("panels over pages", () => {
  it("go down the left column, then down the right one, as evenly as their order lets them", () => {
    expect(placesOf([panel(50), panel(40), panel(30), panel(60)])).toEqual([
      [
        [50, 10, 220],
        [40, 10, 220 - 50 - GUTTER],
        [30, RIGHT, 220],
        [60, RIGHT, 220 - 30 - GUTTER],
      ],
    ]);
  });

  it("put a wide one under both columns, and go on below it", () => {
    expect(placesOf([panel(50), panel(30), panel(40, true), panel(20)])).toEqual([
      [
        [50, 10, 220],
        [30, RIGHT, 220],
        [40, 10, 220 - 50 - GUTTER],
        [20, 10, 220 - 50 - 40 - 2 * GUTTER],
      ],
    ]);
  });

  it("begin a page where one does not fit, and keep their order over the pages", () => {
    const pages = placesOf([panel(150), panel(120), panel(110), panel(60)]);
    expect(pages).toEqual([
      [
        [150, 10, 220],
        [120, RIGHT, 220],
      ],
      [
        [110, 10, 220],
        [60, RIGHT, 220],
      ],
    ]);
    expect(placesOf([panel(150), panel(100, true)])).toEqual([[[150, 10, 220]], [[100, 10, 220]]]);
  });

  it("take a panel as high as the page, and none that is higher", () => {
    expect(placesOf([panel(200)])).toEqual([[[200, 10, 220]]]);
    expect(placesOf([panel(200, true)])).toEqual([[[200, 10, 220]]]);
    expect(placesOf([panel(200.1)])).toBeUndefined();
    expect(placesOf([panel(10), panel(200.1, true)])).toBeUndefined();
  });

  it("go on in the next column, and on the next page, only where they may and must", () => {
    const heightsOf = (panels: readonly FlowPanel[]) =>
      placesOf(panels, true)?.map((page) =>
        page.map(([height, x]) => [height, x === RIGHT ? "right" : "left"]),
      );
    // All of them whole where there is room for that.
    expect(heightsOf([ofRows(15), ofRows(12)])).toEqual([
      [
        [150, "left"],
        [120, "right"],
      ],
    ]);
    expect(heightsOf([ofRows(15), ofRows(12), ofRows(12)])).toEqual([
      [
        [150, "left"],
        [40, "left"],
        [80, "right"],
        [110, "right"],
      ],
      [[10, "left"]],
    ]);
    // One that may not be parted leaves its room empty.
    expect(heightsOf([ofRows(15), panel(120), ofRows(12)])).toEqual([
      [
        [150, "left"],
        [120, "right"],
        [70, "right"],
      ],
      [[50, "left"]],
    ]);
    expect(heightsOf([ofRows(15), ofRows(10, true)])).toEqual([
      [
        [150, "left"],
        [40, "left"],
      ],
      [[60, "left"]],
    ]);
    // As all of them may where they are higher than a page.
    expect(placesOf([ofRows(50)])).toEqual(placesOf([ofRows(50)], true));
    expect(placesOf([ofRows(15), ofRows(12), ofRows(12)])?.map((page) => page.length)).toEqual([2, 1]);
    expect(heightsOf([ofRows(50)])).toEqual([
      [
        [200, "left"],
        [200, "right"],
      ],
      [[100, "left"]],
    ]);
  });

  it("are on no page where there are none", () => {
    expect(placesOf([])).toEqual([]);
  });
});
