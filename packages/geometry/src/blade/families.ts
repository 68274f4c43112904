import type { FamilyName } from "./spec.js";

/** How the blade ends: `square` has an upright front, `pointed` brings edge and spine together in a tip. */
export type FrontForm = "square" | "pointed";

/** How the edge leaves its straight part: `belly` bends up without a corner, `facet` turns at one and runs straight on. */
export type EdgeForm = "belly" | "facet";

/**
 * How the spine gets from its break to the tip: `bow` leaves the level without a corner and bends one way, `clip` turns
 * at a corner and runs on in a hollow arc, `broken` turns at a corner and runs on straight.
 */
export type SpineForm = "bow" | "clip" | "broken";

/** Heights of a tang at the handle front, half way and at the butt. */
export interface TangHeights {
  readonly front: number;
  readonly middle: number;
  readonly butt: number;
}

/**
 * What a family fills in where the file says nothing: three forms, and sizes as shares, so that they fit any blade.
 *
 * Basis of every figure: common practice, no source; each size can be given in the file instead.
 */
export interface FamilyDefaults {
  /** One line for people: what the outline looks like. */
  readonly looks: string;
  readonly front: FrontForm;
  readonly edge: EdgeForm;
  readonly spine: SpineForm;
  /** Straight length of edge before the belly or the facet, share of the edge length; all of it where the edge does not rise. */
  readonly straightEdge: number;
  /** Height of the front, or y of the tip, share of the heel height. Above 1 only where the spine may rise to its tip. */
  readonly tipHeight: number;
  /** Pointed: x where the spine leaves its level, share of the edge length; not used where the tip lies on that level. */
  readonly spineBreak: number;
  /** A full tang, shares of the heel height. */
  readonly fullTang: TangHeights;
}

/** The published table of blade families. A family is nothing but these defaults. */
export const FAMILIES: Readonly<Record<FamilyName, FamilyDefaults>> = {
  vegetable: {
    looks: "square front, level spine, edge straight and then lifting a little",
    front: "square",
    edge: "belly",
    spine: "bow",
    straightEdge: 0.65,
    tipHeight: 0.87,
    spineBreak: 1,
    fullTang: { front: 0.3, middle: 0.27, butt: 0.32 },
  },
  cleaver: {
    looks: "square front, level spine, edge lifting hardly at all",
    front: "square",
    edge: "belly",
    spine: "bow",
    straightEdge: 0.5,
    tipHeight: 0.95,
    spineBreak: 1,
    fullTang: { front: 0.3, middle: 0.27, butt: 0.32 },
  },
  "straight-back": {
    looks: "level spine all the way to the tip, the edge rising to meet it",
    front: "pointed",
    edge: "belly",
    spine: "bow",
    straightEdge: 0.5,
    tipHeight: 1,
    spineBreak: 0.6,
    fullTang: { front: 0.7, middle: 0.62, butt: 0.75 },
  },
  "drop-point": {
    looks: "spine level at first, then falling in a bow to a tip below its line",
    front: "pointed",
    edge: "belly",
    spine: "bow",
    straightEdge: 0.5,
    tipHeight: 0.62,
    spineBreak: 0.4,
    fullTang: { front: 0.8, middle: 0.7, butt: 0.85 },
  },
  "clip-point": {
    looks: "level spine cut away at a corner in a hollow clip, a full belly below it",
    front: "pointed",
    edge: "belly",
    spine: "clip",
    straightEdge: 0.6,
    tipHeight: 0.55,
    spineBreak: 0.62,
    fullTang: { front: 0.62, middle: 0.56, butt: 0.68 },
  },
  "spear-point": {
    looks: "edge and spine bending alike to a tip on the middle line",
    front: "pointed",
    edge: "belly",
    spine: "bow",
    straightEdge: 0.6,
    tipHeight: 0.5,
    spineBreak: 0.6,
    fullTang: { front: 0.75, middle: 0.68, butt: 0.82 },
  },
  "trailing-point": {
    looks: "spine sweeping up to a tip above its line, a long belly below it",
    front: "pointed",
    edge: "belly",
    spine: "bow",
    straightEdge: 0.35,
    tipHeight: 1.4,
    spineBreak: 0.35,
    fullTang: { front: 0.8, middle: 0.7, butt: 0.85 },
  },
  sheepsfoot: {
    looks: "edge straight to the tip, the spine bowing down to it",
    front: "pointed",
    edge: "belly",
    spine: "bow",
    straightEdge: 0.85,
    tipHeight: 0,
    spineBreak: 0.7,
    fullTang: { front: 0.8, middle: 0.7, butt: 0.85 },
  },
  tanto: {
    looks: "level spine, edge straight to a corner and straight again up to the tip",
    front: "pointed",
    edge: "facet",
    spine: "bow",
    straightEdge: 0.8,
    tipHeight: 1,
    spineBreak: 0.6,
    fullTang: { front: 0.8, middle: 0.72, butt: 0.8 },
  },
  seax: {
    looks: "edge straight to the tip, level spine broken at an angle and straight down to it",
    front: "pointed",
    edge: "belly",
    spine: "broken",
    straightEdge: 0.8,
    tipHeight: 0,
    spineBreak: 0.62,
    fullTang: { front: 0.7, middle: 0.62, butt: 0.7 },
  },
  chefs: {
    looks: "tall heel, long gentle belly, spine falling a little to a fine tip",
    front: "pointed",
    edge: "belly",
    spine: "bow",
    straightEdge: 0.25,
    tipHeight: 0.68,
    spineBreak: 0.2,
    fullTang: { front: 0.5, middle: 0.45, butt: 0.55 },
  },
  petty: {
    looks: "a small chef's knife: slim, straighter in the edge, fine tip",
    front: "pointed",
    edge: "belly",
    spine: "bow",
    straightEdge: 0.4,
    tipHeight: 0.65,
    spineBreak: 0.3,
    fullTang: { front: 0.72, middle: 0.65, butt: 0.8 },
  },
  boning: {
    looks: "narrow, spine all but straight, the edge rising late to a high tip",
    front: "pointed",
    edge: "belly",
    spine: "bow",
    straightEdge: 0.5,
    tipHeight: 0.82,
    spineBreak: 0.5,
    fullTang: { front: 0.85, middle: 0.78, butt: 0.95 },
  },
  slicer: {
    looks: "long and narrow, edge straight for most of its length, fine tip",
    front: "pointed",
    edge: "belly",
    spine: "bow",
    straightEdge: 0.62,
    tipHeight: 0.7,
    spineBreak: 0.5,
    fullTang: { front: 0.62, middle: 0.56, butt: 0.7 },
  },
};

/** Names of all blade families, in the order of their table. */
export const FAMILY_NAMES = Object.keys(FAMILIES) as readonly FamilyName[];

/** A hidden tang inside the handle of a full one, shares of the full tang's height at the front. Common practice, no source. */
export const HIDDEN_TANG: TangHeights = { front: 0.55, middle: 0.45, butt: 0.3 };
