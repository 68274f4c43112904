/** Bytes of the fonts that go into a PDF, TrueType or OpenType. */
export interface PdfFonts {
  readonly regular: Uint8Array;
  readonly bold: Uint8Array;
  /** For letters that neither of the two has; asked for only when such a letter is to be written. */
  readonly fallback?: () => Promise<Uint8Array>;
}
