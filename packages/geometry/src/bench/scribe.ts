import { insideEnds } from "../blade/inside-ends.js";
import type { Knife } from "../blade/knife.js";
import { facesOf } from "../blade/knife-faces.js";
import { reportStations } from "../blade/station-figures.js";
import type { Drill } from "../stock/bench-tools.js";
import { type LevelSetUp, levelSetUp } from "./level-shims.js";
import { type ScribingDrill, scribingDrills } from "./scribe-drill.js";

/** Two lines that the edge is to end between, mm above the plate with the left face down. */
export interface EdgeLines {
  readonly lower: number;
  readonly upper: number;
  /** Gauge settings to scribe each line from the face that it is nearer to: left face down, right face down. */
  readonly leftDown: number;
  readonly rightDown: number;
}

/**
 * Lines that leave an edge where it belongs, on a piece whose centre plane is level. The gap between them is the edge
 * thickness only if the thickness was measured, not assumed.
 *
 * @param thickness - Measured where the piece rests on the plate, mm.
 * @param right - How far the edge to leave reaches from the centre plane toward the right face, mm.
 * @param left - And toward the left one; less than nothing where all of it lies on the right.
 *
 * @example
 * edgeLines(4, 0.5, 0.5); // { lower: 1.5, upper: 2.5, leftDown: 1.5, rightDown: 1.5 }
 * edgeLines(4, 2, -1); // { lower: 3, upper: 4, leftDown: 3, rightDown: 0 }
 */
export function edgeLines(thickness: number, right: number, left: number): EdgeLines {
  const half = thickness / 2;
  return { lower: half - left, upper: half + right, leftDown: half - left, rightDown: half - right };
}

/** The lines at one station of a blade, mm. */
export interface ScribeStation extends EdgeLines {
  /** mm ahead of the heel. */
  readonly x: number;
  /** Thickness of the flats there, and the edge that is to be left for hardening. */
  readonly thickness: number;
  readonly edge: number;
}

/** Everything that the height gauge is set to. mm. */
export interface ScribeSetUp {
  readonly level: LevelSetUp;
  /** With the centre plane level; all alike where the edge is as thick everywhere. */
  readonly stations: readonly ScribeStation[];
  /** Whether one setting from either face does: the apex lies in the middle and the edge is as thick everywhere. */
  readonly oneSetting: boolean;
  /** Owned drills that scribe the first station's lines, nearest first: from the left face down, and from the right. */
  readonly drills: {
    readonly leftDown: readonly ScribingDrill[];
    readonly rightDown: readonly ScribingDrill[];
  };
}

/**
 * Lines for the edge on a blade with clean flats, before its bevels are ground: where the ready-to-harden edge lies.
 *
 * @param drills - Those in hand.
 *
 * @example
 * const { stations, oneSetting } = scribeSetUp(knife, []);
 * [stations[0]?.thickness, stations[0]?.edge, stations[0]?.leftDown]; // [3.4, 0.6, 1.4]
 * oneSetting ? 1 : 0; // 1
 */
export function scribeSetUp(knife: Knife, drills: readonly Drill[]): ScribeSetUp {
  const level = levelSetUp(knife);
  const ready = knife.body("ready");
  const { slab } = knife.body("hammered");
  const stations = reportStations(knife).map((x): ScribeStation => {
    const at = insideEnds(knife, x);
    const section = ready.sectionAt(at);
    const right = section.valueAt(0);
    const left = (ready.section.left ?? section).valueAt(0);
    return {
      x,
      thickness: slab.thicknessAt(x),
      edge: right + left,
      ...edgeLines(level.thickness, right, left),
    };
  });
  const [first] = stations;
  const same = (a: number, b: number): boolean => Math.abs(a - b) < 1e-6;
  const oneSetting =
    facesOf(knife).length === 1 &&
    first !== undefined &&
    stations.every((station) => same(station.edge, first.edge));
  const choose = (height: number | undefined): ScribingDrill[] =>
    height === undefined ? [] : scribingDrills(drills, height);
  return {
    level,
    stations,
    oneSetting,
    drills: { leftDown: choose(first?.leftDown), rightDown: choose(first?.rightDown) },
  };
}
