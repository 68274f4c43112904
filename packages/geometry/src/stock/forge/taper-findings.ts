import { count, type Finding, length } from "../../errors/issue.js";
import { findingLimit } from "../../limits/finding-limits.js";
import type { PressWork } from "./press-defaults.js";
import type { PressStop } from "./press-steps.js";

/**
 * What is to be said of the stops of the distal taper: those that leave it too thick or too thin, and blocks to make
 * where none in hand comes near. Nothing where the shop names no stops.
 *
 * @example
 * const work = { temperature: 950, stopOffset: 0, maxReduction: 0.2, stops: { blocks: [6], shims: [] } };
 * taperFindings([6, 3].map((cold) => pressStop(cold, work)), work).map(({ code }) => code); // ["taper-stop-far-off"]
 */
export function taperFindings(taper: readonly PressStop[], work: PressWork): Finding[] {
  const { stops } = work;
  if (stops === undefined) return [];
  const stopError = findingLimit("stopError", work.given);
  const stopFar = findingLimit("stopFar", work.given);
  const off = taper.flatMap(({ stop, out, cold }) =>
    stop === undefined || out === undefined || Math.abs(stop.error) <= stopError.value
      ? []
      : [out.cold - cold],
  );
  const far = taper.filter(({ stop }) => stop === undefined);
  const [thick, thin] = [Math.max(0, ...off), Math.max(0, ...off.map((each) => -each))];
  const parts = [
    ...(thick > 0 ? ["it comes out up to {thick} too thick: grind that off"] : []),
    ...(thin > 0 ? ["it comes out up to {thin} too thin: press by the caliper there"] : []),
    ...(far.length === 0
      ? []
      : [
          far.length === 1
            ? "no stop in hand comes near {make}: make such a block, or draw by the caliper"
            : "no stop in hand comes near {count} of the heights: make the blocks in the table, or draw by the caliper",
        ]),
  ];
  if (parts.length === 0) return [];
  return [
    {
      code: "taper-stop-far-off",
      path: "press",
      severity: far.length > 0 || thin > 0 ? "warn" : "note",
      text: `Distal taper: ${parts.join("; ")}.`,
      values: {
        thick: length(thick),
        thin: length(thin),
        count: count(far.length),
        make: length(far[0]?.wanted ?? 0),
      },
      basis: far.length > 0 ? stopFar.basis : stopError.basis,
    },
  ];
}
