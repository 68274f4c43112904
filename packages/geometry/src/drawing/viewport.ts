import type { SpecError } from "../errors/errors.js";
import type { Vec2 } from "../plane/vec2.js";
import { type CssLength, MM_PER_PX, readCssLength } from "./css-length.js";
import { drawingError, quoted } from "./drawing-issue.js";
import { readNumbers } from "./number-list.js";
import type { DrawingElement } from "./xml.js";

/** How large a unit of the drawing is, along x and y. */
export interface Viewport {
  /**
   * mm per unit where the file says so. Where it does not, only their proportion means something: how the picture is
   * stretched.
   */
  readonly unit: Vec2;
  /** Why `unit` is no real size; undefined where it is one. */
  readonly unscaled: SpecError | undefined;
  /** Whether the file names no unit of its own, so that one is a px, however large the page is. */
  readonly isPx: boolean;
}

/**
 * Real size of the drawing's unit from the root's `width`, `height`, `viewBox` and `preserveAspectRatio`. Sizes in mm,
 * cm, in, pt, pc, Q and px are real (a px is 1/96 in); bare numbers, per cents and sizes that are left out are not:
 * editors have taken a bare unit for 1/72, 1/90 and 1/96 in.
 *
 * Where the viewport lies does not matter here: an outline is moved to its heel.
 *
 * Source: W3C, Scalable Vector Graphics 2, sections 8.2 (equivalent transform of an SVG viewport) and 8.7.
 *
 * @throws {SpecError} `drawing-size-unreadable`
 */
export function readViewport(root: DrawingElement): Viewport {
  const width = sizeOf(root, "width");
  const height = sizeOf(root, "height");
  const box = viewBoxOf(root);
  const missing = (why: string, values: Readonly<Record<string, string>> = {}): SpecError =>
    drawingError(
      "drawing-no-scale",
      `The drawing has no scale: ${why}. Save it with width and height in mm or in, or add two points of the drawing and their distance on the knife: scale: { from: [x, y], to: [x, y], is: 200 mm }.`,
      values,
    );
  const bare = [width, height].some((size) => size?.kind === "bare");
  const shown = quoted(root.attributes.get(width === undefined ? "height" : "width") ?? "");
  const doubt = bare
    ? missing('its size "{size}" has no unit, and editors differ in what they mean by that', { size: shown })
    : undefined;
  if (box === undefined) {
    // Without a viewBox the unit is a px, however large the page is.
    const real = width?.kind === "absolute" || height?.kind === "absolute";
    return {
      unit: { x: MM_PER_PX, y: MM_PER_PX },
      unscaled: doubt ?? (real ? undefined : missing("it does not say how large it is")),
      isPx: true,
    };
  }
  const along = (size: CssLength | undefined, units: number): number | undefined =>
    size === undefined || size.kind === "relative"
      ? undefined
      : (size.kind === "absolute" ? size.mm : size.value * MM_PER_PX) / units;
  const x = along(width, box.x);
  const y = along(height, box.y);
  if ([width, height].some((size) => size?.kind === "relative") || (x === undefined && y === undefined)) {
    const why =
      shown === "" ? "it does not say how large it is" : 'its size "{size}" depends on where it is shown';
    return { unit: { x: 1, y: 1 }, unscaled: missing(why, { size: shown }), isPx: false };
  }
  return { unit: fit(root, x ?? y ?? 1, y ?? x ?? 1), unscaled: doubt, isPx: false };
}

function sizeOf(root: DrawingElement, key: "width" | "height"): CssLength | undefined {
  const text = root.attributes.get(key);
  if (text === undefined || text.trim() === "auto") return undefined;
  const size = readCssLength(text);
  const value = size?.kind === "absolute" ? size.mm : size?.kind === "bare" ? size.value : 1;
  if (size === undefined || !(value > 0)) throw unreadable(key, text);
  return size;
}

/** Width and height of the viewBox. */
function viewBoxOf(root: DrawingElement): Vec2 | undefined {
  const text = root.attributes.get("viewBox");
  if (text === undefined || text.trim() === "none") return undefined;
  const [, , x = 0, y = 0, ...more] = readNumbers(text) ?? [];
  if (!(x > 0 && y > 0) || more.length > 0) throw unreadable("viewBox", text);
  return { x, y };
}

function fit(root: DrawingElement, x: number, y: number): Vec2 {
  const text = root.attributes.get("preserveAspectRatio") ?? "";
  const match = /^\s*(?:defer\s+)?(?:(none)|x(?:Min|Mid|Max)Y(?:Min|Mid|Max))(?:\s+(meet|slice))?\s*$/u.exec(
    text,
  );
  if (text.trim() !== "" && match === null) throw unreadable("preserveAspectRatio", text);
  if (match?.[1] === "none") return { x, y };
  const both = match?.[2] === "slice" ? Math.max(x, y) : Math.min(x, y);
  return { x: both, y: both };
}

function unreadable(key: string, text: string): SpecError {
  return drawingError(
    "drawing-size-unreadable",
    'The drawing\'s {key} of "{text}" cannot be read. Set the size of its page again in the editor, and save it.',
    { key, text: quoted(text) },
  );
}
