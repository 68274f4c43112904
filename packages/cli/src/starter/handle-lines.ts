import { HARDENING_LIMITS, KNIFE_DEFAULTS } from "@scantling/geometry";
import { materialText } from "./blade-lines.js";
import type { Commented } from "./commented-lines.js";
import type { StarterWishes } from "./knife-starter.js";
import { FAMILY_STARTERS } from "./knife-types.js";
import {
  COARSE,
  EDGE,
  exactSize,
  FINE,
  placeText,
  type Size,
  type Steps,
  sizeAtLeast,
  sizeIn,
  THICKNESS,
} from "./size-text.js";
import { type StarterSizes, tangHeights } from "./starter-sizes.js";

/** Of the thickness at the handle front that is left at the butt of a tapered tang. Common practice: 40 to 60 %, no source. */
const BUTT_SHARE = 0.55;
/** Blades thinner than this at the heel keep a parallel tang: tapered, it would be thin at the rear pin, mm. */
const TAPER_FROM = 2.55;
/** A tang that slabs lie on is no less high in its middle, mm. Common practice, no source. */
const LEAST_MIDDLE = 18;
/** Where the pins stand, as shares of the tang's length. */
const PINS_AT = [0.25, 0.75] as const;
/** Of the handle's length that a hidden tang reaches. Common practice: two thirds at the least, no source. */
const TANG_IN_HANDLE = 0.72;
/** Handle around a hidden tang, mm, by the thickness of the blade. Common practice: 18 to 24 wide, 22 to 32 high, no source. */
const SLIM_BLOCK = { height: 26, width: 20 };
const STOUT_BLOCK = { height: 30, width: 24 };
const STOUT_FROM = 5;

/** Thickness of slabs. */
const SLAB: Steps = { mm: 0.5, in: 1 / 32 };
/** Diameters that pins are sold in, and radii that are ground. */
const PIN: Steps = { mm: 1, in: 1 / 32 };

/** The tang. */
export function tangLines({ family, units, tang }: StarterWishes, sizes: StarterSizes): Commented[] {
  const starter = FAMILY_STARTERS[family];
  const full = tang === "full";
  const length = sizeIn(starter.tangLength * (tang === "hidden" ? TANG_IN_HANDLE : 1), units, COARSE);
  const usual = tangHeights(family, sizes.heelHeight.mm, tang);
  const raised = full ? Math.max(1, LEAST_MIDDLE / usual.middle) : 1;
  const given = (mm: number): Size => (raised > 1 ? sizeIn(mm * raised, units, FINE) : exactSize(mm, units));
  const [front, middle, butt] = [given(usual.front), given(usual.middle), given(usual.butt)];
  const heights = `heights: { front: ${front.text}, middle: ${middle.text}, butt: ${butt.text} }`;
  const size = (mm: number): string => exactSize(mm, units).text;
  const ricasso = sizeIn(starter.ricasso, units, { mm: 1, in: 1 / 16 }).mm;
  const holes = PINS_AT.map((share): Commented => {
    const height =
      share < 0.5
        ? front.mm + (middle.mm - front.mm) * 2 * share
        : middle.mm + (butt.mm - middle.mm) * (2 * share - 1);
    const x = sizeIn(-ricasso - share * length.mm, units, FINE);
    const y = sizeIn(sizes.heelHeight.mm - height / 2, units, FINE);
    const diameter = sizeIn(starter.pin, units, PIN);
    return [`    - { kind: pin, at: ${placeText(x, y)}, diameter: ${diameter.text} }`];
  });
  return [
    ["tang:"],
    [`  form: ${tang}`, FORM_WORDS[tang]],
    [`  length: ${length.text}`, "handle front to butt"],
    raised > 1 ? [`  ${heights}`, "room for a hand"] : [`  # ${heights}`, "default"],
    [
      `  # drop: ${size(full ? 0 : (sizes.heelHeight.mm - front.mm) / 2)}`,
      "default: its top below the spine",
    ],
    ...(full ? [] : ([["  # shoulderRadius: 0", "default: in the corners of the shoulders"]] as const)),
    sizes.spine.mm < TAPER_FROM
      ? [`  # buttThickness: ${size(sizes.spine.mm)}`, "default: parallel; less for a tapered tang"]
      : [
          `  buttThickness: ${sizeIn(sizes.spine.mm * BUTT_SHARE, units, THICKNESS).text}`,
          "tapered; leave out for a parallel tang",
        ],
    ...(full ? ([["  holes:", "[x, y] from the heel; x is negative here"]] as const) : []),
    ...(full ? holes : []),
  ];
}

const FORM_WORDS = {
  full: "as wide as the handle; or hidden, through",
  hidden: "in the handle; or full, through",
  through: "in the handle, to its end; or full, hidden",
} as const;

/** What the hand holds. */
export function handleLines(
  { family, units, tang, handle }: StarterWishes,
  { spine }: StarterSizes,
): Commented[] {
  const starter = FAMILY_STARTERS[family];
  const size = (mm: number, steps: Steps): Size => sizeIn(mm, units, steps);
  if (tang !== "full") {
    const block = spine.mm < STOUT_FROM ? SLIM_BLOCK : STOUT_BLOCK;
    return [
      ["handle:"],
      ["  block:"],
      [`    material: ${materialText(handle)}`, "or { name: …, density: 0.7 g/cm3 }"],
      ["    section: oval", "or octagonal, rounded"],
      [`    length: ${size(starter.tangLength, COARSE).text}`],
      [`    height: ${size(block.height, FINE).text}`, "edge side to spine side"],
      [`    width: ${size(block.width, FINE).text}`],
    ];
  }
  const slab = size(starter.slab, SLAB);
  return [
    ["handle:"],
    ["  slabs:", "one on each face"],
    [`    material: ${materialText(handle)}`, "or { name: …, density: 0.7 g/cm3 }"],
    [`    thickness: ${slab.text}`, "of one"],
    [`    edgeRadius: ${size(starter.slab * 0.6, FINE).text}`, "of the long outer edges"],
    ["  pins: { material: brass }", "sizes come from the holes of kind pin"],
    [
      `  # liners: { material: G10, thickness: ${size(0.8, { mm: 0.1, in: 1 / 32 }).text} }`,
      "if wanted: under the slabs",
    ],
  ];
}

/** Surfaces, what is left on for grinding, and heats. */
export function workLines({ units }: StarterWishes, { spine }: StarterSizes): Commented[] {
  const { finish, allowances, forging } = KNIFE_DEFAULTS;
  const least = quenchEdge(spine.mm + 2 * allowances.afterHardening.value);
  const raised = least > allowances.minEdge.value;
  const others = Object.entries(allowances).filter(([key]) => !(raised && key === "minEdge"));
  return [
    [`# finish: { flats: ${finish.flats.value}, bevels: ${finish.bevels.value} }`, "default; or forged"],
    raised
      ? ["allowances:", "what is still on before it is finished"]
      : ["# allowances:", "default, unless the shop file has its own"],
    ...(raised
      ? ([
          [
            `  minEdge: ${sizeAtLeast(least, units, EDGE).text}`,
            "least edge to harden under so thick a spine",
          ],
        ] as const)
      : []),
    ...others.map(
      ([key, { value }]): Commented => [
        `${raised ? "  # " : "#   "}${key}: ${typeof value === "number" ? `${value} mm` : value}`,
        `default${ALLOWANCE_WORDS[key as keyof typeof allowances]}`,
      ],
    ),
    [
      `# forging: { heats: ${forging.heats.value}, weldingHeats: ${forging.weldingHeats.value} }`,
      "default: trips to the fire",
    ],
  ];
}

const ALLOWANCE_WORDS: Readonly<Record<keyof typeof KNIFE_DEFAULTS.allowances, string>> = {
  face: ": to grind off each face",
  outline: ": along edge and spine",
  tip: "",
  butt: "",
  forgedEdge: ": edge as hammered",
  forgedBevel: "; or full, none",
  afterHardening: ": to grind off each face then",
  minEdge: ": least edge to harden",
  tang: ": as forged; or parallel",
};

/** Least edge that does not warp or crack easily under a spine, mm. */
function quenchEdge(spine: number): number {
  const {
    quenchThinSpine,
    quenchThickSpine,
    quenchEdgeThin,
    quenchEdge: usual,
    quenchEdgeThick,
  } = HARDENING_LIMITS;
  if (spine <= quenchThinSpine.value) return quenchEdgeThin.value;
  return (spine > quenchThickSpine.value ? quenchEdgeThick : usual).value;
}
