import { rectangle, strokes } from "../../drawing.js";
import type { CardPanel } from "../../models/card-model.js";
import { textWidth } from "../../text-metrics.js";
import { cardBlock, wordLines } from "./block.js";
import type { CardLettering } from "./lettering.js";
import { gap, line, type Placed, stack, wordPiece } from "./placed.js";

/** Inside the panel's frame, and between its blocks, mm. */
const PADDING = 1.5;
const BETWEEN_BLOCKS = 0.7;

/** A panel with its number, title and tool in a head, and its blocks below; in a frame of its own. */
export function cardPanel(panel: CardPanel, number: number, width: number, letters: CardLettering): Placed {
  const inner = width - 2 * PADDING;
  const title = `${number}  ${panel.title}`;
  const head = headOf(title, panel.tool, inner, letters);
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
  const { heading, label } = letters;
  const titleLines = wordLines(title, width, heading, true);
  if (tool === undefined) return titleLines;
  const toolPiece = wordPiece(tool, label);
  if (textWidth(title, heading, true) + 4 + toolPiece.width > width) {
    return stack([titleLines, wordLines(tool, width, label, false)]);
  }
  return line([wordPiece(title, heading, true), toolPiece], [0, width - toolPiece.width]);
}
