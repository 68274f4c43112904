import type { Segment } from "../plane/segment.js";
import type { Vec2 } from "../plane/vec2.js";
import { type Outline, RUN_NAMES, type RunName } from "./outline.js";

/** The outline with every run that is the same as another outline's taken over from there, so that it can be told by its object. */
export function withReusedRuns(outline: Outline, other: Outline): Outline {
  const runs = Object.fromEntries(
    RUN_NAMES.map((name) => {
      const own = outline.runs[name];
      const before = other.runs[name];
      return [name, areSame(own, before) ? before : own];
    }),
  ) as Record<RunName, readonly Segment[]>;
  return { ...outline, runs };
}

function areSame(a: readonly Segment[], b: readonly Segment[]): boolean {
  return a.length === b.length && a.every((segment, i) => isSame(segment, b[i] as Segment));
}

const isOnePoint = (a: Vec2, b: Vec2): boolean => a.x === b.x && a.y === b.y;

function isSame(a: Segment, b: Segment): boolean {
  if (!isOnePoint(a.from, b.from) || !isOnePoint(a.to, b.to)) return false;
  switch (a.kind) {
    case "line":
      return b.kind === "line";
    case "arc":
      return b.kind === "arc" && a.sweep === b.sweep;
    case "cubic":
      return b.kind === "cubic" && isOnePoint(a.control1, b.control1) && isOnePoint(a.control2, b.control2);
  }
}
