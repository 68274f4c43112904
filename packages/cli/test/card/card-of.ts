import { type BenchSetUp, benchSetUp } from "@scantling/geometry";
import { drillSizes } from "@scantling/geometry/units";
import type { CardBlock, CardCell, CardModel, CardPanel } from "@scantling/render";
import { makeCardModel } from "../../src/card/card-model.js";
import { setupOf } from "../../src/forge-setup.js";
import { loadJob } from "../../src/load.js";
import { type Measured, measure } from "../../src/measure.js";
import type { Setup } from "../../src/report/setup-json.js";
import { planBars } from "../../src/stock-report.js";
import { DEMO_KNIFE, DEMO_SHOP } from "../support/demo.js";
import { fakeIo } from "../support/fake-io.js";

const FILE = "harvest.knife.yaml";

/** A card with what it was made from. */
export interface MadeCard {
  readonly measured: Measured;
  readonly setup: Setup;
  readonly bench: BenchSetUp;
  readonly card: CardModel;
}

export const makeCard = (measured: Measured, setup: Setup): MadeCard => ({
  measured,
  setup,
  bench: benchSetUp(measured.knife, measured.job.shop, drillSizes()),
  card: makeCardModel(measured, setup),
});

/** The card of a knife file beside a shop file. */
export async function cardOf(
  knife: string = DEMO_KNIFE,
  shop: string = DEMO_SHOP,
  units?: "mm" | "in",
): Promise<MadeCard> {
  const io = fakeIo({ files: { [FILE]: knife, "shop.yaml": shop } });
  const measured = measure(await loadJob(io, FILE, units === undefined ? {} : { units }));
  return makeCard(measured, setupOf(measured, planBars(measured)));
}

export const panelsOf = ({ sides }: CardModel): CardPanel[] => sides.flatMap(({ panels }) => panels);

/** The first panel whose title begins so. */
export function panelOf(card: CardModel, title: string): CardPanel {
  const found = panelsOf(card).find((panel) => panel.title.startsWith(title));
  if (found === undefined) {
    const titles = panelsOf(card).map((panel) => panel.title);
    throw new Error(`no panel "${title}" among: ${titles.join(", ")}`);
  }
  return found;
}

type Table = Extract<CardBlock, { kind: "table" }>;

/** The rows of a panel's first table. */
export const rowsOf = (panel: CardPanel): readonly (readonly CardCell[])[] =>
  panel.blocks.find((block): block is Table => block.kind === "table")?.rows ?? [];

/** One column of it, by its head. */
export function columnOf(panel: CardPanel, head: string): CardCell[] {
  const table = panel.blocks.find((block): block is Table => block.kind === "table");
  const index = table?.heads.indexOf(head) ?? -1;
  if (index < 0) throw new Error(`no column "${head}" among: ${table?.heads.join(", ")}`);
  return (table?.rows ?? []).map((row) => row[index] ?? "");
}

/** All of a panel's figures, by what they are. */
export const figuresOf = (panel: CardPanel): Record<string, string | undefined> =>
  Object.fromEntries(
    panel.blocks.flatMap((block) =>
      block.kind === "figures" ? block.figures.map(({ label, figure }) => [label, figure]) : [],
    ),
  );

/** All that a panel says, in order, boxes as `[mm]`. */
export const textOf = (panel: CardPanel): string =>
  panel.blocks
    .flatMap(textsOf)
    .filter((text) => text !== "")
    .join(" ");

function textsOf(block: CardBlock): string[] {
  switch (block.kind) {
    case "words":
      return [block.text];
    case "figures":
      return block.figures.flatMap(({ ticks = 0, label, figure = "", beside = "", boxes = [] }) => [
        "☐".repeat(ticks),
        label,
        figure,
        beside,
        ...boxes.map((unit) => `[${unit}]`),
      ]);
    case "table":
      return [
        ...block.heads,
        ...block.rows.flat().map((cell) => (typeof cell === "string" ? cell : `[${cell.box}]`)),
      ];
    case "tally":
      return [`${block.count} boxes`];
  }
}
