// Flags whose number follows from much: the shop's limit is laid just to one side of it and to the other.
import type { Finding, FindingCode } from "@scantling/geometry";
import type { Case, Node } from "./world.js";

export interface Bracket {
  readonly flag: string;
  readonly code: FindingCode;
  readonly one: Case;
  /** Limits with which it is told for sure, so that its number can be read. */
  readonly told: Node;
  /** The number in the finding; inside units. */
  readonly number: (finding: Finding) => number;
  /** Limits by the value of the one that decides, in the shop file's notation. */
  readonly limits: (value: number) => Node;
  /** How far to either side the limit is laid: more than the finding's own rounding. */
  readonly by: number;
  /** Whether it is told where the number is above the limit. */
  readonly above: boolean;
}

const numberOf =
  (name: string) =>
  ({ values = {} }: Finding): number => {
    const held = values[name];
    return typeof held === "object" ? held.value : Number.NaN;
  };

const percent = (share: number): string => `${100 * share} %`;

const blade = (change: Node): Case => ({ knife: { blade: change } });
const tapered: Node = {
  thickness: [
    { at: "heel", is: 4 },
    { at: "tip", is: 2 },
  ],
};
const clad: Case = {
  knife: {
    steel: { name: "1095 and low-carbon", density: "7.85 g/cm3" },
    blade: { bevel: { height: "full", edgeThickness: 0.3 } },
    stack: {
      core: { steel: "1095", thickness: "2 mm" },
      cladding: { steel: "1020", thickness: "3 mm" },
      width: "32 mm",
    },
  },
};
const apart: Case = {
  knife: {
    steel: { name: "1095 and 5160", density: "7.85 g/cm3" },
    stack: {
      alternate: [
        { steel: "1095", thickness: 4, count: 3 },
        { steel: "5160", thickness: 4, count: 3 },
      ],
      width: 35,
    },
  },
};
const bars: Case = { shop: { rack: [{ size: "8 x 28 mm" }] } };
const billets: Case = { shop: { rack: [{ size: "4 x 25 mm" }], limits: { reach: { fullers: "85 %" } } } };
const onEdge: Case = {
  setup: true,
  knife: { tang: { form: "hidden", length: 90, heights: { front: 14, middle: 12, butt: 8 } } },
  shop: { rack: [{ size: "8 x 60 mm" }], fullers: [3] },
};
const reach = (flatDies: number, fullers: number): Node => ({
  maxBars: 1,
  reach: { easy: "0 %", flatDies: percent(flatDies), fullers: percent(fullers) },
});

export const BRACKETS: readonly Bracket[] = [
  {
    flag: "R2",
    code: "reach-only-just",
    one: bars,
    told: reach(0.001, 0.999),
    number: numberOf("share"),
    limits: (value) => reach(value, 0.999),
    by: 1e-4,
    above: true,
  },
  {
    flag: "R1",
    code: "no-bars-fit",
    one: bars,
    told: reach(0, 0.001),
    number: numberOf("value"),
    limits: (value) => reach(0, value),
    by: 1e-4,
    above: true,
  },
  {
    flag: "R3",
    code: "weld-reduction-low",
    one: billets,
    told: { findings: { targetWeldReduction: "99 %" }, maxBars: 3 },
    number: numberOf("squeeze"),
    limits: (value) => ({ findings: { targetWeldReduction: percent(value) }, maxBars: 3 }),
    by: 1e-4,
    above: false,
  },
  // A billet to be narrowed stands on edge: 8 x 60 mm for a blade of half that height.
  {
    flag: "R7",
    code: "on-edge-too-tall",
    one: onEdge,
    told: { maxSlenderness: 1.01, mostNarrowing: "90 %" },
    number: ({ values = {} }) =>
      numberOf("width")({ values } as Finding) / numberOf("thickness")({ values } as Finding),
    limits: (value) => ({ maxSlenderness: value, mostNarrowing: "90 %" }),
    by: 1e-3,
    above: true,
  },
  {
    flag: "R19",
    code: "bevel-line-droops",
    one: blade(tapered),
    told: { findings: { droop: "100 %" } },
    number: numberOf("share"),
    limits: (value) => ({ findings: { droop: percent(value) } }),
    by: 1e-4,
    above: false,
  },
  {
    flag: "R24",
    code: "warp-risk",
    one: blade(tapered),
    told: { findings: { warpSlenderness: 1 } },
    number: numberOf("slenderness"),
    limits: (value) => ({ findings: { warpSlenderness: value } }),
    by: 0.6,
    above: true,
  },
  {
    flag: "R31",
    code: "mortise-wall-thin",
    one: {
      knife: {
        tang: { form: "hidden", length: 90, heights: { front: 14, middle: 12, butt: 8 } },
        handle: {
          block: {
            material: "walnut",
            length: 115,
            height: 30,
            width: 22,
            section: "rounded",
            cornerRadius: 4,
          },
        },
      },
    },
    told: { findings: { mortiseWall: 40 } },
    number: numberOf("wall"),
    limits: (value) => ({ findings: { mortiseWall: value } }),
    by: 1e-3,
    above: false,
  },
  {
    flag: "R38",
    code: "edge-bevel-wide",
    one: {},
    told: { findings: { edgeWidth: 0.01 } },
    number: numberOf("width"),
    limits: (value) => ({ findings: { edgeWidth: value } }),
    by: 1e-3,
    above: true,
  },
  {
    flag: "R27",
    code: "hardening-apart",
    one: apart,
    told: { findings: { hardeningGap: 0 } },
    number: ({ values = {} }) => {
      const at = (name: string): number => numberOf(name)({ values } as Finding);
      return Math.max(at("firstLow") - at("secondHigh"), at("secondLow") - at("firstHigh"));
    },
    limits: (value) => ({ findings: { hardeningGap: value } }),
    by: 0.5,
    above: true,
  },
  {
    flag: "R28",
    code: "core-near-edge",
    one: clad,
    told: { mixed: { coreCentring: 5 } },
    number: numberOf("edge"),
    limits: (value) => ({ mixed: { coreCentring: value } }),
    by: 0.011,
    above: false,
  },
  {
    flag: "R29",
    code: "layers-too-thin",
    one: apart,
    told: { mixed: { minLayerThickness: 5 } },
    number: numberOf("thickness"),
    limits: (value) => ({ mixed: { minLayerThickness: value } }),
    by: 0.001,
    above: false,
  },
];
