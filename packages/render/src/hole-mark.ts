import type { Vec2 } from "@scantling/geometry";
import type { CircleItem, DrawingItem, PathItem } from "./drawing.js";
import { strokes } from "./drawing.js";
import type { PatternHole } from "./models/pattern-model.js";
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

/** Ends of a slot nearer along x than this share one upright centre line, mm. */
const SAME_X = 0.5;

/**
 * A hole: its rim, an upright centre line drawn out to `top`, and a level one, unless a common centre line already runs
 * through it. A slot has its rim, a centre line along it, and an upright one through both ends.
 *
 * @param top - y to which the upright centre line is drawn, to meet the hole's label.
 */
export function holeMark(mark: {
  readonly hole: PatternHole;
  readonly top: number;
  readonly level: boolean;
  readonly name: string;
}): DrawingItem[] {
  const { hole, top, level, name } = mark;
  const { centre, diameter, slot } = hole;
  const half = centreHalfLength(diameter / 2);
  const upright = centreLine({ x: centre.x, y: centre.y - half }, { x: centre.x, y: top }, centre);
  if (slot === undefined) {
    const rim: CircleItem = { kind: "circle", role: "outline", centre, radius: diameter / 2, name };
    return [rim, upright, ...(level ? [levelLine(centre, half)] : [])];
  }
  const { to, rim } = slot;
  const outline: PathItem = { kind: "path", role: "outline", paths: [rim], name };
  if (Math.abs(to.x - centre.x) < SAME_X) {
    const foot = { x: centre.x, y: Math.min(centre.y, to.y) - half };
    const along = centreLine(foot, { x: centre.x, y: top }, centre);
    return [outline, along, levelLine(centre, half), levelLine(to, half)];
  }
  const far = centreLine({ x: to.x, y: to.y - half }, { x: to.x, y: to.y + half }, to);
  return [outline, upright, far, ...(level ? [lineAlong(centre, to, half)] : [])];
}

const levelLine = (centre: Vec2, half: number): PathItem =>
  centreLine({ x: centre.x - half, y: centre.y }, { x: centre.x + half, y: centre.y }, centre);

/** Through both ends of a slot and `half` past them. */
function lineAlong(from: Vec2, to: Vec2, half: number): PathItem {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const step = { x: ((to.x - from.x) / length) * half, y: ((to.y - from.y) / length) * half };
  const start = { x: from.x - step.x, y: from.y - step.y };
  return centreLine(start, { x: to.x + step.x, y: to.y + step.y }, from);
}
