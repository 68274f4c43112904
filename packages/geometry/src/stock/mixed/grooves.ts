import type { BarSection, GrooveForm, GrooveSpec } from "./spec.js";

/**
 * Area of one groove's section, mm².
 *
 * @param depth - mm; of a round groove at most half its width.
 *
 * @example
 * grooveArea("round", 2, 4); // 6.28, half a circle
 * grooveArea("vee", 2, 4); // 4
 */
export function grooveArea(form: GrooveForm, depth: number, width: number): number {
  if (form === "vee") return (depth * width) / 2;
  if (form === "square") return depth * width;
  const radius = width ** 2 / (8 * depth) + depth / 2;
  const angle = 2 * Math.asin(Math.min(1, width / (2 * radius)));
  return (radius ** 2 * (angle - Math.sin(angle))) / 2;
}

/**
 * Volume of the bar before its grooves are ground, mm³. Grooves run over the bar's whole width; by their pitch they take
 * a share of the bar, however long it is.
 *
 * @param after - Volume with the grooves ground, mm³.
 * @returns `Infinity` where the grooves would take the whole bar.
 *
 * @example
 * beforeGrooves(70_300, { share: 0.08 }, { width: 38.1, thickness: 12.7 }); // 76413
 */
export function beforeGrooves(after: number, grooves: GrooveSpec | undefined, bar: BarSection): number {
  const { share, volume } = groovesTake(grooves, bar);
  return share < 1 ? (after + volume) / (1 - share) : Number.POSITIVE_INFINITY;
}

/**
 * Volume of the bar after its grooves are ground; undoes {@link beforeGrooves}.
 *
 * @example
 * afterGrooves(100, { share: 0.08 }, { width: 38.1, thickness: 12.7 }); // 92
 */
export function afterGrooves(before: number, grooves: GrooveSpec | undefined, bar: BarSection): number {
  const { share, volume } = groovesTake(grooves, bar);
  return before * (1 - share) - volume;
}

/**
 * How many grooves of their width lie side by side on the faces of a bar, both faces together: at least that many where
 * they are given by their pitch, `Infinity` where only their share is given.
 *
 * @param length - Of the bar, mm.
 *
 * @example
 * groovesAcross({ form: "vee", depth: 3, width: 6, count: 200 }, 301); // 100
 */
export function groovesAcross(grooves: GrooveSpec, length: number): number {
  if ("share" in grooves) return Number.POSITIVE_INFINITY;
  // A length that is worked out carries the last digits of a double.
  return 2 * Math.floor((length / grooves.width) * (1 + 1e-12));
}

/** What grooves take off a bar: a share of it, and a volume whatever its length. */
function groovesTake(
  grooves: GrooveSpec | undefined,
  bar: BarSection,
): { readonly share: number; readonly volume: number } {
  if (grooves === undefined) return { share: 0, volume: 0 };
  if ("share" in grooves) return { share: grooves.share, volume: 0 };
  const area = grooveArea(grooves.form, grooves.depth, grooves.width);
  if ("count" in grooves) return { share: 0, volume: grooves.count * area * bar.width };
  return { share: (grooves.faces * area) / (grooves.pitch * bar.thickness), volume: 0 };
}
