import type { ForgingSpec } from "../../blade/spec.js";
import type { LedgerBodies, LedgerRowName } from "../blade-states.js";
import type { Losses } from "../loss-side.js";
import type { StockLimits } from "../shop.js";
import {
  burnt,
  burntOff,
  type FlatPiece,
  type FlatStep,
  flatVolume,
  pieceSurface,
  squeezed,
  trimmed,
} from "./flat-step.js";
import { skinOfHeats, solveStraight } from "./heats.js";

/** What a step is: the bars, the row of the ledger that it takes, or the squeeze of the weld, which takes nothing. */
export type ForgeStepName = Exclude<LedgerRowName, ForgeTotal> | "bars-as-cut" | "weld-squeeze";
/** Rows that are pieces, not steps. */
type ForgeTotal = "finished-blade" | "ready-to-harden" | "forged-blade" | "dressed-billet" | "bars-as-cut";

/** One step from the bars to the blade, with the piece that it leaves: mm³, g, mm. */
export interface ForgeStep {
  readonly step: ForgeStepName;
  /** Which heat of its kind, counted from 1; left out where the step is no heat. */
  readonly heat?: number;
  /** The piece after the step. */
  readonly volume: number;
  readonly mass: number;
  /** What the step took; 0 for a squeeze. */
  readonly lostVolume: number;
  readonly lostMass: number;
  /** Width × height × length of the piece, down to the dressed billet: after it the piece is no longer flat. */
  readonly section?: FlatPiece;
}

/** What is the same whatever is forged: the blade's own rows, the losses of one side, heats, and the weld's squeeze. */
export interface ForgeSetting {
  readonly bodies: LedgerBodies;
  readonly losses: Losses;
  readonly forging: ForgingSpec;
  readonly limits: Pick<StockLimits, "minWeldReduction" | "weldSpreadShare">;
}

/** Bars laid flat on flat, mm. */
export interface BarStack {
  readonly bars: number;
  readonly width: number;
  readonly thickness: number;
}

/**
 * Forges a stack of bars forwards, step by step and heat by heat, from the saw to the sharpened blade. Every piece comes
 * out of the one before it; nothing is asked of the ledger. Volumes go below nothing where the bars are too short to feed
 * the blade: what comes out is then less than the finished blade, and more where they are longer than needed.
 *
 * @param length - Of each bar, mm.
 *
 * @example
 * const { losses, limits } = DEFAULT_SHOP;
 * const setting = {
 *   bodies: ledgerBodies(knife), losses: lossesAt(losses, "value"), forging: knife.forging, limits,
 * };
 * const steps = forgeForward(setting, { bars: 3, width: 40, thickness: 6 }, 120);
 * steps[0]?.section; // { width: 40, height: 18, length: 120 }
 */
export function forgeForward(setting: ForgeSetting, stack: BarStack, length: number): ForgeStep[] {
  const run = new Run(setting, { width: stack.width, height: stack.bars * stack.thickness, length });
  if (stack.bars > 1) weld(run, setting, stack.bars - 1);
  forgeOut(run, setting);
  grind(run, setting);
  return run.steps;
}

/** Cleans the joints, squeezes them at welding heat while the fire takes its scale, dresses and crops the billet. */
function weld(run: Run, { losses, forging, limits }: ForgeSetting, joints: number): void {
  const { weldingHeats } = forging;
  const { minWeldReduction, weldSpreadShare } = limits;
  run.take("bar-cleaning", trimmed({ height: 2 * losses.cleaning * joints }));
  // Every heat takes the same share of the height that is left, so that all together make the whole squeeze.
  const passes = Math.max(1, weldingHeats);
  const pass = squeezed((1 - minWeldReduction) ** (1 / passes), weldSpreadShare);
  const skins = losses.scaleModel === "skin" ? skinOfWeld(run.piece, pass, passes, losses, weldingHeats) : [];
  for (let heat = 1; heat <= passes; heat++) {
    if (heat <= weldingHeats) {
      const skin = skins[heat - 1];
      run.take("welding-scale", skin === undefined ? burnt(losses.weldingScale) : burntOff(skin), heat);
    }
    run.take("weld-squeeze", pass, heat);
  }
  run.take("weld-dressing", trimmed({ width: 2 * losses.dressing }));
  run.take("cropping", trimmed({ length: 2 * losses.crop }));
}

/** Skin of each welding heat: the surface ends at that of the welded billet, which holds what the skins leave. */
function skinOfWeld(
  stack: FlatPiece,
  pass: FlatStep,
  passes: number,
  losses: Losses,
  heats: number,
): number[] {
  const before = pieceSurface(stack);
  const held = flatVolume(stack);
  let welded = stack;
  for (let i = 0; i < passes; i++) welded = pass.apply(welded);
  const skinsDownTo = (left: number): number[] => {
    const length = left / (welded.width * welded.height);
    return skinOfHeats(losses.weldingScale, heats, [before, pieceSurface({ ...welded, length })]);
  };
  const missed = (left: number): number => left + sum(skinsDownTo(left)) - held;
  return skinsDownTo(solveStraight(missed, 0, [held, held / 2]));
}

/** The forging heats: from the billet's surface to the forged blade's. */
function forgeOut(run: Run, { bodies, losses, forging }: ForgeSetting): void {
  const { heats } = forging;
  const skins =
    losses.scaleModel === "skin"
      ? skinOfHeats(losses.forgingScale, heats, [pieceSurface(run.piece), bodies.forgedSurface])
      : undefined;
  for (let heat = 1; heat <= heats; heat++) {
    run.remove("forging-scale", skins?.[heat - 1] ?? run.volume * losses.forgingScale, heat);
  }
}

/** All that is ground, drilled, burnt off in the oven and sharpened away. */
function grind(run: Run, { bodies, losses }: ForgeSetting): void {
  run.remove("profile-trimming", bodies.profileTrimming);
  run.remove("face-grinding", bodies.faceGrinding);
  run.remove("tang-grinding", bodies.tangGrinding);
  run.remove("bevel-grinding", bodies.bevelGrinding);
  run.remove("drilling", bodies.drilling);
  const scale = losses.heatTreatmentScale;
  run.remove(
    "heat-treatment-scale",
    losses.scaleModel === "skin" ? scale * bodies.readySurface : scale * run.volume,
  );
  run.remove("finish-grinding", bodies.finishGrinding);
  run.remove("sharpening", bodies.sharpening);
}

const sum = (numbers: readonly number[]): number => numbers.reduce((total, one) => total + one, 0);

/** The piece on its way, and the steps so far. */
class Run {
  readonly steps: ForgeStep[] = [];
  piece: FlatPiece;
  volume: number;
  private readonly density: number;

  constructor({ bodies }: ForgeSetting, bars: FlatPiece) {
    this.density = bodies.density;
    this.piece = bars;
    this.volume = flatVolume(bars);
    this.note("bars-as-cut", 0, bars);
  }

  /** Something done to the flat piece. */
  take(step: ForgeStepName, { apply }: FlatStep, heat?: number): void {
    const before = this.volume;
    this.piece = apply(this.piece);
    this.volume = flatVolume(this.piece);
    this.note(step, step === "weld-squeeze" ? 0 : before - this.volume, this.piece, heat);
  }

  /** Something taken off a piece that is no longer flat. */
  remove(step: ForgeStepName, volume: number, heat?: number): void {
    this.volume -= volume;
    this.note(step, volume, undefined, heat);
  }

  private note(step: ForgeStepName, lost: number, section?: FlatPiece, heat?: number): void {
    this.steps.push({
      step,
      ...(heat === undefined ? {} : { heat }),
      volume: this.volume,
      mass: this.volume * this.density,
      lostVolume: lost,
      lostMass: lost * this.density,
      ...(section === undefined ? {} : { section }),
    });
  }
}
