import { penOf, type Role } from "../role.js";
import { type Group, lengthValue } from "./groups.js";

/** The layer that a role stands on: plain words, all capitals, as the format has it. */
export const layerOf = (role: Role): string => role.toUpperCase();

interface LineType {
  readonly name: string;
  readonly words: string;
  /** Drawn and left out in turn, mm. */
  readonly dash: readonly number[];
}

const CONTINUOUS: LineType = { name: "CONTINUOUS", words: "Continuous line", dash: [] };
/** Names that readers know of old, with our own lengths. */
const DASHED: readonly LineType[] = [
  { name: "HIDDEN", words: "Dashed", dash: penOf("hidden").dash },
  { name: "CENTRE", words: "Long dash, dot", dash: penOf("centre").dash },
  { name: "PHANTOM", words: "Long dash, two dots", dash: penOf("adjacent").dash },
];

function lineTypeOf(role: Role): LineType {
  const pattern = penOf(role).dash.join();
  return DASHED.find(({ dash }) => dash.join() === pattern) ?? CONTINUOUS;
}

/** Black on white, white on black: what is cut or folded is told by the layer's name. */
const COLOUR = 7;

/** The tables of line types, layers and lettering styles; of layers those that the roles stand on. */
export const tableGroups = (roles: readonly Role[]): Group[] => [
  [0, "SECTION"],
  [2, "TABLES"],
  ...table("LTYPE", [CONTINUOUS, ...DASHED].map(lineTypeGroups)),
  ...table("LAYER", [
    layerGroups("0", CONTINUOUS),
    ...roles.map((role) => layerGroups(layerOf(role), lineTypeOf(role))),
  ]),
  ...table("STYLE", [STYLE]),
  [0, "ENDSEC"],
];

const table = (name: string, entries: readonly (readonly Group[])[]): Group[] => [
  [0, "TABLE"],
  [2, name],
  [70, entries.length],
  ...entries.flat(),
  [0, "ENDTAB"],
];

function lineTypeGroups({ name, words, dash }: LineType): Group[] {
  return [
    [0, "LTYPE"],
    [2, name],
    [70, 0],
    [3, words],
    [72, 65],
    [73, dash.length],
    [40, lengthValue(dash.reduce((sum, part) => sum + part, 0))],
    // Below nothing: the pen is up.
    ...dash.map((part, index): Group => [49, lengthValue(index % 2 === 0 ? part : -part)]),
  ];
}

const layerGroups = (name: string, lineType: LineType): Group[] => [
  [0, "LAYER"],
  [2, name],
  [70, 0],
  [62, COLOUR],
  [6, lineType.name],
];

/** The one style of lettering: upright, no height of its own, the plain font that every reader brings along. */
const STYLE: readonly Group[] = [
  [0, "STYLE"],
  [2, "STANDARD"],
  [70, 0],
  [40, lengthValue(0)],
  [41, lengthValue(1)],
  [50, lengthValue(0)],
  [71, 0],
  [42, lengthValue(2.5)],
  [3, "txt"],
  [4, ""],
];
