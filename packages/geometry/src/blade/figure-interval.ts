import { GeometryError, SpecError } from "../errors/errors.js";
import { checkNumbers } from "./check-numbers.js";
import { type Knife, rebuildKnife } from "./knife.js";
import type { KnifeSpec } from "./spec.js";
import { changedAt } from "./spec-path.js";
import { DEFAULT_TOLERANCES, type InputTolerance, type ToleranceDefaults } from "./tolerances.js";
import { uncertainInputs } from "./uncertain-inputs.js";

/** Numbers of the blade's own shape; what stands on the tang, and densities, move none of its figures. */
const OF_BLADE = /^blade\./u;

/**
 * 95 % interval of any one figure of the blade, by propagation: each input of the blade is moved to its two limits while the
 * others stay, and the changes are added in squares, upward and downward apart. The outline's sides are not moved.
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
  const ups: number[] = [];
  const downs: number[] = [];
  for (const { paths, plus, minus } of uncertainInputs(knife.spec, given, defaults)) {
    if (!paths.every((path) => OF_BLADE.test(path))) continue;
    const ends = [plus, -minus].map((by) => movedFigure(knife.spec, paths, by, figure) ?? middle);
    ups.push(Math.max(0, ...ends.map((end) => end - middle)));
    downs.push(Math.max(0, ...ends.map((end) => middle - end)));
  }
  return [middle - Math.hypot(...downs), middle + Math.hypot(...ups)];
}

/** The figure with one input moved; what would go below nothing stops there. Undefined where no such knife can be built. */
function movedFigure(
  spec: KnifeSpec,
  paths: readonly string[],
  by: number,
  figure: (knife: Knife) => number,
): number | undefined {
  for (const least of [Number.NEGATIVE_INFINITY, 0]) {
    const changed = paths.reduce((before, path) => changedAt(before, path, by, least), spec);
    if (checkNumbers(changed).length > 0) continue;
    try {
      const value = figure(rebuildKnife(changed));
      if (Number.isFinite(value)) return value;
    } catch (error) {
      if (!(error instanceof SpecError || error instanceof GeometryError)) throw error;
    }
  }
  return undefined;
}
