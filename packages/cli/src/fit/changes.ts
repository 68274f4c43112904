import {
  type Changeable,
  changeables,
  type FitDimension,
  type FitKind,
  type Knife,
  type KnifeSpec,
  type StationPlace,
  usualChanges,
  usualRange,
} from "@scantling/geometry";
import {
  describeQuantityError,
  editDistance,
  type FileUnits,
  MM_PER_INCH,
  nearestWord,
  parseQuantity,
} from "@scantling/geometry/units";
import { type KnifeText, type NewPart, showText, stepsOf } from "../file/index.js";
import { placeOn } from "../stations.js";
import { splitRange, wrong } from "./targets.js";

/** What may be changed on a knife. */
export interface FitChanges {
  /** The description that they are changes of: with an added weight of no mass, where one is asked for. */
  readonly spec: KnifeSpec;
  readonly dimensions: readonly FitDimension[];
  /** The weight that may be added. */
  readonly part?: Omit<NewPart, "mass">;
  /** Whether none was named, so that the usual ones stand. */
  readonly isUsual: boolean;
  /** What each size is called, by its path. */
  readonly names: ReadonlyMap<string, string>;
}

/** How a place is written in the name of a size: `60%`, `120mm`, `4.75in`. */
export function placeName(units: FileUnits): (at: StationPlace) => string {
  const tidy = (value: number): string => String(Number(value.toPrecision(6)));
  return (at) => {
    if (at.kind === "fraction") return `${tidy(at.share * 100)}%`;
    if (at.kind !== "distance") return at.kind;
    return units === "in" ? `${tidy(at.mm / MM_PER_INCH)}in` : `${tidy(at.mm)}mm`;
  };
}

/**
 * What `--change` names, or what is usual where it names nothing.
 *
 * @param given - each `NAME` or `NAME=LOW..HIGH`.
 * @throws {CommandFailure} exit code 2 with a name that is none, or a range that cannot be.
 */
export function changesOf(
  knife: Knife,
  given: readonly string[] | undefined,
  text: KnifeText,
  units: FileUnits,
): FitChanges {
  const all = changeables(knife, placeName(units));
  const { spec } = knife;
  const names = new Map(
    all.flatMap(({ name, sizes }) =>
      sizes.length === 1 && sizes[0] !== undefined ? [[sizes[0].path, name]] : [],
    ),
  );
  if (given === undefined) {
    const usual = usualChanges(all, knife).map((each) => usualDimension(each, knife, text, units));
    if (usual.length === 0)
      throw wrong("nothing-to-change", "nothing of this knife is changed unless it is named", namesLine(all));
    return { spec, dimensions: usual, isUsual: true, names };
  }
  const named = given.map((each) => {
    const at = each.indexOf("=");
    return {
      name: (at < 0 ? each : each.slice(0, at)).trim(),
      range: at < 0 ? undefined : each.slice(at + 1).trim(),
    };
  });
  const added = named.filter(({ name }) => ADDED.test(name));
  if (added.length > 1) throw wrong("named-twice", "only one weight can be added", "Name one place.");
  const dimensions = named
    .filter(({ name }) => !ADDED.test(name))
    .map(({ name, range }) => {
      const found = findChangeable(name, all, units);
      return range === undefined
        ? usualDimension(found, knife, text, units)
        : dimensionOf(found, readRange(found, range, units), text, units);
    });
  refuseTwice(dimensions);
  const [weight] = added;
  if (weight === undefined) return { spec, dimensions, isUsual: false, names };
  const { part, dimension } = addedWeight(weight, knife, text, units);
  const { handle } = spec;
  const parts = [...(handle?.parts ?? []), { ...part, mass: 0 }];
  return {
    spec: { ...spec, handle: { ...handle, parts } },
    dimensions: [...dimensions, dimension],
    part,
    isUsual: false,
    names: new Map([...names, ...dimension.sizes.map(({ path }) => [path, dimension.name] as const)]),
  };
}

const ADDED = /^added@/iu;
const ADDED_EXAMPLE = "--change added@-100mm=0..40g";

function addedWeight(
  { name, range }: { readonly name: string; readonly range: string | undefined },
  knife: Knife,
  text: KnifeText,
  units: FileUnits,
): { readonly part: Omit<NewPart, "mass">; readonly dimension: FitDimension } {
  const typed = `--change ${showText(name)}`;
  const x = placeOn(knife, name.replace(ADDED, ""), units, `Write it like ${ADDED_EXAMPLE}.`, typed);
  if (range === undefined)
    throw wrong(
      "range-missing",
      `${showText(name)} needs a range, for nothing is drawn there`,
      `Write it like ${ADDED_EXAMPLE}.`,
    );
  const [low, high] = knife.body("finished").footprint.spansAt(x)[0] ?? [0, 0];
  const path = `handle.parts[${knife.spec.handle?.parts?.length ?? 0}].mass`;
  const [step = 1] = stepsOf(undefined, "length", x, units);
  const place = placeName(units)({ kind: "distance", mm: x });
  const changeable: Changeable = { name: `added@${place}`, kind: "mass", sizes: [{ path, drawn: 0 }] };
  return {
    part: { name: "balance weight", at: { x, y: Math.round((low + high) / 2 / step) * step } },
    dimension: dimensionOf(changeable, readRange(changeable, range, units), text, units),
  };
}

function dimensionOf(
  { name, kind, sizes }: Changeable,
  { least, most }: { readonly least: number; readonly most: number },
  text: KnifeText,
  units: FileUnits,
): FitDimension {
  const plain = units === "in" ? "in" : "mm";
  return {
    name,
    kind,
    least,
    most,
    sizes: sizes.map((size) => ({
      ...size,
      steps: stepsOf(text.writtenAt(size.path, kind), kind, size.drawn, plain),
    })),
  };
}

/** With the range that is usual; of one size to whole steps, for nobody has written its ends down. */
export function usualDimension(
  changeable: Changeable,
  knife: Knife,
  text: KnifeText,
  units: FileUnits,
): FitDimension {
  const range = usualRange(changeable, knife);
  const dimension = dimensionOf(changeable, range, text, units);
  const step = dimension.sizes[0]?.steps[0];
  if (dimension.sizes.length > 1 || step === undefined) return dimension;
  const [least, most] = [Math.ceil(range.least / step) * step, Math.floor(range.most / step) * step];
  return least < most ? { ...dimension, least, most } : dimension;
}

/** Names as they are compared: blanks, case and a leading `blade.` do not matter. */
const plainName = (name: string): string =>
  name
    .toLowerCase()
    .replace(/\s+/gu, "")
    .replace(/^blade\./u, "");

function findChangeable(name: string, all: readonly Changeable[], units: FileUnits): Changeable {
  const plain = plainName(name);
  // A distance without a unit is in that of the file.
  const found = all.find((each) => [plain, `${plain}${units}`].includes(each.name.toLowerCase()));
  if (found !== undefined) return found;
  const names = all.map((each) => each.name);
  const meant = OTHER_NAMES[plain]?.find((each) => names.includes(each));
  const alike = names.filter((each) => lastKey(each) === lastKey(plain));
  const near = meant ?? nearestOf(plain, alike) ?? nearestWord(name.replace(/^blade\./iu, ""), names);
  throw wrong(
    "unknown-size",
    `--change ${showText(name)}: this knife has no such size${near === undefined ? "" : `; did you mean ${near}?`}`,
    namesLine(all),
  );
}

/** Sizes as the asks of an order call them, with the keys that they have in a knife file, the first that is there. */
const OTHER_NAMES: Readonly<Record<string, readonly string[]>> = {
  handlelength: ["handle.block.length", "tang.length"],
};

/** The last key of a name: `edgeThickness` may be meant for `bevel.edgeThickness`. */
const lastKey = (name: string): string => /[^.]*$/u.exec(name.toLowerCase().replace(/@.*$/u, ""))?.[0] ?? "";

function nearestOf(name: string, names: readonly string[]): string | undefined {
  const far = (each: string): number => editDistance(name, each.toLowerCase());
  return [...names].sort((a, b) => far(a) - far(b))[0];
}

const namesLine = (all: readonly Changeable[]): string =>
  `What can be changed: ${all.map(({ name }) => name).join(", ")}, added@PLACE. scantling fit FILE --change help says more.`;

const PLAIN_EXAMPLES = { angle: "14..18deg", density: "0.6..1.1 g/cm3", share: "5%..12%" } as const;

const EXAMPLES: Readonly<Record<FileUnits, Readonly<Record<FitKind, string>>>> = {
  mm: { ...PLAIN_EXAMPLES, length: "4..5.5mm or 90%..110%", mass: "40..60g or 90%..120%" },
  in: { ...PLAIN_EXAMPLES, length: "5/32..7/32in or 90%..110%", mass: "1.5..2oz or 90%..120%" },
};

function readRange(
  { name, kind, sizes }: Changeable,
  text: string,
  units: FileUnits,
): { readonly least: number; readonly most: number } {
  const drawn = sizes[0]?.drawn ?? 0;
  const several = sizes.length > 1;
  const example = several ? "90%..110%" : EXAMPLES[units][kind];
  const refuse = (code: string, why: string): Error =>
    wrong(code, `--change ${name}=${showText(text)} ${why}`, `Write it like --change ${name}=${example}.`);
  const ends = splitRange(text);
  if (ends === undefined) throw refuse("no-range", "is no range");
  const [least, most] = ends.map((end) => {
    const isShare = kind !== "share" && end.includes("%");
    if (several && !isShare)
      throw refuse(
        "share-needed",
        "changes several stations in proportion, so its range is in per cent of what is drawn",
      );
    const parsed = parseQuantity(end, isShare ? "share" : kind, units);
    if (!parsed.ok) throw refuse("unreadable", `cannot be read: ${describeQuantityError(parsed.error)}`);
    const { value } = parsed.quantity;
    return isShare && !several ? value * drawn : value;
  });
  if (least === undefined || most === undefined) throw refuse("no-range", "is no range");
  if (least > most) throw refuse("limits-swapped", "has the greater value first");
  if (least === most) throw refuse("range-empty", "leaves nothing to change");
  if (least < 0 || (least === 0 && drawn > 0))
    throw refuse("not-positive", "has to begin at more than nothing");
  return { least, most };
}

/** Two dimensions that set the same size would not know of each other. */
function refuseTwice(dimensions: readonly FitDimension[]): void {
  const seen = new Map<string, string>();
  for (const { name, sizes } of dimensions) {
    for (const { path } of sizes) {
      const other = seen.get(path);
      if (other !== undefined)
        throw wrong(
          "named-twice",
          other === name
            ? `--change ${name} is named twice`
            : `--change ${other} and ${name} change the same size`,
          "Name one of them.",
        );
      seen.set(path, name);
    }
  }
}
