import { FAMILIES, type FamilyName } from "@scantling/geometry";
import { type FileUnits, formatMass, GRAMS_PER_OUNCE } from "@scantling/geometry/units";
import { wrap } from "../report/layout.js";
import { type Commented, yamlText } from "./commented-lines.js";
import { FAMILY_WORDS } from "./family-words.js";
import type { StarterMaterial, StarterWishes } from "./knife-starter.js";
import { FAMILY_STARTERS, type Range } from "./knife-types.js";
import { COARSE, EDGE, exactSize, type Steps, sizeIn, THICKNESS } from "./size-text.js";
import type { StarterSizes } from "./starter-sizes.js";

/** Thickness along the blade as shares of that at the heel. Common practice, no source. */
const AT_MIDDLE = 0.75;
const AT_TIP = 0.45;
/** By which a length that may be asked for is longer than the starter. */
const ROOM = 1.1;

/** What the file is, and how it is read. */
export function headingLines({ family }: StarterWishes): string[] {
  const words = [
    `${FAMILY_WORDS[family]}: ${FAMILIES[family].looks}.`,
    "",
    "The sizes are common practice, for a start: put in your own. Bare numbers are in the units below; any value may say its own: 190 mm, 7 1/2 in, 480 g, 16 deg, 4.6 ± 0.2 mm.",
    "",
    'Lines behind a # count for nothing. Those with "default" behind them show what holds without them, those with "if wanted" what more there is.',
  ];
  return words.flatMap((text) => (text === "" ? ["#"] : wrap(text, 78).map((line) => `# ${line}`)));
}

/** Version, order, units and steel. */
export function orderLines({ family, units, code, title, steel, massBelow }: StarterWishes): Commented[] {
  const { mass, balance } = FAMILY_STARTERS[family].type;
  const usual = `usual: ${mass.map((grams) => roundMass(grams, units)).join(" to ")}`;
  const places = balance.map((mm) => sizeIn(mm, units, USUAL_BALANCE).text);
  const { edgeLength, ricasso, tangLength } = FAMILY_STARTERS[family];
  const longest = sizeIn((edgeLength + ricasso + tangLength) * ROOM, units, ASKED_LENGTH).text;
  const others = [
    [`balance: { between: [${places.join(", ")}] }`, ": ahead of the heel"],
    [`overallLength: { below: ${longest} }`, ""],
  ] as const;
  const asks: Commented[] =
    massBelow === undefined
      ? [
          ["  # asks:", "if wanted: what was asked; check checks it"],
          [`  #   mass: { below: ${roundMass(mass[1], units)} }`, `if wanted; ${usual}`],
          ...others.map(([line, about]): Commented => [`  #   ${line}`, `if wanted${about}`]),
        ]
      : [
          ["  asks:", "checked one by one"],
          [`    mass: { below: ${massBelow} }`, usual],
          ...others.map(([line, about]): Commented => [`    # ${line}`, `if wanted${about}`]),
        ];
  return [
    ["scantling: 1"],
    ["order:"],
    [`  code: ${yamlText(code)}`, "printed on every sheet"],
    [`  title: ${yamlText(title)}`],
    ...asks,
    [`units: ${units}`, "what bare numbers are in"],
    [`steel: ${materialText(steel)}`, "or { name: …, density: 7.85 g/cm3 }"],
  ];
}

/** The blade. */
export function bladeLines({ family, units }: StarterWishes, sizes: StarterSizes): Commented[] {
  const { type, edge, angle, ricasso } = FAMILY_STARTERS[family];
  const { edgeLength, heelHeight, spine } = sizes;
  const usual = (range: Range, steps: Steps): string => usualSize(range, units, steps);
  return [
    ["blade:"],
    ["  outline:"],
    [`    family: ${family}`, "or runs, or a drawing"],
    [`    edgeLength: ${edgeLength.text}`, `heel to tip; ${usual(type.edgeLength, USUAL_LENGTH)}`],
    [`    heelHeight: ${heelHeight.text}`, `spine above the heel; ${usual(type.heelHeight, COARSE)}`],
    ...landmarkLines(family, units, edgeLength.mm, heelHeight.mm),
    [`  ricasso: ${sizeIn(ricasso, units, { mm: 1, in: 1 / 16 }).text}`, "unground, between heel and handle"],
    ["  thickness:", "at the spine; as many places as you like"],
    [`    - { at: heel, is: ${spine.text} }`, usual(type.spine, USUAL_SPINE)],
    [`    - { at: 60 %, is: ${sizeIn(spine.mm * AT_MIDDLE, units, THICKNESS).text} }`, "of the edge length"],
    [`    - { at: tip, is: ${sizeIn(spine.mm * AT_TIP, units, THICKNESS).text} }`],
    ["  # between: straight", "default; or smooth"],
    ["  # flankTaper: 0", "default: thinner by this at the bevel line"],
    ["  bevel:"],
    ["    form: flat", "or convex; or hollow, with wheelRadius"],
    ["    height: full", "to the spine; or a length up from the edge"],
    [`    edgeThickness: ${sizeIn(edge, units, EDGE).text}`, `before sharpening; ${usual(type.edge, EDGE)}`],
    [`  edgeAngle: ${angle} deg`, `per side; usual: ${type.angle.join(" to ")}`],
    [
      `  # microbevel: { height: ${sizeIn(edge / 2, units, EDGE).text}, angle: ${angle + 6} deg }`,
      "if wanted: at the edge",
    ],
    [`  # easedSpine: ${sizeIn(0.4, units, EDGE).text}`, "if wanted: radius of the spine's edges"],
  ];
}

/** Landmarks that the family fills in. */
function landmarkLines(
  family: FamilyName,
  units: FileUnits,
  edgeLength: number,
  heelHeight: number,
): Commented[] {
  const { front, tipHeight, straightEdge, spineBreak } = FAMILIES[family];
  const rises = front === "square" ? tipHeight < 1 : tipHeight > 0;
  const size = (mm: number): string => exactSize(mm, units).text;
  return [
    ...(rises
      ? ([
          [
            `    # straightEdge: ${size(straightEdge * edgeLength)}`,
            "default: before the edge begins to rise",
          ],
        ] as const)
      : []),
    [
      `    # tipHeight: ${size(tipHeight * heelHeight)}`,
      front === "square" ? "default: height of the front" : "default: the point above the heel",
    ],
    ...(front === "pointed" && tipHeight !== 1
      ? ([
          [`    # spineBreak: ${size(spineBreak * edgeLength)}`, "default: where the spine leaves its level"],
        ] as const)
      : []),
  ];
}

/** A material with its density where it has one of its own. */
export const materialText = ({ name, density }: StarterMaterial): string =>
  density === undefined ? yamlText(name) : `{ name: ${yamlText(name)}, density: ${density} }`;

/** `usual: 180 to 270`. */
const usualSize = ([least, most]: Range, units: FileUnits, steps: Steps): string =>
  `usual: ${sizeIn(least, units, steps).text} to ${sizeIn(most, units, steps).text}`;

/** To 10 g, or to whole ounces, so that it can be asked for. */
const roundMass = (grams: number, units: FileUnits): string => {
  const step = units === "mm" ? 10 : GRAMS_PER_OUNCE;
  return formatMass(Math.round(grams / step) * step, units, units === "mm" ? 1 : 0.1);
};

/** To what ranges are told: what is usual is not known to a fraction. */
const USUAL_LENGTH: Steps = { mm: 5, in: 1 / 4 };
const USUAL_SPINE: Steps = { mm: 0.1, in: 1 / 32 };
const USUAL_BALANCE: Steps = { mm: 5, in: 1 / 4 };
const ASKED_LENGTH: Steps = { mm: 10, in: 1 / 2 };
