import type { Vec2 } from "@scantling/geometry";
import type { DrawingItem, PathItem } from "./drawing.js";
import { strokes } from "./drawing.js";
import { penOf } from "./role.js";

const CENTRE_DASH = penOf("centre").dash;
const LONG_DASH = CENTRE_DASH[0] ?? 0;
const PATTERN = CENTRE_DASH.reduce((sum, part) => sum + part, 0);
/** Centre lines run at least this far past the hole, mm. */
const PAST_HOLE = 2.5;
/** Shortest piece of long dash that a centre line may end with, mm. */
const LAST_DASH = 1.5;

/**
 * Half the length of a centre line through a hole, mm: far enough past its rim, and ending in a piece of dash.
 */
export function centreHalfLength(radius: number): number {
  const wanted = radius + PAST_HOLE;
  const intoPattern = (wanted - LONG_DASH / 2 + PATTERN) % PATTERN;
  const firstDash = PATTERN - LONG_DASH;
  const short = firstDash + LAST_DASH - intoPattern;
  return wanted <= LONG_DASH / 2 || short <= 0 ? wanted : wanted + short;
}

/** A centre line from a to b whose dash pattern has the middle of a long dash at `crossing`, a point on it. */
export function centreLine(a: Vec2, b: Vec2, crossing: Vec2): PathItem {
  const along = Math.hypot(crossing.x - a.x, crossing.y - a.y);
  const start = (LONG_DASH / 2 - along) % PATTERN;
  return { ...strokes("centre", [[a, b]]), dashStart: start < 0 ? start + PATTERN : start };
}

/**
 * A round hole: its rim, an upright centre line drawn out to `top`, and a level one, unless a common centre line
 * already runs through it.
 *
 * @param top - y to which the upright centre line is drawn, to meet the hole's label.
 */
export function holeMark(hole: {
  readonly centre: Vec2;
  readonly radius: number;
  readonly top: number;
  readonly level: boolean;
  readonly name?: string;
}): DrawingItem[] {
  const { centre, radius, top, level, name } = hole;
  const half = centreHalfLength(radius);
  const upright = centreLine({ x: centre.x, y: centre.y - half }, { x: centre.x, y: top }, centre);
  const across = centreLine({ x: centre.x - half, y: centre.y }, { x: centre.x + half, y: centre.y }, centre);
  return [
    { kind: "circle", role: "outline", centre, radius, ...(name === undefined ? {} : { name }) },
    upright,
    ...(level ? [across] : []),
  ];
}
