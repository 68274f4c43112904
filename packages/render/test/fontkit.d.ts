declare module "fontkit" {
  /** As much of an opened font as the tests use. */
  export interface Font {
    readonly unitsPerEm: number;
    readonly characterSet: readonly number[];
    glyphForCodePoint(codePoint: number): { readonly advanceWidth: number };
    layout(text: string): { readonly advanceWidth: number };
  }
  export function create(bytes: Uint8Array): Font;
}
