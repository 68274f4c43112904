import { materialDensity } from "../materials/material-density.js";
import { pathBounds } from "../plane/bounds.js";
import type { Path } from "../plane/path.js";
import { Footprint } from "./footprint.js";
import type { Block } from "./handle-block.js";
import { holeThroughHandle } from "./handle-hole.js";
import { handleLayout, type PlacedBlock } from "./handle-layout.js";
import { blockMoments, blockOver, type Steel, steelInBlock } from "./handle-moments.js";
import { addMoments, type Moments, noMoments } from "./moments.js";
import type { Outline } from "./outline.js";
import type { SlabLaw } from "./slab-law.js";
import type { HandleSpec, HoleSpec, MaterialSpec } from "./spec.js";
import { between, layersOnTang, type TangLayers } from "./tang-layers.js";

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
 * The parts of a handle, none of them measured yet.
 *
 * @param holes - of blade and tang.
 * @param measured - surfaces on the same tang that have been measured before; left out: those of this handle.
 */
export function measurableParts(
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
