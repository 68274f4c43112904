import {
  bevelAt,
  crossingsAtX,
  extremeParameters,
  heightBesideFillets,
  type Knife,
  type KnifeSpec,
  type Outline,
  offsetPath,
  type Path,
  type PieceState,
  pointAt,
  type StatePattern,
  statePattern,
  translateSegment,
  type Vec2,
  weighState,
} from "@scantling/geometry";
import { formatLength } from "@scantling/geometry/units";
import type { PatternHeight, PatternModel } from "@scantling/render";
import { EXIT } from "../exit-code.js";
import { CommandFailure } from "../failure.js";
import { inFileTerms, type Measured } from "../measure.js";
import { outlineSizes } from "../sizes.js";
import { usedMaterials } from "../used-materials.js";
import { sheetUnits } from "./sheet-units.js";

/** How a size state is called on a sheet. */
export const STATE_WORDS: Readonly<Record<PieceState, string>> = {
  finished: "finished",
  ready: "ready to harden",
  forged: "as forged",
};

/** What else is asked of a pattern. */
export interface PatternWishes {
  /** Which face is said to be seen; left out: the right one, without a word. */
  readonly face?: "left" | "right";
  /** Where to saw or scribe: distance from the outline, mm, positive outside; left out or 0: along the outline itself. */
  readonly cutOffset?: number;
}

/** From the largest outline in. */
const OUTERMOST_FIRST: readonly PieceState[] = ["forged", "ready", "finished"];

/**
 * The knife in a size state as the pattern sheet shows it; in several, the largest of them with the others' outlines in it.
 *
 * @throws {CommandFailure} exit code 2 where the line to cut along leaves nothing of the blade.
 */
export function makePatternModel(
  measured: Measured,
  states: PieceState | readonly PieceState[] = "finished",
  wishes: PatternWishes = {},
): PatternModel {
  const asked = OUTERMOST_FIRST.filter((state) => [states].flat().includes(state));
  const [outermost = "finished", ...inner] = asked;
  const side = wishes.face ?? "right";
  const { job, knife } = measured;
  const outer = inFileTerms(job, () => statePattern(knife, outermost, side));
  const model = modelOf(measured, outermost, side, outer);
  const { finishedOutline: _, ...nested } = model;
  const cut = cutLineOf(measured, outer.outline, wishes.cutOffset ?? 0);
  return {
    ...(inner.length === 0 ? model : { ...nested, ...nestedOutlines(knife, outermost, inner, outer) }),
    ...(cut === undefined ? {} : { cutLine: cut }),
    ...(wishes.face === undefined ? {} : { mirror: wishes.face === "left" }),
  };
}

/** The inner states in the frame of the outermost; those that share an outline with another are named together. */
function nestedOutlines(
  knife: Knife,
  outermost: PieceState,
  inner: readonly PieceState[],
  { below }: StatePattern,
): Pick<PatternModel, "state" | "further" | "finishedHeel"> {
  // Grinding and hardening change the thickness alone: ready to harden and finished have one profile.
  const words = inner.map((state) => STATE_WORDS[state]).join(", ");
  const finishedHeel = { x: 0, y: below };
  if (outermost !== "forged")
    return { state: `${STATE_WORDS[outermost]}, ${words}`, further: [], finishedHeel };
  const { outline, holes } = statePattern(knife, "finished");
  const lift = (path: Path): Path => ({
    ...path,
    segments: path.segments.map((segment) => translateSegment(segment, 0, below)),
  });
  const up = ({ x, y }: Vec2): Vec2 => ({ x, y: y + below });
  return {
    state: STATE_WORDS[outermost],
    further: [
      {
        state: words,
        outline: lift(outline),
        holes: holes.map(({ centre, slot, ...hole }) => ({
          ...hole,
          centre: up(centre),
          ...(slot === undefined ? {} : { slot: { to: up(slot.to), rim: lift(slot.rim) } }),
        })),
      },
    ],
    finishedHeel,
  };
}

/** The line beside the outline, at the same distance all round. */
function cutLineOf({ job }: Measured, outline: Path, offset: number): PatternModel["cutLine"] {
  if (offset === 0) return undefined;
  const paths = inFileTerms(job, () => offsetPath(outline, offset));
  if (paths.length > 0) return { offset, paths };
  throw new CommandFailure(
    EXIT.usage,
    "cut-line-too-far-in",
    `a line ${formatLength(-offset, job.units)} inside the outline leaves nothing of the blade`,
    "Give a smaller distance.",
  );
}

function modelOf(
  { job, knife, weight }: Measured,
  state: PieceState,
  side: "left" | "right",
  pattern: StatePattern,
): PatternModel {
  const { drawn, below, finished, ...geometry } = pattern;
  const sizes = outlineSizes(drawn);
  const hasLine = state !== "forged" || geometry.bevelLine.flat().some(({ from, to }) => from.x !== to.x);
  const bevelHeight = hasLine ? inFileTerms(job, () => bevelHeightOf(knife, drawn, below, side)) : undefined;
  return {
    ...geometry,
    ...(finished === undefined ? {} : { finishedOutline: finished }),
    code: job.knife.order.code,
    title: job.knife.order.title,
    steel: job.spec.steel.name,
    densityFromMemory: densityFromMemory(job.spec),
    state: STATE_WORDS[state],
    handleFront: drawn.handleFront,
    ...sizes,
    ...furtherSizes(drawn, sizes.heelHeight),
    ...(bevelHeight === undefined ? {} : { bevelHeight }),
    steelMass: weight.steel.mass,
    ...(state === "finished" ? {} : { stateMass: inFileTerms(job, () => weighState(knife, state)).mass }),
    knifeMass: weight.knife.mass,
    units: sheetUnits(job),
  };
}

function densityFromMemory(spec: KnifeSpec): NonNullable<PatternModel["densityFromMemory"]> {
  const guessed = usedMaterials(spec).filter(({ mark }) => mark === "from memory");
  return { steel: guessed.some(({ part }) => part === "steel"), knife: guessed.length > 0 };
}

/** Sizes nearer than this are one, mm. */
const SAME_SIZE = 0.01;
/** Where the outline turns a corner it is read this little beside it, mm. */
const BESIDE = 1e-6;

/** Sizes by which the outline is laid out, read off the outline itself so that they hold however it was given. */
function furtherSizes(outline: Outline, heelHeight: number): Partial<PatternModel> {
  const { runs, edgeLength, handleFront, butt } = outline;
  const tip = runs.edge.at(-1)?.to ?? { x: edgeLength, y: 0 };
  const front = runs.front.at(-1)?.to;
  const highest = highestOf(outline);
  const straight = runs.edge[0]?.kind === "line" ? runs.edge[0].to.x : 0;
  return {
    tangHeights: {
      front: heightBesideFillets(outline) ?? heightAt(outline, handleFront - BESIDE, handleFront),
      middle: heightAt(outline, (handleFront + butt) / 2),
      butt: buttHeight(outline),
    },
    ...(front === undefined
      ? { tipHeight: { x: tip.x, low: 0, high: tip.y } }
      : { frontHeight: { x: tip.x, low: tip.y, high: front.y } }),
    ...(highest.y - heelHeight > SAME_SIZE
      ? { greatestHeight: { x: highest.x, low: 0, high: highest.y } }
      : {}),
    ...(straight > SAME_SIZE && edgeLength - straight > SAME_SIZE ? { straightEdge: straight } : {}),
  };
}

/** Steel between the lowest and the highest crossing at x, told as standing at `shown`. */
function heightAt({ path }: Outline, x: number, shown = x): PatternHeight {
  const ys = crossingsAtX(path, x).map(({ point }) => point.y);
  return { x: shown, low: Math.min(...ys), high: Math.max(...ys) };
}

/** At the butt's foremost end: the ends of a straight one, the full height before a rounded one. */
function buttHeight(outline: Outline): PatternHeight {
  const ends = outline.runs.butt.flatMap(({ from, to }) => [from.x, to.x]);
  const x = Math.max(outline.butt, ...ends);
  return heightAt(outline, x + BESIDE, x);
}

function highestOf({ runs }: Outline): Vec2 {
  const points = [...runs.front, ...runs.spine].flatMap((segment) =>
    [0, ...extremeParameters(segment, "y"), 1].map((t) => pointAt(segment, t)),
  );
  return points.reduce((a, b) => (b.y > a.y ? b : a));
}

/**
 * The bevel where it is all there, at the heel or before the plunge; nothing where it reaches the spine.
 *
 * @param below - how much farther down the drawn edge lies than the finished one, mm.
 */
function bevelHeightOf(
  knife: Knife,
  drawn: Outline,
  below: number,
  side: "left" | "right",
): PatternHeight | undefined {
  const { at, length } = knife.spec.blade.plunge ?? { at: 0, length: 0 };
  const x = Math.max(0, at + length);
  if (x >= knife.outline.edgeLength) return undefined;
  const { height, spineDistance } = bevelAt(knife, x + BESIDE, side);
  if (spineDistance - height < SAME_SIZE) return undefined;
  const { low } = heightAt(drawn, x + BESIDE);
  return { x, low, high: low + height + below };
}
