// Whether the names and figures on the plots can be misread: told from what is drawn, curve by curve.
import { type Bounds, pathBounds, type Vec2 } from "@scantling/geometry";
import {
  type DrawingItem,
  flattenItems,
  type PathItem,
  type PlotsModel,
  penOf,
  plotsContents,
  type TextItem,
  textBox,
} from "@scantling/render";
import { lengthText, onOneLine, sizeText } from "../../../packages/render/src/label-text.js";
import { mainUnits } from "../../../packages/render/src/sheet-units.js";

/** By how much every other curve is farther from a name than its own, mm: a little less than is drawn to. */
const NEARER = 0.7;
/** Least of white paper between lettering and a line, mm: with less the line seems to strike the first letter. */
const WHITE = 0.5;
/** From here on a name needs a line to its curve, mm. */
const BESIDE = 2.5;
const ROUNDING = 0.05;

/** Everything on the two plots along the blade that could be taken for the name of something else. */
export function nameFaults(model: PlotsModel): string[] {
  const { units, area, thickness } = model;
  const ofThickness = drawnIn(model, "plot-thickness");
  const ofArea = drawnIn(model, "plot-area");
  const above =
    mainUnits(units) === "mm" ? `${thickness.above} mm` : onOneLine(sizeText(thickness.above, units));
  return [
    ...strikeFaults(ofThickness),
    ...strikeFaults(ofArea),
    ...curveFaults(ofThickness, [
      ["finished, spine", "thickness-spine"],
      [`finished, ${above} above edge`, "thickness-above-edge"],
      ["as forged, spine", "thickness-forged-spine"],
      ["as forged, edge", "thickness-forged-edge"],
    ]),
    ...curveFaults(ofArea, [
      ["finished", "area-finished"],
      ["as forged", "area-forged"],
      [area.billet?.words ?? "", "area-billet"],
    ]),
    ...figureFaults(
      ofThickness,
      thickness.stations.map(({ y }) => sizeText(y, units).main),
    ),
    ...untoldFaults(
      ofThickness,
      thickness.stations.map(({ x, y }) => {
        const place = x === 0 ? "the heel" : lengthText(x, units).main;
        return `at ${place}: ${sizeText(y, units).main}`;
      }),
    ),
  ];
}

type Drawn = Exclude<DrawingItem, { kind: "group" }>;

function drawnIn(model: PlotsModel, name: string): Drawn[] {
  const part = plotsContents(model)[0]?.parts.find((each) => each.name === name);
  if (part === undefined) throw new Error(`no ${name}`);
  return flattenItems(part.items({ x: 0, y: 0 }));
}

function curveFaults(items: readonly Drawn[], wanted: readonly (readonly [string, string])[]): string[] {
  const curves = wanted.flatMap(([label, name]) => {
    const line = items.find((item): item is PathItem => item.kind === "path" && item.name === name);
    return line === undefined ? [] : [{ label, line }];
  });
  return curves.flatMap(({ label, line }) => {
    // Where a table repeats the words they stand below the plot.
    const [text] = textsIn(items)
      .filter((item) => item.text === label)
      .sort((a, b) => b.at.y - a.at.y);
    if (text === undefined) return [`"${label}" has no name`];
    const box = textBox(text);
    const piece = pieceBefore(items, text);
    if (piece !== undefined)
      return piece.role === line.role ? [] : [`"${label}" beside a ${piece.role} line`];
    const own = toPath(box, line);
    const faults = curves.flatMap((other) => {
      const distance = toPath(box, other.line);
      if (distance === 0) return [`"${other.label}" runs through "${label}"`];
      if (other.line === line || distance > own + NEARER) return [];
      return [
        `"${label}" is ${own.toFixed(2)} mm from its curve, ${distance.toFixed(2)} mm from "${other.label}"`,
      ];
    });
    return own > BESIDE && !isTied(items, box, line) ? [...faults, `"${label}" has no tie`] : faults;
  });
}

/**
 * Lettering that a curve, the side of a grey area or a dot runs through or touches, its width counted. The line that ties a
 * name to its curve begins at the name.
 */
function strikeFaults(items: readonly Drawn[]): string[] {
  return textsIn(items).flatMap((text) => {
    const box = textBox(text);
    return items.flatMap((item) => {
      if (item.kind === "text" || (item.kind === "path" && item.role === "dimension")) return [];
      const half = item.kind === "path" && item.fill !== undefined ? 0 : penOf(item.role).width / 2;
      const away = item.kind === "circle" ? fromBox(box, item.centre) - item.radius : toPath(box, item);
      const white = away - half;
      const name = item.kind === "path" ? (item.name ?? item.role) : "a dot";
      return white < WHITE ? [`"${text.text}" is ${white.toFixed(2)} mm from ${name}`] : [];
    });
  });
}

/** The piece of line that stands before a name under the plot. */
const pieceBefore = (items: readonly Drawn[], text: TextItem): PathItem | undefined =>
  items.find((item): item is PathItem => {
    if (item.kind !== "path" || item.name !== undefined) return false;
    const { minX, maxX, minY, maxY } = pathBounds(item.paths[0] ?? { segments: [], closed: false });
    const level = maxY - minY < ROUNDING && Math.abs(minY - (text.at.y + text.height / 2)) < ROUNDING;
    return level && maxX < text.at.x && text.at.x - maxX < 3 && maxX - minX > 10;
  });

/** Whether a line begins at the lettering and ends on the curve. */
const isTied = (items: readonly Drawn[], box: Bounds, line: PathItem): boolean =>
  items.some((item) => {
    if (item.kind !== "path" || item.role !== "dimension") return false;
    const [tie] = item.paths.flatMap(({ segments }) => segments);
    return tie !== undefined && toPath(pointBox(tie.from), line) > 1 && fromBox(box, tie.from) < 1
      ? toPath(pointBox(tie.to), line) < ROUNDING
      : false;
  });

/** A figure stands nearest to the dot whose thickness it tells. */
function figureFaults(items: readonly Drawn[], figures: readonly string[]): string[] {
  const dots = items.flatMap((item) => (item.kind === "circle" ? [item.centre] : []));
  if (dots.length !== figures.length) return [`${dots.length} dots for ${figures.length} stations`];
  const low = Math.min(...dots.map(({ y }) => y)) - 6;
  return textsIn(items)
    .filter(({ text, at }) => figures.includes(text) && at.y > low)
    .flatMap((text) => {
      const distances = dots.map((dot) => fromBox(textBox(text), dot));
      const nearest = distances.indexOf(Math.min(...distances));
      return figures[nearest] === text.text
        ? []
        : [`"${text.text}" stands by the dot of ${figures[nearest]}`];
    });
}

/** The thickness of each station is told in words under the plot, whatever has room beside its dot. */
function untoldFaults(items: readonly Drawn[], wanted: readonly string[]): string[] {
  const said = textsIn(items)
    .map(({ text }) => text)
    .join(" ");
  return wanted.filter((words) => !said.includes(words)).map((words) => `"${words}" is told nowhere`);
}

const textsIn = (items: readonly Drawn[]): TextItem[] =>
  items.flatMap((item) => (item.kind === "text" ? [item] : []));

/** From a box to the straight pieces of a path, mm; 0 where one meets it. */
const toPath = (box: Bounds, { paths }: PathItem): number =>
  Math.min(...paths.flatMap(({ segments }) => segments.map(({ from, to }) => toStretch(box, from, to))));

function toStretch(box: Bounds, from: Vec2, to: Vec2): number {
  const { minX, minY, maxX, maxY } = box;
  const corners = [minX, maxX].flatMap((x) => [minY, maxY].map((y) => ({ x, y })));
  const sides = corners.map(
    (corner) => (to.x - from.x) * (corner.y - from.y) - (to.y - from.y) * (corner.x - from.x),
  );
  const apart =
    Math.max(from.x, to.x) < minX ||
    Math.min(from.x, to.x) > maxX ||
    Math.max(from.y, to.y) < minY ||
    Math.min(from.y, to.y) > maxY ||
    sides.every((side) => side > 0) ||
    sides.every((side) => side < 0);
  if (!apart) return 0;
  return Math.min(
    fromBox(box, from),
    fromBox(box, to),
    ...corners.map((corner) => {
      const square = (to.x - from.x) ** 2 + (to.y - from.y) ** 2;
      const along = (corner.x - from.x) * (to.x - from.x) + (corner.y - from.y) * (to.y - from.y);
      const t = square === 0 ? 0 : Math.min(1, Math.max(0, along / square));
      return Math.hypot(from.x + t * (to.x - from.x) - corner.x, from.y + t * (to.y - from.y) - corner.y);
    }),
  );
}

const fromBox = ({ minX, minY, maxX, maxY }: Bounds, { x, y }: Vec2): number =>
  Math.hypot(Math.max(minX - x, 0, x - maxX), Math.max(minY - y, 0, y - maxY));

const pointBox = ({ x, y }: Vec2): Bounds => ({ minX: x, maxX: x, minY: y, maxY: y });
