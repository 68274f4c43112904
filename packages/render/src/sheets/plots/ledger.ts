import { type DrawingItem, lettering } from "../../drawing.js";
import { fitText } from "../../fit-text.js";
import { massText, onOneLine } from "../../label-text.js";
import { KEY, SMALL } from "../../lettering-size.js";
import type { PlotLedgerRow, PlotsModel } from "../../models/plots-model.js";
import { type BarLook, barItems } from "../../plot/bars.js";
import { type Block, gap, lineBlock, paragraph, stackBlocks } from "../../plot/block.js";
import { mainUnits } from "../../sheet-units.js";
import { textWidth } from "../../text-metrics.js";
import { percent, rowMass } from "./figures.js";

const BAR = 1.5;
const LAST_BAR = 5;
/** Clear space over a bar, for what hangs below the lettering, and under it, mm. */
const BEFORE_BAR = 0.3;
const AFTER_BAR = 0.6;
const BETWEEN = 2;
/** Room for the share at the right of a row, mm. */
const SHARE_COLUMN = textWidth("<0.1 %", SMALL) + BETWEEN;

/** A row with where it begins and ends in the stack of steel, g. */
export interface StackedRow extends PlotLedgerRow {
  readonly from: number;
  readonly to: number;
}

/**
 * The rows one after the other: what a step takes begins where the row before it ended, a state of the steel begins at
 * nothing and ends where the stack stands.
 */
export function stackRows(rows: readonly PlotLedgerRow[]): StackedRow[] {
  let reached = 0;
  return rows.map((row, index) => {
    const from = row.total ? 0 : reached;
    if (!row.total || index === 0) reached += row.mass;
    return { ...row, from, to: row.total ? row.mass : reached };
  });
}

/** From the finished blade to the bars as cut: every row by itself, and all of them as one bar. */
export function ledgerPlot(model: PlotsModel, width: number): Block {
  const heading = paragraph("Steel ledger", width, KEY);
  const whole = model.ledger.at(-1);
  const first = model.ledger[0];
  if (whole === undefined || first === undefined) {
    return stackBlocks([heading, paragraph(model.noLedger ?? "No bars are known.", width)]);
  }
  const { units } = model;
  const rows = stackRows(model.ledger);
  const scale = width / whole.mass;
  return stackBlocks([
    heading,
    paragraph(`${onOneLine(massText(whole.mass, units))} of bar`, width),
    gap(AFTER_BAR),
    ...rows
      .slice(0, -1)
      .flatMap((row) => [
        labelLine(row, whole, model, width),
        gap(BEFORE_BAR),
        barBlock(
          BAR,
          barItems(row.from * scale, row.to * scale, { bottom: -BAR, height: BAR, look: lookOf(row) }),
        ),
        gap(AFTER_BAR),
      ]),
    labelLine(whole, whole, model, width),
    gap(BEFORE_BAR),
    barBlock(LAST_BAR, stackedBar(rows, scale)),
  ]);
}

/** The whole bar: the finished blade and every step's share in it, neighbours with another look. */
function stackedBar(rows: readonly StackedRow[], scale: number): DrawingItem[] {
  const parts = rows.filter((row, index) => index === 0 || (!row.total && row.mass > 0));
  return parts.flatMap(({ from, to }, index) => {
    const look: BarLook = index === 0 ? "grey" : index % 2 === 1 ? "hatched" : "white";
    return barItems(from * scale, to * scale, { bottom: -LAST_BAR, height: LAST_BAR, look });
  });
}

const lookOf = ({ total }: PlotLedgerRow): BarLook => (total ? "grey" : "hatched");

const barBlock = (height: number, items: readonly DrawingItem[]): Block => ({ height, items });

function labelLine(row: PlotLedgerRow, whole: PlotLedgerRow, { units }: PlotsModel, width: number): Block {
  const share = percent(row.mass / whole.mass);
  const mass = rowMass(row.mass, mainUnits(units));
  const room = width - SHARE_COLUMN - textWidth(mass, SMALL) - BETWEEN;
  const [name = ""] = fitText(row.total ? row.name : `+ ${row.name}`, SMALL, room, 1);
  const { height, items } = lineBlock([name, share], width);
  const [label] = items;
  const y = label?.kind === "text" ? label.at.y : 0;
  return {
    height,
    items: [...items, lettering(mass, { x: width - SHARE_COLUMN, y }, { height: SMALL, anchor: "end" })],
  };
}
