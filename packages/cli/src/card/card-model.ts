import type { CardModel } from "@scantling/render";
import type { Measured } from "../measure.js";
import { knifeWords } from "../report/heading.js";
import type { Setup } from "../report/setup-json.js";
import { stopWords } from "../report/setup-text.js";
import { benchSide } from "./bench-side.js";
import { noBarsPanel } from "./cut-panels.js";
import { asksPanel, forgeSide } from "./forge-side.js";

/**
 * The bench card of a job: everything that is set on a tool, from the saw to the stone. Where no bar is known to forge the
 * blade from, the card is that of the bench alone, and says so.
 */
export function makeCardModel(measured: Measured, setup: Setup): CardModel {
  const { job } = measured;
  const forge = forgeSide(measured, setup);
  const before = forge === undefined ? [...asksPanel(measured), ...noBarsPanel(measured)] : [];
  const warnings = stopWords(setup, job);
  return {
    code: job.knife.order.code,
    title: job.knife.order.title,
    about: knifeWords(measured),
    warnings: warnings.map((text, index) =>
      index < warnings.length - 1 ? text : `${text} (scantling check FILE)`,
    ),
    sides: [...(forge === undefined ? [] : [forge]), benchSide(measured, setup.bench, before)],
    rule: "Data sheets and local rules first.",
  };
}
