import { type Drawing, lettering, toPdf } from "@scantling/render";
import { beforeAll, describe, expect, it } from "vitest";
import { loadFonts } from "../src/fonts.js";

const TRUE_TYPE = 0x00010000;

const sheet = (text: string): Drawing => ({
  width: 100,
  height: 20,
  origin: { x: 5, y: 5 },
  title: "Sheet",
  description: "One line",
  items: [lettering(text, { x: 0, y: 0 }, { height: 5 })],
});

let fonts: Awaited<ReturnType<typeof loadFonts>>;
beforeAll(async () => {
  fonts = await loadFonts();
});

describe("the fonts of the sheets", () => {
  it("are plain fonts, the unpacked one with all its tables where its directory says", async () => {
    const fallback = (await fonts.fallback?.()) ?? new Uint8Array();
    for (const bytes of [fonts.regular, fonts.bold, fallback])
      expect(new DataView(bytes.buffer, bytes.byteOffset).getUint32(0)).toBe(TRUE_TYPE);
    const view = new DataView(fallback.buffer, fallback.byteOffset);
    const count = view.getUint16(4);
    expect(count).toBe(13);
    for (let entry = 12; entry < 12 + 16 * count; entry += 16) {
      const start = view.getUint32(entry + 8);
      const length = view.getUint32(entry + 12);
      expect(start + length).toBeLessThanOrEqual(fallback.length);
      // The sum over a table as 32-bit numbers stands in the directory (OpenType, table directory); `head` holds a sum
      // over the whole file and is counted without it.
      let sum = 0;
      for (let at = start; at < start + length; at += 4) sum = (sum + view.getUint32(at)) >>> 0;
      const tag = String.fromCharCode(...fallback.subarray(entry, entry + 4));
      if (tag === "head") sum = (sum - view.getUint32(start + 8)) >>> 0;
      expect(sum, tag).toBe(view.getUint32(entry + 4));
    }
  });

  it("leave the large one alone until a letter needs it, and put little of it into a file", async () => {
    let asked = 0;
    const counted = {
      ...fonts,
      fallback: async () => {
        asked++;
        return (await fonts.fallback?.()) ?? new Uint8Array();
      },
    };
    await toPdf([sheet("Žďár Нож سكين ⅞")], { fonts: counted });
    expect(asked).toBe(0);
    const pdf = await toPdf([sheet("鋼のナイフ 쪽칼")], { fonts: counted });
    expect(asked).toBe(1);
    expect(pdf.length).toBeLessThan(100_000);
    expect(Buffer.compare(pdf, await toPdf([sheet("鋼のナイフ 쪽칼")], { fonts: counted }))).toBe(0);
  });
});
