import type { CardBlock, CardCell, CardFigure, CardPanel } from "@scantling/render";
import { item, layOutTable, wrap } from "./layout.js";

/** Panels of the bench card as lines of a terminal, one group of lines a panel; a box to write in is a line to write on. */
export const panelSections = (panels: readonly CardPanel[]): string[][] =>
  panels.map((panel) => {
    const { title, tool, blocks } = panel;
    const head = tool === undefined ? `${title}:` : `${title} (${tool}):`;
    return [...wrap(head, undefined, INDENT), ...blocks.flatMap(blockLines)];
  });

const INDENT = "  ";

function blockLines(block: CardBlock): string[] {
  switch (block.kind) {
    case "words":
      return item(INDENT, block.text);
    case "figures":
      return block.figures.flatMap((figure) => item(INDENT, figureText(figure)));
    case "table":
      return tableLines(block.heads, block.rows);
    case "tally":
      return [INDENT + Array.from({ length: block.count }, () => "[ ]").join(" ")];
  }
}

function figureText({ ticks = 0, label, figure, beside, boxes = [] }: CardFigure): string {
  const value = [figure, beside].filter((part) => part !== undefined).join(" ");
  const parts = [
    ...Array.from({ length: ticks }, () => "[ ]"),
    value === "" ? label : `${label}: ${value}`,
    ...boxes.map((unit) => `______ ${unit}`),
  ];
  return parts.join(" ").trimEnd();
}

/** Words, or a line to write on. */
const cellText = (cell: CardCell): string =>
  typeof cell === "string" ? cell : `______ ${cell.box}`.trimEnd();

/** Heads that would make a line too long stand in two rows. */
function tableLines(heads: readonly string[], rows: readonly (readonly CardCell[])[]): string[] {
  const align = heads.map((_, i) => (i === 0 ? ("left" as const) : ("right" as const)));
  const cells = rows.map((row) => row.map(cellText));
  return layOutTable([heads, ...cells], align).map((line) => INDENT + line);
}
