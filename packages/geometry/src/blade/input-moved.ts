import { GeometryError, SpecError } from "../errors/errors.js";
import { materialDensity } from "../materials/material-density.js";
import { checkNumbers } from "./check-numbers.js";
import { handleLayout } from "./handle-layout.js";
import type { Reading, Reweigher } from "./reweigher.js";
import type { KnifeSpec, MaterialSpec } from "./spec.js";
import { changedAt, readAt } from "./spec-path.js";

/**
 * The knife with one input moved. What would go below nothing stops there (an edge thinner than its tolerance); an input that
 * cannot go to its limit at all stays where it is.
 *
 * @param spec - as the file gives it, without densities written in.
 */
export function inputMoved(scale: Reweigher, spec: KnifeSpec, paths: readonly string[], by: number): Reading {
  for (const least of [Number.NEGATIVE_INFINITY, 0]) {
    const changed = paths.reduce((before, path) => changedInput(before, spec, path, by, least), scale.spec);
    if (checkNumbers(changed).length > 0 || leavesGap(scale, changed, paths)) continue;
    try {
      return scale.read(changed);
    } catch (error) {
      if (!(error instanceof SpecError || error instanceof GeometryError)) throw error;
    }
  }
  return scale.middle;
}

const FITTING_PLACE = /^handle\.(?:guard|bolsters\[\d+\])\.at$/u;

/** Whether a guard or bolster has been moved back from where the handle begins, so that the handle would run into it. */
function leavesGap({ spec, outline }: Reweigher, changed: KnifeSpec, paths: readonly string[]): boolean {
  if (!paths.some((path) => FITTING_PLACE.test(path))) return false;
  const front = ({ handle }: KnifeSpec): number => handleLayout(handle, outline).handle?.block.front ?? 0;
  const fitting = readAt(changed, (paths[0] ?? "").replace(/\.at$/u, "")) as { readonly length: number };
  return front(changed) - front(spec) > fitting.length / 2;
}

const MOISTURE = /\.moisture$/u;

/** The description with one input moved; a wood's moisture moves its density, which is written in already. */
function changedInput(
  filled: KnifeSpec,
  spec: KnifeSpec,
  path: string,
  by: number,
  least: number,
): KnifeSpec {
  if (!MOISTURE.test(path)) return changedAt(filled, path, by, least);
  const place = path.replace(MOISTURE, "");
  const material = readAt(spec, place) as MaterialSpec;
  const { moisture = 0 } = material;
  const before = materialDensity(material) ?? 0;
  const after = materialDensity({ ...material, moisture: Math.max(0, moisture + by) }) ?? before;
  return changedAt(filled, `${place}.density`, after - before);
}
