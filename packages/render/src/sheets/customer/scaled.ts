import type { Path, PatternFuller, Segment, Vec2 } from "@scantling/geometry";
import type { CustomerView } from "../../models/customer-model.js";
import type { PatternHeight, PatternHole, PatternModel } from "../../models/pattern-model.js";
import { similarPath, similarPoint, similarSegment } from "../sections/similar.js";

/** A knife seen from the side, drawn smaller; its sizes are told in full. */
export function scaledView({ pattern, seen, inside, handle }: CustomerView, ratio: number): CustomerView {
  const to = { factor: 1 / ratio };
  const runs = (all: readonly (readonly Segment[])[]): Segment[][] =>
    all.map((run) => run.map((segment) => similarSegment(segment, to)));
  return {
    pattern: scaledPattern(pattern, ratio),
    seen: runs(seen),
    inside: runs(inside),
    handle: handle.map((path) => similarPath(path, to)),
  };
}

function scaledPattern(model: PatternModel, ratio: number): PatternModel {
  const to = { factor: 1 / ratio };
  const at = (p: Vec2): Vec2 => similarPoint(p, to);
  const path = (one: Path): Path => similarPath(one, to);
  const run = (segments: readonly Segment[]): Segment[] => segments.map((one) => similarSegment(one, to));
  const hole = ({ centre, diameter, slot, ...rest }: PatternHole): PatternHole => ({
    ...rest,
    centre: at(centre),
    diameter: diameter / ratio,
    ...(slot === undefined ? {} : { slot: { to: at(slot.to), rim: path(slot.rim) } }),
  });
  const fuller = ({ from, to: end, rim, ...rest }: PatternFuller): PatternFuller => ({
    ...rest,
    from: at(from),
    to: at(end),
    rim: path(rim),
  });
  const height = ({ x, low, high }: PatternHeight): PatternHeight => ({
    x: x / ratio,
    low: low / ratio,
    high: high / ratio,
  });
  const { swedge, fullers, frontHeight, tipHeight, bevelHeight } = model;
  // What is left out is not shown: heights of the tang, the straight part of the edge, fittings by their hidden lines.
  return {
    code: model.code,
    title: model.title,
    steel: model.steel,
    state: model.state,
    steelMass: model.steelMass,
    knifeMass: model.knifeMass,
    units: model.units,
    drawnAt: ratio,
    outline: path(model.outline),
    bevelLine: model.bevelLine.map(run),
    holes: model.holes.map(hole),
    stations: model.stations.map((station) => ({
      ...station,
      x: station.x / ratio,
      top: station.top / ratio,
      bottom: station.bottom / ratio,
    })),
    handleFront: model.handleFront / ratio,
    edgeLength: model.edgeLength / ratio,
    heelHeight: model.heelHeight / ratio,
    overallLength: model.overallLength / ratio,
    ...(swedge === undefined
      ? {}
      : {
          swedge: { ...swedge, from: swedge.from / ratio, to: swedge.to / ratio, line: swedge.line.map(run) },
        }),
    ...(fullers === undefined ? {} : { fullers: fullers.map(fuller) }),
    ...(frontHeight === undefined ? {} : { frontHeight: height(frontHeight) }),
    ...(tipHeight === undefined ? {} : { tipHeight: height(tipHeight) }),
    ...(bevelHeight === undefined ? {} : { bevelHeight: height(bevelHeight) }),
  };
}
