import type {
  BenchSetUp,
  BilletMarks,
  Finding,
  ForgeCard,
  GateStage,
  HeatsLeft,
  MixedPlan,
  PressPass,
  PressPasses,
  PressStop,
  ShoulderPass,
  ShoulderPressing,
  StageNeed,
  StockPlan,
  WeldSqueezing,
} from "@scantling/geometry";
import { recipesOf } from "../card/heat-recipes.js";
import type { AskName } from "../file/ask-fields.js";
import type { Job } from "../load.js";
import { benchJson } from "./bench-json.js";
import { findingJson } from "./findings.js";
import { heatJson } from "./heat-json.js";

/** What the steel has to weigh at a stage. */
export interface StageMass {
  readonly stage: GateStage;
  readonly need: StageNeed;
}

/** A plan and its forge card, and what `check` says stop to. */
export interface Setup {
  /** Place of the plan among the ranked ones, from 1. */
  readonly place: number;
  /** Left out where the knife file gives a stack of its own: the card then starts from that stack's last bar. */
  readonly plan?: StockPlan;
  /** That stack. */
  readonly mixed?: MixedPlan;
  /** What of the job cannot work. */
  readonly stops: readonly Finding[];
  /** Asks that the knife does not meet, wishes aside. */
  readonly notMet: readonly AskName[];
  /** In the order of the work. */
  readonly masses: readonly StageMass[];
  /** Left out where the rack gives no plan. */
  readonly card?: ForgeCard;
  readonly bench: BenchSetUp;
}

/** Forge card, bench and heat treatment for programs: `scantling/setup/1`. Cold sizes in mm where no temperature is said, g, °C. */
export function setupJson(setup: Setup, job: Job): unknown {
  const schema = "scantling/setup/1";
  const { place, plan, card } = setup;
  const check = {
    stopFindings: setup.stops.map((finding) => findingJson(finding, job)),
    asksNotMet: setup.notMet,
  };
  const after = { bench: benchJson(setup.bench, job), heatTreatment: heatJson(recipesOf(job)) };
  if (card === undefined) return { schema, plan: null, ...check, ...after };
  const { billet, marks, weld, shoulder, tang, heats } = card;
  return {
    schema,
    plan: place,
    ...check,
    // Of a stack that the knife file gives, the card starts from the last bar: `stock` says how that is welded.
    bar: plan?.bar.name ?? null,
    bars: card.stack.bars,
    layers: card.stack.layers,
    cutLengthMm: plan?.cutLength ?? null,
    temperatureC: card.temperature,
    masses: setup.masses.map(({ stage, need }) => ({
      stage,
      usualG: need.value,
      lowG: need.low,
      highG: need.high,
    })),
    welds: setup.mixed === undefined ? null : weldsJson(setup.mixed),
    weld: weld === undefined ? null : weldJson(weld),
    billet: { heightMm: billet.height, thicknessMm: billet.thickness, lengthMm: billet.length },
    // From the butt end; what is spare is left at the point.
    marks: { atMm: marks.at, usual: marksJson(marks.usual), highLosses: marksJson(marks.high) },
    shoulder: {
      depthMm: shoulder.depth,
      passes: shoulder.passes.map((pass, i) => shoulderJson(pass, card.shoulderPressing[i])),
    },
    // The front beside the fillets; the middle where it is not in line with both ends.
    tang: {
      lengthMm: tang.length,
      front: { heightMm: tang.front.height, thicknessMm: tang.front.thickness },
      middle:
        tang.middle === undefined
          ? null
          : { heightMm: tang.middle.height, thicknessMm: tang.middle.thickness },
      butt: { heightMm: tang.butt.height, thicknessMm: tang.butt.thickness },
      filletRadiusMm: tang.fillet ?? null,
    },
    handle: passesJson(card.handle),
    thickness: passesJson(card.thickness),
    preform: {
      spreadShare: card.spreadShare,
      pointDropMm: card.pointDrop,
      bendDownMm: card.preCurve ?? null,
      stations: card.preform.map(({ x, at, height, thickness, meanThickness }) => ({
        alongMm: at,
        heightMm: height,
        thicknessMm: thickness,
        becomesXMm: x,
        meanThicknessForgedMm: meanThickness,
      })),
    },
    taper: card.taper.map((stop) => ({ xMm: stop.x, alongMm: stop.at, ...stopJson(stop) })),
    heats: { usual: heatsJson(heats.usual), highLosses: heatsJson(heats.high) },
    findings: card.findings.map((finding) => findingJson(finding, job)),
    ...after,
  };
}

/** Lengths as cut; what a billet is drawn to is told where it is cut for the next weld. */
const weldsJson = ({ stages, asCut }: MixedPlan): unknown =>
  stages.map((stage, i) => {
    const next = stages[i + 1];
    return {
      pieces: stage.pieces,
      pieceLengthMm: asCut.welds[i]?.pieceLength ?? null,
      stackHeightMm: stage.stackHeight,
      widthMm: stage.width,
      draw:
        next === undefined
          ? null
          : {
              widthMm: next.width,
              thicknessMm: next.height / next.pieces,
              lengthMm: asCut.welds[i + 1]?.barLength ?? null,
              cutIn: next.pieces,
            },
    };
  });

const weldJson = ({ least, reduction, width, dressedWidth, passes }: WeldSqueezing) => ({
  leastReductionShare: least,
  reductionShare: reduction,
  weldedWidthMm: width,
  dressedWidthMm: dressedWidth,
  ...passesJson(passes),
});

const marksJson = ({ tang, blade, needed, available, spare, handleFront }: BilletMarks): unknown => ({
  tangMm: tang,
  bladeMm: blade,
  neededMm: needed,
  availableMm: available,
  spareMm: spare,
  handleFrontMm: handleFront,
});

const shoulderJson = (
  { spineSide, edgeSide, height, thickness, ratio, fuller }: ShoulderPass,
  pressed: ShoulderPressing | undefined,
): unknown => ({
  spineSideMm: spineSide,
  edgeSideMm: edgeSide,
  heightMm: height,
  thicknessMm: thickness,
  areaRatio: ratio,
  fullerRadiusMm: fuller,
  press: (pressed?.passes ?? []).map(passJson),
});

const passesJson = ({ from, to, ends, temperature, passes }: PressPasses) => ({
  temperatureC: temperature,
  fromMm: from,
  toMm: to,
  endsMm: ends,
  passes: passes.map(passJson),
});

const passJson = (pass: PressPass) => ({ reductionShare: pass.reduction, ...stopJson(pass) });

const stopJson = ({ cold, hot, wanted, stop, out, make }: PressStop) => ({
  coldMm: cold,
  hotMm: hot,
  stopWantedMm: wanted,
  stop:
    stop === undefined
      ? null
      : { blockMm: stop.block, shimsMm: stop.shims, heightMm: stop.height, errorMm: stop.error },
  // With that stop; the heights above are those that are wanted.
  comesOut: out === undefined ? null : { coldMm: out.cold, hotMm: out.hot },
  makeBlockMm: make ?? null,
});

/** Where no scale is counted the steel lasts for any number of heats: `null`. */
const heatsJson = ({ perHeat, planned, more, overForged }: HeatsLeft): unknown => ({
  planned,
  more: Number.isFinite(more) ? more : null,
  perHeatBilletG: perHeat.billet,
  perHeatForgedG: perHeat.forged,
  overForgedG: overForged,
});
