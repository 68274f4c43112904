import {
  type Banded,
  DEFAULT_SHOP,
  FIGURE_PATHS,
  type FigurePath,
  figureOf,
  type LearningShop,
  presentFigure,
  TASK_HOURS,
  withBand,
  withDefaultAllowances,
} from "@scantling/geometry";
import type { ShopFile } from "../file/index.js";
import { fillShop } from "../load.js";

/**
 * What a shop reckons with, and what stood in its file before it learnt: figures that still stand as `learn` wrote them were
 * learnt from records, which must not count twice.
 *
 * @throws {FileError} where the shop breaks rules.
 */
export function learningShop(file: ShopFile | undefined): LearningShop {
  const shop = file === undefined ? DEFAULT_SHOP : fillShop(file);
  const { face, afterHardening } = withDefaultAllowances(file?.allowances);
  const present: LearningShop = {
    shop,
    allowances: { face, afterHardening },
    hours: { ...TASK_HOURS, ...file?.work.hours },
  };
  const standing = FIGURE_PATHS.flatMap((path) => {
    const entry = file?.learned[path];
    return entry !== undefined && isSame(path, presentFigure(path, present), entry.is)
      ? [{ path, was: entry.was }]
      : [];
  });
  const before = standing.flatMap(({ path, was }): [FigurePath, Banded][] =>
    was === undefined ? [] : [[path, was.high > was.low ? was : withBand(path, was.value)]],
  );
  return {
    ...present,
    before: Object.fromEntries(before),
    learntAnew: standing.flatMap(({ path, was }) => (was === undefined ? path : [])),
  };
}

/** Figures are written to a ten thousandth at the finest. */
const SAME = 1e-9;

function isSame(path: FigurePath, now: Banded | undefined, then: Banded): boolean {
  const near = (a: number, b: number): boolean => Math.abs(a - b) <= SAME * Math.max(1, Math.abs(b));
  if (now === undefined || !near(now.value, then.value)) return false;
  return !figureOf(path).banded || (near(now.low, then.low) && near(now.high, then.high));
}
