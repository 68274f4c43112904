import type {
  BilletMarks,
  ForgeCard,
  HeatsLeft,
  PressPasses,
  PressStop,
  ShoulderPass,
  StockPlan,
} from "@scantling/geometry";
import type { Job } from "../load.js";
import { findingJson } from "./findings.js";

/** A plan and its forge card. */
export interface Setup {
  /** Place of the plan among the ranked ones, from 1. */
  readonly place: number;
  /** Left out where the knife file gives a stack of its own: the card then starts from that stack's last bar. */
  readonly plan?: StockPlan;
  readonly card: ForgeCard;
}

/** The forge card for programs: `scantling/setup/1`. Cold sizes in mm where no temperature is said, g, °C. */
export function setupJson(setup: Setup | undefined, job: Job): unknown {
  const schema = "scantling/setup/1";
  if (setup === undefined) return { schema, plan: null };
  const { place, plan, card } = setup;
  const { billet, marks, weld, shoulder, tang, heats } = card;
  return {
    schema,
    plan: place,
    // Of a stack that the knife file gives, the card starts from the last bar: `stock` says how that is welded.
    bar: plan?.bar.name ?? null,
    bars: card.stack.bars,
    layers: card.stack.layers,
    cutLengthMm: plan?.cutLength ?? null,
    temperatureC: card.temperature,
    weld:
      weld === undefined
        ? null
        : {
            reductionShare: weld.reduction,
            weldedWidthMm: weld.width,
            dressedWidthMm: weld.dressedWidth,
            ...passesJson(weld.passes),
          },
    billet: { heightMm: billet.height, thicknessMm: billet.thickness, lengthMm: billet.length },
    // From the butt end; what is spare is left at the point.
    marks: { atMm: marks.at, usual: marksJson(marks.usual), highLosses: marksJson(marks.high) },
    shoulder: { depthMm: shoulder.depth, passes: shoulder.passes.map(shoulderJson) },
    tang: {
      lengthMm: tang.length,
      front: { heightMm: tang.front.height, thicknessMm: tang.front.thickness },
      butt: { heightMm: tang.butt.height, thicknessMm: tang.butt.thickness },
    },
    thickness: passesJson(card.thickness),
    preform: {
      spreadShare: card.spreadShare,
      bendDownMm: card.preCurve ?? null,
      stations: card.preform.map(({ x, at, height, thickness, meanThickness }) => ({
        alongMm: at,
        heightMm: height,
        thicknessMm: thickness,
        becomesXMm: x,
        meanThicknessForgedMm: meanThickness,
      })),
    },
    taper: card.taper.map((stop) => ({ xMm: stop.x, ...stopJson(stop) })),
    heats: { usual: heatsJson(heats.usual), highLosses: heatsJson(heats.high) },
    findings: card.findings.map((finding) => findingJson(finding, job)),
  };
}

const marksJson = ({ tang, blade, needed, available, spare, handleFront }: BilletMarks): unknown => ({
  tangMm: tang,
  bladeMm: blade,
  neededMm: needed,
  availableMm: available,
  spareMm: spare,
  handleFrontMm: handleFront,
});

const shoulderJson = ({ spineSide, edgeSide, height, thickness, ratio, fuller }: ShoulderPass): unknown => ({
  spineSideMm: spineSide,
  edgeSideMm: edgeSide,
  heightMm: height,
  thicknessMm: thickness,
  areaRatio: ratio,
  fullerRadiusMm: fuller,
});

const passesJson = ({ from, to, temperature, passes }: PressPasses) => ({
  temperatureC: temperature,
  fromMm: from,
  toMm: to,
  passes: passes.map((pass) => ({ reductionShare: pass.reduction, ...stopJson(pass) })),
});

const stopJson = ({ cold, hot, wanted, stop }: PressStop) => ({
  coldMm: cold,
  hotMm: hot,
  stopWantedMm: wanted,
  stop:
    stop === undefined
      ? null
      : { blockMm: stop.block, shimsMm: stop.shims, heightMm: stop.height, errorMm: stop.error },
});

/** Where no scale is counted the steel lasts for any number of heats: `null`. */
const heatsJson = ({ perHeat, planned, more, overForged }: HeatsLeft): unknown => ({
  planned,
  more: Number.isFinite(more) ? more : null,
  perHeatBilletG: perHeat.billet,
  perHeatForgedG: perHeat.forged,
  overForgedG: overForged,
});
