import type { Drawing } from "@scantling/render";
import type { OutputFile } from "../deliver.js";

/** Formats that sheets are written in. */
export const DRAWING_FORMATS = ["svg", "pdf", "dxf"] as const;
export type DrawingFormat = (typeof DRAWING_FORMATS)[number];

/** A file with drawings, and the pages in it. */
export interface DrawingFile extends OutputFile {
  readonly format: DrawingFormat;
  readonly pages: readonly Drawing[];
}

/** The pages of one sheet, and what its files are called by. */
export interface NamedPages {
  /** `harvest.pattern` */
  readonly name: string;
  /** Of a PDF of it; that of its first page where left out. */
  readonly title?: string;
  readonly pages: readonly Drawing[];
}

/**
 * Pages as files: an SVG for each page, one PDF with all of them, or a DXF for each sheet. The writers are loaded here, for
 * most commands need none.
 *
 * @param several - What a PDF with several sheets is called: its file and, for those who hear it read, its title.
 */
export async function drawingFiles(
  sheets: readonly NamedPages[],
  format: DrawingFormat,
  several: { readonly name: string; readonly title: string },
): Promise<DrawingFile[]> {
  switch (format) {
    case "svg": {
      const { toSvg } = await import("@scantling/render");
      const pages = sheets.flatMap(({ name: own, pages }) =>
        pages.map((page, index) => ({ own: pages.length === 1 ? own : `${own}-${index + 1}`, page })),
      );
      return Promise.all(
        pages.map(async ({ own, page }) => ({
          name: `${own}.svg`,
          content: await toSvg(page),
          format,
          pages: [page],
        })),
      );
    }
    case "pdf": {
      const [{ numberPages, toPdf }, { loadFonts }] = await Promise.all([
        import("@scantling/render"),
        import("../fonts.js"),
      ]);
      const pages = sheets.flatMap((sheet) => sheet.pages);
      const [only] = sheets.length === 1 ? sheets : [];
      // The pages of one sheet are numbered among themselves.
      const written = only === undefined ? numberPages(pages) : pages;
      const title = only?.title ?? (only === undefined ? several.title : undefined);
      const content = await toPdf(written, {
        fonts: await loadFonts(),
        ...(title === undefined ? {} : { title }),
      });
      return [{ name: `${only?.name ?? several.name}.pdf`, content, format, pages }];
    }
    case "dxf": {
      const { toDxf } = await import("@scantling/render");
      return sheets.flatMap(({ name: own, pages }) =>
        pages.map((page) => ({ name: `${own}.dxf`, content: toDxf(page), format, pages: [page] })),
      );
    }
  }
}
