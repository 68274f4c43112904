import { vec2 } from "@scantling/geometry";
import { cleanText, type Drawing, type DrawingItem, lettering, textBox, toPdf } from "@scantling/render";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { loadFonts } from "../../packages/cli/src/fonts.js";
import { pointsToMm, readWith, scratchFolder } from "./pdf-tools.js";

const sheet = (items: readonly DrawingItem[]): Drawing => ({
  width: 594,
  height: 420,
  origin: vec2(10, 10),
  title: "Lettering <b>&amp; 刃",
  description: "Lines of lettering",
  items,
});
const lines = (texts: readonly string[]): DrawingItem[] =>
  texts.flatMap((text, index) =>
    [false, true].map((bold) =>
      lettering(text, vec2(bold ? 300 : 10, 380 - 12 * index), { height: 3.5, bold }),
    ),
  );

const NAMES = [
  'Tall harvest knife 7 7/8" ⅞ Ø 4.76 mm ±0.1 60 °C',
  "Žďár čepel łódź ñandú größe",
  "Нож охотничий",
  "Μαχαίρι Σ μ",
  "鋼のナイフ 三徳包丁",
  "쪽칼",
  "चाकू",
];
const HOSTILE = [
  "<script>alert(1)</script>",
  "]]> <!-- &lt;b&gt; &#0;",
  "(unbalanced \\( \\) ) ET Q endstream endobj %%EOF",
  "http://example.org/?q=1 mailto:nobody@example.org",
  "../../../etc/passwd; rm -rf *",
  "__proto__ constructor",
  "a\u0000\u0008\u001b[31mb\u009c",
  "MG-14\u202egnp.exe",
];

const scratch = scratchFolder();
const files = { names: "", hostile: "" };
beforeAll(async () => {
  const fonts = await loadFonts();
  files.names = scratch.write("names.pdf", await toPdf([sheet(lines(NAMES))], { fonts }));
  files.hostile = scratch.write("hostile.pdf", await toPdf([sheet(lines(HOSTILE))], { fonts }));
});
afterAll(scratch.remove);

/** Text as a reader finds it: one space where the reader sees any, no marks of direction. */
const found = (file: string): string =>
  readWith("pdftotext", "-layout", file, "-")
    .replace(/[\u202a-\u202e\u2066-\u2069]/g, "")
    .replace(/\s+/g, " ");

describe("lettering is text", () => {
  test("in every script that the fonts have, bold and regular", () => {
    const text = found(files.names);
    for (const name of NAMES) expect(text.split(name).length - 1, name).toBe(2);
  });

  test("whatever it says", () => {
    const text = found(files.hostile);
    for (const name of HOSTILE) expect(text.split(cleanText(name)).length - 1, name).toBe(2);
    expect(readWith("mutool", "show", files.hostile, "pages/1/Annots")).toContain("null");
    expect(readWith("pdfinfo", files.hostile)).toMatch(/^JavaScript: +no$/m);
  });

  test("from right to left where it is written so", async () => {
    const texts = ["שלום עולם 14.5 mm", "سكين الخبز", "knife סכין"];
    const file = scratch.write("right.pdf", await toPdf([sheet(lines(texts))], { fonts: await loadFonts() }));
    const text = found(file);
    for (const word of ["שלום", "עולם", "סכין", "سكين", "الخبز"]) expect(text, word).toContain(word);
  });

  test("and a character that no font has is printed as its number", async () => {
    const file = scratch.write(
      "emoji.pdf",
      await toPdf([sheet(lines(["🔪 knife"]))], { fonts: await loadFonts() }),
    );
    expect(found(file)).toContain("<U+1F52A> knife");
  });

  test("also in the title of the window", () => {
    expect(readWith("pdfinfo", files.names)).toMatch(/^Title: +Lettering <b>&amp; 刃$/m);
  });
});

describe("lettering stays in its box", () => {
  /** First and last edge of what stands on each line, mm from the left, as poppler measures it. */
  const spans = (file: string): { left: number; right: number; top: number }[] => {
    const words = [
      ...readWith("pdftotext", "-bbox", file, "-").matchAll(
        /<word xMin="([\d.-]+)" yMin="([\d.-]+)" xMax="([\d.-]+)" yMax="[\d.-]+">/g,
      ),
    ].map((match) => match.slice(1).map((number) => pointsToMm(Number(number))));
    return words.map(([left = 0, top = 0, right = 0]) => ({ left, top, right }));
  };

  test.each(["names", "hostile"] as const)("of %s", (name) => {
    const drawing = sheet(lines(name === "names" ? NAMES : HOSTILE));
    const words = spans(files[name]);
    expect(words.length).toBeGreaterThan(20);
    for (const item of drawing.items) {
      if (item.kind !== "text") continue;
      const box = textBox(item);
      const base = drawing.height - drawing.origin.y - item.at.y;
      const own = words.filter(
        ({ left, top }) => Math.abs(top + 3.5 - base) < 5 && left >= 305 === item.at.x >= 300 && left >= 19,
      );
      expect(own.length, item.text).toBeGreaterThan(0);
      expect(Math.min(...own.map(({ left }) => left))).toBeCloseTo(item.at.x + drawing.origin.x, 2);
      expect(Math.max(...own.map(({ right }) => right)), item.text).toBeLessThanOrEqual(
        box.maxX + drawing.origin.x,
      );
    }
  });
});

describe("fonts in the file", () => {
  test("one Japanese name makes a small file", async () => {
    const fonts = await loadFonts();
    const pdf = await toPdf([sheet([lettering("鋼のナイフ", vec2(0, 0), { height: 3.5 })])], { fonts });
    expect(pdf.length).toBeLessThan(100_000);
  });
});
