import {
  bevelAt,
  crossingsAtX,
  extremeParameters,
  type Knife,
  type KnifeSpec,
  type Outline,
  type PieceState,
  pointAt,
  statePattern,
  type Vec2,
  weighState,
} from "@scantling/geometry";
import type { PatternHeight, PatternModel } from "@scantling/render";
import { inFileTerms, type Measured } from "../measure.js";
import { sizesOf } from "../sizes.js";
import { heightBesideFillets } from "../tang-front.js";
import { usedMaterials } from "../used-materials.js";

/** How a size state is called on a sheet. */
export const STATE_WORDS: Readonly<Record<PieceState, string>> = {
  finished: "finished",
  ready: "ready to harden",
  forged: "as forged",
};

/** The knife in a size state as the pattern sheet shows it. */
export function makePatternModel(measured: Measured, state: PieceState = "finished"): PatternModel {
  const { job, knife, weight } = measured;
  const { drawn, below, finished, ...geometry } = inFileTerms(job, () => statePattern(knife, state));
  const sizes = sizesOf(drawn);
  const hasLine = state !== "forged" || geometry.bevelLine.flat().some(({ from, to }) => from.x !== to.x);
  const bevelHeight = hasLine ? inFileTerms(job, () => bevelHeightOf(knife, drawn, below)) : undefined;
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
    units: job.units,
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
function bevelHeightOf(knife: Knife, drawn: Outline, below: number): PatternHeight | undefined {
  const { at, length } = knife.spec.blade.plunge ?? { at: 0, length: 0 };
  const x = Math.max(0, at + length);
  if (x >= knife.outline.edgeLength) return undefined;
  const { height, spineDistance } = bevelAt(knife, x + BESIDE);
  if (spineDistance - height < SAME_SIZE) return undefined;
  const { low } = heightAt(drawn, x + BESIDE);
  return { x, low, high: low + height + below };
}
