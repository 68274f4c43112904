// The area of SVG path data, worked out from its commands alone: Green's theorem on lines, cubics and circular arcs.
// Source of the way from an arc's ends to its centre: W3C, SVG 1.1, appendix F.6.5.

interface Point {
  readonly x: number;
  readonly y: number;
}

const cross = (a: Point, b: Point): number => a.x * b.y - a.y * b.x;

/** ½ ∮ (x dy − y dx) of a cubic: the integrals of its Bernstein polynomials against one another. */
const underCubic = (p: Point, q: Point, r: Point, s: Point): number =>
  (6 * cross(p, q) + 3 * cross(p, r) + cross(p, s) + 3 * cross(q, r) + 3 * cross(q, s) + 6 * cross(r, s)) /
  20;

/** The same of an arc of a circle: of the sector about its centre, and of the centre's way from the origin. */
function underArc(from: Point, to: Point, radius: number, large: boolean, sweep: boolean): number {
  const half = { x: (from.x - to.x) / 2, y: (from.y - to.y) / 2 };
  const chord = Math.hypot(half.x, half.y);
  const rise = Math.sqrt(Math.max(0, radius ** 2 - chord ** 2)) * (large === sweep ? -1 : 1);
  const centre = {
    x: (from.x + to.x) / 2 + (rise * half.y) / chord,
    y: (from.y + to.y) / 2 - (rise * half.x) / chord,
  };
  const r = Math.max(radius, chord);
  let turn = Math.atan2(to.y - centre.y, to.x - centre.x) - Math.atan2(from.y - centre.y, from.x - centre.x);
  if (sweep && turn < 0) turn += 2 * Math.PI;
  if (!sweep && turn > 0) turn -= 2 * Math.PI;
  return (r ** 2 * turn) / 2 + (centre.x * (to.y - from.y) - centre.y * (to.x - from.x)) / 2;
}

/**
 * The area that path data encloses, without its sign; in the square of its unit.
 *
 * @param data - M, L, C, A and Z, as capitals.
 */
export function areaOfPathData(data: string): number {
  let [sum, start, pen]: [number, Point, Point] = [0, { x: 0, y: 0 }, { x: 0, y: 0 }];
  for (const [, letter = "", rest = ""] of data.matchAll(/([A-Z])([^A-Z]*)/g)) {
    const v =
      rest.trim() === ""
        ? []
        : rest
            .trim()
            .split(/[\s,]+/)
            .map(Number);
    const n = (index: number): number => v[index] ?? Number.NaN;
    const at = (index: number): Point => ({ x: n(index), y: n(index + 1) });
    switch (letter) {
      case "M":
        start = at(0);
        pen = start;
        break;
      case "L":
        sum += cross(pen, at(0)) / 2;
        pen = at(0);
        break;
      case "C":
        sum += underCubic(pen, at(0), at(2), at(4));
        pen = at(4);
        break;
      case "A":
        if (n(0) !== n(1)) throw new Error("an arc of an ellipse");
        sum += underArc(pen, at(5), n(0), n(3) === 1, n(4) === 1);
        pen = at(5);
        break;
      case "Z":
        sum += cross(pen, start) / 2;
        pen = start;
        break;
      default:
        throw new Error(`the command ${letter} is not known here`);
    }
  }
  if (!Number.isFinite(sum)) throw new Error(`not numbers: ${data.slice(0, 80)}`);
  return Math.abs(sum);
}
