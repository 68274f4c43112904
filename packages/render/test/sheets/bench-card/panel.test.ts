import { describe, expect, it } from "vitest";
import type { CardBlock, CardPanel } from "../../../src/index.js";
import { CARD_LETTERINGS } from "../../../src/sheets/bench-card/lettering.js";
import { cardPanel, partPanel } from "../../../src/sheets/bench-card/panel.js";

const [, letters = raise()] = CARD_LETTERINGS;
const WIDTH = 95;

const heads = ["pass", "cold"];
const rows = (from: number, to: number): CardBlock => ({
  kind: "table",
  heads,
  rows: Array.from({ length: to - from }, (_, index) => [`${from + index}.`, `${from + index}.50`]),
});
const words = (text: string): CardBlock => ({ kind: "words", text });
const panel = (blocks: readonly CardBlock[]): CardPanel => ({
  title: "7  Press the blade down",
  tool: "stops, mm",
  blocks,
});

const heightOf = (one: CardPanel): number => cardPanel(one, WIDTH, letters).height;

describe("a panel in two", () => {
  const table = panel([words("From 6 to 4 mm."), rows(1, 9), words("Cold.")]);

  it("has as many rows in its first part as there is room for, under heads of their own", () => {
    const first = panel([words("From 6 to 4 mm."), rows(1, 6)]);
    const parts = partPanel(table, heightOf(first) + 1, WIDTH, letters, false);
    expect(parts).toEqual([
      first,
      { ...panel([rows(6, 9), words("Cold.")]), title: "7  Press the blade down (continued)" },
    ]);
    expect(parts?.map(heightOf)[0]).toBeLessThanOrEqual(heightOf(first) + 1);
  });

  it("is called continued once, however often it is parted", () => {
    const room = heightOf(panel([rows(1, 5)]));
    const [, rest] = partPanel(panel([rows(1, 20)]), room, WIDTH, letters, false) ?? [];
    const [, last] = partPanel(rest ?? raise(), room, WIDTH, letters, false) ?? [];
    expect([rest?.title, last?.title]).toEqual(Array(2).fill("7  Press the blade down (continued)"));
  });

  it("leaves words with the table that they introduce, and no scrap, unless it must", () => {
    // Room for the words, or for them and one row.
    const room = heightOf(panel([words("From 6 to 4 mm.")])) + 1;
    expect(partPanel(table, room, WIDTH, letters, false)).toBeUndefined();
    expect(
      partPanel(panel([rows(1, 4)]), heightOf(panel([rows(1, 2)])), WIDTH, letters, false),
    ).toBeUndefined();
    // Of three rows two leave one over.
    expect(
      partPanel(panel([rows(1, 4)]), heightOf(panel([rows(1, 3)])), WIDTH, letters, false),
    ).toBeUndefined();
    expect(partPanel(table, room, WIDTH, letters, true)?.[0]).toEqual(panel([words("From 6 to 4 mm.")]));
  });

  it("is not made where not even one row has room", () => {
    expect(partPanel(table, 5, WIDTH, letters, true)).toBeUndefined();
    expect(partPanel(panel([rows(1, 2)]), 500, WIDTH, letters, true)).toBeUndefined();
  });
});

function raise(): never {
  throw new Error("no such thing");
}
