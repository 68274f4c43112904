import type { FamilyName } from "./spec.js";

/** How the blade ends: `square` has an upright front, `pointed` brings edge and spine together in a tip. */
export type FrontForm = "square" | "pointed";

/**
 * What a family fills in where the file says nothing; all as shares, so that they fit any size.
 *
 * Basis of every figure: common practice, no source; each can be given in the file instead.
 */
export interface FamilyDefaults {
  readonly front: FrontForm;
  /** One line for people: what the outline looks like. */
  readonly looks: string;
  /** Straight length of edge before the belly, share of the edge length. */
  readonly straightEdge: number;
  /** Height of the front, or y of the tip, share of the heel height. */
  readonly tipHeight: number;
  /** Pointed: x where the spine begins to fall, share of the edge length; used only where the tip lies below the spine. */
  readonly spineBreak: number;
  /** Heights of the tang at the handle front, half way and at the butt, shares of the heel height. */
  readonly tangHeights: { readonly front: number; readonly middle: number; readonly butt: number };
}

/** The published table of blade families. A family is nothing but these defaults. */
export const FAMILIES: Readonly<Record<FamilyName, FamilyDefaults>> = {
  vegetable: {
    front: "square",
    looks: "square front, level spine, edge straight and then lifting a little",
    straightEdge: 0.65,
    tipHeight: 0.87,
    spineBreak: 1,
    tangHeights: { front: 0.3, middle: 0.27, butt: 0.32 },
  },
  "straight-back": {
    front: "pointed",
    looks: "level spine all the way to the tip, the edge rising to meet it",
    straightEdge: 0.5,
    tipHeight: 1,
    spineBreak: 0.6,
    tangHeights: { front: 0.7, middle: 0.62, butt: 0.75 },
  },
  "drop-point": {
    front: "pointed",
    looks: "spine level at first, then falling in a bow to a tip below its line",
    straightEdge: 0.5,
    tipHeight: 0.55,
    spineBreak: 0.5,
    tangHeights: { front: 0.8, middle: 0.7, butt: 0.85 },
  },
};

export const FAMILY_NAMES = Object.keys(FAMILIES) as readonly FamilyName[];
