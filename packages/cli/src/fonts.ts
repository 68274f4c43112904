import { readFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { inflateSync } from "node:zlib";
import type { PdfFonts } from "@scantling/render";
import { sfntFromWoff } from "./font-file.js";

// Part of the program and not of its user's files, so they are not read through the port.
const require = createRequire(import.meta.url);

/**
 * The fonts that PDF sheets are lettered with, read from their packages.
 *
 * DejaVu Sans and DejaVu Sans Bold 2.37, from `dejavu-fonts-ttf`: the Bitstream Vera licence, which lets them be
 * embedded. For all other letters GNU Unifont 13.0.06 from `@fontsource/unifont`: SIL Open Font License 1.1 (the
 * package's LICENSE; the font's own licence entry also offers GPL 2 or later with the font embedding exception), which
 * does not reach to documents made with the font. It has every character of the basic multilingual plane, Chinese,
 * Japanese and Korean included, in one weight; it is unpacked only when a text needs it.
 */
export async function loadFonts(): Promise<PdfFonts> {
  const [regular, bold] = await Promise.all([
    readFile(require.resolve("dejavu-fonts-ttf/ttf/DejaVuSans.ttf")),
    readFile(require.resolve("dejavu-fonts-ttf/ttf/DejaVuSans-Bold.ttf")),
  ]);
  return {
    regular,
    bold,
    fallback: async () => {
      const path = require.resolve("@fontsource/unifont/files/unifont-latin-400-normal.woff");
      return sfntFromWoff(await readFile(path), inflateSync);
    },
  };
}
