import { cleanText } from "../../clean-text.js";
import { rectangle, strokes } from "../../drawing.js";
import { lastThatFits } from "../../last-that-fits.js";
import type { CardBlock, CardPanel } from "../../models/card-model.js";
import { textWidth } from "../../text-metrics.js";
import { cardBlock } from "./block.js";
import { wordLines } from "./inline.js";
import type { CardLettering } from "./lettering.js";
import { gap, line, type Placed, stack, wordPiece } from "./placed.js";

/** Between two blocks of a panel, and between a panel's title and the rule below it, mm. */
const BETWEEN_BLOCKS = 0.7;
const OVER_RULE = 0.5;
/** At the left and the right inside its frame, mm. */
const SIDES = 1;

/** A panel with its title and tool in a head, and its blocks below; in a frame of its own. */
export function cardPanel(panel: CardPanel, width: number, letters: CardLettering): Placed {
  const { padding } = letters;
  const inner = width - 2 * SIDES;
  const head = headOf(cleanText(panel.title), panel.tool, inner, letters);
  const body = stack(
    panel.blocks.flatMap((block, index) => [
      ...(index === 0 ? [] : [gap(BETWEEN_BLOCKS)]),
      cardBlock(block, inner, letters),
    ]),
  );
  const headHeight = head.height + 2 * OVER_RULE;
  const height = headHeight + body.height + 2 * padding;
  return {
    height,
    least: (body.least ?? 0) + 2 * SIDES,
    items: ({ x, y }) => [
      rectangle("thin", { x, y: y - height }, { x: x + width, y }),
      ...head.items({ x: x + SIDES, y: y - OVER_RULE }),
      strokes("frame", [
        [
          { x, y: y - headHeight },
          { x: x + width, y: y - headHeight },
        ],
      ]),
      ...body.items({ x: x + SIDES, y: y - headHeight - padding }),
    ],
  };
}

/** Title left, tool right where both fit on a line; else one below the other. */
function headOf(title: string, tool: string | undefined, width: number, letters: CardLettering): Placed {
  const { heading, head } = letters;
  const titleLines = wordLines(title, width, heading, true);
  if (tool === undefined) return titleLines;
  const toolPiece = wordPiece(cleanText(tool), head);
  if (textWidth(title, heading, true) + 4 + toolPiece.width > width) {
    return stack([titleLines, wordLines(tool, width, head, false)]);
  }
  return line([wordPiece(title, heading, true), toolPiece], [0, width - toolPiece.width]);
}

/** What tells the rest of a panel from its beginning. */
const CONTINUED = " (continued)";

/** A part of a panel has so many figures, rows or lines of words, or it is not worth a head of its own. */
const LEAST_UNITS = 2;

/**
 * A panel in two, the first no higher than `most`, mm: parted between blocks, figures and rows. Words stay with the
 * table that they introduce, and neither part is but a scrap, where it can be helped.
 *
 * @returns undefined where it cannot be parted so, or only with a scrap and `scraps` does not allow that.
 */
export function partPanel(
  panel: CardPanel,
  most: number,
  width: number,
  letters: CardLettering,
  scraps: boolean,
): readonly [CardPanel, CardPanel] | undefined {
  const units = panel.blocks.flatMap(unitsOf);
  const rest = panel.title.endsWith(CONTINUED) ? panel.title : `${panel.title}${CONTINUED}`;
  const partedAt = (place: number): readonly [CardPanel, CardPanel] => [
    { ...panel, blocks: joined(units.slice(0, place)) },
    { ...panel, title: rest, blocks: joined(units.slice(place)) },
  ];
  const places = units.map((_, place) => place).slice(1);
  const isGood = (place: number): boolean =>
    place >= LEAST_UNITS &&
    units.length - place >= LEAST_UNITS &&
    (units[place - 1]?.kind !== "words" || units[place]?.kind !== "table");
  const lastOf = (of: readonly number[]): number | undefined =>
    of[lastThatFits(of, (place) => cardPanel(partedAt(place)[0], width, letters).height <= most)];
  const place = lastOf(places.filter(isGood)) ?? (scraps ? lastOf(places) : undefined);
  return place === undefined ? undefined : partedAt(place);
}

/** The least that a block can be parted into. */
function unitsOf(block: CardBlock): CardBlock[] {
  switch (block.kind) {
    case "figures":
      return block.figures.map((figure) => ({ ...block, figures: [figure] }));
    case "table":
      return block.rows.map((row) => ({ ...block, rows: [row] }));
    default:
      return [block];
  }
}

/** Rows of one table, and figures, stand together again. */
function joined(units: readonly CardBlock[]): CardBlock[] {
  const blocks: CardBlock[] = [];
  for (const unit of units) {
    const last = blocks.at(-1);
    if (last?.kind === "table" && unit.kind === "table" && last.heads === unit.heads)
      blocks[blocks.length - 1] = { ...last, rows: [...last.rows, ...unit.rows] };
    else if (last?.kind === "figures" && unit.kind === "figures")
      blocks[blocks.length - 1] = { ...last, figures: [...last.figures, ...unit.figures] };
    else blocks.push(unit);
  }
  return blocks;
}
