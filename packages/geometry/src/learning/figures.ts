import type { AllowanceSpec } from "../blade/spec.js";
import type { Quantity } from "../errors/issue.js";
import { TASK_WORDS, type TaskName } from "../job/task-names.js";
import { LOSS_DEFAULTS } from "../stock/defaults.js";
import { FORGE_DEFAULTS } from "../stock/forge/forge-limits.js";
import type { Banded, ShopSpec } from "../stock/shop.js";
import type { Spreading } from "./working-scale.js";

/** Figures of the shop file that records tell of, by the path that they have there. */
const FIGURES = {
  "losses.scalePerHeat": {
    words: "scale lost in a forging heat",
    quantity: "share",
    spreading: "ratio",
    step: 0.0001,
  },
  "losses.skinPerHeat": {
    words: "skin lost in a forging heat",
    quantity: "length",
    spreading: "ratio",
    step: 0.001,
  },
  "losses.scalePerWeldingHeat": {
    words: "scale lost in a welding heat",
    quantity: "share",
    spreading: "difference",
    step: 0.0001,
  },
  "losses.skinPerWeldingHeat": {
    words: "skin lost in a welding heat",
    quantity: "length",
    spreading: "difference",
    step: 0.001,
  },
  "limits.weldSpreadShare": {
    words: "share of the squeeze at welding that goes into width",
    quantity: "share",
    spreading: "difference",
    step: 0.01,
  },
  "limits.forge.bevelSpreadShare": {
    words: "share of the thinning that goes into height",
    quantity: "share",
    spreading: "difference",
    step: 0.01,
  },
  "allowances.face": {
    words: "ground off each face before hardening",
    quantity: "length",
    spreading: "ratio",
    step: 0.01,
  },
  "allowances.afterHardening": {
    words: "ground off each face after hardening",
    quantity: "length",
    spreading: "ratio",
    step: 0.01,
  },
} as const satisfies Record<string, Omit<Figure, "banded">>;

/** What a figure is called, what it counts, and how jobs of it spread. */
export interface Figure {
  readonly words: string;
  readonly quantity: Quantity | "hours";
  readonly spreading: Spreading;
  /** What it is rounded to in the shop file, in its own unit: a share, mm or hours. */
  readonly step: number;
  /** Whether the shop file keeps its band. */
  readonly banded: boolean;
}

/** Where a figure stands in the shop file. */
export type FigurePath = keyof typeof FIGURES | `work.hours.${TaskName}`;

const HOURS = "work.hours.";
/** Three minutes are as near as anyone writes down. */
const TWENTIETH = 0.05;

/** Tasks of which the shop counts hours for each time that they are done: each weld, each coat. */
const EACH_TIME: readonly TaskName[] = ["weld", "oil"];

const isHours = (path: FigurePath): path is `work.hours.${TaskName}` => path.startsWith(HOURS);

/**
 * What is known of a figure.
 *
 * @example
 * figureOf("losses.scalePerHeat").spreading; // "ratio"
 * figureOf("work.hours.forge").words; // "hours of forging"
 */
export function figureOf(path: FigurePath): Figure {
  if (!isHours(path)) return { ...FIGURES[path], banded: path.startsWith("losses.") };
  const task = path.slice(HOURS.length) as TaskName;
  return {
    words: `hours of ${TASK_WORDS[task]}${EACH_TIME.includes(task) ? ", each time" : ""}`,
    quantity: "hours",
    spreading: "ratio",
    step: TWENTIETH,
    banded: true,
  };
}

/** Every figure, in the order of reports. */
export const FIGURE_PATHS: readonly FigurePath[] = [
  ...(Object.keys(FIGURES) as (keyof typeof FIGURES)[]),
  ...(Object.keys(TASK_WORDS) as TaskName[]).map((task) => `work.hours.${task}` as const),
];

/** What the shop reckons with today; whatever its file leaves out is filled with the published defaults. */
export interface PresentShop {
  readonly shop: Pick<ShopSpec, "losses" | "limits" | "gates">;
  readonly allowances: Pick<AllowanceSpec, "face" | "afterHardening">;
  /** Hours of a job by task, those of `weld` and `oil` for each time; a task that the shop has no hours for is left out. */
  readonly hours: Partial<Record<TaskName, Banded>>;
}

/**
 * Bands of figures that the shop file gives none for: where 95 of 100 jobs may come out.
 * Basis: common practice, no source. A share: so much either way; the others: by so much of a factor. Hours that nobody ever put
 * down are known less than those that somebody did.
 */
const BARE_BANDS = { share: 0.15, allowance: 1.6, hours: 2, hoursAnew: 2.5 } as const;

/** What a shop has of a figure: `none` where its file says nothing and nothing stands in, `off` where it says 0. */
export type OwnFigure = Banded | "none" | "off";

/** Shares of a thinning may well be 0; any other figure of 0 is switched off, such as the hours of a task that is left out. */
const canBeNothing = (path: FigurePath): boolean => path.startsWith("limits.");

/**
 * What the shop reckons with for a figure, with its band. A loss without a band gets that of the published default, in
 * proportion; other figures have none in the file and get one that is common practice.
 *
 * @example
 * const present = { shop: DEFAULT_SHOP, allowances: { face: 0.5, afterHardening: 0.1 }, hours: { forge: { value: 3, low: 3, high: 3 } } };
 * ownFigure("losses.scalePerHeat", present); // { value: 0.012, low: 0.006, high: 0.02 }
 * ownFigure("work.hours.etch", present); // "none"
 */
export function ownFigure(path: FigurePath, present: PresentShop): OwnFigure {
  const own = presentFigure(path, present);
  if (own === undefined) return "none";
  if (!(own.value > 0) && !canBeNothing(path)) return "off";
  return own.high > own.low ? own : withBand(path, own.value);
}

/**
 * A figure with the band that stands in where the file has none.
 *
 * @example
 * withBand("limits.weldSpreadShare", 0.3).low; // 0.15
 */
export function withBand(path: FigurePath, value: number): Banded {
  const loss = LOSS_BANDS[path];
  if (loss !== undefined)
    return { value, low: (value * loss.low) / loss.value, high: (value * loss.high) / loss.value };
  if (figureOf(path).spreading === "difference")
    return { value, low: value - BARE_BANDS.share, high: value + BARE_BANDS.share };
  const factor = isHours(path) ? BARE_BANDS.hours : BARE_BANDS.allowance;
  return { value, low: value / factor, high: value * factor };
}

/**
 * Hours that the shop has no figure of, about the middle of some jobs.
 *
 * @example
 * hoursAnew(2); // { value: 2, low: 0.8, high: 5 }
 */
export const hoursAnew = (value: number): Banded => ({
  value,
  low: value / BARE_BANDS.hoursAnew,
  high: value * BARE_BANDS.hoursAnew,
});

const LOSS_BANDS: Partial<Record<FigurePath, Banded>> = {
  "losses.scalePerHeat": LOSS_DEFAULTS.scalePerHeat,
  "losses.skinPerHeat": LOSS_DEFAULTS.skinPerHeat,
  "losses.scalePerWeldingHeat": LOSS_DEFAULTS.scalePerWeldingHeat,
  "losses.skinPerWeldingHeat": LOSS_DEFAULTS.skinPerWeldingHeat,
};

/**
 * What the shop reckons with for a figure, exactly as its file or the defaults have it: figures without a band have the same
 * number on all three sides.
 *
 * @example
 * const present = { shop: DEFAULT_SHOP, allowances: { face: 0.5, afterHardening: 0.1 }, hours: {} };
 * presentFigure("allowances.face", present); // { value: 0.5, low: 0.5, high: 0.5 }
 */
export function presentFigure(
  path: FigurePath,
  { shop, allowances, hours }: PresentShop,
): Banded | undefined {
  if (isHours(path)) return hours[path.slice(HOURS.length) as TaskName];
  switch (path) {
    case "losses.scalePerHeat":
      return shop.losses.scalePerHeat;
    case "losses.skinPerHeat":
      return shop.losses.skinPerHeat;
    case "losses.scalePerWeldingHeat":
      return shop.losses.scalePerWeldingHeat;
    case "losses.skinPerWeldingHeat":
      return shop.losses.skinPerWeldingHeat;
    case "limits.weldSpreadShare":
      return exactly(shop.limits.weldSpreadShare);
    case "limits.forge.bevelSpreadShare":
      return exactly(shop.limits.forge?.bevelSpreadShare ?? FORGE_DEFAULTS.bevelSpreadShare.value);
    case "allowances.face":
      return exactly(allowances.face);
    case "allowances.afterHardening":
      return exactly(allowances.afterHardening);
  }
}

const exactly = (value: number | undefined): Banded | undefined =>
  value === undefined ? undefined : { value, low: value, high: value };
