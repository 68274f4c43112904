import { materialDensity } from "../materials/material-density.js";
import { Law } from "../numeric/law.js";
import { pathBounds } from "../plane/bounds.js";
import type { Path } from "../plane/path.js";
import { Footprint } from "./footprint.js";
import type { Block } from "./handle-block.js";
import { holeThroughHandle } from "./handle-hole.js";
import { handleLaw } from "./handle-law.js";
import { handleLayout, type PlacedBlock } from "./handle-layout.js";
import { blockMoments, blockOver, type Steel, steelInBlock } from "./handle-moments.js";
import { addMoments, type Moments, noMoments } from "./moments.js";
import type { Outline } from "./outline.js";
import { CoveredTang, SlabbedTang, type Stretch } from "./rounded-slab.js";
import type { SlabLaw } from "./slab-law.js";
import type { HandleSpec, HoleSpec, MaterialSpec } from "./spec.js";

/** A part of the handle as it is made: volume integrals, the material's name and its density, g/mm³. */
export interface HandlePart {
  readonly name: string;
  /** Its place in the knife's description, such as `handle.slabs`. */
  readonly path: string;
  readonly material: string;
  /** Undefined where the table does not know the name and the file gives none. */
  readonly density: number | undefined;
  /** Measured when they are first asked for. */
  readonly moments: Moments;
}

/**
 * The parts of a handle that are described by their sizes: liners, slabs, handle, pins, bolsters, guard, pommel, as far as
 * there are any. No two of them overlap, and none of them the steel.
 *
 * - Slabs and liners lie on a full tang along its outline, the slabs' long outer edges rounded by a quarter circle. Where
 *   a bolster, a guard or a pommel stands, they leave its place.
 * - The handle of a hidden tang and the blocks are less the steel inside them, which fills its mortise. A hole in the tang
 *   stays empty there, unless a pin fills it.
 * - Pin, hanging and thong holes behind the handle front go through all of these; lightening holes stay covered.
 * - Pins fill their holes to the outside. The gap between a pin and a larger hole in the tang is left empty: glue is not
 *   weighed.
 *
 * @param tang - thickness of the finished steel along x.
 * @param holes - of blade and tang.
 *
 * @example
 * handleParts(spec.handle, outline, knife.body("finished").slab, knife.holes).map(({ name }) => name); // ["slabs"]
 */
export function handleParts(
  handle: HandleSpec | undefined,
  outline: Outline,
  tang: SlabLaw,
  holes: readonly HoleSpec[],
  measured?: TangLayers,
): HandlePart[] {
  if (handle === undefined) return [];
  const { handle: grip, fittings, footprint } = handleLayout(handle, outline);
  const steel: Steel = { footprint, slab: tang };
  const blocks = [...(grip === undefined ? [] : [grip]), ...fittings];
  const layers = measured ?? layersOnTang(handle, outline, tang, fittings);
  const reach = Math.max(outline.handleFront, ...fittings.map(({ block }) => block.front));
  const through = holes
    .filter((hole) => hole.kind !== "lightening" && hole.at.x < reach)
    .map((hole) => ({ kind: hole.kind, path: holeThroughHandle(hole) }));
  const paths = through.map(({ path }) => path);

  const parts: HandlePart[] = [];
  const add = (name: string, path: string, { material }: Made, measure: () => Moments): void => {
    let known: Moments | undefined;
    parts.push({
      name,
      path,
      material: material.name,
      density: materialDensity(material),
      get moments() {
        known ??= measure();
        return known;
      },
    });
  };
  const { slabs, liners, pins } = handle;
  if (liners !== undefined)
    add("liners", "handle.liners", liners, () => between(layers.lined, layers.bare, paths));
  if (slabs !== undefined)
    add("slabs", "handle.slabs", slabs, () => between(layers.whole, layers.lined, paths));
  const fitting = (placed: PlacedBlock): void => {
    add(placed.name, placed.path, placed, () => withoutHoles(placed.block, steel, paths));
  };
  if (grip !== undefined) fitting(grip);
  const rods = through.filter(({ kind }) => kind === "pin");
  if (pins !== undefined && rods.length > 0) {
    const rod = (path: Path): Moments =>
      blocks.reduce(
        (sum, { block }) => addMoments(sum, aroundSteel(block, steel, path)),
        layers.whole.over(path),
      );
    add("pins", "handle.pins", pins, () => sumOf(rods.map(({ path }) => rod(path))));
  }
  fittings.forEach(fitting);
  return parts;
}

interface Made {
  readonly material: MaterialSpec;
}

/** Integrals over a region of the flats of everything up to one surface. */
interface Layer {
  readonly path: Path;
  over(path: Path): Moments;
}

/** The surfaces on both faces of a tang: its own, that of liners on it, and that of slabs on those. */
export interface TangLayers {
  readonly bare: Layer;
  readonly lined: Layer;
  readonly whole: Layer;
}

/** The surfaces of a handle, each measured once over each region that is asked for. */
export function layersOnTang(
  handle: HandleSpec,
  outline: Outline,
  tang: SlabLaw,
  fittings: readonly PlacedBlock[] = handleLayout(handle, outline).fittings,
): TangLayers {
  const gaps: readonly Stretch[] = fittings.map(({ block }) => block);
  const { slabs, liners } = handle;
  const sheet = liners?.thickness ?? 0;
  const length = outline.handleFront - outline.butt;
  const slab = handleLaw(slabs?.thickness ?? 0, slabs?.between ?? "straight", length);
  const covered = (law: Law, radius: number): Layer =>
    remembering(new SlabbedTang(outline, new CoveredTang(tang, law, gaps), radius));
  return {
    bare: covered(Law.constant(0), 0),
    lined: covered(Law.constant(sheet), 0),
    whole: covered(
      slab.map((value) => value + sheet),
      slabs?.edgeRadius ?? 0,
    ),
  };
}

/** The same layer, measured once over each region: liners and slabs share a surface, slabs and pins their holes. */
function remembering(layer: Layer): Layer {
  const known = new Map<Path, Moments>();
  return {
    path: layer.path,
    over(path) {
      const before = known.get(path);
      if (before !== undefined) return before;
      const found = layer.over(path);
      known.set(path, found);
      return found;
    },
  };
}

/** What lies on the tang between two surfaces, less the holes through it. */
function between(outer: Layer, inner: Layer, holes: readonly Path[]): Moments {
  const difference = (path: Path): Moments => addMoments(outer.over(path), inner.over(path), -1);
  return holes.reduce((sum, hole) => addMoments(sum, difference(hole), -1), difference(outer.path));
}

/** A block less the steel inside it, and less the holes through it. */
function withoutHoles(block: Block, steel: Steel, holes: readonly Path[]): Moments {
  return holes.reduce(
    (sum, hole) => addMoments(sum, aroundSteel(block, steel, hole), -1),
    addMoments(blockMoments(block), steelInBlock(block, steel), -1),
  );
}

/** The part of a block over a hole's outline, on both sides of the steel. */
function aroundSteel(block: Block, steel: Steel, hole: Path): Moments {
  const { minX, maxX } = pathBounds(hole);
  if (maxX <= block.rear || minX >= block.front) return noMoments();
  const region = new Footprint(hole);
  return addMoments(blockOver(block, region), steelInBlock(block, steel, region), -1);
}

function sumOf(moments: readonly Moments[]): Moments {
  return moments.reduce((sum, one) => addMoments(sum, one), noMoments());
}
