import { describe, expect, it } from "vitest";
import type { CardCell, DrawingItem, TextItem } from "../../../src/index.js";
import { CARD_LETTERINGS } from "../../../src/sheets/bench-card/lettering.js";
import { cardTable } from "../../../src/sheets/bench-card/table.js";
import { textWidth } from "../../../src/text-metrics.js";

const [, large] = CARD_LETTERINGS;
if (large === undefined) throw new Error("no lettering");

const drawn = (
  heads: readonly string[],
  rows: readonly (readonly CardCell[])[],
  width: number,
): DrawingItem[] => cardTable({ kind: "table", heads, rows }, width, large).items({ x: 0, y: 0 });
const textsOf = (items: readonly DrawingItem[]): TextItem[] =>
  items.filter((item): item is TextItem => item.kind === "text");
const rightEnd = ({ at, text, height, bold }: TextItem): number => at.x + textWidth(text, height, bold);

const HEADS = ["pass", "cold", "at 950 °C", "stop"];
const ROWS = [
  ["1.", "10.41", "10.55", "10.55"],
  ["2.", "8.49", "8.60", "8.60"],
];

describe("a table of a card", () => {
  it("has figures in bold, flush right under their heads; the first column flush left", () => {
    const texts = textsOf(drawn(HEADS, ROWS, 110));
    const of = (text: string): TextItem => texts.find((item) => item.text === text) ?? fail(text);
    expect(of("10.41")).toMatchObject({ bold: true, height: large.cell });
    expect(of("1.").at.x).toBe(0);
    expect(of("1.").bold).toBeUndefined();
    expect(rightEnd(of("10.41"))).toBeCloseTo(rightEnd(of("8.49")), 9);
    expect(rightEnd(of("10.41"))).toBeCloseTo(rightEnd(of("cold")), 9);
  });

  it("is set smaller, and its heads broken, before it is wider than its panel", () => {
    for (const width of [110, 80, 60, 50]) {
      const texts = textsOf(drawn(HEADS, ROWS, width));
      for (const text of texts) expect(rightEnd(text)).toBeLessThanOrEqual(width + 1e-9);
      expect(texts.map(({ text }) => text).join(" ")).toContain("10.41");
    }
    expect(textsOf(drawn(HEADS, ROWS, 50)).find(({ text }) => text === "10.41")?.height).toBeLessThan(
      large.cell,
    );
  });

  it("tells each row in lines where no lettering finds room, and leaves out nothing", () => {
    const long = "a drill with a very long name and 12.34 mm";
    const texts = textsOf(drawn(["", "drill", "deep"], [["A pin", long, "9.99"]], 40));
    expect(texts.map(({ text }) => text).join(" ")).toContain("12.34 mm");
    expect(texts.map(({ text }) => text).join(" ")).toContain("9.99");
    for (const text of texts) expect(rightEnd(text)).toBeLessThanOrEqual(40);
  });

  it("keeps what is read from afar large: the rest gives way, then it goes on below behind a plus sign", () => {
    const rows = [
      ["1.", "8.39", "8.30", "8+0.5+0.2+0.1"],
      ["2.", "7.31", "7.20", "6+1"],
    ];
    const heads = ["pass", "cold", "height of stop", "blocks and shims"];
    const small = CARD_LETTERINGS.findLast((letters) => letters.large === 5) ?? large;
    const linesIn = (width: number): string[] => {
      const table = { kind: "table", heads, rows, large: [2, 3] } as const;
      const texts = textsOf(cardTable(table, width, small).items({ x: 0, y: 0 }));
      for (const text of texts) expect(rightEnd(text)).toBeLessThanOrEqual(width + 1e-9);
      const big = texts.filter(({ height }) => height === small.large);
      expect(small.large).toBeGreaterThan(small.figure);
      expect(texts.find(({ text }) => text === "8.39")?.height).toBe(small.cell);
      // Each line is lower than the one before, and ends where its column does.
      const ends = big.filter(({ text }) => /\+|^0\.1$/u.test(text)).map(rightEnd);
      for (const end of ends) expect(end).toBeCloseTo(ends[0] ?? 0, 9);
      return big.map(({ text }) => text);
    };
    expect(linesIn(130)).toEqual(["8.30", "8+0.5+0.2+0.1", "7.20", "6+1"]);
    expect(linesIn(90)).toEqual(["8.30", "8+0.5+", "0.2+0.1", "7.20", "6+1"]);
    expect(linesIn(72)).toEqual(["8.30", "8+0.5+", "0.2+", "0.1", "7.20", "6+1"]);
  });

  it("draws empty boxes to write in", () => {
    const boxes = drawn(
      ["", "measured"],
      [
        ["0", { box: "" }],
        ["135", { box: "" }],
      ],
      60,
    ).filter((item) => item.kind === "path" && item.role === "thin" && item.paths[0]?.closed === true);
    expect(boxes).toHaveLength(2);
  });
});

function fail(text: string): never {
  throw new Error(`no ${text}`);
}
