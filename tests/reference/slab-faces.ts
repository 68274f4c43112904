// A tang with slabs on it as two faces over its outline, by section 6 of docs/model.md.
import type { KnifeSpec, Outline, StationSpec } from "@scantling/geometry";
import { Slicer } from "./curve.js";
import type { Drill, Steel } from "./cutters.js";
import { makeLaw } from "./law.js";
import { makeNearest } from "./nearest.js";
import { polyline } from "./outlines.js";

/** Tang and slabs, and the tang alone, both with the pins' holes through them: their difference are the slabs. */
export function slabBodies(
  { tang, handle }: KnifeSpec,
  outline: Outline,
): { readonly covered: Steel; readonly bare: Steel } {
  const slabs = handle?.slabs;
  if (!slabs || !tang.thickness) throw new Error("slabs on a tang with stations of its own");
  const { tangTop, butt, tangBottom } = outline.runs;
  const [top, bottom] = [tangTop[0], tangBottom.at(-1)];
  if (!top || !bottom) throw new Error("a tang has a top and a bottom");
  const slicer = new Slicer([...tangTop, ...butt, ...tangBottom, ...polyline(bottom.to, top.from)]);
  const length = outline.handleFront - outline.butt;
  const place = (one: StationSpec): number => {
    if (one.at.kind === "handle") return 0;
    if (one.at.kind === "butt") return length;
    if (one.at.kind === "distance") return one.at.mm;
    throw new Error(`no station at the ${one.at.kind}`);
  };
  const steel = makeLaw(tang.thickness, place, false);
  const cover = makeLaw(slabs.thickness, place, slabs.between === "smooth");
  const radius = slabs.edgeRadius ?? 0;
  const toBelow = makeNearest(tangBottom);
  const toAbove = makeNearest(tangTop);

  const stations = [...steel.breaks, ...cover.breaks].map((s) => outline.handleFront - s);
  const breaks = [...new Set([...slicer.breaks, ...stations])].sort((a, b) => a - b);
  const drills = (tang.holes ?? []).map(({ at, diameter }): Drill => ({ at, to: at, radius: diameter / 2 }));
  const crossings = (x: number): number[] => slicer.crossings(x);
  const half = (x: number): number => steel.at(outline.handleFront - x) / 2;
  const bare = { face: half, strip: () => "tang", crossings, breaks };
  const covered = {
    crossings,
    breaks,
    face: (x: number, y: number): number => {
      const d = Math.min(toBelow(x, y).distance, toAbove(x, y).distance, radius);
      const lost = radius - Math.sqrt(radius ** 2 - (radius - d) ** 2);
      return half(x) + cover.at(outline.handleFront - x) - lost;
    },
    strip: (x: number, y: number): string => {
      if (toBelow(x, y).distance < radius) return "below rounded";
      return toAbove(x, y).distance < radius ? "above rounded" : "flat";
    },
  };
  return { covered: { body: covered, drills, grooves: [] }, bare: { body: bare, drills, grooves: [] } };
}
