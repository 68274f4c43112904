import type { HandleStock, Path, Segment } from "@scantling/geometry";
import type { CustomerView } from "@scantling/render";
import type { Measured } from "../../measure.js";
import { makePatternModel } from "../pattern-model.js";

/** What is seen of the knife from its right side: inside a handle the tang is hidden, holes under slabs are not seen. */
export function customerView(measured: Measured, stock: HandleStock | undefined): CustomerView {
  const { knife } = measured;
  const { runs } = knife.outline;
  const pattern = makePatternModel(measured);
  const { fittings: _, ...shown } = pattern;
  const inHandle = stock?.kind === "block";
  const tang: (readonly Segment[])[] = [runs.tangTop, runs.butt, runs.tangBottom];
  const blade: (readonly Segment[])[] = [[...runs.heelFace, ...runs.edge, ...runs.front, ...runs.spine]];
  return {
    pattern: { ...shown, holes: pattern.holes.filter(({ kind }) => kind !== "lightening") },
    seen: inHandle ? blade : [knife.outline.path.segments],
    inside: inHandle ? tang : [],
    handle: stock === undefined ? [] : handlePaths(stock),
    ...(stock === undefined && knife.spec.tang.form !== "full"
      ? { note: "Drawn is the steel; the handle goes over the tang." }
      : {}),
  };
}

function handlePaths(stock: HandleStock): Path[] {
  const wood = stock.kind === "slabs" ? stock.pieces : [stock.side];
  return [
    ...wood,
    ...stock.fittings.map(({ front, rear, low, high }) =>
      closedThrough([
        [rear, low],
        [front, low],
        [front, high],
        [rear, high],
      ]),
    ),
  ];
}

function closedThrough(points: readonly (readonly [x: number, y: number])[]): Path {
  return {
    closed: true,
    segments: points.map(([x, y], index) => {
      const [nextX, nextY] = points[(index + 1) % points.length] ?? [x, y];
      return { kind: "line", from: { x, y }, to: { x: nextX, y: nextY } };
    }),
  };
}
