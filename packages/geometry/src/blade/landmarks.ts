import { FAMILIES, type FamilyDefaults, type FrontForm } from "./families.js";
import type { LandmarkOutlineSpec, TangSpec } from "./spec.js";

/** Every landmark of an outline, with the family's defaults put in; mm. */
export interface Landmarks {
  readonly front: FrontForm;
  readonly edgeLength: number;
  readonly heelHeight: number;
  readonly straightEdge: number;
  readonly tipHeight: number;
  /** x where the spine begins to fall; the edge length where it does not. */
  readonly spineBreak: number;
  readonly ricasso: number;
  readonly tangLength: number;
  readonly tangHeights: { readonly front: number; readonly middle: number; readonly butt: number };
  readonly drop: number;
}

/** A landmark this near to another one stands on it, mm: no piece of an outline is shorter. */
export const SAME_LANDMARK = 1e-6;

/** The value itself, or the target where the two differ by less than can be told apart. */
export const snapTo = (value: number, target: number): number =>
  Math.abs(value - target) < SAME_LANDMARK ? target : value;

/**
 * Fills in what the file leaves out, from the family's table, and lets landmarks that all but coincide coincide. Checks
 * nothing.
 *
 * @example
 * // vegetable: the straight edge is 0.65 of the edge length unless given
 * resolveLandmarks({ family: "vegetable", edgeLength: 200, heelHeight: 80 }, 0, { form: "full", length: 120 })
 *   .straightEdge; // 130
 */
export function resolveLandmarks(spec: LandmarkOutlineSpec, ricasso: number, tang: TangSpec): Landmarks {
  const family: FamilyDefaults = FAMILIES[spec.family];
  const { edgeLength, heelHeight } = spec;
  const tipHeight = snapTo(snapTo(spec.tipHeight ?? family.tipHeight * heelHeight, heelHeight), 0);
  const falls = family.front === "pointed" && tipHeight < heelHeight;
  return {
    front: family.front,
    edgeLength,
    heelHeight,
    straightEdge: snapTo(snapTo(spec.straightEdge ?? family.straightEdge * edgeLength, edgeLength), 0),
    tipHeight,
    spineBreak: falls
      ? snapTo(snapTo(spec.spineBreak ?? family.spineBreak * edgeLength, edgeLength), 0)
      : edgeLength,
    ricasso: snapTo(ricasso, 0),
    tangLength: tang.length ?? Number.NaN,
    tangHeights: tang.heights ?? {
      front: family.tangHeights.front * heelHeight,
      middle: family.tangHeights.middle * heelHeight,
      butt: family.tangHeights.butt * heelHeight,
    },
    drop: snapTo(tang.drop ?? 0, 0),
  };
}

/** How far the edge rises from the straight part to its end at the tip or the front, mm. */
export function edgeRise(landmarks: Landmarks): number {
  return landmarks.front === "square" ? landmarks.heelHeight - landmarks.tipHeight : landmarks.tipHeight;
}
