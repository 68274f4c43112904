import type { GateStage } from "./stage-need.js";

/** What the steel is called at each stage. */
export const STAGE_WORDS: Readonly<Record<GateStage, string>> = {
  cut: "bars as cut",
  billet: "dressed billet",
  forged: "forged blade",
  ready: "ready to harden",
  finished: "finished blade",
};

/** The same as a piece that can be measured. */
export const PIECE_WORDS: Readonly<Record<GateStage, string>> = {
  ...STAGE_WORDS,
  ready: "blade ready to harden",
};
