import fc from "fast-check";
import type { CardBlock, CardCell, CardModel, CardPanel, CardSide } from "../../../src/index.js";

/** Any text that a file could carry into a card, hostile ones among it. */
export const anyText = fc.oneof(
  fc.string({ maxLength: 12 }),
  fc.string({ unit: "grapheme", maxLength: 120 }),
  fc.string({ unit: "binary", maxLength: 60 }),
  fc.constantFrom(
    "",
    "<script>alert(1)</script>",
    "]]>",
    "\u202egnp.exe",
    "W".repeat(200),
    "🔪🔪🔪🔪",
    "Кухонный нож для зелени, с рукоятью из ясеня",
    "料理包丁",
    '3 × 160 mm (6 5/16") of 1/4 x 2 in',
  ),
);

const figure = fc.oneof(
  fc.double({ min: -500, max: 2000, noNaN: true }).map((value) => `${value.toFixed(2)} mm`),
  anyText,
);

const cell: fc.Arbitrary<CardCell> = fc.oneof(
  { weight: 3, arbitrary: fc.double({ min: 0, max: 999, noNaN: true }).map((value) => value.toFixed(2)) },
  { weight: 1, arbitrary: fc.constantFrom<CardCell>({ box: "" }, { box: "mm" }, "", "–") },
  { weight: 1, arbitrary: fc.constantFrom("8+0.2+0.1", "4+1+0.5+2×0.2, then 6+1") },
  { weight: 1, arbitrary: anyText },
);

const table: fc.Arbitrary<CardBlock> = fc.integer({ min: 1, max: 6 }).chain((columns) =>
  fc.record(
    {
      kind: fc.constant("table" as const),
      large: fc.subarray(Array.from({ length: columns }, (_, column) => column)),
      heads: fc.array(
        fc.oneof(
          fc.constantFrom("", "cold", "at 950 °C", "low to high losses", "W".repeat(60)),
          fc.string({ unit: "binary", maxLength: 20 }),
        ),
        {
          minLength: columns,
          maxLength: columns,
        },
      ),
      rows: fc.array(fc.array(cell, { minLength: columns, maxLength: columns }), {
        minLength: 1,
        maxLength: 14,
      }),
    },
    { requiredKeys: ["kind", "heads", "rows"] },
  ),
);

const figures: fc.Arbitrary<CardBlock> = fc.record({
  kind: fc.constant("figures" as const),
  figures: fc.array(
    fc.record(
      {
        ticks: fc.integer({ min: 0, max: 20 }),
        label: anyText,
        figure,
        beside: anyText,
        boxes: fc.array(fc.constantFrom("", "mm", "°C"), { maxLength: 2 }),
      },
      { requiredKeys: ["label"] },
    ),
    { minLength: 1, maxLength: 4 },
  ),
});

const block: fc.Arbitrary<CardBlock> = fc.oneof(
  table,
  figures,
  fc.record({ kind: fc.constant("words" as const), text: anyText, loud: fc.boolean() }),
  fc.record({ kind: fc.constant("tally" as const), count: fc.integer({ min: 0, max: 60 }) }),
);

const panel: fc.Arbitrary<CardPanel> = fc.record(
  {
    title: anyText,
    tool: anyText,
    wide: fc.boolean(),
    blocks: fc.array(block, { minLength: 1, maxLength: 3 }),
  },
  { requiredKeys: ["title", "blocks"] },
);

const side: fc.Arbitrary<CardSide> = fc.record({
  name: fc.constantFrom("At the forge", "At the bench"),
  panels: fc.array(panel, { minLength: 1, maxLength: 6 }),
  hazards: fc.array(fc.constantFrom("hot steel", "noise", "sharp edges (tape them)"), { maxLength: 3 }),
});

/** Cards of all lengths, with any text anywhere. */
export const randomCard: fc.Arbitrary<CardModel> = fc.record({
  code: anyText,
  title: anyText,
  about: anyText,
  warnings: fc.array(anyText, { maxLength: 5 }),
  sides: fc.array(side, { minLength: 1, maxLength: 2 }),
  rule: fc.constantFrom("", "Data sheets and local rules first."),
});
