import { BENCH_DEFAULTS, type HandleStock, pathBounds } from "@scantling/geometry";
import { cleanText } from "../clean-text.js";
import { fitText } from "../fit-text.js";
import { lengthText, onOneLine } from "../label-text.js";
import { type Part, tablePart } from "../lay-out/part.js";
import type { SheetContent } from "../lay-out/sheet-content.js";
import { SMALL } from "../lettering-size.js";
import type { SlabsModel } from "../models/slabs-model.js";
import { orderFields, orderTitle } from "./order-words.js";
import { blockSize, partOf, small, textBlock } from "./part-of.js";
import { pairKerf } from "./slabs/figures.js";
import { stockFittings, stockHoles, stockTable } from "./slabs/tables.js";
import { cornersAbout, mirroredView, type WoodView, woodItems } from "./slabs/view.js";
import { printWords } from "./words.js";

/**
 * The handle's wood at true size: a pair of slabs as they will be shaped, right and left, or the block of a hidden tang from the
 * side and from above with the tang in it; pin and thong holes at their finished size, and the blank to saw about them.
 *
 * @example
 * layOutSheet(slabsContents(model), { kind: "smallest", papers: papersFor("mm") }).length; // 1
 */
export function slabsContents(model: SlabsModel): SheetContent[] {
  const { stock, units } = model;
  const tables = [
    ["blanks", stockTable(stock, units)],
    ["handle-holes", stockHoles(stock, units)],
    ["handle-fittings", stockFittings(stock, units)],
  ] as const;
  const isPair = stock.kind === "slabs";
  return [
    {
      name: isPair ? "slabs" : "handle-block",
      trueSize: true,
      title: orderTitle(model, isPair ? "handle slabs" : "handle block"),
      describe: ({ paper }) =>
        cleanText(
          `${
            isPair
              ? "Outlines of the right-hand and the left-hand slab, each seen from outside"
              : "The handle block from the side and from above, with the tang dashed inside it"
          }, with ${stock.holes.length === 0 ? "no holes" : `${stock.holes.length} holes`} at their finished size and the blank to saw about them. ${printWords(paper)}.`,
        ),
      fields: (page) =>
        orderFields(
          model,
          [
            [isPair ? "Slabs" : "Block", stock.material],
            ["Dash, two dots", "the blank"],
          ],
          page,
        ),
      parts: [
        ...viewsOf(stock, units).map((view) => partOf(view.name, woodItems(view))),
        ...tables.flatMap(([name, table]) => (table === undefined ? [] : [tablePart(name, table)])),
        notes(model),
      ],
    },
  ];
}

function viewsOf(stock: HandleStock, units: SlabsModel["units"]): WoodView[] {
  const { blank, holes } = stock;
  const common = { holes, front: "right", units } as const;
  const side = cornersAbout(blank.corner, blank.length, blank.height);
  if (stock.kind === "slabs") {
    const right: WoodView = {
      ...common,
      name: "slab-right",
      title: "RIGHT SLAB, outside",
      outlines: stock.pieces,
      hidden: [],
      blank: side,
    };
    return [right, mirroredView(right, "slab-left", "LEFT SLAB, outside")];
  }
  const box = pathBounds(stock.tangSide);
  const inside = box.maxX > box.minX ? [stock.tangSide] : [];
  const above = { x: blank.corner.x, y: -blank.thickness / 2 };
  return [
    {
      ...common,
      name: "block-side",
      title: "BLOCK, right side",
      outlines: [stock.side],
      hidden: inside,
      blank: side,
    },
    {
      ...common,
      name: "block-above",
      title: "BLOCK, from above",
      outlines: [stock.above],
      hidden: inside.length === 0 ? [] : [stock.tangAbove],
      holes: [],
      blank: cornersAbout(above, blank.length, blank.thickness),
    },
  ];
}

/** Width of the notes, mm: that of the tables about them; and lines that a sentence may take. */
const NOTES_WIDTH = 92;
const MOST_LINES = 3;

/** What of a pin stands out on each side until it is ground flush, mm. */
const PIN_OUT = BENCH_DEFAULTS.flushPin.value;
/** What the blank has over the finished wood, both sides together, and a slab on its outer face, mm. */
const BLANK_OVER = BENCH_DEFAULTS.blankOver.value;
const SANDING = BENCH_DEFAULTS.slabSanding.value;

function notes({ stock, units }: SlabsModel): Part {
  const kerf = pairKerf(stock.blank);
  const lines = [
    ...(stock.kind === "slabs"
      ? [
          "Mark the faces that lie on the tang; keep the grain of the pair mirrored.",
          "Drill the pair together, on the tang where you can.",
        ]
      : ["The tang is dashed; its mortise needs room for glue.", "Drill on the middle line of both views."]),
    `Sizes to saw: ${onOneLine(lengthText(BLANK_OVER / 2, units))} over all round${
      stock.kind === "slabs" ? `, ${onOneLine(lengthText(SANDING, units))} in the thickness for sanding` : ""
    }, rounded up.`,
    ...(kerf === undefined
      ? []
      : [`The block for both: two slabs as sawn and a saw cut of ${onOneLine(lengthText(kerf, units))}.`]),
    ...(stock.holes.some(({ kind }) => kind === "pin")
      ? [
          `Pins: saw the rod ${onOneLine(lengthText(PIN_OUT, units))} longer on each side, glue it in, then grind it flush.`,
        ]
      : []),
    "CAUTION: dust of wood, horn and resin harms the lungs. Extract it, wear a mask.",
  ].flatMap((text) => fitText(text, SMALL, NOTES_WIDTH, MOST_LINES).map(small));
  const { height } = blockSize(lines);
  return partOf("handle-notes", textBlock(lines, { left: 0, top: height }));
}
