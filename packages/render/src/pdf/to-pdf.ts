import { invariant } from "@scantling/geometry";
import { cleanText } from "../clean-text.js";
import { type Drawing, flattenItems } from "../drawing.js";
import { PageWriter } from "./page-writer.js";
import { coverageOf, endDocument, openDocument, registerFonts } from "./pdf-document.js";
import type { PdfFonts } from "./pdf-fonts.js";
import { type Coverage, type FontName, visibleText } from "./typeset.js";

/** How a PDF is written. */
export interface PdfOptions {
  readonly fonts: PdfFonts;
  /** Of the whole file; that of the first page where left out. */
  readonly title?: string;
}

/**
 * Drawings as one PDF file at true size, a page of its own size for each. The same drawings always give the same bytes:
 * the file carries no date.
 *
 * Lines and cubics are written as they are, to 10⁻⁶ points; arcs and circles as cubics within 10⁻⁹ of their radius.
 * Lettering is text in embedded fonts, of which only the glyphs in use go into the file, with its base line through the
 * item's own point. Letters that the first two fonts lack come from the fallback; a character that no font has is
 * printed as its number, `<U+1F52A>`. Hebrew and Arabic run from right to left. The file asks to be printed at its own
 * size, on paper of its own size and on one side.
 *
 * A drawing's correction stretches the page, every coordinate and the lettering; lines keep their width and dashes.
 *
 * The PDF library is loaded on the first call only.
 *
 * @param pages - at least one.
 * @throws InternalError when there is no page, or a coordinate is not finite.
 *
 * @example
 * const bytes = await toPdf([patternSheet(model)], { fonts }); // %PDF-1.7 …
 */
export async function toPdf(pages: readonly Drawing[], options: PdfOptions): Promise<Uint8Array> {
  const [first] = pages;
  invariant(first !== undefined, "a PDF has at least one page");
  const title = cleanText(options.title ?? first.title);
  const pdf = await openDocument(title, cleanText(first.description));
  const { regular, bold, fallback } = options.fonts;
  registerFonts(pdf, { regular, bold });
  let covers: Coverage = coverageOf(pdf, ["regular", "bold"]);
  if (fallback !== undefined && needsFallback(pages, covers)) {
    registerFonts(pdf, { fallback: await fallback() });
    covers = coverageOf(pdf, ["regular", "bold", "fallback"] satisfies FontName[]);
  }
  for (const page of pages) new PageWriter(pdf, covers, page).write();
  return endDocument(pdf);
}

/** Whether any letter is in neither of the main fonts. Bold lettering falls back on the regular font first. */
function needsFallback(pages: readonly Drawing[], covers: Coverage): boolean {
  const letters = new Set(
    pages.flatMap(({ items }) =>
      flattenItems(items).flatMap((item) =>
        item.kind === "text" ? [...visibleText(cleanText(item.text))] : [],
      ),
    ),
  );
  return [...letters].some((letter) => !covers("regular", letter.codePointAt(0) ?? 0));
}
