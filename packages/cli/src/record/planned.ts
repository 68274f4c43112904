import { GATE_STAGES, type GateStage, type LossSpec, ledgerBodies, stageNeed } from "@scantling/geometry";
import { formatNumber } from "@scantling/geometry/units";
import type { Planned, PlannedBar, PlannedNeed } from "../file/record-file.js";
import { choosePlan, routeOf } from "../gate-report.js";
import { inFileTerms, type Measured } from "../measure.js";
import { type Bars, planBars } from "../stock-report.js";

/** The texts that a job was read from. */
export type JobTexts = Planned["files"];

/**
 * What `plan` says of a job, as far as a record keeps it.
 *
 * @param place - Which of the plans of stock, from 1; left out: the best.
 * @throws {CommandFailure} exit code 2 where there is no such plan.
 */
export function plannedOf(
  measured: Measured,
  { on, program, files }: Pick<Planned, "on" | "program" | "files">,
  place?: number,
  bars: Bars = planBars(measured),
): Planned {
  const { job, knife, weight, interval, answers } = measured;
  return inFileTerms(job, () => {
    const plan = choosePlan(bars, place);
    const bodies = ledgerBodies(knife);
    const route = routeOf(job, measured, plan?.plan);
    const needs = GATE_STAGES.flatMap((stage): [GateStage, PlannedNeed][] => {
      const need = stageNeed(bodies, route, stage);
      return need === undefined ? [] : [[stage, { low: need.low, usual: need.value, high: need.high }]];
    });
    const cut = cutBars(bars, plan);
    const [massLow, massHigh] = interval.massInterval;
    const [rear, fore] = interval.balanceInterval;
    return {
      on,
      program,
      ...(plan === undefined ? {} : { plan: plan.number }),
      ...(cut.length === 0 ? {} : { bars: cut }),
      heats: knife.forging.heats,
      weldingHeats: knife.forging.weldingHeats,
      needed: Object.fromEntries(needs),
      knife: { mass: weight.knife.mass, least: massLow, most: massHigh },
      balance: { at: weight.knife.balanceFromHeel, least: rear, most: fore },
      asks: answers.map(({ ask, verdict }) => ({ ask: ask.name, verdict })),
      losses: job.shop.losses,
      files,
    };
  });
}

/** Pieces to cut: those of the plan, or of the stack in the knife file; none where no length of it is known. */
function cutBars({ mixed }: Bars, plan: ReturnType<typeof choosePlan>): PlannedBar[] {
  if (mixed !== undefined) {
    return mixed.bars.flatMap((one) =>
      Number.isFinite(mixed.cutLength) && one.mass > 0
        ? [
            {
              bar: one.bar?.name ?? one.steel,
              steel: one.steel,
              thickness: one.thickness,
              width: one.width,
              count: one.pieces,
              length: mixed.cutLength,
              mass: one.mass,
            },
          ]
        : [],
    );
  }
  if (plan === undefined) return [];
  const { bar, bars, width, thickness, cutLength, mass } = plan.plan;
  return [
    {
      bar: bar.name,
      ...(bar.steel === undefined ? {} : { steel: bar.steel }),
      thickness,
      width,
      count: bars,
      length: cutLength,
      mass,
    },
  ];
}

/** Finest steps that a snapshot is written in, g and mm. */
const STEP = 0.001;

const grams = (value: number): string => `${formatNumber(value, STEP)} g`;
const millimetres = (value: number): string => `${formatNumber(value, STEP)} mm`;

/** The snapshot as it is written into the file: always in g and mm, whatever the smith reads, so that nothing is rounded. */
export function plannedData(planned: Planned): object {
  const { bars, needed, knife, balance, losses, asks, files, ...rest } = planned;
  return {
    ...rest,
    ...(bars === undefined
      ? {}
      : {
          bars: bars.map(({ thickness, width, length, mass, count, ...bar }) => ({
            ...bar,
            thickness: millimetres(thickness),
            width: millimetres(width),
            count,
            length: millimetres(length),
            mass: grams(mass),
          })),
        }),
    needed: Object.fromEntries(
      Object.entries(needed).map(([stage, { low, usual, high }]) => [
        stage,
        { low: grams(low), usual: grams(usual), high: grams(high) },
      ]),
    ),
    knife: { mass: grams(knife.mass), least: grams(knife.least), most: grams(knife.most) },
    balance: {
      at: millimetres(balance.at),
      least: millimetres(balance.least),
      most: millimetres(balance.most),
    },
    asks,
    losses: lossData(losses),
    files,
  };
}

const LENGTHS: readonly (keyof LossSpec)[] = [
  "skinPerHeat",
  "skinPerWeldingHeat",
  "skinHeatTreatment",
  "cropPerEnd",
  "weldDressingPerSide",
  "cleaningPerFace",
];

/** Whether a loss is a length; the others are shares. */
export const isLengthLoss = (key: string): boolean => LENGTHS.some((length) => length === key);

/** Losses as a shop file writes them: `1.2 % +0.8/-0.6 %`. */
function lossData({ scaleModel, ...losses }: Partial<LossSpec>): object {
  const written = Object.entries(losses).map(([key, { value, low, high }]) => {
    const [factor, unit] = isLengthLoss(key) ? [1, "mm"] : [100, "%"];
    const show = (size: number): string => formatNumber(size * factor, LOSS_STEP);
    const band =
      low === value && high === value ? "" : ` +${show(high - value)}/-${show(value - low)} ${unit}`;
    return [key, `${show(value)} ${unit}${band}`];
  });
  return { ...(scaleModel === undefined ? {} : { scale: scaleModel }), ...Object.fromEntries(written) };
}

/** mm or per cent. */
const LOSS_STEP = 1e-6;
