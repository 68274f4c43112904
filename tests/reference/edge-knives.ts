// Knives whose edges no family draws: round the end, past the upright, in and out again.
import type { BladeSpec, Segment } from "@scantling/geometry";
import { heel, type NamedSpec, share, tip } from "./family-knives.js";
import { DEGREE, outlineOf, p, polyline, runsSpec } from "./outlines.js";

const TANG = { tangTop: polyline(p(-6, 30), p(-95, 28)), butt: polyline(p(-95, 28), p(-95, 8)) };
const BELOW = {
  tangBottom: polyline(p(-95, 8), p(-6, 9)),
  heelFace: polyline(p(-6, 9), p(0, 9), p(0, 0)),
};

function drawn(
  name: string,
  edge: readonly Segment[],
  spine: readonly Segment[],
  edgeLength: number,
  blade: Omit<BladeSpec, "outline">,
): NamedSpec {
  const outline = outlineOf({ edge, spine, ...TANG, ...BELOW }, edgeLength, 6, -95);
  return {
    name,
    spec: {
      steel: { name: "plain", density: 0.00785 },
      blade: { outline: runsSpec(outline), ...blade },
      tang: { form: "full", buttThickness: 2 },
    },
  };
}

const circle = (
  from: [number, number],
  to: [number, number],
  centre: [number, number],
  start: number,
  sweep: number,
) =>
  ({
    kind: "arc",
    from: p(...from),
    to: p(...to),
    centre: p(...centre),
    radius: Math.hypot(from[0] - centre[0], from[1] - centre[1]),
    startAngle: start,
    sweep,
  }) satisfies Segment;

/** The edge runs up a quarter circle to where it stands upright. */
const roundEnd = (): NamedSpec =>
  drawn(
    "round end, convex",
    [...polyline(p(0, 0), p(100, 0)), circle([100, 0], [114, 14], [100, 14], -Math.PI / 2, Math.PI / 2)],
    [
      { kind: "cubic", from: p(114, 14), control1: p(114, 24), control2: p(106, 30), to: p(92, 30) },
      ...polyline(p(92, 30), p(-6, 30)),
    ],
    114,
    {
      thickness: [heel(3.4), tip(2.6)],
      bevel: { form: "convex", height: 20, edgeThickness: 0.5 },
      edgeAngle: 20 * DEGREE,
    },
  );

/** The edge runs on round its end, past the upright, and comes back over the blade. */
const turnedBack = (): NamedSpec => {
  const [sweep, radius] = [(Math.PI * 2) / 3, 14];
  const angle = sweep - Math.PI / 2;
  const end: [number, number] = [100 + radius * Math.cos(angle), radius + radius * Math.sin(angle)];
  return drawn(
    "edge past the upright, flat",
    [...polyline(p(0, 0), p(100, 0)), circle([100, 0], end, [100, radius], -Math.PI / 2, sweep)],
    [
      {
        kind: "cubic",
        from: p(...end),
        control1: p(end[0] - 6, end[1] + 6),
        control2: p(92, 30),
        to: p(80, 30),
      },
      ...polyline(p(80, 30), p(-6, 30)),
    ],
    end[0],
    {
      thickness: [heel(3.6)],
      bevel: { form: "flat", height: 16, edgeThickness: 0.5 },
      edgeAngle: 19 * DEGREE,
    },
  );
};

/** The edge bends in and out again. */
const recurved = (): NamedSpec =>
  drawn(
    "recurved edge, hollow",
    [{ kind: "cubic", from: p(0, 0), control1: p(40, 12), control2: p(90, -14), to: p(138, 18) }],
    [
      { kind: "cubic", from: p(138, 18), control1: p(118, 29), control2: p(90, 30), to: p(60, 30) },
      ...polyline(p(60, 30), p(-6, 30)),
    ],
    138,
    {
      thickness: [heel(4.4), share(0.6, 3.6), tip(2)],
      bevel: { form: "hollow", height: [heel(13), tip(17)], edgeThickness: 0.5, wheelRadius: 260 },
      edgeAngle: 18 * DEGREE,
    },
  );

export const drawnKnives = (): readonly NamedSpec[] => [roundEnd(), turnedBack(), recurved()];
