import { cleanText } from "../../clean-text.js";
import { rectangle, strokes } from "../../drawing.js";
import type { CardBlock, CardPanel } from "../../models/card-model.js";
import { textWidth } from "../../text-metrics.js";
import { cardBlock } from "./block.js";
import { wordLines } from "./inline.js";
import type { CardLettering } from "./lettering.js";
import { gap, line, type Placed, stack, wordPiece } from "./placed.js";

/** Inside the panel's frame, and between its blocks, mm. */
const PADDING = 1;
const BETWEEN_BLOCKS = 0.7;

/** A panel with its title and tool in a head, and its blocks below; in a frame of its own. */
export function cardPanel(panel: CardPanel, width: number, letters: CardLettering): Placed {
  const inner = width - 2 * PADDING;
  const head = headOf(cleanText(panel.title), panel.tool, inner, letters);
  const body = stack(
    panel.blocks.flatMap((block, index) => [
      ...(index === 0 ? [] : [gap(BETWEEN_BLOCKS)]),
      cardBlock(block, inner, letters),
    ]),
  );
  const headHeight = head.height + 1;
  const height = headHeight + body.height + 2 * PADDING;
  return {
    height,
    least: (body.least ?? 0) + 2 * PADDING,
    items: ({ x, y }) => [
      rectangle("thin", { x, y: y - height }, { x: x + width, y }),
      ...head.items({ x: x + PADDING, y: y - 0.5 }),
      strokes("frame", [
        [
          { x, y: y - headHeight },
          { x: x + width, y: y - headHeight },
        ],
      ]),
      ...body.items({ x: x + PADDING, y: y - headHeight - PADDING }),
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

/**
 * A panel in as many parts as it takes for each to be no higher than a page: parted between blocks, figures and rows.
 *
 * @returns undefined where one row or figure alone is higher.
 */
export function panelParts(
  panel: CardPanel,
  most: number,
  width: number,
  letters: CardLettering,
): CardPanel[] | undefined {
  const fits = (part: CardPanel): boolean => cardPanel(part, width, letters).height <= most;
  if (fits(panel)) return [panel];
  const units = panel.blocks.flatMap(unitsOf);
  const parts: CardPanel[] = [];
  for (let from = 0; from < units.length; ) {
    const title = from === 0 ? panel.title : `${panel.title} (continued)`;
    const upTo = (end: number): CardPanel => ({ ...panel, title, blocks: joined(units.slice(from, end)) });
    // The more, the higher: halving finds the most that fits.
    let [end, tooMany] = [from, units.length + 1];
    while (tooMany - end > 1) {
      const middle = (end + tooMany) >> 1;
      if (fits(upTo(middle))) end = middle;
      else tooMany = middle;
    }
    if (end === from) return undefined;
    parts.push(upTo(end));
    from = end;
  }
  return parts;
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
