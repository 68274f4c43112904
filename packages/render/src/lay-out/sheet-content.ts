import type { Bounds, Vec2 } from "@scantling/geometry";
import { boxOfItems } from "../box.js";
import type { DrawingItem } from "../drawing.js";
import type { PaperName } from "../paper.js";
import type { SheetUnits } from "../sheet-units.js";
import type { TitleField } from "../title-block.js";
import { footprintOf } from "./footprint.js";
import type { Part } from "./part.js";

/** Which page of a sheet this is, and on what paper; `pages` is 1 where the sheet is one page. */
export interface PageInfo {
  readonly paper: PaperName | undefined;
  readonly page: number;
  readonly pages: number;
}

/** What a sheet shows at true size, in its own mm. */
export interface SheetView {
  readonly items: readonly DrawingItem[];
  /** The paper that it takes, in boxes that follow it closely: nothing else stands there. */
  readonly boxes: readonly Bounds[];
  /** The box about it all. */
  readonly zone: Bounds;
  /** Points that are measured from or traced to, such as hole centres and the tip: none is put where two pages overlap. */
  readonly features: readonly Vec2[];
  /** Points that are punched through, many in a row: no joint is laid on one if that can be, the least of what it is laid by. */
  readonly punched?: readonly Vec2[];
  /** Ends and corners that joints keep clear of where that cuts no lettering: the butt, the heel, the shoulder. */
  readonly ends?: readonly Vec2[];
}

/** What goes on a sheet, before it is known on which paper and on how many pages. */
export interface SheetContent {
  /** What the sheet is called in file names and beside page letters: "pattern", "preform". */
  readonly name: string;
  readonly title: string;
  /** Of what is said of its pages; left out: mm with inches in brackets. */
  readonly units?: SheetUnits;
  /** What the sheet shows, in a sentence or two, for those who cannot see it. */
  readonly describe: (page: PageInfo) => string;
  /** The title block, row by row. */
  readonly fields: (page: PageInfo) => TitleField[][];
  /** Whether anything on it is measured or cut along: such a sheet carries check bars and the words about printing. */
  readonly trueSize: boolean;
  /** Check bars that leave more room: in slim strips, or the upright ones no longer than they must be. Left out: the usual ones. */
  readonly bars?: "slim" | "short";
  /** Which line is at true size, in a short sentence; left out: the middle of the wide outline. */
  readonly trueLine?: string;
  /** Which line is cut along where that is not the outline, in a few words: stands on every page that shows the view. */
  readonly lineNote?: string;
  /** What stops the work, each as one text: stands in the title block, and at the foot of every page that has none. */
  readonly warnings?: readonly string[];
  /** Left out where the sheet is a collection of parts. */
  readonly view?: SheetView;
  /** What may stand wherever there is room, in the order in which it is looked for; without the check bars. */
  readonly parts: readonly Part[];
}

/**
 * A view with the paper that its lines and lettering take.
 *
 * @param solid - further boxes where nothing else may stand: the paper inside an outline.
 */
export function viewOf(
  items: readonly DrawingItem[],
  options: {
    readonly solid?: readonly Bounds[];
    readonly features?: readonly Vec2[];
    readonly punched?: readonly Vec2[];
    readonly ends?: readonly Vec2[];
  } = {},
): SheetView {
  return {
    items,
    boxes: [...(options.solid ?? []), ...footprintOf(items)],
    zone: boxOfItems(items) ?? { minX: 0, minY: 0, maxX: 0, maxY: 0 },
    features: options.features ?? [],
    punched: options.punched ?? [],
    ends: options.ends ?? [],
  };
}
