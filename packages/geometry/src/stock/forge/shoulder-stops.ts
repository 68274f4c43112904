import type { PressPass } from "./press-steps.js";
import type { ShoulderPass } from "./shoulder.js";

/** What is pressed of the handle's thickness beside one pass of the fuller. */
export interface ShoulderPressing {
  /** Passes of the press, in order; none where the thickness waits for the next. */
  readonly passes: readonly PressPass[];
  /** Thickness afterwards, mm at 20 °C. */
  readonly thickness: number;
}

/**
 * Shares out the passes that press the handle to its thickness among those of the fuller, each where the thickness is
 * meant to be nearest; the last one goes with the last.
 *
 * @param shoulder - Passes of the fuller.
 * @param press - Passes of the press for the handle.
 * @param from - Thickness before the first, mm.
 *
 * @example
 * shoulderPressing([], [], 12); // []
 */
export function shoulderPressing(
  shoulder: readonly Pick<ShoulderPass, "thickness">[],
  press: readonly PressPass[],
  from: number,
): ShoulderPressing[] {
  const last = shoulder.length - 1;
  const places = press.map((pass, i) =>
    i + 1 === press.length ? last : nearestTo(comesOut(pass), shoulder),
  );
  let thickness = from;
  return shoulder.map((_, place) => {
    const passes = press.filter((_pass, i) => places[i] === place);
    const done = passes.at(-1);
    if (done !== undefined) thickness = comesOut(done);
    return { passes, thickness };
  });
}

const comesOut = ({ cold, out }: PressPass): number => out?.cold ?? cold;

/** Both fall, so the places never go back. */
function nearestTo(thickness: number, shoulder: readonly Pick<ShoulderPass, "thickness">[]): number {
  const off = shoulder.map((pass) => Math.abs(pass.thickness - thickness));
  return off.indexOf(Math.min(...off));
}
