import { GeometryError, type Vec2 } from "@scantling/geometry";
import { boxOfItems } from "../../box.js";
import { type DrawingItem, lettering, moveItem, rectangle, strokes } from "../../drawing.js";
import { SMALL } from "../../lettering-size.js";
import type { CustomerModel } from "../../models/customer-model.js";
import { unitsWords } from "../../sheet-units.js";
import { TITLE_BLOCK_WIDTH, type TitleField, titleBlock, titleBlockHeight } from "../../title-block.js";
import { reducedText } from "../sections/ratio.js";
import { CUSTOMER_RATIOS } from "./ratios.js";
import { sectionSketches } from "./section-sketch.js";
import { sideView } from "./side-view.js";

/** White about the frame, and clear space inside it, mm. */
const MARGIN = 8;
const INSIDE = 4;
/** Between the view and what stands under it, mm. */
const BETWEEN = 5;
/** Room for a note and a signature over the title block, mm. */
const SIGN_HEIGHT = 18;

/** Reductions that are tried, true size first, and how many sections beside the title block. */
const LAYOUTS = [
  ...CUSTOMER_RATIOS.flatMap((ratio) => [2, 1].map((sections) => ({ ratio, sections }))),
  ...CUSTOMER_RATIOS.map((ratio) => ({ ratio, sections: 0 })),
];

interface Page {
  readonly width: number;
  readonly height: number;
}

/**
 * The drawing that is signed: the knife from the side as large as the page takes it, sections, title block, a line to sign
 * on.
 *
 * @throws {GeometryError} `sheet-too-large` where the page is too small at any ratio.
 */
export function drawingPage(
  model: CustomerModel,
  page: Page,
): { readonly items: DrawingItem[]; readonly ratio: number } {
  const views = new Map(
    CUSTOMER_RATIOS.map((ratio) => [ratio, once(() => sized(sideView(model.view, ratio)))]),
  );
  const sketches = [0, 1, 2].map((count) =>
    once(() => sized(sectionSketches(model.sections.slice(0, count), model.view.pattern.units))),
  );
  for (const { ratio, sections } of LAYOUTS) {
    const [view, sketch] = [views.get(ratio)?.(), sketches[sections]?.()];
    if (view === undefined || sketch === undefined) continue;
    const items = laidOut(model, page, ratio, view, sketch);
    if (items !== undefined) return { items, ratio };
  }
  throw new GeometryError(
    "sheet-too-large",
    `the customer's drawing does not fit on paper of ${page.width} × ${page.height} mm`,
  );
}

function laidOut(
  model: CustomerModel,
  { width, height }: Page,
  ratio: number,
  [over, size]: Sized,
  [under, sketchSize]: Sized,
): DrawingItem[] | undefined {
  const right = width - MARGIN;
  const rows = titleRows(model, ratio);
  const blockHeight = titleBlockHeight(rows, TITLE_BLOCK_WIDTH);
  const foot = Math.max(sketchSize.height + INSIDE, blockHeight + SIGN_HEIGHT);
  const room = {
    width: width - 2 * (MARGIN + INSIDE),
    height: height - 2 * MARGIN - INSIDE - foot - BETWEEN,
  };
  const isTooWide = INSIDE + sketchSize.width + BETWEEN + TITLE_BLOCK_WIDTH > width - 2 * MARGIN;
  if (isTooWide || size.width > room.width || size.height > room.height) return undefined;
  const left = MARGIN + INSIDE + (room.width - size.width) / 2;
  const bottom = MARGIN + foot + BETWEEN + (room.height - size.height) / 2;
  return [
    rectangle("frame", { x: MARGIN, y: MARGIN }, { x: right, y: height - MARGIN }),
    group("view", over({ x: left, y: bottom })),
    group("sections", under({ x: MARGIN + INSIDE, y: MARGIN + INSIDE })),
    group("title-block", titleBlock(rows, { x: right, y: MARGIN }, TITLE_BLOCK_WIDTH)),
    group("agreed", signLine(model, { x: right - TITLE_BLOCK_WIDTH, y: MARGIN + blockHeight }, right)),
  ];
}

/** Items to be put with their lower left corner somewhere, and the size that they take. */
type Sized = readonly [
  put: (corner: Vec2) => DrawingItem[],
  size: { readonly width: number; readonly height: number },
];

function sized(items: readonly DrawingItem[]): Sized {
  const { minX, minY, maxX, maxY } = boxOfItems(items) ?? { minX: 0, minY: 0, maxX: 0, maxY: 0 };
  return [
    (corner) => items.map((item) => moveItem(item, corner.x - minX, corner.y - minY)),
    { width: maxX - minX, height: maxY - minY },
  ];
}

/** A value that is worked out when it is first asked for. */
function once<T>(make: () => T): () => T {
  let made: { readonly value: T } | undefined;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}

const group = (name: string, items: readonly DrawingItem[]): DrawingItem => ({ kind: "group", name, items });

function titleRows(model: CustomerModel, ratio: number): TitleField[][] {
  return [
    [
      { label: "Order", value: model.code, share: 0.28, lines: 2 },
      { label: "Title", value: model.title, share: 0.72, lines: 2 },
    ],
    [
      { label: "Steel", value: model.view.pattern.steel, share: 0.5 },
      { label: "Revision", value: model.revision, share: 0.2 },
      { label: "Date", value: model.date, share: 0.3 },
    ],
    [
      { label: "Units", value: unitsWords(model.view.pattern.units), share: 0.35 },
      { label: "Side view drawn", value: reducedText(ratio), share: 0.25 },
      { label: "Tolerances", value: "as in the offer", share: 0.4 },
    ],
  ];
}

function signLine({ revision, view: { note } }: CustomerModel, corner: Vec2, right: number): DrawingItem[] {
  const y = corner.y + 5;
  const x = corner.x + INSIDE;
  return [
    ...(note === undefined ? [] : [lettering(note, { x, y: y + 11 + SMALL }, { height: SMALL })]),
    lettering(`Agreed, revision ${revision}: customer, date`, { x, y: y + 4.5 + SMALL }, { height: SMALL }),
    strokes("thin", [
      [
        { x, y },
        { x: right - INSIDE, y },
      ],
    ]),
  ];
}
