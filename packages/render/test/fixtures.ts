import { arcAround, cubic, line, type Path, type Segment, type Vec2, vec2 } from "@scantling/geometry";
import type { PatternModel } from "../src/models/pattern-model.js";

/** Lines through the points, in order. */
function through(...points: readonly Vec2[]): Segment[] {
  return points.slice(1).map((to, index) => line(points[index] ?? to, to));
}

const closed = (...runs: readonly (readonly Segment[])[]): Path => ({ segments: runs.flat(), closed: true });

/** The arc that leaves `start` toward +x and reaches `end`, its ends stored exactly. */
function lift(start: Vec2, end: Vec2): Segment {
  const radius = ((end.x - start.x) ** 2 + (end.y - start.y) ** 2) / (2 * (end.y - start.y));
  const sweep = 2 * Math.atan2(end.y - start.y, end.x - start.x);
  return { ...arcAround(vec2(start.x, start.y + radius), radius, -Math.PI / 2, sweep), from: start, to: end };
}

/** Order MG-14: a tall harvest knife with a square front, an invented order. */
export function harvestKnife(): PatternModel {
  const outline = closed(
    through(vec2(0, 0), vec2(150, 0)),
    [lift(vec2(150, 0), vec2(225, 12))],
    through(
      vec2(225, 12),
      vec2(225, 92),
      vec2(-10, 92),
      vec2(-138, 92),
      vec2(-138, 62),
      vec2(-74, 67),
      vec2(-10, 64),
      vec2(0, 64),
      vec2(0, 0),
    ),
  );
  return {
    code: "MG-14",
    title: "Tall harvest knife for a market garden",
    steel: "1084",
    state: "finished",
    outline,
    bevelLine: [[line(vec2(0, 48), vec2(150, 48)), lift(vec2(150, 48), vec2(225, 61.2))]],
    holes: [
      { centre: vec2(-26, 76), diameter: 4, kind: "pin" },
      { centre: vec2(-84, 76), diameter: 4, kind: "pin" },
      { centre: vec2(-116, 76), diameter: 6, kind: "thong" },
    ],
    stations: [
      { x: 0, top: 92, bottom: 0, thickness: 4.6 },
      { x: 135, top: 92, bottom: 0, thickness: 3.6 },
      { x: 225, top: 92, bottom: 12, thickness: 2.2 },
    ],
    handleFront: -10,
    edgeLength: 225,
    heelHeight: 92,
    overallLength: 363,
    tangHeights: {
      front: { x: -10, low: 64, high: 92 },
      middle: { x: -74, low: 67, high: 92 },
      butt: { x: -138, low: 62, high: 92 },
    },
    frontHeight: { x: 225, low: 12, high: 92 },
    bevelHeight: { x: 0, low: 0, high: 48 },
    straightEdge: 150,
    steelMass: 437.2,
    knifeMass: 541.8,
    units: "mm",
    revision: "2, with the customer's pin spacing",
  };
}

/** A long, narrow slicing knife with a rounded butt, in inches. */
export function slicer(): PatternModel {
  const outline = closed(
    through(vec2(0, 0), vec2(230, 0)),
    [cubic(vec2(230, 0), vec2(270, 0), vec2(294, 12), vec2(305, 24))],
    [cubic(vec2(305, 24), vec2(270, 36), vec2(230, 38.1), vec2(180, 38.1))],
    through(vec2(180, 38.1), vec2(-12.7, 38.1), vec2(-12.7, 36), vec2(-130, 36)),
    [arcAround(vec2(-130, 24), 12, Math.PI / 2, Math.PI)],
    through(vec2(-130, 12), vec2(-70, 14), vec2(-12.7, 10), vec2(0, 10), vec2(0, 0)),
  );
  return {
    code: "TR-3",
    title: "Long slicing knife for a smokehouse",
    steel: "80CrV2",
    state: "ready to harden",
    outline,
    bevelLine: [
      [
        line(vec2(0, 30), vec2(200, 30)),
        cubic(vec2(200, 30), vec2(225, 30), vec2(245, 32), vec2(255.9, 35.2)),
      ],
    ],
    holes: [
      { centre: vec2(-35, 24), diameter: 4.7625, kind: "pin" },
      { centre: vec2(-115, 24), diameter: 6.35, kind: "pin" },
    ],
    stations: [0, 40, 80, 120, 160, 200, 240, 280].map((x) => ({
      x,
      top: x <= 180 ? 38.1 : 38.1 - ((x - 180) / 125) ** 2 * 12,
      bottom: x <= 230 ? 0 : ((x - 230) / 75) ** 2 * 20,
      thickness: 3.2 - x / 200,
    })),
    handleFront: -12.7,
    edgeLength: 305,
    heelHeight: 38.1,
    overallLength: 447,
    tangHeights: {
      front: { x: -12.7, low: 10, high: 36 },
      middle: { x: -77.35, low: 13.755, high: 36 },
      butt: { x: -130, low: 12, high: 36 },
    },
    tipHeight: { x: 305, low: 0, high: 24 },
    bevelHeight: { x: 0, low: 0, high: 30 },
    straightEdge: 230,
    steelMass: 231.4,
    knifeMass: 318,
    units: "in",
  };
}

/** A short boning knife whose tang is as low as its edge and whose spine falls to the tip. */
export function boningKnife(): PatternModel {
  const outline = closed(
    through(vec2(0, 0), vec2(90, 0)),
    [cubic(vec2(90, 0), vec2(118, 0), vec2(136, 8), vec2(145, 16))],
    [cubic(vec2(145, 16), vec2(120, 19), vec2(90, 22), vec2(60, 22))],
    through(vec2(60, 22), vec2(0, 22), vec2(-105, 22), vec2(-105, -3), vec2(-55, 2), vec2(0, 0)),
  );
  return {
    code: "B-7",
    title: "Boning knife",
    steel: "52100",
    state: "finished",
    outline,
    bevelLine: [
      [line(vec2(0, 17), vec2(90, 17)), cubic(vec2(90, 17), vec2(100, 17), vec2(108, 18.5), vec2(113, 19.6))],
    ],
    holes: [
      { centre: vec2(-18, 12), diameter: 3, kind: "pin" },
      { centre: vec2(-52.5, 11.5), diameter: 8, kind: "lightening" },
      { centre: vec2(-88, 10), diameter: 3, kind: "pin" },
    ],
    stations: [
      { x: 0, top: 22, bottom: 0, thickness: 2.5 },
      { x: 72.5, top: 21.8, bottom: 0, thickness: 2 },
      { x: 140, top: 16.7, bottom: 11.3, thickness: 1.1 },
    ],
    handleFront: 0,
    edgeLength: 145,
    heelHeight: 22,
    overallLength: 250,
    tangHeights: {
      front: { x: 0, low: 0, high: 22 },
      middle: { x: -52.5, low: 1.75, high: 22 },
      butt: { x: -105, low: -3, high: 22 },
    },
    tipHeight: { x: 145, low: 0, high: 16 },
    bevelHeight: { x: 0, low: 0, high: 17 },
    straightEdge: 90,
    steelMass: 78.3,
    knifeMass: 121,
    units: "mm",
    revision: "1",
  };
}

export const fixtures = { harvestKnife, slicer, boningKnife };
