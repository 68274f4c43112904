import { gateLimits } from "../stock/gates/limits.js";
import { STAGE_WORDS } from "../stock/gates/stage-words.js";
import { type Losses, lossesAt } from "../stock/loss-side.js";
import type { ScaleModel, ShopSpec } from "../stock/shop.js";
import { type Candidate, type Outcome, propagated } from "./candidate.js";
import type { FigurePath } from "./figures.js";
import { impossibleStep } from "./impossible-step.js";
import type { JobRecord, JobWeighing } from "./job-record.js";
import { forgingSkin, type LossOf, shareLost, weldingLoss } from "./loss-from-masses.js";
import { heatsReading, type Reading } from "./reading.js";
import { NORMAL_LIMIT } from "./student.js";

/** What of the shop the sums of a weld and a forging count with, and what it doubts a mass by. */
export type ReckonedShop = Pick<ShopSpec, "losses" | "limits" | "gates">;

/** Standard error of a weighing, g: scales of the trade show whole grams. Basis: common practice, no source. */
const SCALE_ERROR = 1 / NORMAL_LIMIT;

/**
 * What the weighings of a job say of scale: between the billet and the forged blade of a forging heat, between the bars of a
 * stack and its billet of a welding heat. Each is counted both ways, as a share and, where the plan is known, as a skin.
 *
 * @example
 * const written = { mass: { unit: 1, mixUps: [] }, length: { unit: 1, mixUps: [] } };
 * const weighings = [
 *   { stage: "billet", steel: 780, on: "2026-11-28" }, { stage: "forged", steel: 700, heats: 9, on: "2026-11-28" },
 * ] as const;
 * const record = { file: "a.record.yaml", weighings, sizes: [], drawn: [], hours: [], written };
 * scaleCandidates(record, DEFAULT_SHOP).map(({ of, compute }) => [of, compute([100, 92, 1])]);
 * // one, of losses.scalePerHeat: { value: 0.08 }
 */
export function scaleCandidates(record: JobRecord, shop: ReckonedShop): Candidate[] {
  return [...forgingCandidates(record, shop), ...weldingCandidates(record, shop)];
}

function forgingCandidates(record: JobRecord, { losses, limits, gates }: ReckonedShop): Candidate[] {
  const { stack, density, forgedSurface } = record.plan ?? {};
  const forged = weighing(record, "forged");
  // A solid bar is its own billet.
  const before = weighing(record, "billet") ?? (stack?.bars === 1 ? weighing(record, "cut") : undefined);
  if (forged === undefined || before === undefined) return [];
  const { massRise } = gateLimits(gates);
  const heats = forged.heats ?? 0;
  const pair: Pair = { record, before, after: forged, heats, share: shareLost, least: 0, massRise };
  const share = scaleCandidate("losses.scalePerHeat", pair, shareLost);
  if (stack === undefined || density === undefined || forgedSurface === undefined) return [share];
  const skin = forgingSkin(stack, { density, forgedSurface }, lossesAt(losses, "value"), limits);
  return [share, scaleCandidate("losses.skinPerHeat", pair, skin)];
}

function weldingCandidates(record: JobRecord, shop: ReckonedShop): Candidate[] {
  const { stack, density } = record.plan ?? {};
  const [cut, billet] = [weighing(record, "cut"), weighing(record, "billet")];
  if (!cut || !billet || !stack || stack.bars < 2 || density === undefined) return [];
  const usual = lossesAt(shop.losses, "value");
  const lossAt =
    (model: ScaleModel) =>
    (losses: Losses): LossOf =>
      weldingLoss(stack, density, losses, shop.limits, model);
  const pair: Pair = {
    record,
    before: cut,
    after: billet,
    heats: billet.weldingHeats ?? 0,
    share: lossAt("fraction")(usual),
    least: LEAST_OF_WELD,
    massRise: gateLimits(shop.gates).massRise,
  };
  return (["fraction", "skin"] as const).map((model) => {
    const of = model === "skin" ? "losses.skinPerWeldingHeat" : "losses.scalePerWeldingHeat";
    const candidate = scaleCandidate(of, pair, lossAt(model)(usual));
    return { ...candidate, error: Math.hypot(candidate.error, errorOfCounted(pair, shop, lossAt(model))) };
  });
}

/** Two weighings of a job and the heats between them. */
interface Pair {
  readonly record: JobRecord;
  readonly before: JobWeighing;
  readonly after: JobWeighing;
  readonly heats: number;
  /** The share that each heat takes, and the least that it may come to. */
  readonly share: LossOf;
  readonly least: number;
  /** By which a mass may seem to rise. */
  readonly massRise: number;
}

/** Crop and dressing are counted, not weighed: in one job they may be less, and the weld seems to gain. */
const LEAST_OF_WELD = -0.05;

function scaleCandidate(of: FigurePath, pair: Pair, loss: LossOf): Candidate {
  const { record, before, after, heats, share, least, massRise } = pair;
  const readings = [weighed(record, before), weighed(record, after), heatsReading(heats)];
  const names = [STAGE_WORDS[before.stage], STAGE_WORDS[after.stage]] as const;
  const compute = ([was = 0, is = 0, times = 0]: readonly number[]): Outcome => {
    const each = share(was, is, times);
    const impossible = impossibleStep({ before: was, after: is, heats: times, names, each, least, massRise });
    return impossible === undefined ? { value: loss(was, is, times) } : { impossible };
  };
  return {
    of,
    file: record.file,
    on: after.on,
    ...(record.steel === undefined ? {} : { steel: record.steel }),
    readings,
    compute,
    error: propagated([before.steel, after.steel, heats], [SCALE_ERROR, SCALE_ERROR, 0], compute),
    canBe: (reading, meant) => {
      const stage = [before.stage, after.stage][reading];
      return stage === undefined || canWeigh(record, stage, meant);
    },
    agrees: ([was = 0, is = 0]) =>
      areOfOneBlade(record, new Map([[before.stage, was] as const, [after.stage, is] as const]), massRise),
  };
}

/** What crop, dressing and cleaning are off by in one job, for they were counted and not weighed: one standard error. */
function errorOfCounted(
  { before, after, heats }: Pair,
  { losses }: ReckonedShop,
  lossAt: (losses: Losses) => LossOf,
): number {
  const [low, usual, high] = (["low", "value", "high"] as const).map((side) => lossesAt(losses, side)) as [
    Losses,
    Losses,
    Losses,
  ];
  const effects = (["crop", "dressing", "cleaning"] as const).map((name) => {
    const at = (side: Losses): number =>
      lossAt({ ...usual, [name]: side[name] })(before.steel, after.steel, Math.max(1, heats));
    return (at(high) - at(low)) / 2 / NORMAL_LIMIT;
  });
  return Math.hypot(...effects);
}

/** A blade's steel lies between these on its whole way, g. Basis: common practice, no source; only tells two slips apart. */
const LIKELY_MASS = { least: 40, most: 10_000 } as const;
/** The same as shares of the finished blade, where the plan has it. */
const LIKELY_SHARE = { least: 0.5, most: 6 } as const;

/** Digits of a double: a point moved back need not come out whole. */
const DIGITS = 1e-9;

/** Whether steel of such a mass at a stage is no heavier than at any stage before, and no lighter than at any after. */
function canWeigh({ weighings }: JobRecord, stage: JobWeighing["stage"], meant: number): boolean {
  const at = weighings.findIndex((each) => each.stage === stage);
  return weighings.every(
    ({ steel }, index) =>
      index === at || (index < at ? meant <= steel * (1 + DIGITS) : meant >= steel * (1 - DIGITS)),
  );
}

/** Whether the masses of a record are a blade's and only fall, with some of them in place of what was written. */
function areOfOneBlade(
  { weighings, plan }: JobRecord,
  instead: ReadonlyMap<JobWeighing["stage"], number>,
  massRise: number,
): boolean {
  const masses = weighings.map(({ stage, steel }) => instead.get(stage) ?? steel);
  const finished = plan?.finished;
  const least = finished === undefined ? LIKELY_MASS.least : LIKELY_SHARE.least * finished;
  const most = finished === undefined ? LIKELY_MASS.most : LIKELY_SHARE.most * finished;
  const rise = 1 + massRise;
  return masses.every(
    (mass, index) => mass >= least && mass <= most && mass <= rise * (masses[index - 1] ?? mass),
  );
}

const weighing = (record: JobRecord, stage: JobWeighing["stage"]): JobWeighing | undefined =>
  record.weighings.find((each) => each.stage === stage);

const weighed = (record: JobRecord, { stage, steel, confirmed }: JobWeighing): Reading => ({
  kind: "mass",
  value: steel,
  of: STAGE_WORDS[stage],
  written: record.written.mass,
  confirmed: confirmed === true,
});
