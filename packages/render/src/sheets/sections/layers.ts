import { type Bounds, crossingsAtX, type Path, pathBounds } from "@scantling/geometry";
import type { DrawingItem } from "../../drawing.js";
import type { SectionStation } from "../../models/sections-model.js";
import { similarPath } from "./similar.js";

/** Lines nearer than this run into one another, mm on paper (ISO 128-2, from memory). */
const LEAST_GAP = 0.7;
/** Shares of the height at which two outlines are held against one another. */
const LOOKED_AT = [0.03, 0.25, 0.5, 0.75, 0.97] as const;

/** An earlier state of a section that is drawn around the finished one. */
export interface Layer {
  readonly state: "ready" | "forged";
  readonly paths: readonly Path[];
}

/** The earlier states that can be told from the finished outline at this enlargement. */
export function layersOf(station: SectionStation, ratio: number): Layer[] {
  return (["ready", "forged"] as const).flatMap((state) => {
    const paths = station[state];
    return paths !== undefined && gap(station.finished, paths) * ratio >= LEAST_GAP ? [{ state, paths }] : [];
  });
}

/** Ready to harden dashed; as forged with two dots: what was there before. */
export const layerItem = ({ state }: Layer, paths: readonly Path[]): DrawingItem => ({
  kind: "path",
  role: state === "ready" ? "hidden" : "adjacent",
  paths,
});

/** The box about several paths. */
export function boundsOf(paths: readonly Path[]): Bounds {
  const boxes = paths.map(pathBounds);
  return {
    minX: Math.min(...boxes.map(({ minX }) => minX)),
    minY: Math.min(...boxes.map(({ minY }) => minY)),
    maxX: Math.max(...boxes.map(({ maxX }) => maxX)),
    maxY: Math.max(...boxes.map(({ maxY }) => maxY)),
  };
}

/** How far the outlines are apart on the right-hand face, where that is most, mm. */
function gap(inner: readonly Path[], outer: readonly Path[]): number {
  if (inner.length === 0 || outer.length === 0) return 0;
  const { minY, maxY } = boundsOf(inner);
  return Math.max(
    ...LOOKED_AT.map((share) => {
      const y = minY + (maxY - minY) * share;
      return rightmost(outer, y) - rightmost(inner, y);
    }),
  );
}

/** z of the outermost point at a height; that of nothing where a hole is there. */
export function rightmost(paths: readonly Path[], y: number): number {
  const turned = paths.map((path) => similarPath(path, { turn: -Math.PI / 2 }));
  const found = turned.flatMap((path) => crossingsAtX(path, y).map(({ point }) => -point.y));
  return found.length === 0 ? Number.NaN : Math.max(...found);
}
