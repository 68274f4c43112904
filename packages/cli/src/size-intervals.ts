import { type InputTolerance, type Knife, rebuildKnife, type ToleranceDefaults } from "@scantling/geometry";
import type { AskedFigure } from "./asks.js";
import type { AskName } from "./file/index.js";
import type { KnifeSizes } from "./sizes.js";

/** Sizes that can be asked for. */
export type SizeName = Exclude<AskName, "mass" | "balance" | "layers" | "coreLine">;

/** How far a figure may lie above and below what is computed, mm, 95 times of 100. */
interface Band {
  readonly plus: number;
  readonly minus: number;
}

const NOTHING: Band = { plus: 0, minus: 0 };

/** Errors that have nothing to do with each other. */
function inSquares(bands: readonly Band[]): Band {
  return {
    plus: Math.hypot(...bands.map(({ plus }) => plus)),
    minus: Math.hypot(...bands.map(({ minus }) => minus)),
  };
}

/**
 * The sizes of the drawing, each with the interval that the finished knife's lies in 95 times of 100. A tolerance of
 * the file counts for the size that it is written at; an end or a side without one errs by the outline's own tolerance.
 * The outline's tolerance moves all its sides out together, so two free ends err by twice as much.
 *
 * @param given - Tolerances that the file gives.
 */
export function sizeFigures(
  knife: Knife,
  sizes: KnifeSizes,
  given: readonly InputTolerance[],
  defaults: ToleranceDefaults,
): Readonly<Record<SizeName, AskedFigure>> {
  const own = (path: string): Band | undefined => given.find((tolerance) => tolerance.path === path);
  const sides = (count: number): Band => ({
    plus: count * defaults.outline,
    minus: count * defaults.outline,
  });
  const edge = own("blade.outline.edgeLength");
  const tang = own("tang.length");
  const ends = [edge, tang].filter((band) => band === undefined).length;
  const overall = [edge, tang, own("blade.ricasso"), sides(ends)].flatMap((band) => band ?? []);
  return {
    overallLength: around(sizes.overallLength, inSquares(overall)),
    edgeLength: around(sizes.edgeLength, edge ?? sides(2)),
    heelHeight: around(sizes.heelHeight, own("blade.outline.heelHeight") ?? sides(2)),
    thickness: around(heelThickness(knife), thicknessBand(knife, given, defaults)),
  };
}

function around(value: number, { plus, minus }: Band): AskedFigure {
  return { value, interval: [value - minus, value + plus] };
}

const heelThickness = (knife: Knife): number => knife.laws.spine.valueAt(0);

/** Stations with a tolerance of their own err for themselves, the others together; as in the interval of the mass. */
function thicknessBand(knife: Knife, given: readonly InputTolerance[], defaults: ToleranceDefaults): Band {
  const { forgedThickness, groundThickness } = defaults;
  const shared = knife.finish.flats === "forged" ? forgedThickness : groundThickness;
  const stations = knife.spec.blade.thickness.map((_, index) => ({
    index,
    own: given.find(({ path }) => path === `blade.thickness[${index}].is`),
  }));
  const others = stations.filter(({ own }) => own === undefined).map(({ index }) => index);
  return inSquares([
    ...stations.map(({ index, own }) => (own === undefined ? NOTHING : bandOf(knife, [index], own))),
    bandOf(knife, others, { plus: shared, minus: shared }),
  ]);
}

/** What moving some stations does to the thickness at the heel. */
function bandOf(knife: Knife, moved: readonly number[], { plus, minus }: Band): Band {
  if (moved.length === 0) return NOTHING;
  const at = (by: number): number => {
    const { spec } = knife;
    const thickness = spec.blade.thickness.map((station, index) =>
      moved.includes(index) ? { ...station, is: station.is + by } : station,
    );
    return heelThickness(rebuildKnife({ ...spec, blade: { ...spec.blade, thickness } }));
  };
  const middle = heelThickness(knife);
  return { plus: Math.max(0, at(plus) - middle), minus: Math.max(0, middle - at(-minus)) };
}
