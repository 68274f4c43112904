import { cleanText } from "../clean-text.js";

/**
 * Text as a DXF string in plain ASCII. Release 12 has codes of its own for Ø (`%%c`), ° (`%%d`) and ± (`%%p`); minus signs
 * and dashes become hyphens, × an x, ½ the figures 1/2, typographic quotes straight ones, so that all figures read in any
 * program. A caret is followed by a space, as the format has it; two per cent signs, which begin a code, are set apart.
 *
 * Release 12 has no way to write other letters. These, and the backslash that would begin an escape, are written as `\U+`
 * and four hexadecimal digits, as later releases do (from memory): programs that know only release 12 show that as it stands.
 *
 * @example
 * dxfText("Ø 4 mm"); // "%%c 4 mm"
 * dxfText("−110 × 4½"); // "-110 x 4 1/2"
 * dxfText("刀"); // "\\U+5200"
 */
export const dxfText = (text: string): string =>
  inFigures(cleanText(text).replace(/%(?=[%°±Ø⌀])/gu, "% "))
    .replace(LOOKALIKES, (sign) => IN_ASCII[sign] ?? sign)
    .replace(DIAMETER, "%%c")
    .replaceAll("°", "%%d")
    .replaceAll("±", "%%p")
    .replace(/\^/g, "^ ")
    .replace(/[^\x20-\x5b\x5d-\x7e]/g, escaped);

/** Signs that have a like one in ASCII. */
const IN_ASCII: Readonly<Record<string, string>> = {
  "−": "-",
  "‐": "-",
  "‑": "-",
  "‒": "-",
  "–": "-",
  "—": "-",
  "―": "-",
  "×": "x",
  "‘": "'",
  "’": "'",
  "‚": "'",
  "‛": "'",
  "′": "'",
  "“": '"',
  "”": '"',
  "„": '"',
  "‟": '"',
  "″": '"',
  "«": '"',
  "»": '"',
  "…": "...",
  "·": "-",
  "→": "->",
  "≈": "~",
  "≤": "<=",
  "≥": ">=",
  "²": "2",
  "³": "3",
};
const LOOKALIKES = new RegExp(`[${Object.keys(IN_ASCII).join("")}]`, "gu");

/** The sign of a diameter; within a word Ø is a letter. */
const DIAMETER = /⌀|(?<!\p{L})Ø(?!\p{L})/gu;

/** ½ as 1/2, apart from the whole before it. */
const inFigures = (text: string): string =>
  text.replace(
    /(\d?)([¼-¾⅐-⅞])/gu,
    (_, whole: string, fraction: string) =>
      `${whole === "" ? "" : `${whole} `}${fraction.normalize("NFKD").replace("⁄", "/")}`,
  );

const escaped = (unit: string): string =>
  `\\U+${unit.charCodeAt(0).toString(16).toUpperCase().padStart(4, "0")}`;
