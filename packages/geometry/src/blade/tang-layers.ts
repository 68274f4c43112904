import { Law } from "../numeric/law.js";
import type { Path } from "../plane/path.js";
import { handleLaw } from "./handle-law.js";
import { handleLayout, type PlacedBlock } from "./handle-layout.js";
import { addMoments, type Moments } from "./moments.js";
import type { Outline } from "./outline.js";
import { CoveredTang, SlabbedTang, type Stretch } from "./rounded-slab.js";
import type { SlabLaw } from "./slab-law.js";
import type { HandleSpec } from "./spec.js";

/** Integrals over a region of the flats of everything up to one surface. */
export interface Layer {
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
export function between(outer: Layer, inner: Layer, holes: readonly Path[]): Moments {
  const difference = (path: Path): Moments => addMoments(outer.over(path), inner.over(path), -1);
  return holes.reduce((sum, hole) => addMoments(sum, difference(hole), -1), difference(outer.path));
}
