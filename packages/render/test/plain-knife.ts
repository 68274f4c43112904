import { arcAround, line, vec2 } from "@scantling/geometry";
import type { PatternModel } from "../src/index.js";
import { harvestKnife } from "./fixtures.js";

/** A plain pointed knife: level spine and tang, a straight edge and a quarter round to the tip. */
export function plainKnife(overall: number, height: number, units: "mm" | "in"): PatternModel {
  const tang = 110;
  const edge = overall - tang;
  const top = vec2(edge, height);
  const low = 0.3 * height;
  return {
    ...harvestKnife(),
    units,
    outline: {
      closed: true,
      segments: [
        line(vec2(0, 0), vec2(edge - height, 0)),
        { ...arcAround(vec2(edge - height, height), height, -Math.PI / 2, Math.PI / 2), to: top },
        line(top, vec2(-tang, height)),
        line(vec2(-tang, height), vec2(-tang, low)),
        line(vec2(-tang, low), vec2(0, low)),
        line(vec2(0, low), vec2(0, 0)),
      ],
    },
    bevelLine: [],
    holes: [-30, -90].map((x) => ({ centre: vec2(x, 0.65 * height), diameter: 4, kind: "pin" })),
    stations: [
      { x: -tang, top: height, bottom: low, thickness: 3 },
      { x: 0, top: height, bottom: 0, thickness: 3 },
      { x: edge, top: height, bottom: height, thickness: 2 },
    ],
    handleFront: 0,
    edgeLength: edge,
    heelHeight: height,
    overallLength: overall,
    tangHeights: {
      front: { x: 0, low, high: height },
      middle: { x: -tang / 2, low, high: height },
      butt: { x: -tang, low, high: height },
    },
    bevelHeight: { x: 0, low: 0, high: 0.6 * height },
    straightEdge: edge - height,
  };
}
