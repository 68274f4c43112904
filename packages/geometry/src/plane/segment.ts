import type { Vec2 } from "./vec2.js";

/** A straight piece of an outline. */
export interface Line {
  readonly kind: "line";
  readonly from: Vec2;
  readonly to: Vec2;
}

/**
 * A circular arc. `sweep` is the signed turning angle in radians, positive counter-clockwise, at most a full turn;
 * `startAngle` is the direction from the centre to `from`. The ends are stored, so that joints stay closed exactly.
 */
export interface Arc {
  readonly kind: "arc";
  readonly from: Vec2;
  readonly to: Vec2;
  readonly centre: Vec2;
  readonly radius: number;
  readonly startAngle: number;
  readonly sweep: number;
}

/** A cubic Bézier curve. */
export interface Cubic {
  readonly kind: "cubic";
  readonly from: Vec2;
  readonly control1: Vec2;
  readonly control2: Vec2;
  readonly to: Vec2;
}

/** One piece of an outline; its own parameter runs from 0 at `from` to 1 at `to`. */
export type Segment = Line | Arc | Cubic;

/**
 * A straight segment between two points, mm.
 *
 * @example
 * line({ x: 0, y: 0 }, { x: 8, y: 0 }).kind; // "line"
 */
export const line = (from: Vec2, to: Vec2): Line => ({ kind: "line", from, to });

/**
 * A cubic Bézier segment from its ends and control points, mm.
 *
 * @example
 * // a quarter of the unit circle to 3 parts in 10 000
 * cubic({ x: 1, y: 0 }, { x: 1, y: 0.5523 }, { x: 0.5523, y: 1 }, { x: 0, y: 1 }).kind; // "cubic"
 */
export const cubic = (from: Vec2, control1: Vec2, control2: Vec2, to: Vec2): Cubic => ({
  kind: "cubic",
  from,
  control1,
  control2,
  to,
});

/**
 * An arc from its centre and angles (radians); the ends are computed.
 *
 * @example
 * arcAround({ x: 0, y: 0 }, 2, 0, Math.PI / 2).from; // { x: 2, y: 0 }
 */
export function arcAround(centre: Vec2, radius: number, startAngle: number, sweep: number): Arc {
  const at = (angle: number): Vec2 => ({
    x: centre.x + radius * Math.cos(angle),
    y: centre.y + radius * Math.sin(angle),
  });
  return {
    kind: "arc",
    from: at(startAngle),
    to: at(startAngle + sweep),
    centre,
    radius,
    startAngle,
    sweep,
  };
}

/**
 * An arc between two points that turns through `sweep` (radians, signed, not zero and less than a full turn). It keeps
 * all its digits however flat it is.
 *
 * @example
 * arcBetween({ x: 1, y: 0 }, { x: 0, y: 1 }, Math.PI / 2); // quarter of the unit circle
 */
export function arcBetween(from: Vec2, to: Vec2, sweep: number): Arc {
  const chord = Math.hypot(to.x - from.x, to.y - from.y);
  const radius = chord / (2 * Math.abs(Math.sin(sweep / 2)));
  const startTangent = Math.atan2(to.y - from.y, to.x - from.x) - sweep / 2;
  const startAngle = startTangent - (Math.sign(sweep) * Math.PI) / 2;
  return {
    kind: "arc",
    from,
    to,
    centre: { x: from.x - radius * Math.cos(startAngle), y: from.y - radius * Math.sin(startAngle) },
    radius,
    startAngle,
    sweep,
  };
}

/**
 * Point at parameter t (0 to 1), mm.
 *
 * @example
 * pointAt(line({ x: 0, y: 0 }, { x: 8, y: 4 }), 0.25); // { x: 2, y: 1 }
 */
export function pointAt(segment: Segment, t: number): Vec2 {
  switch (segment.kind) {
    case "line":
      return {
        x: segment.from.x + (segment.to.x - segment.from.x) * t,
        y: segment.from.y + (segment.to.y - segment.from.y) * t,
      };
    case "arc": {
      // From the start along the chord: adding r·cos to the centre would lose digits on a flat arc of great radius.
      const half = (segment.sweep * t) / 2;
      const chord = 2 * segment.radius * Math.sin(half);
      const angle = segment.startAngle + half;
      return {
        x: segment.from.x - chord * Math.sin(angle),
        y: segment.from.y + chord * Math.cos(angle),
      };
    }
    case "cubic": {
      const u = 1 - t;
      const a = u * u * u;
      const b = 3 * u * u * t;
      const c = 3 * u * t * t;
      const d = t * t * t;
      const { from, control1, control2, to } = segment;
      return {
        x: a * from.x + b * control1.x + c * control2.x + d * to.x,
        y: a * from.y + b * control1.y + c * control2.y + d * to.y,
      };
    }
  }
}

/**
 * First derivative by the parameter, mm per unit of t.
 *
 * @example
 * derivativeAt(line({ x: 0, y: 0 }, { x: 8, y: 4 }), 0.5); // { x: 8, y: 4 }
 */
export function derivativeAt(segment: Segment, t: number): Vec2 {
  switch (segment.kind) {
    case "line":
      return { x: segment.to.x - segment.from.x, y: segment.to.y - segment.from.y };
    case "arc": {
      const angle = segment.startAngle + segment.sweep * t;
      const speed = segment.radius * segment.sweep;
      return { x: -speed * Math.sin(angle), y: speed * Math.cos(angle) };
    }
    case "cubic": {
      const u = 1 - t;
      const a = 3 * u * u;
      const b = 6 * u * t;
      const c = 3 * t * t;
      const { from, control1, control2, to } = segment;
      return {
        x: a * (control1.x - from.x) + b * (control2.x - control1.x) + c * (to.x - control2.x),
        y: a * (control1.y - from.y) + b * (control2.y - control1.y) + c * (to.y - control2.y),
      };
    }
  }
}

/**
 * Second derivative by the parameter, mm per unit of t squared.
 *
 * @example
 * secondDerivativeAt(line({ x: 0, y: 0 }, { x: 8, y: 4 }), 0.5); // { x: 0, y: 0 }
 */
export function secondDerivativeAt(segment: Segment, t: number): Vec2 {
  switch (segment.kind) {
    case "line":
      return { x: 0, y: 0 };
    case "arc": {
      const angle = segment.startAngle + segment.sweep * t;
      const s = -segment.radius * segment.sweep * segment.sweep;
      return { x: s * Math.cos(angle), y: s * Math.sin(angle) };
    }
    case "cubic": {
      const { from, control1, control2, to } = segment;
      const a = 6 * (1 - t);
      const b = 6 * t;
      return {
        x: a * (control2.x - 2 * control1.x + from.x) + b * (to.x - 2 * control2.x + control1.x),
        y: a * (control2.y - 2 * control1.y + from.y) + b * (to.y - 2 * control2.y + control1.y),
      };
    }
  }
}

/**
 * The same curve run the other way.
 *
 * @example
 * reverseSegment(line({ x: 0, y: 0 }, { x: 8, y: 4 })).from; // { x: 8, y: 4 }
 */
export function reverseSegment(segment: Segment): Segment {
  switch (segment.kind) {
    case "line":
      return { kind: "line", from: segment.to, to: segment.from };
    case "arc":
      return {
        ...segment,
        from: segment.to,
        to: segment.from,
        startAngle: segment.startAngle + segment.sweep,
        sweep: -segment.sweep,
      };
    case "cubic":
      return {
        kind: "cubic",
        from: segment.to,
        control1: segment.control2,
        control2: segment.control1,
        to: segment.from,
      };
  }
}

/**
 * The same curve moved by (dx, dy) mm.
 *
 * @example
 * translateSegment(line({ x: 0, y: 0 }, { x: 8, y: 4 }), 1, 2).to; // { x: 9, y: 6 }
 */
export function translateSegment(segment: Segment, dx: number, dy: number): Segment {
  return mapSegment(segment, { point: ({ x, y }) => ({ x: x + dx, y: y + dy }) });
}

/** A map of the plane that keeps shapes: it moves, turns, mirrors or changes the size of what it maps. */
export interface ShapeMap {
  readonly point: (p: Vec2) => Vec2;
  /** Of the direction in which an arc begins, rad; left out where directions stay. */
  readonly direction?: (angle: number) => number;
  /** Of radii, mm; left out where sizes stay. */
  readonly radius?: (mm: number) => number;
  /** Whether left and right change sides, so that arcs turn the other way. */
  readonly mirrors?: boolean;
}

/**
 * The same curve on the other side of a map; it is run the same way, and an arc stays an arc.
 *
 * @example
 * const whole = line({ x: 0, y: 0 }, { x: 8, y: 3 });
 * // half as large
 * mapSegment(whole, { point: ({ x, y }) => ({ x: x / 2, y: y / 2 }), radius: (mm) => mm / 2 }).to; // { x: 4, y: 1.5 }
 */
export function mapSegment(
  segment: Segment,
  { point, direction, radius, mirrors = false }: ShapeMap,
): Segment {
  const [from, to] = [point(segment.from), point(segment.to)];
  switch (segment.kind) {
    case "line":
      return { kind: "line", from, to };
    case "arc":
      return {
        kind: "arc",
        from,
        to,
        centre: point(segment.centre),
        radius: radius?.(segment.radius) ?? segment.radius,
        startAngle: direction?.(segment.startAngle) ?? segment.startAngle,
        sweep: mirrors ? -segment.sweep : segment.sweep,
      };
    case "cubic":
      return {
        kind: "cubic",
        from,
        control1: point(segment.control1),
        control2: point(segment.control2),
        to,
      };
  }
}

/**
 * Unit tangent at an end, from the nearest control point that differs: right even where a handle has no length.
 *
 * @returns the direction of travel, or undefined for a segment of no length at all.
 *
 * @example
 * endTangent(line({ x: 0, y: 0 }, { x: 8, y: 0 }), "to"); // { x: 1, y: 0 }
 */
export function endTangent(segment: Segment, end: "from" | "to"): Vec2 | undefined {
  const candidates = tangentCandidates(segment, end);
  for (const d of candidates) {
    const n = Math.hypot(d.x, d.y);
    if (n > 0) return { x: d.x / n, y: d.y / n };
  }
  return undefined;
}

function tangentCandidates(segment: Segment, end: "from" | "to"): Vec2[] {
  const between = (a: Vec2, b: Vec2): Vec2 => ({ x: b.x - a.x, y: b.y - a.y });
  switch (segment.kind) {
    case "line":
      return [between(segment.from, segment.to)];
    case "arc":
      return [derivativeAt(segment, end === "from" ? 0 : 1)];
    case "cubic": {
      const { from, control1, control2, to } = segment;
      return end === "from"
        ? [between(from, control1), between(from, control2), between(from, to)]
        : [between(control2, to), between(control1, to), between(from, to)];
    }
  }
}
