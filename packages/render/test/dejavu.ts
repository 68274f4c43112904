import { readFileSync } from "node:fs";
import { createRequire } from "node:module";

const require = createRequire(import.meta.url);

/** The fonts that sheets are lettered with, without the fallback. */
export const dejavu = (): { readonly regular: Uint8Array; readonly bold: Uint8Array } => ({
  regular: readFileSync(require.resolve("dejavu-fonts-ttf/ttf/DejaVuSans.ttf")),
  bold: readFileSync(require.resolve("dejavu-fonts-ttf/ttf/DejaVuSans-Bold.ttf")),
});
