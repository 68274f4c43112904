import {
  type Banded,
  type FigurePath,
  figureOf,
  type LearningShop,
  type LearntFigure,
  presentFigure,
} from "@scantling/geometry";
import type { FileUnits } from "@scantling/geometry/units";
import type { YamlChange } from "../file/set-yaml.js";
import { exactFigureText, figureText } from "./figure-text.js";

/** A figure of the shop file, as it stands and as it is to become. */
export interface Proposal {
  readonly path: FigurePath;
  /** As the file writes them; `from` undefined where the shop has none. */
  readonly from: string | undefined;
  readonly to: string;
  /** As it stood before anything was learnt into it; undefined where there was none. */
  readonly was: string | undefined;
  readonly jobs: number;
}

/** Fewer jobs change nothing. */
const LEAST_JOBS = 2;

/**
 * What is to change in the shop file: figures that enough jobs tell of and that come out other than they stand there.
 *
 * @param units - Of the shop file.
 */
export function proposalsOf(
  figures: readonly LearntFigure[],
  shop: LearningShop,
  units: FileUnits,
): readonly Proposal[] {
  return figures.flatMap(({ path, own, isNew, estimate }): Proposal[] => {
    const to = figureText(path, estimate, units);
    const now = presentFigure(path, shop);
    const from = now === undefined ? undefined : figureText(path, now, units);
    // What is counted off a weld beside its scale may be too much: then nothing is left for the scale.
    if (estimate.jobs < LEAST_JOBS || !(estimate.value > 0) || to === from) return [];
    const was = isNew ? undefined : exactFigureText(path, ownAsFile(path, own), units);
    return [{ path, from, to, was, jobs: estimate.jobs }];
  });
}

/** A band that only stands in where the file has none is not written into it. */
const ownAsFile = (path: FigurePath, own: Banded): Banded =>
  figureOf(path).banded ? own : { value: own.value, low: own.value, high: own.value };

const KEEP = "What stood here before scantling learn. Keep it, or records count twice.";

/** The changes of the shop file: each figure in its place, then what stood there before. */
export function changesOf(proposals: readonly Proposal[]): readonly YamlChange[] {
  return [
    ...proposals.map(({ path, to }): YamlChange => ({ path: path.split("."), value: to })),
    ...proposals.flatMap(({ path, to, was, jobs }): YamlChange[] => {
      const said = (key: string, value: string | number): YamlChange => ({
        path: ["learned", path, key],
        value,
        comment: KEEP,
      });
      return [...(was === undefined ? [] : [said("was", was)]), said("is", to), said("jobs", jobs)];
    }),
  ];
}
