import type {
  CoreAt,
  CoreReport,
  MixedBar,
  MixedPlan,
  SimulatedWeld,
  StackAsCut,
  WeldStage,
} from "@scantling/geometry";
import type { Job } from "../load.js";
import { findingJson } from "./findings.js";

/** The stack of a blade of two or more steels, for programs: the key `stack` of `scantling/stock/1`. mm, mm³, g. */
export function mixedJson(plan: MixedPlan, job: Job): unknown {
  const { layers, core, lastBar, reach } = plan;
  return {
    kind: plan.stack.kind,
    bars: plan.bars.map(barJson),
    ...finite("cutLengthMm", plan.cutLength),
    ...finite("cutLengthNominalMm", plan.cutLengthNominal),
    ...finite("massG", plan.mass),
    ...(plan.cost === undefined ? {} : { cost: plan.cost }),
    yieldNominal: plan.yield.nominal,
    yieldAsCut: plan.yield.asCut,
    joints: plan.joints,
    heats: plan.heats,
    ...finite("neededLengthMm", plan.shortestLength.nominal),
    ...finite("neededLengthHighMm", plan.shortestLength.high),
    welds: plan.stages.map((stage, i) => stageJson(stage, plan.asCut.welds[i])),
    ...finite("groovesMm3", plan.grooves),
    lastBar: {
      widthMm: lastBar.width,
      thicknessMm: lastBar.thickness,
      ...finite("lengthMm", lastBar.length),
      ...lastBarAsCut(plan.asCut),
    },
    ...finite("reach", reach.share),
    reachClass: reach.class,
    ...(layers === undefined
      ? {}
      : {
          layers: {
            order: layers.order,
            nominal: layers.nominal,
            distinct: layers.distinct,
            thicknessMm: layers.thickness,
            ...finite("thinFromMm", layers.thinFrom),
          },
        }),
    ...(core === undefined ? {} : { core: coreJson(core) }),
    findings: plan.findings.map((finding) => findingJson(finding, job)),
    ledger: ledgerJson(plan.ledger),
    ledgerHighLosses: ledgerJson(plan.ledgerHigh),
  };
}

const ledgerJson = (rows: MixedPlan["ledger"]): unknown =>
  rows.map(({ row, volume, mass }) => ({ row, ...finite("volumeMm3", volume), ...finite("massG", mass) }));

function barJson(bar: MixedBar): unknown {
  return {
    steel: bar.steel,
    thicknessMm: bar.thickness,
    widthMm: bar.width,
    pieces: bar.pieces,
    ...finite("cutLengthMm", bar.cutLength),
    ...finite("massG", bar.mass),
    bar: bar.bar?.name ?? null,
    enough: bar.enough,
    ...(bar.cost === undefined ? {} : { cost: bar.cost }),
  };
}

/** The last bar that the bars as cut make, and how many blades it holds. `dressed`: grooves ground and pressed flat. */
const lastBarAsCut = ({ lastBar, needed, blades }: StackAsCut): object => ({
  ...finite("asCutLengthMm", lastBar.length),
  ...finite("asCutDressedLengthMm", lastBar.dressedLength),
  ...finite("neededDressedLengthMm", needed.usual),
  ...finite("neededDressedLengthHighMm", needed.high),
  blades: blades.usual,
  bladesHighLosses: blades.high,
});

/** What is needed of a weld; under `asCut` what the bars as cut make of it, at usual losses. */
function stageJson(stage: WeldStage, asCut: SimulatedWeld | undefined): unknown {
  return {
    pieces: stage.pieces,
    ...finite("pieceLengthMm", stage.pieceLength),
    ...finite("barLengthMm", stage.barLength),
    widthMm: stage.width,
    stackHeightMm: stage.stackHeight,
    ...finite("inMm3", stage.in),
    ...finite("outMm3", stage.out),
    croppingMm3: stage.cropping,
    dressingMm3: stage.dressing,
    scaleMm3: stage.scale,
    cleaningMm3: stage.cleaning,
    ...finite("byYieldMm3", stage.byYield),
    ...(asCut === undefined
      ? {}
      : {
          asCut: {
            ...finite("pieceLengthMm", asCut.pieceLength),
            ...finite("barLengthMm", asCut.barLength),
            ...finite("inMm3", asCut.in),
            ...finite("outMm3", asCut.out),
          },
        }),
  };
}

/** A line that there is not, for the core goes up to the spine, is `null`. */
const lineJson = ({ core, lines }: CoreAt): unknown => ({
  coreMm: core,
  rightMm: lines.right ?? null,
  leftMm: lines.left ?? null,
});

function coreJson({ share, stations, asked }: CoreReport): unknown {
  return {
    share,
    stations: stations.map((station) => ({
      fromHeelMm: station.x,
      forgedMm: station.forged,
      thinning: lineJson(station.thinning),
      constant: lineJson(station.constant),
      lessScale: lineJson(station.lessScale),
      edgeBudgetMm: station.budget.edge,
      apexBudgetMm: station.budget.apex,
    })),
    ...(asked === undefined
      ? {}
      : {
          asked: {
            fromHeelMm: asked.x,
            lowMm: asked.low,
            highMm: asked.high,
            heightMm: asked.height,
            intervalMm: asked.interval,
            budgetMm: asked.budget,
            neededBandMm: asked.neededBand,
          },
        }),
  };
}

/** A key with its number; left out where there is none, for JSON has no infinity. */
function finite(key: string, value: number | undefined): Readonly<Record<string, number>> {
  return value !== undefined && Number.isFinite(value) ? { [key]: value } : {};
}
