import { describe, expect, it } from "vitest";
import {
  type Area,
  columnWidth,
  type FlowPanel,
  flowPanels,
  GUTTER,
} from "../../../src/sheets/bench-card/flow.js";

const area: Area = { left: 10, right: 200, bottom: 20, top: 220 };

const panel = (height: number, wide = false): FlowPanel => ({ placed: { height, items: () => [] }, wide });

const rounded = (mm: number): number => Math.round(mm * 1e6) / 1e6;

/** Heights with their corners, page by page. */
const placesOf = (panels: readonly FlowPanel[]) =>
  flowPanels(panels, area)?.map((page) =>
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

  it("are on no page where there are none", () => {
    expect(placesOf([])).toEqual([]);
  });
});
