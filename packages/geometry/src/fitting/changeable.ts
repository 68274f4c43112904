import type { Knife } from "../blade/knife.js";
import type { FaceSpec, HoleSpec, LawSpec, StationPlace } from "../blade/spec.js";
import { materialDensity } from "../materials/material-density.js";
import { letterName } from "../words/letter-name.js";
import type { FitKind, FitSize } from "./dimension.js";

/** A size of a description that can be changed, or several in proportion. */
export interface Changeable {
  /** The key of the knife file, `blade.` left out: `tang.buttThickness`, `thickness@60%`, `tang.holes.diameter@C`. */
  readonly name: string;
  readonly kind: FitKind;
  readonly sizes: readonly Omit<FitSize, "steps">[];
}

/** How a station's place is written behind the `@` of a name. */
export type PlaceName = (at: StationPlace) => string;

/**
 * Everything on a knife that can be changed by one number, by its name. A law of several stations is there whole, for all its
 * stations in proportion, and station by station. What would move the heel, the handle or the order of the work along the knife is not among them.
 *
 * @param placeName - how a place is written behind the `@`.
 *
 * @example
 * changeables(knife, ({ kind }) => kind).map(({ name }) => name).slice(0, 5);
 * // ["outline.edgeLength", "outline.heelHeight", "thickness", "thickness@heel", "thickness@tip"]
 */
export function changeables(knife: Knife, placeName: PlaceName): readonly Changeable[] {
  const list = new ChangeableList(placeName);
  addBlade(list, knife);
  addTang(list, knife);
  addHandle(list, knife);
  return list.found;
}

class ChangeableList {
  readonly found: Changeable[] = [];
  private readonly placeName: PlaceName;

  constructor(placeName: PlaceName) {
    this.placeName = placeName;
  }

  /** One number, where it is given and not nothing. */
  number(path: string, drawn: number | undefined, kind: FitKind = "length", place = ""): void {
    if (drawn === undefined || drawn === 0) return;
    this.found.push({ name: `${nameOf(path)}${place}`, kind, sizes: [{ path, drawn }] });
  }

  /** A length, or lengths at stations: together and each by itself. */
  law(path: string, law: LawSpec | undefined, kind: FitKind = "length"): void {
    if (law === undefined) return;
    if (typeof law === "number") {
      this.number(path, law, kind);
      return;
    }
    const sizes = law.map(({ is }, i) => ({ path: `${path}[${i}].is`, drawn: is }));
    if (sizes.length > 1 && sizes.every(({ drawn }) => drawn > 0))
      this.found.push({ name: nameOf(path), kind, sizes });
    for (const [i, { at, is }] of law.entries())
      this.number(`${path}[${i}].is`, is, kind, `@${this.placeName(at)}`);
  }

  holes(path: string, holes: readonly HoleSpec[] | undefined, before: number): void {
    for (const [i, { diameter }] of (holes ?? []).entries())
      this.number(`${path}[${i}].diameter`, diameter, "length", `@${letterName(before + i)}`);
  }
}

/** A path without what is told by the place behind the `@`. */
const nameOf = (path: string): string =>
  path
    .replace(/^blade\./u, "")
    .replace(/\[\d+\](?:\.is$)?/gu, "")
    .replace(/\.crown\.(?:mm|share)$/u, ".crown");

function addBlade(list: ChangeableList, { spec }: Knife): void {
  const { blade } = spec;
  const { outline, bevel, edgeAngle, microbevel, swedge } = blade;
  if ("family" in outline)
    for (const key of ["edgeLength", "heelHeight", "straightEdge", "tipHeight", "spineBreak"] as const)
      list.number(`blade.outline.${key}`, outline[key]);
  list.law("blade.thickness", blade.thickness);
  list.law("blade.flankTaper", blade.flankTaper);
  list.law("blade.bevel.edgeThickness", bevel.edgeThickness);
  addFace(list, "blade.bevel", bevel);
  for (const side of ["left", "right"] as const) {
    const own = bevel[side];
    if (own !== undefined) addFace(list, `blade.bevel.${side}`, own);
  }
  if (typeof edgeAngle === "number") list.number("blade.edgeAngle", edgeAngle, "angle");
  else
    for (const side of ["right", "left"] as const) {
      const angle = edgeAngle[side];
      if (angle !== "flat") list.number(`blade.edgeAngle.${side}`, angle, "angle");
    }
  list.number("blade.microbevel.height", microbevel?.height);
  list.number("blade.microbevel.angle", microbevel?.angle, "angle");
  list.number("blade.swedge.angle", swedge?.angle, "angle");
  list.law("blade.swedge.thickness", swedge?.thickness);
  for (const [i, { radius, depth }] of (blade.fullers ?? []).entries()) {
    list.number(`blade.fullers[${i}].radius`, radius, "length", `@${i + 1}`);
    list.number(`blade.fullers[${i}].depth`, depth, "length", `@${i + 1}`);
  }
  list.number("blade.easedSpine", blade.easedSpine);
  list.holes("blade.holes", blade.holes, 0);
}

function addFace(
  list: ChangeableList,
  path: string,
  { height, crown, wheelRadius }: Partial<FaceSpec>,
): void {
  if (height !== "full") list.law(`${path}.height`, height);
  if (crown !== undefined && "mm" in crown) list.law(`${path}.crown.mm`, crown.mm);
  if (crown !== undefined && "share" in crown) list.law(`${path}.crown.share`, crown.share, "share");
  list.number(`${path}.wheelRadius`, wheelRadius);
}

function addTang(list: ChangeableList, { spec, laws }: Knife): void {
  const { tang, blade } = spec;
  if ("family" in blade.outline) list.number("tang.length", tang.length);
  for (const key of ["front", "middle", "butt"] as const)
    list.number(`tang.heights.${key}`, tang.heights?.[key]);
  // A tang that is drawn parallel can be given a taper.
  if (tang.thickness === undefined)
    list.number("tang.buttThickness", tang.buttThickness ?? laws.spine.valueAt(0));
  list.law("tang.thickness", tang.thickness);
  list.holes("tang.holes", tang.holes, spec.blade.holes?.length ?? 0);
}

function addHandle(list: ChangeableList, { spec }: Knife): void {
  const { slabs, liners, block, bolsters = [], guard, pommel, parts = [] } = spec.handle ?? {};
  const density = (
    path: string,
    part: { readonly material: Parameters<typeof materialDensity>[0] } | undefined,
  ) => {
    if (part !== undefined)
      list.number(`${path}.material.density`, materialDensity(part.material), "density");
  };
  list.law("handle.slabs.thickness", slabs?.thickness);
  list.number("handle.slabs.edgeRadius", slabs?.edgeRadius);
  density("handle.slabs", slabs);
  list.number("handle.liners.thickness", liners?.thickness);
  density("handle.liners", liners);
  list.number("handle.block.length", block?.length);
  list.law("handle.block.height", block?.height);
  list.law("handle.block.width", block?.width);
  list.number("handle.block.cornerRadius", block?.cornerRadius);
  density("handle.block", block);
  const fittings = [
    ...bolsters.map((bolster, i) => [`handle.bolsters[${i}]`, bolster, `@${i + 1}`] as const),
    ["handle.guard", guard, ""] as const,
    ["handle.pommel", pommel, ""] as const,
  ];
  for (const [path, fitting, place] of fittings) {
    for (const key of ["length", "height", "width"] as const)
      list.number(`${path}.${key}`, fitting?.[key], "length", place);
  }
  for (const [i, { mass }] of parts.entries())
    list.number(`handle.parts[${i}].mass`, mass, "mass", `@${i + 1}`);
}
