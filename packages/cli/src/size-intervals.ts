import {
  bevelAt,
  bevelsBegin,
  bladeStation,
  DEFAULT_TOLERANCES,
  edgeBevelAt,
  figureInterval,
  type InputTolerance,
  type Issue,
  type Knife,
  type ToleranceDefaults,
  thicknessAbove,
} from "@scantling/geometry";
import type { AskedFigure } from "./asks.js";
import type { Ask, AskName } from "./file/index.js";
import { sizesOf } from "./sizes.js";

/** Sizes that can be asked for. */
export type SizeName = Exclude<AskName, "mass" | "balance" | "layers" | "coreLine">;

/** How far a figure may lie above and below what is computed, mm, 95 times of 100. */
interface Band {
  readonly plus: number;
  readonly minus: number;
}

/** Errors that have nothing to do with each other. */
function inSquares(bands: readonly Band[]): Band {
  return {
    plus: Math.hypot(...bands.map(({ plus }) => plus)),
    minus: Math.hypot(...bands.map(({ minus }) => minus)),
  };
}

/**
 * A size of the drawing with the interval that the finished knife's lies in 95 times of 100. A tolerance of the file counts for
 * the size that it is written at; an end or a side without one errs by the outline's own tolerance. The outline's tolerance
 * moves all its sides out together, so two free ends err by twice as much. Thicknesses and angles on the blade are moved with
 * everything of the blade that they follow from.
 *
 * @param given - Tolerances that the file gives.
 */
export function sizeFigure(
  knife: Knife,
  ask: Pick<Ask, "at" | "up"> & { readonly name: SizeName },
  given: readonly InputTolerance[],
  defaults: ToleranceDefaults,
): AskedFigure {
  const own = (path: string): Band | undefined => given.find((tolerance) => tolerance.path === path);
  const sides = (count: number): Band => ({
    plus: count * defaults.outline,
    minus: count * defaults.outline,
  });
  const sizes = sizesOf(knife);
  const tang = own("tang.length");
  switch (ask.name) {
    case "overallLength": {
      const edge = own("blade.outline.edgeLength");
      const ends = [edge, tang].filter((band) => band === undefined).length;
      const bands = [edge, tang, own("blade.ricasso"), sides(ends)].flatMap((band) => band ?? []);
      return around(sizes.overallLength, inSquares(bands));
    }
    case "edgeLength":
      return around(sizes.edgeLength, own("blade.outline.edgeLength") ?? sides(2));
    case "heelHeight":
      return around(sizes.heelHeight, own("blade.outline.heelHeight") ?? sides(2));
    case "handleLength":
      return around(sizes.handleLength, own("handle.block.length") ?? tang ?? sides(2));
    case "sharpeningAngle": {
      const { edgeAngle } = knife.spec.blade;
      const angles = typeof edgeAngle === "number" ? [edgeAngle] : [edgeAngle.right, edgeAngle.left];
      const value = Math.max(...angles.filter((angle) => angle !== "flat"));
      const band = own("blade.edgeAngle");
      return band === undefined ? { value } : around(value, band);
    }
    case "thickness":
    case "behindEdge":
    case "bevelAngle": {
      const figure = BLADE_FIGURES[ask.name];
      const read = (one: Knife): number => figure(one, placeOf(one, ask), ask.up);
      return { value: read(knife), interval: figureInterval(knife, read, given, defaults) };
    }
  }
}

/**
 * An ask about the ground bevel that names no place is meant for where that is first at its full depth: at the heel, or ahead of
 * it where a plunge ends.
 */
export function whereGround<A extends Pick<Ask, "name" | "at">>(ask: A, knife: Knife): A {
  const begin = bevelsBegin(knife);
  const isOfBevel = ask.name === "behindEdge" || ask.name === "bevelAngle";
  return isOfBevel && ask.at === undefined && begin > 0
    ? { ...ask, at: { kind: "distance", mm: begin } }
    : ask;
}

/** The same without its interval, which takes longest of all. */
export function sizeValue(knife: Knife, ask: Pick<Ask, "at" | "up"> & { readonly name: SizeName }): number {
  const { name } = ask;
  if (name === "thickness" || name === "behindEdge" || name === "bevelAngle")
    return BLADE_FIGURES[name](knife, placeOf(knife, ask), ask.up);
  return sizeFigure(knife, ask, [], DEFAULT_TOLERANCES).value;
}

/** Where on the blade an ask is about, mm from the heel. */
export const placeOf = ({ outline }: Knife, { at }: Pick<Ask, "at">): number =>
  bladeStation(at ?? { kind: "heel" }, outline);

const BLADE_FIGURES: Readonly<
  Record<"thickness" | "behindEdge" | "bevelAngle", (knife: Knife, x: number, up?: number) => number>
> = {
  thickness: ({ laws }, x) => laws.spine.valueAt(x),
  behindEdge: (knife, x, up) =>
    up === undefined
      ? (edgeBevelAt(knife, x)?.behind ?? edgeBevelAt(knife, x, "left")?.behind ?? Number.NaN)
      : (thicknessAbove(knife, x, [up])[0]?.thickness ?? Number.NaN),
  bevelAngle: (knife, x) =>
    Math.max(bevelAt(knife, x, "right").angle, knife.laws.symmetric ? 0 : bevelAt(knife, x, "left").angle),
};

function around(value: number, { plus, minus }: Band): AskedFigure {
  return { value, interval: [value - minus, value + plus] };
}

/** Asks about sizes that this knife does not have. */
export function missingSizes(knife: Knife, asks: readonly Ask[]): Issue[] {
  return asks.flatMap((ask): Issue[] => {
    if (ask.name === "handleLength") return missingHandle(knife, ask);
    if (ask.name !== "behindEdge" && ask.name !== "bevelAngle") return [];
    const x = placeOf(knife, ask);
    if (x >= 0 && x < knife.outline.edgeLength && Number.isFinite(BLADE_FIGURES[ask.name](knife, x, ask.up)))
      return [];
    return [
      {
        code: "off-the-edge",
        path: ask.up === undefined ? `${ask.path}.at` : ask.path,
        text: "That can be asked for where the blade has a ground edge, from the heel to short of the tip, and no higher than the blade.",
      },
    ];
  });
}

/** A hidden tang ends somewhere in its handle. */
function missingHandle({ spec }: Knife, { path }: Ask): Issue[] {
  if (spec.tang.form === "full" || spec.handle?.block !== undefined) return [];
  return [
    {
      code: "ask-needs-handle",
      path,
      text: "A handle length is asked for, but the file does not describe the handle on this tang. Give handle: block, with its length.",
    },
  ];
}
