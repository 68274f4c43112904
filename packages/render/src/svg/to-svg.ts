import { type Bounds, invariant, type Vec2 } from "@scantling/geometry";
import { radiansToDegrees } from "@scantling/geometry/units";
import type { Container } from "@svgdotjs/svg.js";
import { cleanText } from "../clean-text.js";
import type { Drawing, DrawingItem, GroupItem, TextItem, Tone } from "../drawing.js";
import { formatCoordinate } from "../number.js";
import { penOf, type Role } from "../role.js";
import { FONT_FAMILIES, fontSizeOf } from "../text-metrics.js";
import { LIGHTNESS } from "../tone.js";
import { type PagePlace, pathData } from "./path-data.js";

const BLACK = "#000000";
const WHITE = greyOf("white");

function greyOf(tone: Tone): string {
  return `#${LIGHTNESS[tone].toString(16).padStart(2, "0").repeat(3)}`;
}

/**
 * The drawing as an SVG file at true size: one user unit is one mm, `width` and `height` are in mm, and the same
 * drawing always gives the same bytes. A drawing's correction stretches all of it: `width` and `height` are multiplied,
 * the user units stay.
 *
 * The SVG library is loaded on the first call only. In a browser it uses the page's own window; elsewhere a small
 * document model stands in for it.
 *
 * @param drawing - page size and items in mm, y up; y is turned over here and nowhere else.
 * @param options.window - a window to build the document in, where neither of the two is wanted.
 * @throws InternalError when a coordinate is not finite.
 *
 * @example
 * const text = await toSvg(patternSheet(model)); // <svg … width="438mm" height="220mm" viewBox="0 0 438 220" …
 */
export async function toSvg(drawing: Drawing, options: { window?: unknown } = {}): Promise<string> {
  const [{ SVG, withWindow }, host] = await Promise.all([
    import("@svgdotjs/svg.js"),
    options.window ?? hostWindow(),
  ]);
  invariant(isWindow(host), "the window given has a document");
  return withWindow(host, () => {
    const root = SVG();
    writeRoot(root, drawing);
    return tidy(root.svg());
  });
}

type HostWindow = Parameters<typeof import("@svgdotjs/svg.js").withWindow>[0];

async function hostWindow(): Promise<unknown> {
  if (isWindow(globalThis)) return globalThis;
  const { createSVGWindow } = await import("svgdom");
  return createSVGWindow();
}

function isWindow(value: unknown): value is HostWindow {
  return typeof value === "object" && value !== null && "document" in value && Boolean(value.document);
}

function writeRoot(root: Container, drawing: Drawing): void {
  const width = formatCoordinate(drawing.width);
  const height = formatCoordinate(drawing.height);
  const { across, up } = drawing.correction ?? { across: 1, up: 1 };
  root.attr({
    "xmlns:xlink": null,
    width: `${formatCoordinate(drawing.width * across)}mm`,
    height: `${formatCoordinate(drawing.height * up)}mm`,
    viewBox: `0 0 ${width} ${height}`,
    ...(across === up ? {} : { preserveAspectRatio: "none" }),
    role: "img",
    "aria-labelledby": "sheet-title sheet-description",
    "font-family": FONT_FAMILIES,
    fill: "none",
    "stroke-linejoin": "round",
  });
  root.element("title", { id: "sheet-title" }).words(cleanText(drawing.title));
  root.element("desc", { id: "sheet-description" }).words(cleanText(drawing.description));
  root.element("rect", { x: "0", y: "0", width, height, fill: WHITE });
  const sheet = { height: drawing.height, origin: drawing.origin, nextClip: clipNames(drawing.items) };
  for (const item of drawing.items) writeItem(root, item, sheet);
}

/** A point of the drawing on the page, which counts y from its top down. */
const toPage = (point: Vec2, page: PagePlace): Vec2 => ({
  x: point.x + page.origin.x,
  y: page.height - page.origin.y - point.y,
});

/** The page, and a name for each clip on it. */
interface SheetPlace extends PagePlace {
  readonly nextClip: () => string;
}

/** Names for clips, each given once, none of which a part of the drawing has. */
function clipNames(items: readonly DrawingItem[]): () => string {
  const taken = new Set(namesOf(items));
  let count = 0;
  return () => {
    do count++;
    while (taken.has(`clip-${count}`));
    return `clip-${count}`;
  };
}

const namesOf = (items: readonly DrawingItem[]): (string | undefined)[] =>
  items.flatMap((item) => [
    "name" in item ? item.name : undefined,
    ...(item.kind === "group" ? namesOf(item.items) : []),
  ]);

function writeGroup(parent: Container, { name, clip, items }: GroupItem, sheet: SheetPlace): void {
  const attributes = named(name);
  if (clip !== undefined) {
    const clipName = sheet.nextClip();
    writeClip(parent, clipName, clip, sheet);
    attributes["clip-path"] = `url(#${clipName})`;
  }
  const group = parent.group().attr(attributes);
  for (const inner of items) writeItem(group, inner, sheet);
}

function writeClip(parent: Container, name: string, box: Bounds, page: PagePlace): void {
  const corner = toPage({ x: box.minX, y: box.maxY }, page);
  parent
    .clip()
    .attr({ id: name })
    .element("rect", {
      x: formatCoordinate(corner.x),
      y: formatCoordinate(corner.y),
      width: formatCoordinate(box.maxX - box.minX),
      height: formatCoordinate(box.maxY - box.minY),
    });
}

function writeItem(parent: Container, item: DrawingItem, page: SheetPlace): void {
  switch (item.kind) {
    case "group":
      writeGroup(parent, item, page);
      return;
    case "path": {
      const d = pathData(item.paths, page);
      if (d === "") return;
      const look =
        item.fill !== undefined ? { fill: greyOf(item.fill) } : strokeOf(item.role, item.dashStart);
      parent.element("path", { ...named(item.name), d, ...look });
      return;
    }
    case "circle": {
      const centre = toPage(item.centre, page);
      parent.element("circle", {
        ...named(item.name),
        cx: formatCoordinate(centre.x),
        cy: formatCoordinate(centre.y),
        r: formatCoordinate(item.radius),
        ...strokeOf(item.role),
      });
      return;
    }
    case "text":
      writeText(parent, item, page);
  }
}

function writeText(parent: Container, item: TextItem, page: PagePlace): void {
  const text = cleanText(item.text);
  if (text === "") return;
  const at = toPage(item.at, page);
  const x = formatCoordinate(at.x);
  const y = formatCoordinate(at.y);
  const turn = formatCoordinate(radiansToDegrees(-item.rotation));
  parent
    .element("text", {
      x,
      y,
      "font-size": formatCoordinate(fontSizeOf(item.height)),
      ...(item.bold ? { "font-weight": "bold" } : {}),
      ...(item.anchor === "start" ? {} : { "text-anchor": item.anchor }),
      ...(turn === "0" ? {} : { transform: `rotate(${turn} ${x} ${y})` }),
      fill: BLACK,
    })
    .words(text);
}

function strokeOf(role: Role, dashStart?: number): Record<string, string> {
  const pen = penOf(role);
  return {
    stroke: BLACK,
    "stroke-width": formatCoordinate(pen.width),
    ...(pen.dash.length > 0 ? { "stroke-dasharray": pen.dash.map(formatCoordinate).join(" ") } : {}),
    ...(pen.dash.length > 0 && dashStart ? { "stroke-dashoffset": formatCoordinate(dashStart) } : {}),
  };
}

const named = (name: string | undefined): Record<string, string> => (name === undefined ? {} : { id: name });

/** Attributes in which the library keeps notes for itself. */
const LIBRARY_NOTES = / (?:xmlns:svgjs|svgjs:[\w-]+|data-svgjs[\w-]*)="[^"]*"/g;

// Text and attribute values hold no bare angle brackets, so these patterns meet tags only.
function tidy(svg: string): string {
  const body = svg
    .replace(/<[^<>]+>/g, (tag) => tag.replace(LIBRARY_NOTES, ""))
    // Document models differ in whether they escape quotes between tags, where it is not needed.
    .replace(/>[^<]+</g, (text) => text.replaceAll("&quot;", '"'))
    .replace(/><\/(?:path|circle|rect)>/g, "/>")
    .replace(/></g, ">\n<");
  return `<?xml version="1.0" encoding="UTF-8"?>\n${body}\n`;
}
