import {
  type EdgeForm,
  FAMILIES,
  type FamilyDefaults,
  type FrontForm,
  HIDDEN_TANG,
  type SpineForm,
  type TangHeights,
} from "./families.js";
import type { BladeSpec, LandmarkOutlineSpec, TangSpec } from "./spec.js";

/** Every landmark of an outline, with the family's defaults put in; mm. */
export interface Landmarks {
  readonly front: FrontForm;
  readonly edge: EdgeForm;
  readonly spine: SpineForm;
  readonly edgeLength: number;
  readonly heelHeight: number;
  readonly straightEdge: number;
  readonly tipHeight: number;
  /** x where the spine leaves its level; the edge length where it does not. */
  readonly spineBreak: number;
  readonly ricasso: number;
  /** Radius of the notch behind the heel; 0 where there is none. */
  readonly choilRadius: number;
  readonly tangForm: TangSpec["form"];
  readonly tangLength: number;
  readonly tangHeights: TangHeights;
  /** How far the tang's top lies below the spine's end at the handle front. */
  readonly drop: number;
  /** 0 where the shoulders have sharp corners, and for a full tang. */
  readonly shoulderRadius: number;
}

/** A landmark this near to another one stands on it, mm: no piece of an outline is shorter. */
export const SAME_LANDMARK = 1e-6;

/**
 * The value itself, or the target where the two differ by less than can be told apart.
 *
 * @example
 * snapTo(1e-9, 0); // 0
 * snapTo(0.5, 0); // 0.5
 */
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
export function resolveLandmarks(
  spec: LandmarkOutlineSpec,
  ricasso: number,
  tang: TangSpec,
  choil?: BladeSpec["choil"],
): Landmarks {
  const family: FamilyDefaults = FAMILIES[spec.family];
  const { edgeLength, heelHeight } = spec;
  const tipHeight = snapTo(snapTo(spec.tipHeight ?? family.tipHeight * heelHeight, heelHeight), 0);
  const breaks = family.front === "pointed" && tipHeight !== heelHeight;
  const tangHeights = tang.heights ?? defaultTangHeights(family, heelHeight, tang.form);
  const centred = (heelHeight - tangHeights.front) / 2;
  return {
    front: family.front,
    edge: family.edge,
    spine: family.spine,
    edgeLength,
    heelHeight,
    straightEdge: snapTo(snapTo(spec.straightEdge ?? family.straightEdge * edgeLength, edgeLength), 0),
    tipHeight,
    spineBreak: breaks
      ? snapTo(snapTo(spec.spineBreak ?? family.spineBreak * edgeLength, edgeLength), 0)
      : edgeLength,
    ricasso: snapTo(ricasso, 0),
    choilRadius: choil?.radius ?? 0,
    tangForm: tang.form,
    tangLength: tang.length ?? Number.NaN,
    tangHeights,
    drop: snapTo(tang.drop ?? (tang.form === "full" ? 0 : centred), 0),
    shoulderRadius: tang.form === "full" ? 0 : snapTo(tang.shoulderRadius ?? 0, 0),
  };
}

function defaultTangHeights(family: FamilyDefaults, heelHeight: number, form: TangSpec["form"]): TangHeights {
  const [shares, whole] =
    form === "full" ? [family.fullTang, heelHeight] : [HIDDEN_TANG, family.fullTang.front * heelHeight];
  return { front: shares.front * whole, middle: shares.middle * whole, butt: shares.butt * whole };
}

/**
 * How far the edge rises from the straight part to its end at the tip or the front, mm.
 *
 * @example
 * const vegetable = { family: "vegetable", edgeLength: 200, heelHeight: 80, tipHeight: 70 } as const;
 * edgeRise(resolveLandmarks(vegetable, 0, { form: "full", length: 120 })); // 10
 */
export function edgeRise(landmarks: Landmarks): number {
  return landmarks.front === "square" ? landmarks.heelHeight - landmarks.tipHeight : landmarks.tipHeight;
}
