import { SpecError } from "../errors/errors.js";
import type { Issue, QuantityValue } from "../errors/issue.js";
import type { Vec2 } from "../plane/vec2.js";

/**
 * Something that is wrong with a drawing. Its path is empty: only the caller knows which key of the knife file named
 * the drawing or the element.
 */
export function drawingError(
  code: string,
  text: string,
  values: Readonly<Record<string, QuantityValue | string>> = {},
): SpecError {
  return new SpecError([{ code, path: "", text, values } satisfies Issue]);
}

/** Text that came out of the file, inside a message: short, and without characters that could steer a terminal. */
export function quoted(text: string, longest = 40): string {
  const visible = text.replace(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Cs}]/gu, "\uFFFD");
  return visible.length > longest ? `${visible.slice(0, longest - 1)}…` : visible;
}

/** A place in the drawing's own coordinates, as an editor shows it: `412.5, 96.03`. */
export function placeText({ x, y }: Vec2): string {
  const short = (value: number): string => String(Number(value.toFixed(3)) + 0);
  return `${short(x)}, ${short(y)}`;
}

/** A drawing whose look depends on another file. */
export const styleOutside = (): SpecError =>
  drawingError(
    "drawing-style-outside",
    "The drawing takes its style from another file, which is not read. Save it as plain SVG.",
  );
