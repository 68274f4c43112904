import { checkNumbers } from "../blade/check-numbers.js";
import { type Knife, rebuildKnife } from "../blade/knife.js";
import { moveSides } from "../blade/move-sides.js";
import { scaledRuns } from "../blade/scaled-runs.js";
import { uncertainSides } from "../blade/sides-moved.js";
import type { KnifeSpec } from "../blade/spec.js";
import { changedAt } from "../blade/spec-path.js";
import { DEFAULT_TOLERANCES, type InputTolerance, type ToleranceDefaults } from "../blade/tolerances.js";
import { uncertainInputs } from "../blade/uncertain-inputs.js";
import { GeometryError, SpecError } from "../errors/errors.js";
import { gateBodies, stageNeed } from "../stock/gates/stage-need.js";
import { type FitFigure, knifeFigure } from "./figures.js";

type ShapeFigure = Extract<FitFigure, { kind: "bevel-angle" | "behind-edge" }>;
type SteelFigure = Extract<FitFigure, { kind: "steel" }>;

/**
 * The interval of a figure of the shape, 95 of 100: each uncertain input is moved to its two limits while the others stay, and
 * the differences are added in squares, as for the mass. Of the steel to be cut: at low and at high losses.
 *
 * @param given - tolerances of the file.
 *
 * @example
 * fitFigureInterval(spec, { kind: "bevel-angle", side: "right" }); // rad, least and most of 95 in 100
 */
export function fitFigureInterval(
  spec: KnifeSpec,
  figure: ShapeFigure | SteelFigure,
  given: readonly InputTolerance[] = [],
  defaults: ToleranceDefaults = DEFAULT_TOLERANCES,
): readonly [number, number] {
  const knife = rebuildKnife(spec);
  if (figure.kind === "steel") return steelInterval(knife, figure);
  const middle = knifeFigure(figure, knife);
  const read = (variant: KnifeSpec | undefined): number => readOr(middle, figure, variant);
  const changes = uncertainInputs(spec, given, defaults).map(({ paths, plus, minus }) =>
    [plus, -minus].map((by) =>
      read(paths.reduce((before, path) => changedAt(before, path, by, 0), knife.spec)),
    ),
  );
  const sides = uncertainSides(given);
  if (sides !== undefined)
    changes.push(
      [defaults.outline, -defaults.outline].map((by) =>
        read(withSidesMoved(knife, (run) => (sides.runs.includes(run) ? by : 0))),
      ),
    );
  const spread = (way: 1 | -1): number =>
    Math.hypot(...changes.map((ends) => Math.max(0, ...ends.map((end) => way * (end - middle)))));
  return [middle - spread(-1), middle + spread(1)];
}

function steelInterval(knife: Knife, { route }: SteelFigure): readonly [number, number] {
  const need = stageNeed(gateBodies(knife, "cut", route.losses.scaleModel), route, "cut");
  return [need?.low ?? Number.NaN, need?.high ?? Number.NaN];
}

/** The figure of a variant; of one that cannot be, the figure as it was. */
function readOr(middle: number, figure: ShapeFigure, variant: KnifeSpec | undefined): number {
  if (variant === undefined || checkNumbers(variant).length > 0) return middle;
  try {
    const value = knifeFigure(figure, rebuildKnife(variant));
    return Number.isFinite(value) ? value : middle;
  } catch (error) {
    if (error instanceof SpecError || error instanceof GeometryError) return middle;
    throw error;
  }
}

/** The knife with sides of its outline moved out, as one that is given by runs. */
function withSidesMoved(
  { spec, outline }: Knife,
  by: Parameters<typeof moveSides>[1],
): KnifeSpec | undefined {
  const moved = moveSides(outline, by);
  if (moved === undefined) return undefined;
  const { ricasso: _ricasso, choil: _choil, ...blade } = spec.blade;
  const { length: _length, heights: _heights, drop: _drop, shoulderRadius: _radius, ...tang } = spec.tang;
  return { ...spec, blade: { ...blade, outline: scaledRuns(moved, { ahead: 1, up: 1 }) }, tang };
}
