import { invariant } from "@scantling/geometry";
import type { Coverage, FontName } from "./typeset.js";

/** The library's document. */
export type PdfDocument = PDFKit.PDFDocument;

/** What the library keeps to itself and has no public door to; its version is pinned, and tests look at the result. */
interface Inside {
  readonly _root: {
    readonly data: { readonly ViewerPreferences?: { readonly data: Record<string, unknown> } };
  };
  readonly _font: { readonly font: { hasGlyphForCodePoint(codePoint: number): boolean } };
  endMetadata(): void;
}

const inside = (document: PdfDocument): Inside => document as unknown as Inside;

/** The library wants a time to make the file's identity from. A sheet has no clock; the time is taken out again. */
const NO_TIME = { getTime: () => 0 } as Date;

/** An empty document: no page yet, no date, prints at its true size. */
export async function openDocument(title: string, subject: string): Promise<PdfDocument> {
  const { default: Library } = await import("pdfkit");
  const document = new Library({
    pdfVersion: "1.7",
    autoFirstPage: false,
    displayTitle: true,
    lang: "en",
    // No built-in font: none of them is embedded, and none can print ⅞.
    font: "",
    info: {
      Title: title,
      Subject: subject,
      Creator: "Scantling",
      Producer: "Scantling",
      CreationDate: NO_TIME,
    },
  });
  delete document.info.CreationDate;
  const { _root: root } = inside(document);
  invariant(root.data.ViewerPreferences !== undefined, "the library keeps viewer preferences");
  // The library ends this object itself; to end it here as well would cut the file short.
  Object.assign(root.data.ViewerPreferences.data, {
    PrintScaling: "None",
    PickTrayByPDFSize: true,
    Duplex: "Simplex",
  });
  // The XML copy of title and date, in which the library does not escape markup. It is optional.
  inside(document).endMetadata = () => undefined;
  return document;
}

/** The bytes of the document once it is ended. */
export function endDocument(document: PdfDocument): Promise<Uint8Array> {
  return new Promise((resolve, reject) => {
    const chunks: Uint8Array[] = [];
    document.on("data", (chunk: Uint8Array) => chunks.push(chunk));
    document.on("error", reject);
    document.on("end", () => resolve(joined(chunks)));
    document.end();
  });
}

function joined(chunks: readonly Uint8Array[]): Uint8Array {
  const bytes = new Uint8Array(chunks.reduce((sum, chunk) => sum + chunk.length, 0));
  let at = 0;
  for (const chunk of chunks) {
    bytes.set(chunk, at);
    at += chunk.length;
  }
  return bytes;
}

/** Makes the fonts known to the document; each is read when it is first used. */
export function registerFonts(
  document: PdfDocument,
  fonts: Readonly<Partial<Record<FontName, Uint8Array>>>,
): void {
  for (const [name, bytes] of Object.entries(fonts)) document.registerFont(name, bytes);
}

/** What the registered fonts have glyphs for. */
export function coverageOf(document: PdfDocument, names: readonly FontName[]): Coverage {
  const known = new Map<FontName, Map<number, boolean>>(names.map((name) => [name, new Map()]));
  return (font, codePoint) => {
    const answers = known.get(font);
    if (answers === undefined) return false;
    const answer = answers.get(codePoint);
    if (answer !== undefined) return answer;
    document.font(font);
    const found = inside(document)._font.font.hasGlyphForCodePoint(codePoint);
    answers.set(codePoint, found);
    return found;
  };
}
