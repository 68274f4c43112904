import { arcAround, vec2 } from "@scantling/geometry";
import { describe, expect, it, vi } from "vitest";
import { type Drawing, type DrawingItem, lettering, patternSheet, strokes, toPdf } from "../../src/index.js";
import { dejavu } from "../dejavu.js";
import { harvestKnife } from "../fixtures.js";
import { objectsOf, pagesOf, textOf } from "./read-pdf.js";

const fonts = dejavu();
const sheet = (items: readonly DrawingItem[] = [], more: Partial<Drawing> = {}): Drawing => ({
  width: 254,
  height: 127,
  origin: vec2(0, 0),
  title: "Sheet",
  description: "A sheet for the tests",
  items,
  ...more,
});
const commandsOf = async (...items: readonly DrawingItem[]): Promise<string> =>
  pagesOf(await toPdf([sheet(items)], { fonts }))[0]?.commands ?? "";

describe("toPdf", () => {
  it("gives the same bytes each time, and says no date", async () => {
    const drawing = patternSheet(harvestKnife());
    const once = await toPdf([drawing], { fonts });
    expect(Buffer.compare(once, await toPdf([drawing], { fonts }))).toBe(0);
    expect(textOf(once)).not.toMatch(/Date|D:\d{4}/);
  });

  it("writes a page of its own size for each drawing: 25.4 mm are 72 points", async () => {
    const pages = pagesOf(
      await toPdf([sheet(), sheet([], { width: 25.4, height: 304.8 }), sheet()], { fonts }),
    );
    expect(pages.map(({ box }) => box)).toEqual([
      [0, 0, 720, 360],
      [0, 0, 72, 864],
      [0, 0, 720, 360],
    ]);
  });

  it("is a whole file: the table of objects is where the end says, and finds each object", async () => {
    const text = textOf(await toPdf([sheet([lettering("a", vec2(1, 1), { height: 2.5 })])], { fonts }));
    expect(text.startsWith("%PDF-1.7\n")).toBe(true);
    const start = Number(/startxref\n(\d+)\n%%EOF\n$/.exec(text)?.[1]);
    const table = text.slice(start).split("\n");
    expect(table[0]).toBe("xref");
    const count = Number(table[1]?.split(" ")[1]);
    expect(count).toBeGreaterThan(8);
    for (let number = 1; number < count; number++) {
      const offset = Number(table[number + 2]?.slice(0, 10));
      expect(text.slice(offset, offset + 12)).toMatch(new RegExp(`^${number} 0 obj`));
    }
  });

  it("asks to be printed at its own size, from paper of its own size, on one side", async () => {
    const preferences = [...objectsOf(await toPdf([sheet()], { fonts })).values()].filter((object) =>
      object.includes("/PrintScaling"),
    );
    expect(preferences).toEqual([
      "<<\n/DisplayDocTitle true\n/PrintScaling /None\n/PickTrayByPDFSize true\n/Duplex /Simplex\n>>",
    ]);
  });

  it("turns y over, once, about the page", async () => {
    const commands = await commandsOf(strokes("thin", [[vec2(0, 0), vec2(25.4, 50.8)]]));
    expect(commands).toContain("1 0 0 -1 0 360 cm");
    expect(commands).toContain("0 360 m\n72 216 l\nS");
    expect(commands.match(/ cm\n/g)).toHaveLength(1);
  });

  it("draws by the pen of the role, with round joins and the dashes from where they begin", async () => {
    const line = { ...strokes("centre", [[vec2(0, 0), vec2(25.4, 0)]]), dashStart: 2.54 };
    const commands = await commandsOf(line);
    // 0.25 mm; 6, 0.75, 0.125, 0.75 mm (24, 3, 0.5, 3 line widths); 2.54 mm are 7.2 points.
    expect(commands).toContain("1 j\n");
    expect(commands).toContain("0.708661 w\n[17.007874 2.125984 0.354331 2.125984] 7.2 d\n");
  });

  it("fills in grey and goes back to black", async () => {
    const square = { segments: [arcAround(vec2(50, 50), 5, 0, 2 * Math.PI)], closed: true };
    const commands = await commandsOf(
      { kind: "path", role: "thin", fill: "middle", paths: [square] },
      lettering("a", vec2(1, 1), { height: 2.5 }),
    );
    expect(commands).toMatch(/q\n0\.5804 g\n[\s\S]*h\nf\nQ\nq/);
  });

  it("clips a group by its box and nothing after it", async () => {
    const commands = await commandsOf(
      {
        kind: "group",
        clip: { minX: 25.4, minY: 25.4, maxX: 50.8, maxY: 76.2 },
        items: [strokes("thin", [[vec2(0, 0), vec2(254, 127)]])],
      },
      strokes("thin", [[vec2(0, 127), vec2(254, 0)]]),
    );
    expect(commands).toMatch(/q\n72 144 72 144 re\nW n\n[\s\S]*720 0 l\nS\nQ\n[\s\S]*720 360 l\nS\n$/);
  });

  it("puts the base line of lettering through its point, turned or not", async () => {
    const at = vec2(25.4, 50.8);
    expect(await commandsOf(lettering("Knife", at, { height: 2.5 }))).toMatch(
      // 2.5 mm capitals: 3.5 mm font size, 9.92126 points.
      /1 0 0 1 72 144 Tm\n\/F1 9\.92126 Tf/,
    );
    const turned = await commandsOf(lettering("Knife", at, { height: 2.5, rotation: Math.PI / 2 }));
    expect(turned).toContain("q\n0 -1 1 0 72 216 cm\n");
  });

  it("never breaks a line, however long, and takes no address for a link", async () => {
    const text = `http://example.org/${"a long name ".repeat(60)}`;
    const pdf = await toPdf([sheet([lettering(text, vec2(200, 3), { height: 7 })])], { fonts });
    expect(pagesOf(pdf)).toHaveLength(1);
    expect(pagesOf(pdf)[0]?.commands.match(/BT/g)).toHaveLength(1);
    expect(textOf(pdf)).not.toMatch(/\/Annots|\/URI|\/Link/);
  });

  it("stretches page, lines and lettering by the correction; the pen stays", async () => {
    const [page] = pagesOf(
      await toPdf(
        [
          sheet(
            [
              strokes("thin", [[vec2(0, 0), vec2(25.4, 25.4)]]),
              lettering("a", vec2(25.4, 25.4), { height: 2.5 }),
            ],
            { correction: { across: 1.02, up: 0.98 } },
          ),
        ],
        { fonts },
      ),
    );
    expect(page?.box).toEqual([0, 0, 734.4, 352.8]);
    expect(page?.commands).toContain("0.708661 w\n");
    expect(page?.commands).toContain("0 352.8 m\n73.44 282.24 l\n");
    expect(page?.commands).toContain("q\n1.02 0 0 0.98 73.44 282.24 cm\n");
  });

  it("asks for the fallback only when a letter is in neither font, and once", async () => {
    const fallback = vi.fn(async () => fonts.regular);
    const plain = sheet([lettering("Ø 7 7/8″ ⅞ Жнож سكين", vec2(0, 0), { height: 2.5, bold: true })]);
    await toPdf([plain], { fonts: { ...fonts, fallback } });
    expect(fallback).not.toHaveBeenCalled();
    await toPdf([sheet([lettering("刃 鋼", vec2(0, 0), { height: 2.5 })]), plain], {
      fonts: { ...fonts, fallback },
    });
    expect(fallback).toHaveBeenCalledTimes(1);
  });

  it("embeds what is used and no more", async () => {
    const plain = await toPdf([sheet([lettering("Knife", vec2(0, 0), { height: 2.5 })])], { fonts });
    expect(textOf(plain).match(/\/Type \/FontDescriptor/g)).toHaveLength(1);
    expect(plain.length).toBeLessThan(10_000);
    expect(textOf(await toPdf([sheet()], { fonts }))).not.toContain("/Font");
  });

  it("refuses what is not a number, and a file without a page", async () => {
    await expect(
      toPdf([sheet([strokes("thin", [[vec2(0, 0), vec2(Number.NaN, 0)]])])], { fonts }),
    ).rejects.toThrow(/finite/);
    await expect(toPdf([], { fonts })).rejects.toThrow(/at least one page/);
  });
});
