/** A reader for the files that we write, made for the tests: independent of the writer and of the SVG library. */
export interface SvgElement {
  readonly tag: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly text: string;
}

const OPEN = /^<([a-zA-Z]+)((?: [\w:-]+="[^"<>]*")*)(\/?)>(?:([^<>]*)<\/([a-zA-Z]+)>)?$/;

/** Every element of a file with one element a line; throws where a line is anything else or tags do not match. */
export function readSvg(svg: string): SvgElement[] {
  const lines = svg.split("\n");
  if (lines[0] !== '<?xml version="1.0" encoding="UTF-8"?>') throw new Error(`first line: ${lines[0]}`);
  if (lines.at(-1) !== "") throw new Error("no newline at the end");
  const elements: SvgElement[] = [];
  const open: string[] = [];
  for (const line of lines.slice(1, -1)) {
    const closing = /^<\/([a-zA-Z]+)>$/.exec(line);
    if (closing) {
      if (open.pop() !== closing[1]) throw new Error(`closes what is not open: ${line}`);
      continue;
    }
    const match = OPEN.exec(line);
    if (!match) throw new Error(`not one element: ${line}`);
    const [, tag = "", attributes = "", selfClosing, text, end] = match;
    if (end !== undefined && end !== tag) throw new Error(`tags differ: ${line}`);
    if (!selfClosing && end === undefined) open.push(tag);
    elements.push({ tag, attributes: readAttributes(attributes), text: readEntities(text ?? "") });
  }
  if (open.length > 0) throw new Error(`left open: ${open.join()}`);
  return elements;
}

function readAttributes(text: string): Record<string, string> {
  return Object.fromEntries(
    [...text.matchAll(/ ([\w:-]+)="([^"]*)"/g)].map(([, name = "", value = ""]) => [
      name,
      readEntities(value),
    ]),
  );
}

const ENTITIES: Record<string, string> = { lt: "<", gt: ">", amp: "&", quot: '"', apos: "'" };

function readEntities(text: string): string {
  if (/&(?!(?:lt|gt|amp|quot|apos);)/.test(text)) throw new Error(`bare ampersand: ${text}`);
  return text.replace(/&(\w+);/g, (_, name: string) => ENTITIES[name] ?? "");
}

/** The value of an attribute; nothing where there is none. */
export const attributeOf = (element: SvgElement | undefined, name: string): string =>
  element?.attributes[name] ?? "";

/** The element with this id. */
export function byId(elements: readonly SvgElement[], id: string): SvgElement {
  const found = elements.filter((element) => attributeOf(element, "id") === id);
  if (found.length !== 1) throw new Error(`${found.length} elements with id ${id}`);
  return found[0] as SvgElement;
}

export interface PagePoint {
  readonly x: number;
  readonly y: number;
}

/** Points along path data (M, L, C, A, Z; y down), `steps` to each curve, arcs by the W3C's conversion to a centre. */
export function pointsOfPathData(d: string, steps = 400): PagePoint[] {
  const points: PagePoint[] = [];
  let at: PagePoint = { x: 0, y: 0 };
  for (const [, command = "", body = ""] of d.matchAll(/([MLCAZ])([^MLCAZ]*)/g)) {
    const v = body.trim() === "" ? [] : body.trim().split(/[ ,]+/).map(Number);
    if (v.some((value) => !Number.isFinite(value))) throw new Error(`not a number: ${body}`);
    const n = (index: number): number => v[index] as number;
    if (command === "Z") continue;
    const to = { x: n(v.length - 2), y: n(v.length - 1) };
    if (command === "C") {
      for (let i = 1; i < steps; i++) points.push(onCubic(at, v, i / steps));
    } else if (command === "A") {
      for (let i = 1; i < steps; i++) points.push(onArc(at, to, n(0), n(3) === 1, n(4) === 1, i / steps));
    }
    points.push(to);
    at = to;
  }
  return points;
}

function onCubic(from: PagePoint, v: readonly number[], t: number): PagePoint {
  const u = 1 - t;
  const mix = (p0: number, p1: number, p2: number, p3: number): number =>
    u * u * u * p0 + 3 * u * u * t * p1 + 3 * u * t * t * p2 + t * t * t * p3;
  const n = (index: number): number => v[index] as number;
  return { x: mix(from.x, n(0), n(2), n(4)), y: mix(from.y, n(1), n(3), n(5)) };
}

// W3C SVG 1.1 appendix F.6.5 and F.6.6, for circles.
function onArc(
  from: PagePoint,
  to: PagePoint,
  givenRadius: number,
  large: boolean,
  sweep: boolean,
  t: number,
): PagePoint {
  const half = { x: (from.x - to.x) / 2, y: (from.y - to.y) / 2 };
  const halfChord = Math.hypot(half.x, half.y);
  const radius = Math.max(givenRadius, halfChord);
  const sign = large === sweep ? -1 : 1;
  const root = (sign * Math.sqrt(Math.max(0, radius * radius - halfChord * halfChord))) / halfChord;
  const centre = {
    x: (from.x + to.x) / 2 + root * half.y,
    y: (from.y + to.y) / 2 - root * half.x,
  };
  const start = Math.atan2(from.y - centre.y, from.x - centre.x);
  let turn = Math.atan2(to.y - centre.y, to.x - centre.x) - start;
  if (sweep && turn < 0) turn += 2 * Math.PI;
  if (!sweep && turn > 0) turn -= 2 * Math.PI;
  const angle = start + turn * t;
  return { x: centre.x + radius * Math.cos(angle), y: centre.y + radius * Math.sin(angle) };
}

export function boundsOfPoints(points: readonly PagePoint[]): {
  minX: number;
  minY: number;
  maxX: number;
  maxY: number;
} {
  const xs = points.map((point) => point.x);
  const ys = points.map((point) => point.y);
  return { minX: Math.min(...xs), minY: Math.min(...ys), maxX: Math.max(...xs), maxY: Math.max(...ys) };
}
