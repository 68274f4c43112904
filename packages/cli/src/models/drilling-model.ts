import {
  crossingsAtX,
  type HoleSetUp,
  holeSetUps,
  nearestOnPath,
  type Outline,
  type Path,
  pathBounds,
  statePattern,
  type Vec2,
} from "@scantling/geometry";
import type { DrillingHole, DrillingModel, DrillingPlace, PatternHole } from "@scantling/render";
import { inFileTerms, type Measured } from "../measure.js";
import { holeWarnings } from "../report/hole-warnings.js";
import { orderHead } from "./order-head.js";
import { STATE_WORDS } from "./pattern-model.js";

/** An edge whose ends differ by less than this in height is level, mm: far less than a square shows. */
const LEVEL_WITHIN = 0.005;

/**
 * The holes of a knife as the drill layout and the card show them, laid off from the edges of the finished outline, each
 * with the shop's drill for it.
 *
 * @returns undefined where nothing is drilled.
 */
export function makeDrillingModel(measured: Measured): DrillingModel | undefined {
  const { job, knife } = measured;
  const { outline, allowances } = knife;
  const { holes } = inFileTerms(job, () => statePattern(knife, "finished"));
  if (holes.length === 0) return undefined;
  const setUpAt = setUpsOf(measured);
  const edge = levelEdge(outline);
  const warnings = holeWarnings(measured);
  const { outline: over, butt } = allowances;
  return {
    ...orderHead(job),
    steel: job.spec.steel.name,
    // Nothing is taken off the profile after hardening, so these are the edges that the drill finds.
    state: STATE_WORDS.finished,
    outline: outline.path,
    handleFront: outline.handleFront,
    edgeLength: outline.edgeLength,
    holes: holes.map((hole) => drillingHole(hole, holes, outline.path, setUpAt(hole.centre))),
    ...(warnings.length === 0 ? {} : { warnings }),
    ...(edge === undefined ? {} : { levelEdge: edge }),
    ...(over > 0 || butt > 0 ? { forged: { outline: over, butt } } : {}),
  };
}

/** Centres closer than this are of one hole, mm. */
const SAME_CENTRE = 1e-9;

/** What is drilled for the hole of the steel that has a centre here. */
function setUpsOf({ job, knife }: Measured): (centre: Vec2) => HoleSetUp | undefined {
  const setUps = inFileTerms(job, () => holeSetUps(knife, job.shop.drills ?? []));
  return ({ x, y }) => setUps.find(({ at }) => Math.hypot(at.x - x, at.y - y) < SAME_CENTRE);
}

/** Hole less pin: with the shop's drill, or as the hole is drawn where it has none. */
const playOf = ({ pin, diameter, steel }: HoleSetUp): { play?: number } =>
  pin === undefined ? {} : { play: steel?.clearance ?? diameter - pin };

function drillingHole(
  hole: PatternHole,
  all: readonly PatternHole[],
  outline: Path,
  setUp: HoleSetUp | undefined,
): DrillingHole {
  const centres = [hole.centre, ...(hole.slot === undefined ? [] : [hole.slot.to])];
  const pitch = pitchOf(hole, all);
  return {
    ...hole,
    places: centres.map((centre) => placeOf(centre, outline)),
    rimToEdge: leastDistance(hole.centre, hole.slot?.to ?? hole.centre, outline) - hole.diameter / 2,
    ...(pitch === undefined ? {} : { pitch }),
    ...(setUp?.steel === undefined ? {} : { drill: setUp.steel.drill.name }),
    ...(setUp === undefined ? {} : playOf(setUp)),
  };
}

/** Along from the butt end, ahead of the heel from there; across to the outline over and under the centre. */
function placeOf(centre: Vec2, outline: Path): DrillingPlace {
  const ys = crossingsAtX(outline, centre.x).map(({ point }) => point.y);
  const above = ys.filter((y) => y >= centre.y);
  const below = ys.filter((y) => y <= centre.y);
  const ahead = centre.x >= 0;
  return {
    centre,
    end: ahead ? "heel" : "butt end",
    along: ahead ? centre.x : centre.x - pathBounds(outline).minX,
    fromTop: Math.min(...above) - centre.y,
    fromBottom: centre.y - Math.max(...below),
  };
}

/** To the next hole toward the tip, from centre to centre; of a slot its first. */
function pitchOf({ centre }: PatternHole, all: readonly PatternHole[]): number | undefined {
  const ahead = all.filter((other) => other.centre.x > centre.x).map((other) => other.centre);
  const [next] = ahead.sort((a, b) => a.x - b.x);
  return next === undefined ? undefined : Math.hypot(next.x - centre.x, next.y - centre.y);
}

/** Places along a slot at which the outline's distance is looked at, and halvings about the nearest of them. */
const LOOKS = 64;
const HALVINGS = 40;

/** Least distance from the line between two points to the outline, mm. */
function leastDistance(from: Vec2, to: Vec2, outline: Path): number {
  const at = (u: number): number =>
    nearestOnPath(outline, { x: from.x + (to.x - from.x) * u, y: from.y + (to.y - from.y) * u })?.distance ??
    0;
  if (from.x === to.x && from.y === to.y) return at(0);
  let best = 0;
  for (let i = 1; i <= LOOKS; i++) if (at(i / LOOKS) < at(best)) best = i / LOOKS;
  for (let i = 0, step = 1 / LOOKS; i < HALVINGS; i++, step /= 2) {
    for (const u of [best - step, best + step]) if (u >= 0 && u <= 1 && at(u) < at(best)) best = u;
  }
  return at(best);
}

/** An edge of the tang that a square can lie on for all of its length; the top before the bottom. */
function levelEdge({ runs }: Outline): DrillingModel["levelEdge"] {
  for (const side of ["top", "bottom"] as const) {
    const run = side === "top" ? runs.tangTop : runs.tangBottom;
    const y = run[0]?.from.y;
    if (y === undefined) continue;
    const level = run.every(
      ({ kind, from, to }) =>
        kind === "line" && Math.abs(from.y - y) < LEVEL_WITHIN && Math.abs(to.y - y) < LEVEL_WITHIN,
    );
    if (level) return { side, y, rear: Math.min(...run.flatMap(({ from, to }) => [from.x, to.x])) };
  }
  return undefined;
}
