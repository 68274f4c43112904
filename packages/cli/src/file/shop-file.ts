import type {
  AllowanceSpec,
  BenchTools,
  FigurePath,
  GateLimits,
  HeatRecipe,
  LossSpec,
  MeasuredSweep,
  OvenSpec,
  PressSpec,
  QuenchTankSpec,
  RackBar,
  SheathSizes,
  StockLimits,
} from "@scantling/geometry";
import type { FileUnits } from "@scantling/geometry/units";
import type { z } from "zod";
import { knifeJsonSchema, shopJsonSchema } from "./json-schema.js";
import type { LearnedEntry } from "./learned-fields.js";
import { liftTolerances, type Plain } from "./lift.js";
import { renameScale } from "./loss-fields.js";
import type { PaperGiven } from "./paper-words.js";
import type { PrinterEntry } from "./printer-fields.js";
import type { Position } from "./problem.js";
import { positionFinder, readShape } from "./read-shape.js";
import { remember } from "./remember.js";
import type { SheetWords } from "./sheet-fields.js";
import { shopSchema } from "./shop-schema.js";
import type { workFields } from "./work-fields.js";

const schemaFor = remember((units: FileUnits) => shopSchema(units));

/** What a shop file gives of the shop; geometry's published defaults fill in the rest. mm, g, shares. */
export interface GivenShop extends BenchTools {
  readonly rack?: readonly RackBar[];
  readonly losses?: Partial<LossSpec>;
  readonly press?: PressSpec;
  readonly oven?: OvenSpec;
  readonly quenchTank?: QuenchTankSpec;
  readonly fullers?: readonly number[];
  readonly preCurve?: MeasuredSweep;
  readonly recipes?: readonly HeatRecipe[];
  readonly limits?: Partial<Omit<StockLimits, "reach">> & { readonly reach?: Partial<StockLimits["reach"]> };
  readonly gates?: Partial<GateLimits>;
  readonly cutStep?: number;
  readonly kerf?: number;
  readonly minKeep?: number;
  readonly currency?: string;
}

/** Tolerances of knife files that give none: limits either way, mm, and of the density as a share. */
export interface DefaultTolerances {
  readonly forgedThickness?: number;
  readonly groundThickness?: number;
  readonly outline?: number;
  readonly density?: number;
}

/** What a shop file gives of time and money: hours, shares, mm, days from 1 January 1970. */
export type GivenWork = Plain<z.output<ReturnType<typeof workFields>>>;

/** A shop file that was read whole. */
export interface ShopFile {
  readonly fileName: string;
  readonly units: FileUnits;
  readonly shop: GivenShop;
  /** For knife files that give none. */
  readonly allowances: Partial<AllowanceSpec>;
  readonly tolerances: DefaultTolerances;
  /** What sheets are printed on unless another paper is asked for. */
  readonly paper?: PaperGiven;
  /** What was measured of the printer, paper by paper. */
  readonly printer: readonly PrinterEntry[];
  /** How sheets write their figures. */
  readonly sheets?: SheetWords;
  /** What stood in the file before `learn` changed it. */
  readonly learned: Partial<Record<FigurePath, LearnedEntry>>;
  /** Of the sheaths of knife files that do not say, mm. */
  readonly sheath: Partial<SheathSizes>;
  /** Time and money, as far as the file says. */
  readonly work: GivenWork;
  positionOf(path: string): Position | undefined;
}

/**
 * Reads a shop file, YAML or JSON.
 *
 * @throws {FileError} with every problem found, in the order of the file.
 */
export function readShopFile(text: string, fileName: string): ShopFile {
  const { data, tree, units } = readShape(text, fileName, {
    schemaFor,
    explained: () => ({
      schema: shopJsonSchema(),
      other: { schema: knifeJsonSchema(), called: "the knife file" },
    }),
    otherKind: (keys) =>
      keys.has("blade") && keys.has("tang")
        ? { code: "is-knife-file", message: "this is a knife file: it has a blade and a tang" }
        : undefined,
    later: () => ({ problems: [], notReached: "limits of press, forge and losses" }),
  });
  const { plain } = liftTolerances(data);
  const {
    scantling: _version,
    units: _units,
    allowances = {},
    tolerances = {},
    losses,
    paper,
    printer = [],
    sheets,
    learned = {},
    sheath = {},
    work = {},
    ...shop
  } = plain;
  return {
    fileName,
    units,
    shop: losses === undefined ? shop : { ...shop, losses: renameScale(losses) },
    allowances,
    tolerances,
    ...(paper === undefined ? {} : { paper }),
    printer,
    ...(sheets === undefined ? {} : { sheets }),
    learned,
    sheath,
    work,
    positionOf: positionFinder(tree),
  };
}
