// Knives and shops just over and just under each limit, and the shop's own limit that decides otherwise.
import type { FindingCode, Severity } from "@scantling/geometry";
import { type Case, merged, type Node } from "./world.js";

/** A flag at its limit. */
export interface LimitCase {
  readonly flag: string;
  readonly code: FindingCode;
  /** Where the limit decides how grave it is, not whether it is told. */
  readonly severity?: Severity;
  readonly over: Case;
  readonly under: Case;
  /** The shop's limit that decides otherwise, and which of the two it turns round. */
  readonly moved?: { readonly limits: Node; readonly shop?: Node; readonly turns: "over" | "under" };
  /** Why no limit can be moved. */
  readonly fixed?: string;
}

const pin = (x: number, y: number, diameter: number, kind = "pin"): Node => ({ kind, at: [x, y], diameter });
const holes = (...list: readonly Node[]): Case => ({ knife: { tang: { holes: list } } });
const blade = (change: Node): Case => ({ knife: { blade: change } });
const thickness = (heel: number, tip: number): Node => ({
  thickness: [
    { at: "heel", is: heel },
    { at: "tip", is: tip },
  ],
});
const findings = (limits: Node): Node => ({ findings: limits });
const ofType = (type: string, { knife = {}, ...rest }: Case): Case => ({
  ...rest,
  knife: merged(knife, { order: { type } }),
});
const lengths = (handle: number): Case => ({
  knife: {
    order: {
      asks: {
        overallLength: { below: 240 },
        edgeLength: { above: 110 },
        handleLength: { above: handle },
      },
    },
  },
});
const hardness = (hrc: number, type = "field", steel = "O1"): Case => ({
  knife: { steel, order: { type, asks: { hardness: { between: [hrc, hrc] } } } },
});
const slabs = (moisture: string): Case => ({
  knife: { handle: { slabs: { material: { name: "walnut", moisture }, thickness: 8 } } },
});
const shelf = (length: number): Case => ({
  knife: { handle: { slabs: { material: "walnut", thickness: 8 } } },
  shop: { handleStock: [{ material: "walnut", length, height: 40, thickness: 9, count: 2 }] },
});
const fuller = (radius: number): Case => ({
  setup: true,
  knife: { tang: { form: "hidden", length: 90, heights: { front: 14, middle: 12, butt: 8 } } },
  shop: { rack: [{ size: "8 x 35 mm" }], fullers: [radius] },
});

/** T = 4, e = 0.6 at the heel: the bevel stands at atan(1.7 / height). */
const bevel = (height: number): Case => blade({ bevel: { height } });

export const LIMIT_CASES: readonly LimitCase[] = [
  // 1.5 and 2 diameters of 4 mm below the tang's top, which is at 30.
  {
    flag: "R12",
    code: "hole-too-near-edge",
    over: holes(pin(-40, 30 - 5.99, 4)),
    under: holes(pin(-40, 30 - 6.01, 4)),
    moved: { limits: findings({ holeEdgeStop: 1.4 }), turns: "over" },
  },
  {
    flag: "R12",
    code: "hole-near-edge",
    over: holes(pin(-40, 30 - 7.99, 4)),
    under: holes(pin(-40, 30 - 8.01, 4)),
    moved: { limits: findings({ holeEdgeGood: 1.9 }), turns: "over" },
  },
  {
    flag: "R13",
    code: "holes-pitch",
    over: holes(pin(-40, 19, 4), pin(-55.99, 19, 4)),
    under: holes(pin(-40, 19, 4), pin(-56.01, 19, 4)),
    moved: { limits: findings({ holePitch: 4.1 }), turns: "under" },
  },
  {
    flag: "R13",
    code: "holes-close",
    over: holes(pin(-40, 19, 4, "lightening"), pin(-46.99, 19, 4, "lightening")),
    under: holes(pin(-40, 19, 4, "lightening"), pin(-47.01, 19, 4, "lightening")),
    moved: { limits: findings({ holeWall: 2.9 }), turns: "over" },
  },
  // The plunge stands at the heel, from the edge 24 mm up: a hole of 8 mm is 8 mm from it 12 mm behind.
  {
    flag: "R13",
    code: "hole-near-step",
    over: holes(pin(-11.99, 18, 8, "lightening")),
    under: holes(pin(-12.01, 18, 8, "lightening")),
    moved: { limits: findings({ holeStep: 0.9 }), turns: "over" },
  },
  {
    flag: "R14",
    code: "tang-thin-at-pin",
    over: { knife: { tang: { holes: [pin(-60, 19, 4)], thickness: [{ at: "handle", is: 1.59 }] } } },
    under: { knife: { tang: { holes: [pin(-60, 19, 4)], thickness: [{ at: "handle", is: 1.61 }] } } },
    moved: { limits: findings({ tangAtPin: 1.5 }), turns: "over" },
  },
  {
    flag: "R14, a knife that chops",
    code: "tang-thin-at-pin",
    over: ofType("chopper", {
      knife: { tang: { holes: [pin(-60, 19, 4)], thickness: [{ at: "handle", is: 2.49 }] } },
    }),
    under: ofType("chopper", {
      knife: { tang: { holes: [pin(-60, 19, 4)], thickness: [{ at: "handle", is: 2.51 }] } },
    }),
    moved: { limits: findings({ tangAtPinChopper: 2.6 }), turns: "under" },
  },
  // 1.7 / tan 5° = 19.431, 1.7 / tan 7° = 13.845; 1.35 / tan 3° = 25.760 with T = 3, e = 0.3.
  {
    flag: "R15",
    code: "bevel-steep",
    over: bevel(19.42),
    under: bevel(19.44),
    moved: { limits: findings({ bevelAngle: "4.9 deg" }), turns: "under" },
  },
  {
    flag: "R15, a knife that chops",
    code: "bevel-steep",
    over: ofType("chopper", bevel(13.84)),
    under: ofType("chopper", bevel(13.86)),
    moved: { limits: findings({ bevelAngleChopper: "7.1 deg" }), turns: "over" },
  },
  {
    flag: "R15, a kitchen knife",
    code: "bevel-steep",
    over: ofType("kitchen", blade({ ...thickness(3, 3), bevel: { height: 25.75, edgeThickness: 0.3 } })),
    under: ofType("kitchen", blade({ ...thickness(3, 3), bevel: { height: 25.77, edgeThickness: 0.3 } })),
    moved: { limits: findings({ bevelAngleKitchen: "3.1 deg" }), turns: "over" },
  },
  // e + (4 − e)/24 = 0.46 at e = 0.30609; the sharpening bevel ends at 0.62 mm.
  {
    flag: "R16",
    code: "thick-above-edge",
    over: ofType("kitchen", blade({ bevel: { edgeThickness: 0.307 } })),
    under: ofType("kitchen", blade({ bevel: { edgeThickness: 0.305 } })),
    moved: { limits: findings({ kitchenWedge: 0.47 }), turns: "over" },
  },
  // A parallel blade: (24² + 1.7²)/(2 · 1.7) = 170.26 mm, and (c/2)·tan(α/2) = 0.4255 mm.
  {
    flag: "R17",
    code: "wheel-too-small",
    over: blade({ ...thickness(4, 4), bevel: { form: "hollow", wheelRadius: 170.2 } }),
    under: blade({ ...thickness(4, 4), bevel: { form: "hollow", wheelRadius: 170.3 } }),
    moved: { limits: findings({ wheelRoom: 1.01 }), turns: "under" },
  },
  {
    flag: "R18",
    code: "crown-too-large",
    over: blade({ ...thickness(4, 4), bevel: { form: "convex", crown: 0.426 } }),
    under: blade({ ...thickness(4, 4), bevel: { form: "convex", crown: 0.425 } }),
    moved: { limits: findings({ crownShare: "99 %" }), turns: "under" },
  },
  {
    flag: "R20",
    code: "plunge-under-handle",
    over: blade({ ricasso: 0.99 }),
    under: blade({ ricasso: 1.01 }),
    moved: { limits: findings({ plungeToHandle: 0.5 }), turns: "over" },
  },
  // Ready to harden each face has 0.1 mm more. 10 mm behind the tip: 4 − (4 − tip)·110/120 + 0.2.
  {
    flag: "R9",
    code: "tip-thin-for-hardening",
    over: blade(thickness(4, 1.054)),
    under: blade(thickness(4, 1.055)),
    moved: { limits: findings({ tipThick: 1.4 }), turns: "over" },
  },
  {
    flag: "R9, a kitchen knife",
    code: "tip-thin-for-hardening",
    over: ofType("kitchen", blade(thickness(4, 0.727))),
    under: ofType("kitchen", blade(thickness(4, 0.728))),
    moved: { limits: findings({ tipThickKitchen: 1.3 }), turns: "under" },
  },
  // The edge has 0.2 mm more than finished; the spine 4.2, 6.2 and 4.0 mm.
  {
    flag: "R10",
    code: "edge-thin-for-quench",
    over: blade({ bevel: { edgeThickness: 0.599 } }),
    under: blade({ bevel: { edgeThickness: 0.601 } }),
    moved: { limits: findings({ quenchEdge: 0.75 }), turns: "over" },
  },
  {
    flag: "R10, a thick spine",
    code: "edge-thin-for-quench",
    over: blade({ ...thickness(6, 6), bevel: { edgeThickness: 0.799 } }),
    under: blade({ ...thickness(6, 6), bevel: { edgeThickness: 0.801 } }),
    moved: { limits: findings({ quenchThickSpine: 6.3 }), turns: "over" },
  },
  {
    flag: "R10, a thin spine",
    code: "edge-thin-for-quench",
    over: {
      knife: {
        blade: { ...thickness(3.8, 3.8), bevel: { edgeThickness: 0.299 } },
        allowances: { minEdge: 0.2 },
      },
    },
    under: {
      knife: {
        blade: { ...thickness(3.8, 3.8), bevel: { edgeThickness: 0.301 } },
        allowances: { minEdge: 0.2 },
      },
    },
    moved: { limits: findings({ quenchEdgeThin: 0.55 }), turns: "under" },
  },
  {
    flag: "R11",
    code: "skin-left-on",
    over: { knife: { allowances: { face: 0.149 } } },
    under: { knife: { allowances: { face: 0.151 } } },
    moved: { limits: findings({ skin: 0.2 }), turns: "over" },
  },
  // Tables of O1 at 175 °C: 64 − 26/28 = 63.07, and 63 − 0.5·26/28 = 62.54.
  {
    flag: "R26",
    code: "hardness-out-of-reach",
    over: hardness(63.2),
    under: hardness(63),
    moved: { limits: findings({ lowestTemper: "150 °C" }), turns: "over" },
  },
  {
    flag: "R26, no table",
    code: "hardness-out-of-reach",
    over: hardness(63.2, "field", "1084"),
    under: hardness(63, "field", "1084"),
    moved: { limits: findings({ temperTakes: 1 }), turns: "over" },
  },
  {
    flag: "R26, a knife that chops",
    code: "hardness-unwise",
    over: hardness(62.2, "chopper"),
    under: hardness(62, "chopper"),
    moved: { limits: findings({ chopperHardness: 61 }), turns: "under" },
  },
  {
    flag: "R30",
    code: "forged-flats-thin",
    over: { knife: { blade: thickness(4, 2.99), finish: { flats: "forged" } } },
    under: { knife: { blade: thickness(4, 3.01), finish: { flats: "forged" } } },
    moved: { limits: findings({ forgedFlat: 2.5 }), turns: "over" },
  },
  {
    flag: "R32",
    code: "handle-stock-small",
    over: shelf(115.9),
    under: shelf(116.1),
    // The blank: 110 mm of tang and 6 mm over.
    moved: { limits: findings({ handleSpare: 0.2 }), turns: "under" },
  },
  {
    flag: "R33",
    code: "wood-not-dry",
    over: slabs("8.1 %"),
    under: slabs("7.9 %"),
    moved: { limits: findings({ dryMoisture: "9 %" }), turns: "over" },
  },
  {
    flag: "R33, green",
    code: "wood-green",
    over: slabs("30.1 %"),
    under: slabs("29.9 %"),
    moved: { limits: findings({ greenMoisture: "25 %" }), turns: "under" },
  },
  // 24 in for 24 cm; as 24 cm it is a camp knife.
  {
    flag: "R36",
    code: "size-slip",
    over: ofType("camp", blade({ outline: { edgeLength: "24 in" } })),
    under: ofType("camp", blade({ outline: { edgeLength: "24 cm" } })),
    moved: { limits: { types: { camp: { length: [180, 700] } } }, turns: "over" },
  },
  {
    flag: "R36, a spine that no knife has",
    code: "spine-very-thick",
    over: blade(thickness(10.01, 4)),
    under: blade(thickness(9.99, 4)),
    moved: { limits: findings({ thickSpine: 11 }), turns: "over" },
  },
  {
    flag: "row 5",
    code: "unusual-for-type",
    over: ofType("hunter", blade({ outline: { edgeLength: 120.1 } })),
    under: ofType("hunter", blade({ outline: { edgeLength: 119.9 } })),
    moved: { limits: { types: { hunter: { length: [75, 130] } } }, turns: "over" },
  },
  // 110 + 12 + 118 = 240.
  {
    flag: "row 4",
    code: "asked-lengths-disagree",
    over: lengths(118.1),
    under: lengths(117.9),
    moved: { limits: findings({ lengthsApart: 0.2 }), turns: "over" },
  },
  // Hot at 850 °C 1.1 % longer: 242.2 mm with its ends; the blade ahead of the handle is 132 mm.
  {
    flag: "R25",
    code: "longer-than-oven",
    over: { shop: { oven: { length: 269.6 } } },
    under: { shop: { oven: { length: 269.7 } } },
    moved: { limits: { forge: { ovenClearance: 20 } }, turns: "over" },
  },
  {
    flag: "R25, tank",
    code: "longer-than-tank",
    over: { shop: { quenchTank: { depth: 181.9 } } },
    under: { shop: { quenchTank: { depth: 182.1 } } },
    moved: { limits: { forge: { tankClearance: 60 } }, turns: "under" },
  },
  {
    flag: "R6",
    code: "shoulder-corner-sharp",
    over: fuller(1.4),
    under: fuller(1.6),
    moved: { limits: { forge: { cornerRadius: 1.3 } }, turns: "over" },
  },
];
