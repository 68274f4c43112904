import { cleanText } from "../clean-text.js";

/**
 * Text as a DXF string: plain ASCII that every reader shows as it was given. What is not ASCII, and the backslash that would
 * begin an escape, is written as `\U+` and four hexadecimal digits; a caret is followed by a space, as the format
 * has it; two per cent signs, which begin a control code, are set apart.
 *
 * @example
 * dxfText("Ø 4 mm"); // "\\U+00D8 4 mm"
 * dxfText("100 %%d"); // "100 % %d"
 */
export const dxfText = (text: string): string =>
  cleanText(text)
    .replace(/%(?=%)/g, "% ")
    .replace(/\^/g, "^ ")
    .replace(/[^\x20-\x5b\x5d-\x7e]/g, escaped);

const escaped = (unit: string): string =>
  `\\U+${unit.charCodeAt(0).toString(16).toUpperCase().padStart(4, "0")}`;
