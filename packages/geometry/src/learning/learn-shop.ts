import type { ScaleModel } from "../stock/shop.js";
import { FIGURE_PATHS, type FigurePath } from "./figures.js";
import type { JobRecord } from "./job-record.js";
import { type LearningShop, type LearntFigure, learnFigure } from "./learn-figure.js";
import { compareModels, type ModelsCompared } from "./other-model.js";
import { scaleCandidates } from "./scale-candidates.js";
import type { LeftOut } from "./screen.js";
import { grindingCandidates, hoursCandidates, spreadCandidates } from "./work-candidates.js";

/** Everything that records say of a shop. */
export interface LearntShop {
  /** Figures of which some job tells, in the order of the shop file. */
  readonly figures: readonly LearntFigure[];
  readonly leftOut: readonly LeftOut[];
  /** The two ways of counting forging scale; undefined where too few jobs can be counted both ways. */
  readonly models: ModelsCompared | undefined;
}

/** Forging scale, counted in each way; then welding scale. */
const SCALE: Readonly<Record<ScaleModel, readonly [FigurePath, FigurePath]>> = {
  fraction: ["losses.scalePerHeat", "losses.scalePerWeldingHeat"],
  skin: ["losses.skinPerHeat", "losses.skinPerWeldingHeat"],
};

/**
 * What records say of the shop's figures: each held together with the shop's own, odd readings left out with the reason. The
 * order of records does not matter.
 *
 * Only figures that the shop uses are answered: skins where scale is counted as a skin, shares where it is counted so.
 *
 * @example
 * const shop = { shop: DEFAULT_SHOP, allowances: { face: 0.5, afterHardening: 0.1 }, hours: {} };
 * learnShop([], shop); // { figures: [], leftOut: [], models: undefined }
 */
export function learnShop(records: readonly JobRecord[], shop: LearningShop): LearntShop {
  const candidates = records.flatMap((record) => [
    ...scaleCandidates(record, shop.shop),
    ...spreadCandidates(record),
    ...grindingCandidates(record),
    ...hoursCandidates(record),
  ]);
  const answerOf = (path: FigurePath) =>
    learnFigure(
      path,
      candidates.filter(({ of }) => of === path),
      shop,
    );
  const model = shop.shop.losses.scaleModel;
  const other: ScaleModel = model === "skin" ? "fraction" : "skin";
  const answers = FIGURE_PATHS.filter((path) => !SCALE[other].includes(path)).map(answerOf);
  const figures = answers.flatMap(({ figure }) => figure ?? []);
  const jobs = figures.find(({ path }) => path === SCALE[model][0])?.jobs ?? [];
  const otherJobs = answerOf(SCALE[other][0]).figure?.jobs ?? [];
  return {
    figures,
    leftOut: answers.flatMap(({ leftOut }) => leftOut),
    models: compareModels(other, jobs, otherJobs),
  };
}
