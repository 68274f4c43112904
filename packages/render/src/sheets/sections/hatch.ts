import {
  type Bounds,
  crossingsAtX,
  type Path,
  pathBounds,
  segmentBounds,
  type Vec2,
} from "@scantling/geometry";
import { type PathItem, strokes } from "../../drawing.js";
import { similarPath, similarPoint } from "./similar.js";

/** Lines of a cut surface lie at 45° (ISO 128-50, from memory): turned by this they are upright. */
const TURN = Math.PI / 4;
/** Distance between the lines, mm: closer in a narrow section, and never closer than 0.7 (ISO 128-50, from memory). */
const WIDE_PITCH = 2.5;
const NARROW_PITCH = 1.6;
const NARROW = 12;
/** A line that meets a corner of the outline is moved by this share of the pitch. */
const BESIDE = 0.013;
/** Pieces shorter than this are left out, mm. */
const SHORTEST = 0.15;

/** Hatching inside closed paths, each line cut exactly where it meets the outline; drawing mm. */
export function hatch(paths: readonly Path[]): PathItem[] {
  if (paths.length === 0) return [];
  const turned = paths.map((path) => similarPath(path, { turn: TURN }));
  const whole = paths.map(pathBounds);
  const across = Math.min(...whole.map(({ minX, maxX }) => maxX - minX));
  const pitch = across < NARROW ? NARROW_PITCH : WIDE_PITCH;
  const lines = turned.flatMap((path) => linesIn(path, pathBounds(path), pitch));
  const back = (p: Vec2): Vec2 => similarPoint(p, { turn: -TURN });
  return lines.length === 0
    ? []
    : [
        strokes(
          "hatch",
          lines.map(([a, b]): [Vec2, Vec2] => [back(a), back(b)]),
        ),
      ];
}

function linesIn(path: Path, { minX, maxX }: Bounds, pitch: number): [Vec2, Vec2][] {
  const found: [Vec2, Vec2][] = [];
  const boxed = path.segments.map((segment) => ({ segment, box: segmentBounds(segment) }));
  const pointsAt = (x: number): Vec2[] => {
    const near = boxed.filter(({ box }) => box.minX <= x + pitch / 2 && box.maxX >= x - pitch / 2);
    return crossingsAtX({ ...path, segments: near.map(({ segment }) => segment) }, x).map(
      ({ point }) => point,
    );
  };
  for (let k = Math.ceil(minX / pitch); k * pitch < maxX; k++) {
    const crossings = [0, BESIDE, -BESIDE]
      .map((beside) => pointsAt((k + beside) * pitch))
      .find((points) => points.length % 2 === 0);
    for (let i = 0; i + 1 < (crossings?.length ?? 0); i += 2) {
      const a = crossings?.[i];
      const b = crossings?.[i + 1];
      if (a !== undefined && b !== undefined && b.y - a.y >= SHORTEST) found.push([a, b]);
    }
  }
  return found;
}
