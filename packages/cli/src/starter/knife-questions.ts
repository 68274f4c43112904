import {
  FAMILIES,
  type FamilyName,
  findMaterial,
  type MaterialKind,
  suggestMaterials,
  type TangSpec,
} from "@scantling/geometry";
import { type FileUnits, formatDensity, nearestWord } from "@scantling/geometry/units";
import { POSITIVE, readQuantity } from "../file/fields.js";
import { showText } from "../file/index.js";
import { type Figure, inBoth, massText, range } from "../report/figures.js";
import type { Question, Taken } from "./ask.js";
import { FAMILY_CHOICES, FAMILY_WORDS, USUAL_FAMILY } from "./family-words.js";
import type { StarterMaterial } from "./knife-starter.js";
import { FAMILY_STARTERS, type Range } from "./knife-types.js";
import type { Size } from "./size-text.js";

/** Which family, by its name or by what it is called. */
export function familyQuestion(): Question<FamilyName> {
  return {
    ask: "What kind of knife",
    usual: USUAL_FAMILY,
    help: FAMILY_CHOICES.map((name) => `${name}: ${FAMILIES[name].looks}.`),
    take: (typed) => {
      const begun = new Set(
        FAMILY_CHOICES.filter((name) => namesOf(name).some((word) => word.startsWith(typed.toLowerCase()))),
      );
      const whole = FAMILY_CHOICES.find((name) => name === typed.toLowerCase());
      const [only] = begun.size === 1 ? begun : [];
      const name = whole ?? only;
      if (name === undefined) return wrongWord(typed, FAMILY_CHOICES);
      return { ok: true, value: name, echo: `${FAMILY_WORDS[name]}: ${FAMILIES[name].looks}` };
    },
  };
}

/** A family by its name and by what it is called: `clip-point`, `bowie`. */
const namesOf = (name: FamilyName): string[] => [name, ...FAMILY_WORDS[name].toLowerCase().split(" ")];

/** What bare numbers are in. */
export function unitsQuestion(usual: FileUnits): Question<FileUnits> {
  const words: Readonly<Record<string, FileUnits>> = {
    mm: "mm",
    millimetres: "mm",
    millimeters: "mm",
    metric: "mm",
    in: "in",
    inch: "in",
    inches: "in",
  };
  return {
    ask: "Units: mm or in",
    usual,
    help: [
      "What numbers without a unit are in, here and in the file. With a unit any number may be in the other: 190 mm, 7 1/2 in.",
    ],
    take: (typed) => {
      const value = words[typed.toLowerCase()];
      return value === undefined ? wrongWord(typed, ["mm", "in"]) : { ok: true, value };
    },
  };
}

/** The form of the tang. */
export function tangQuestion(usual: TangSpec["form"]): Question<TangSpec["form"]> {
  const forms = ["full", "hidden", "through"] as const;
  return {
    ask: "Tang: full, hidden or through",
    usual,
    help: [
      "full: as wide as the handle, with a slab on each face.",
      "hidden: inside the handle, ending in it.",
      "through: inside the handle, right to its end.",
    ],
    take: (typed) => {
      const value = takeWord(typed.toLowerCase(), forms);
      return value === undefined ? wrongWord(typed, forms) : { ok: true, value };
    },
  };
}

/** Bare numbers this far from what is usual are most likely in other units than meant. */
const FAR = 3;

/** A size with what is usual for it. */
export interface AskedSize {
  readonly ask: string;
  readonly help: string;
  readonly usual: Size;
  readonly range: Range;
  readonly units: FileUnits;
  /** How it is told. */
  readonly figure: Figure;
}

/** A size; a bare number that is far from what is usual is asked for with its unit. */
export function sizeQuestion({
  ask,
  help,
  usual,
  range: [least, most],
  units,
  figure,
}: AskedSize): Question<Size> {
  const between = range(figure, [least, most], units);
  return {
    ask: `${ask}, ${units}`,
    usual: usual.text,
    help: [
      help,
      `Usual for its type: ${between}. Common practice, no source.`,
      "Write 190, 190 mm, 7 1/2 in, 0.105 in or 4.6 ± 0.2 mm.",
    ],
    take: (typed) => {
      const text = typed.replace(/\s+/gu, " ");
      const reading = read(text, "length", units);
      if (!reading.ok) return reading;
      const mm = reading.value;
      const isBare = !/[a-z"'″′]/iu.test(text);
      if (isBare && (mm < least / FAR || mm > most * FAR)) {
        return {
          ok: false,
          why: `${inBoth(figure, mm, units)} is far from what is usual, ${between}. If it is meant, type it with its unit: ${text} ${units}.`,
        };
      }
      const unusual = mm < least - SAME || mm > most + SAME ? `; usual is ${between}, kept as typed` : "";
      return { ok: true, value: { mm, text }, echo: `${inBoth(figure, mm, units)}${unusual}` };
    },
  };
}

/** Sizes within this are one, mm: half of 1/64 in. */
const SAME = 0.2;

/** A material of some kinds, or another with its density. */
export function materialQuestion(
  ask: string,
  usual: StarterMaterial,
  kinds: readonly MaterialKind[],
  units: FileUnits,
): Question<StarterMaterial> {
  return {
    ask,
    usual: usual.name,
    help: [
      `A name of the table, such as ${EXAMPLES[kinds[0] ?? "steel"]}; or another with its density behind a comma: ${kinds[0] === "steel" ? "My alloy" : "My wood"}, ${DENSITIES[kinds[0] ?? "steel"]}.`,
    ],
    take: (typed) => takeMaterial(typed, kinds, units),
  };
}

const EXAMPLES: Readonly<Record<MaterialKind, string>> = {
  steel: "1084, 80CrV2, 5160, 52100, O1, 26C3",
  wood: "European ash, black walnut, G10, canvas phenolic",
  composite: "G10",
  other: "bone",
  metal: "brass",
};

/** What one of a kind may well weigh: an example, and no more. */
const DENSITIES: Readonly<Record<MaterialKind, string>> = {
  steel: "7.8 g/cm3",
  wood: "0.7 g/cm3",
  composite: "1.8 g/cm3",
  other: "1.9 g/cm3",
  metal: "8.5 g/cm3",
};

function takeMaterial(
  typed: string,
  kinds: readonly MaterialKind[],
  units: FileUnits,
): Taken<StarterMaterial> {
  const both = (density: number): string =>
    `${formatDensity(density, units)} (${formatDensity(density, units === "mm" ? "in" : "mm")})`;
  const [, name = "", density] = /^(.*?)(?:,\s*(.+))?$/u.exec(typed.trim()) ?? [];
  if (density !== undefined) {
    const reading = read(density, "density", units);
    return reading.ok ? { ok: true, value: { name, density }, echo: both(reading.value) } : reading;
  }
  const known = findMaterial(name);
  if (known !== undefined && kinds.includes(known.kind)) {
    return { ok: true, value: { name: known.name }, echo: `${known.name}, ${both(known.density)}` };
  }
  const near = kinds.flatMap((kind) => suggestMaterials(name, 2, kind));
  const what =
    known === undefined ? "is not in the table" : known.kind === "steel" ? "is a steel" : "is no steel";
  const meant = near.length === 0 ? "" : ` Did you mean ${near.slice(0, 3).join(" or ")}?`;
  return {
    ok: false,
    why: `"${showText(name)}" ${what}.${meant} Or type its density behind a comma: ${showText(name)}, ${DENSITIES[kinds[0] ?? "steel"]}.`,
  };
}

/** The answer to how heavy it may be where that is open. */
export const NO_LIMIT = "none";

/** How heavy it may be. */
export function massQuestion(family: FamilyName, units: FileUnits): Question<string> {
  const { mass } = FAMILY_STARTERS[family].type;
  return {
    ask: `Mass must be below, ${units === "mm" ? "g" : "oz"}`,
    usual: NO_LIMIT,
    help: [
      `What the customer asked for; check then tells whether it is met. Usual for its type: ${range(massText, mass, units)}.`,
      "Write 240 g, 8 1/2 oz, 1 lb 2 oz, or none.",
    ],
    take: (typed) => {
      if (/^(?:none|no|-)$/iu.test(typed)) return { ok: true, value: NO_LIMIT };
      const text = typed.replace(/\s+/gu, " ");
      const reading = read(text, "mass", units);
      return reading.ok ? { ok: true, value: text, echo: inBoth(massText, reading.value, units) } : reading;
    },
  };
}

/** A quantity above nothing, read as in files. */
function read(text: string, kind: "length" | "mass" | "density", units: FileUnits): Taken<number> {
  const wrong: string[] = [];
  const reading = readQuantity(text, kind, units, { ...POSITIVE, about: "" }, (_, message) =>
    wrong.push(message),
  );
  return reading === undefined
    ? { ok: false, why: `${wrong.join("; ")}.` }
    : { ok: true, value: reading.value };
}

/** A word that is typed whole, or so far that it can be no other. */
function takeWord<T extends string>(typed: string, words: readonly T[]): T | undefined {
  const whole = words.find((word) => word === typed);
  if (whole !== undefined) return whole;
  const begun = words.filter((word) => typed !== "" && word.startsWith(typed));
  return begun.length === 1 ? begun[0] : undefined;
}

function wrongWord(typed: string, words: readonly string[]): { readonly ok: false; readonly why: string } {
  const near = nearestWord(typed, words);
  const advice = near === undefined ? `write ${words.join(", ")}` : `did you mean ${near}?`;
  return {
    ok: false,
    why: `"${showText(typed)}" is not known here; ${advice}${near === undefined ? "." : ""}`,
  };
}
