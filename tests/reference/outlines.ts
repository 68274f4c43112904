// Outlines as runs of segments, and the same runs as SVG path data for a knife description.
import type { KnifeSpec, Outline, RunName, Segment, Vec2 } from "@scantling/geometry";

export interface ReferenceKnife {
  readonly name: string;
  readonly spec: KnifeSpec;
  readonly outline: Outline;
}

export const DEGREE = Math.atan(1) / 45;
export const p = (x: number, y: number): Vec2 => ({ x, y });

export function polyline(...points: readonly Vec2[]): Segment[] {
  return points.slice(1).map((to, i): Segment => ({ kind: "line", from: points[i] ?? to, to }));
}

export function outlineOf(
  runs: Partial<Record<RunName, readonly Segment[]>>,
  edgeLength: number,
  ricasso: number,
  butt: number,
): Outline {
  const full: Record<RunName, readonly Segment[]> = {
    edge: runs.edge ?? [],
    front: runs.front ?? [],
    spine: runs.spine ?? [],
    tangTop: runs.tangTop ?? [],
    butt: runs.butt ?? [],
    tangBottom: runs.tangBottom ?? [],
    heelFace: runs.heelFace ?? [],
  };
  const segments = [
    full.edge,
    full.front,
    full.spine,
    full.tangTop,
    full.butt,
    full.tangBottom,
    full.heelFace,
  ].flat();
  return { runs: full, path: { segments, closed: true }, edgeLength, handleFront: -ricasso, butt, ricasso };
}

/** The path data of a run, y up, with an arc written by its end, radius and direction. */
function pathData(segments: readonly Segment[]): string {
  const first = segments[0];
  if (!first) throw new Error("a run given as path data has segments");
  const parts = [`M${first.from.x} ${first.from.y}`];
  for (const s of segments) {
    if (s.kind === "line") parts.push(`L${s.to.x} ${s.to.y}`);
    else if (s.kind === "cubic")
      parts.push(`C${s.control1.x} ${s.control1.y} ${s.control2.x} ${s.control2.y} ${s.to.x} ${s.to.y}`);
    else
      parts.push(
        `A${s.radius} ${s.radius} 0 ${Math.abs(s.sweep) > Math.PI ? 1 : 0} ${s.sweep > 0 ? 1 : 0} ${s.to.x} ${s.to.y}`,
      );
  }
  return parts.join(" ");
}

export function runsSpec(outline: Outline): {
  runs: { edge: string } & Partial<Record<Exclude<RunName, "edge">, string>>;
} {
  const given: { edge: string } & Partial<Record<Exclude<RunName, "edge">, string>> = {
    edge: pathData(outline.runs.edge),
  };
  for (const name of ["front", "spine", "tangTop", "butt", "tangBottom", "heelFace"] as const) {
    if (outline.runs[name].length > 0) given[name] = pathData(outline.runs[name]);
  }
  return { runs: given };
}
