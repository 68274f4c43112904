import { figureInterval } from "../blade/figure-interval.js";
import { type Knife, rebuildKnife } from "../blade/knife.js";
import type { KnifeSpec } from "../blade/spec.js";
import { DEFAULT_TOLERANCES, type InputTolerance, type ToleranceDefaults } from "../blade/tolerances.js";
import { gateBodies, stageNeed } from "../stock/gates/stage-need.js";
import { type FitFigure, knifeFigure } from "./figures.js";

type ShapeFigure = Extract<FitFigure, { kind: "bevel-angle" | "behind-edge" }>;
type SteelFigure = Extract<FitFigure, { kind: "steel" }>;

/**
 * The interval of a figure of the shape, 95 of 100, as {@link figureInterval} has it. Of the steel to be cut: at low and at high
 * losses.
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
  return figureInterval(knife, (one) => knifeFigure(figure, one), given, defaults);
}

function steelInterval(knife: Knife, { route }: SteelFigure): readonly [number, number] {
  const need = stageNeed(gateBodies(knife, "cut", route.losses.scaleModel), route, "cut");
  return [need?.low ?? Number.NaN, need?.high ?? Number.NaN];
}
