import type { LedgerBodies, LedgerRowName } from "./blade-states.js";
import { type LossSide, lossesAt } from "./loss-side.js";
import type { StockForging } from "./search.js";
import type { LossSpec, ScaleModel, ShopSpec } from "./shop.js";
import { type BarStack, forgeForward } from "./simulation/forge-forward.js";
import { makeSteelChain, traceStack } from "./steel-chain.js";

/** What one row's error does; masses g, lengths mm. */
export interface RowError {
  /** What the row takes more than usual (below nothing: less), out of the same bars. */
  readonly row: number;
  /** What the finished steel would weigh more (below nothing: be short of) if the bars were cut with nothing to spare. */
  readonly finished: number;
  /** What each bar would have to be longer; `Infinity` where no length would do. */
  readonly barLength: number;
}

/** One row of the ledger as if it alone were wrong, the others as usual. */
export interface RowWhatIf {
  readonly row: LedgerRowName;
  /** Mass of the row at usual losses, g. */
  readonly usual: number;
  /** How far it is taken to be wrong: to the ends of its loss's own band, or by a tenth where it has none. */
  readonly by: "band" | "tenth";
  /** The row takes more than usual. */
  readonly more: RowError;
  /** It takes less. */
  readonly less: RowError;
  /** g of finished steel, and mm of each bar, that one gram more in this row is worth. */
  readonly perGram: { readonly finished: number; readonly barLength: number };
}

type LossKey = Exclude<keyof LossSpec, "scaleModel">;

/** The loss behind a row, by how scale is counted. */
const BANDED: Readonly<Partial<Record<LedgerRowName, Readonly<Record<ScaleModel, LossKey>>>>> = {
  "forging-scale": { fraction: "scalePerHeat", skin: "skinPerHeat" },
  "welding-scale": { fraction: "scalePerWeldingHeat", skin: "skinPerWeldingHeat" },
  "heat-treatment-scale": {
    fraction: "heatTreatmentScale",
    skin: "skinHeatTreatment",
  },
  cropping: { fraction: "cropPerEnd", skin: "cropPerEnd" },
  "weld-dressing": { fraction: "weldDressingPerSide", skin: "weldDressingPerSide" },
  "bar-cleaning": { fraction: "cleaningPerFace", skin: "cleaningPerFace" },
};

/** Rows that the blade's own shape decides. */
const MEASURED = {
  sharpening: "sharpening",
  "finish-grinding": "finishGrinding",
  drilling: "drilling",
  "bevel-grinding": "bevelGrinding",
  "tang-grinding": "tangGrinding",
  "face-grinding": "faceGrinding",
  "profile-trimming": "profileTrimming",
} as const satisfies Partial<Record<LedgerRowName, keyof LedgerBodies>>;

/** How wrong a row is taken to be that has no band of its own. */
const TENTH = 0.1;

interface Situation {
  readonly bodies: LedgerBodies;
  readonly losses: LossSpec;
}

/**
 * Row by row, what it would do to the finished steel if that row alone were wrong by its band (by a tenth where it has
 * none), and to the length of bar that puts it right. The steel is forged forwards from bars cut with nothing to spare at
 * usual losses; the bar is traced backwards.
 *
 * @returns Rows that take something, those that matter most first.
 *
 * @example
 * const stack = { bars: 1, width: 40, thickness: 6 };
 * ledgerWhatIf(ledgerBodies(knife), DEFAULT_SHOP, knife.forging, stack)[0]?.row; // "forging-scale"
 */
export function ledgerWhatIf(
  bodies: LedgerBodies,
  shop: ShopSpec,
  forging: StockForging,
  stack: BarStack,
): RowWhatIf[] {
  const usual: Situation = { bodies, losses: shop.losses };
  const barLength = ({ bodies: b, losses }: Situation): number => {
    const chain = makeSteelChain(b, losses, shop.limits, forging, "value");
    return traceStack(chain, stack.bars, stack.width, stack.thickness).length;
  };
  const length = barLength(usual);
  if (!Number.isFinite(length)) return [];
  const forged = ({ bodies: b, losses }: Situation): ReadonlyMap<string, number> => {
    const setting = { bodies: b, losses: lossesAt(losses, "value"), forging, limits: shop.limits };
    const masses = new Map<string, number>();
    for (const { step, lostMass, mass } of forgeForward(setting, stack, length)) {
      masses.set(step, (masses.get(step) ?? 0) + lostMass);
      masses.set("finished", mass);
    }
    return masses;
  };
  const before = forged(usual);
  const taken = (masses: ReadonlyMap<string, number>, row: string): number => masses.get(row) ?? 0;
  const errorOf = (row: LedgerRowName, wrong: Situation): RowError => {
    const after = forged(wrong);
    return {
      row: taken(after, row) - taken(before, row),
      finished: taken(after, "finished") - taken(before, "finished"),
      barLength: barLength(wrong) - length,
    };
  };
  const rows = [
    ...(Object.keys(BANDED) as LedgerRowName[]).map((row) => ({
      row,
      by: "band" as const,
      more: withLoss(usual, row, "high"),
      less: withLoss(usual, row, "low"),
    })),
    ...(Object.keys(MEASURED) as (keyof typeof MEASURED)[]).map((row) => ({
      row,
      by: "tenth" as const,
      more: withRow(usual, row, 1 + TENTH),
      less: withRow(usual, row, 1 - TENTH),
    })),
  ];
  return rows
    .map(({ row, by, more, less }): RowWhatIf => {
      const [over, under] = [errorOf(row, more), errorOf(row, less)];
      return { row, by, usual: taken(before, row), more: over, less: under, perGram: perGram(over, under) };
    })
    .filter(({ usual: mass, more, less }) => mass > 0 || more.row > 0 || less.row < 0)
    .sort((a, b) => effect(b) - effect(a));
}

const effect = ({ more, less }: RowWhatIf): number =>
  Math.max(Math.abs(more.finished), Math.abs(less.finished));

/** From the larger of the two errors; a row that cannot be wrong counts gram for gram. */
function perGram(more: RowError, less: RowError): RowWhatIf["perGram"] {
  const { row, finished, barLength } = Math.abs(more.row) >= Math.abs(less.row) ? more : less;
  return row === 0 ? { finished: 0, barLength: 0 } : { finished: finished / row, barLength: barLength / row };
}

/** The same with one loss at an end of its band. */
function withLoss(usual: Situation, row: LedgerRowName, side: LossSide): Situation {
  const banded = BANDED[row];
  if (banded === undefined) return usual;
  const key = banded[usual.losses.scaleModel];
  const band = usual.losses[key];
  return { ...usual, losses: { ...usual.losses, [key]: { ...band, value: band[side] } } };
}

/** The same with one measured row so many times as large. */
function withRow(usual: Situation, row: keyof typeof MEASURED, times: number): Situation {
  const key = MEASURED[row];
  return { ...usual, bodies: { ...usual.bodies, [key]: usual.bodies[key] * times } };
}
