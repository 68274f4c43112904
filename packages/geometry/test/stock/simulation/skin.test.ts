import { describe, expect, test } from "vitest";
import { ledgerBodies } from "../../../src/blade/ledger-bodies.js";
import { weighState } from "../../../src/blade/weigh-state.js";
import { DEFAULT_LIMITS, DEFAULT_LOSSES } from "../../../src/stock/defaults.js";
import { lossesAt } from "../../../src/stock/loss-side.js";
import {
  type FlatPiece,
  flatVolume,
  pieceSurface,
  squeezed,
} from "../../../src/stock/simulation/flat-step.js";
import { forgeForward } from "../../../src/stock/simulation/forge-forward.js";
import { makeSteelChain, traceStack } from "../../../src/stock/steel-chain.js";
import { randomKnives } from "../../blade/random-knives.js";

const LOSSES = { ...DEFAULT_LOSSES, scaleModel: "skin" } as const;
const STACK = { bars: 4, width: 50, thickness: 6 };
const FORGING = { heats: 9, weldingHeats: 3 };

/** Slices that every heat is cut into: the fire does not wait for the end of a heat. */
const SLICES = 400;

describe.each(randomKnives(4, 9).map(({ knife }, i) => [i, knife] as const))(
  "skin of random knife %d",
  (_, knife) => {
    const bodies = ledgerBodies(knife);
    const chain = makeSteelChain(bodies, LOSSES, DEFAULT_LIMITS, FORGING, "value");
    const trace = traceStack(chain, STACK.bars, STACK.width, STACK.thickness);
    const setting = { bodies, losses: lossesAt(LOSSES, "value"), forging: FORGING, limits: DEFAULT_LIMITS };
    const steps = forgeForward(setting, STACK, trace.length);
    const lost = (name: string): number =>
      steps.filter(({ step }) => step === name).reduce((sum, { lostVolume }) => sum + lostVolume, 0);
    const billet = steps.findLast(({ section }) => section !== undefined)?.section;

    test("of the forging heats is that of surfaces from the billet's own to the forged piece's own", () => {
      const from = pieceSurface(billet as FlatPiece);
      const to = weighState(knife, "forged").surface;
      let sum = 0;
      for (let i = 0; i < FORGING.heats * SLICES; i++) {
        const share = (i + 0.5) / (FORGING.heats * SLICES);
        sum += (LOSSES.skinPerHeat.value / SLICES) * (from + (to - from) * share);
      }
      expect(Math.abs(lost("forging-scale") / sum - 1)).toBeLessThan(1e-10);
      expect(Math.abs((trace.dressed - chain.forged) / sum - 1)).toBeLessThan(1e-9);
    });

    test("of heat treatment is that of the ready piece's own surface", () => {
      const skin = LOSSES.skinHeatTreatment.value * weighState(knife, "ready").surface;
      expect(Math.abs(chain.heatTreatmentScale / skin - 1)).toBeLessThan(1e-10);
      expect(Math.abs(lost("heat-treatment-scale") / skin - 1)).toBeLessThan(1e-10);
    });

    test("of the welding heats, counted with the surface going evenly, is that of the section really squeezed, within 1 %", () => {
      let piece = steps.find(({ step }) => step === "bar-cleaning")?.section as FlatPiece;
      const before = flatVolume(piece);
      const total = FORGING.weldingHeats * SLICES;
      const slice = squeezed(
        (1 - DEFAULT_LIMITS.minWeldReduction) ** (1 / total),
        DEFAULT_LIMITS.weldSpreadShare,
      );
      for (let i = 0; i < total; i++) {
        const skin = (LOSSES.skinPerWeldingHeat.value / SLICES) * pieceSurface(piece);
        const held = flatVolume(piece) - skin;
        piece = slice.apply({ ...piece, length: held / (piece.width * piece.height) });
      }
      const really = before - flatVolume(piece);
      expect(Math.abs(lost("welding-scale") / really - 1)).toBeLessThan(0.01);
    });
  },
);
