import { GeometryError, SpecError } from "../errors/errors.js";
import { checkNumbers } from "./check-numbers.js";
import { type Knife, rebuildKnife } from "./knife.js";
import { moveSides } from "./move-sides.js";
import type { RunName } from "./outline.js";
import { scaledRuns } from "./scaled-runs.js";
import { uncertainSides } from "./sides-moved.js";
import type { KnifeSpec } from "./spec.js";
import { changedAt } from "./spec-path.js";
import { DEFAULT_TOLERANCES, type InputTolerance, type ToleranceDefaults } from "./tolerances.js";
import { uncertainInputs } from "./uncertain-inputs.js";

/** Numbers of the blade's own shape; what stands on the tang, and densities, move none of its figures. */
const OF_BLADE = /^blade\./u;

/**
 * 95 % interval of any one figure of the blade, by propagation: each input of the blade, and the sides of its outline together,
 * are moved to their two limits while the others stay, and the changes are added in squares, upward and downward apart.
 *
 * @param figure - Read off a knife, in any unit.
 * @param given - Tolerances of the file; they take the place of the defaults for the same input.
 *
 * @example
 * // spine ± 0.1 mm, forged nowhere
 * figureInterval(knife, ({ laws }) => laws.spine.valueAt(0), []); // [3.1, 3.3]
 */
export function figureInterval(
  knife: Knife,
  figure: (knife: Knife) => number,
  given: readonly InputTolerance[],
  defaults: ToleranceDefaults = DEFAULT_TOLERANCES,
): readonly [number, number] {
  const middle = figure(knife);
  const inputs = uncertainInputs(knife.spec, given, defaults)
    .filter(({ paths }) => paths.every((path) => OF_BLADE.test(path)))
    .map(({ paths, plus, minus }) => [plus, -minus].map((by) => movedFigure(knife.spec, paths, by, figure)));
  const sides = uncertainSides(given);
  const outline =
    sides && [defaults.outline, -defaults.outline].map((by) => sidesMoved(knife, sides.runs, by, figure));
  const changes = outline === undefined ? inputs : [...inputs, outline];
  const spread = (way: 1 | -1): number =>
    Math.hypot(...changes.map((ends) => Math.max(0, ...ends.map((end) => way * ((end ?? middle) - middle)))));
  return [middle - spread(-1), middle + spread(1)];
}

/** The figure with one input moved; what would go below nothing stops there. Undefined where no such knife can be built. */
function movedFigure(
  spec: KnifeSpec,
  paths: readonly string[],
  by: number,
  figure: (knife: Knife) => number,
): number | undefined {
  for (const least of [Number.NEGATIVE_INFINITY, 0]) {
    const value = figureOf(
      paths.reduce((before, path) => changedAt(before, path, by, least), spec),
      figure,
    );
    if (value !== undefined) return value;
  }
  return undefined;
}

/** The same with sides of the outline moved out, the knife being given by its runs then. */
function sidesMoved(
  { spec, outline }: Knife,
  runs: readonly RunName[],
  by: number,
  figure: (knife: Knife) => number,
): number | undefined {
  const moved = moveSides(outline, (run) => (runs.includes(run) ? by : 0));
  if (moved === undefined) return undefined;
  const { ricasso: _ricasso, choil: _choil, ...blade } = spec.blade;
  const { length: _length, heights: _heights, drop: _drop, shoulderRadius: _radius, ...tang } = spec.tang;
  const drawn = scaledRuns(moved, { ahead: 1, up: 1 });
  return figureOf({ ...spec, blade: { ...blade, outline: drawn }, tang }, figure);
}

/** Undefined where no such knife can be built, or it has no such figure. */
function figureOf(spec: KnifeSpec, figure: (knife: Knife) => number): number | undefined {
  if (checkNumbers(spec).length > 0) return undefined;
  try {
    const value = figure(rebuildKnife(spec));
    return Number.isFinite(value) ? value : undefined;
  } catch (error) {
    if (error instanceof SpecError || error instanceof GeometryError) return undefined;
    throw error;
  }
}
