// What a handle is made of, read from the description by section 6 of docs/model.md for the general modellers: blocks along
// x with their sections, the steel inside them, pins. No line of it comes from the kernel.
import type {
  BlockSpec,
  HandleBlockSpec,
  HoleSpec,
  KnifeSpec,
  Outline,
  StationSpec,
} from "@scantling/geometry";
import { makeLaw } from "./law.js";

export type SectionForm = "oval" | "octagonal" | "rounded" | "box";

/** A section square to x, even above and below its middle line and on both faces. */
export interface BlockSection {
  readonly halfHeight: number;
  readonly halfWidth: number;
  /** Leg of the corner cuts, or radius of the round corners. */
  readonly corner: number;
}

/** A solid along x. */
export interface BlockShape {
  readonly name: string;
  readonly form: SectionForm;
  readonly centre: number;
  /** From the front back to the rear: between two of them the section changes evenly, or smoothly. */
  readonly stations: readonly number[];
  readonly smooth: boolean;
  section(x: number): BlockSection;
}

/** The steel inside a handle: tang outline, and half its thickness at the stations between which it is straight. */
export interface TangShape {
  readonly outline: Outline;
  readonly profile: readonly { readonly x: number; readonly half: number }[];
}

export interface HandleShapes {
  readonly tang: TangShape;
  readonly blocks: readonly BlockShape[];
  /** Pins through blocks. */
  readonly pins: readonly { readonly x: number; readonly y: number; readonly radius: number }[];
}

/** Distance behind the front of a part of the given length. */
function behind({ at }: StationSpec, length: number): number {
  if (at.kind === "handle") return 0;
  if (at.kind === "butt") return length;
  if (at.kind === "distance") return at.mm;
  if (at.kind === "fraction") return at.share * length;
  throw new Error(`a handle's station cannot stand at the ${at.kind}`);
}

/** @param middle - y half way up the tang, which runs about a level line. */
export function handleShapes(spec: KnifeSpec, outline: Outline, middle: number): HandleShapes {
  const { handle = {}, tang } = spec;
  const { guard, block, pommel } = handle;
  const { handleFront, butt } = outline;
  const fittings = { guard, pommel };
  const blocks = Object.entries(fittings).flatMap(([name, one]) => (one ? [fitting(name, one, middle)] : []));
  if (block) blocks.push(grip(block, guard ? guard.at - guard.length : handleFront, middle));
  const thickness = makeLaw(tang.thickness ?? 0, (one) => behind(one, handleFront - butt), false);
  const stations = thickness.breaks.map((s) => ({ x: handleFront - s, half: thickness.at(s) / 2 }));
  const isPin = (hole: HoleSpec): boolean => hole.kind === "pin";
  return {
    tang: { outline, profile: stations },
    blocks,
    pins: (tang.holes ?? [])
      .filter(isPin)
      .map(({ at, diameter, pin }) => ({ x: at.x, y: at.y, radius: (pin ?? diameter) / 2 })),
  };
}

function fitting(name: string, spec: BlockSpec, middle: number): BlockShape {
  const { at, length, height, width, centre = middle, section = "box" } = spec;
  return {
    name,
    form: section,
    centre,
    stations: [at, at - length],
    smooth: false,
    section: () => ({ halfHeight: height / 2, halfWidth: width / 2, corner: 0 }),
  };
}

function grip(spec: HandleBlockSpec, front: number, middle: number): BlockShape {
  const { length, section: form, cornerRadius, centre = middle } = spec;
  const smooth = spec.between === "smooth";
  const [height, width] = [spec.height, spec.width].map((law) =>
    makeLaw(law, (one) => behind(one, length), smooth),
  ) as [ReturnType<typeof makeLaw>, ReturnType<typeof makeLaw>];
  const stations = new Set([0, ...height.breaks, ...width.breaks, length]);
  return {
    name: "handle",
    form,
    centre,
    stations: [...stations].sort((a, b) => a - b).map((s) => front - s),
    smooth,
    section(x) {
      const halfHeight = height.at(front - x) / 2;
      const halfWidth = width.at(front - x) / 2;
      // A square with this taken off its corners has eight equal sides.
      const regular = Math.min(halfHeight, halfWidth) * (2 - Math.SQRT2);
      return { halfHeight, halfWidth, corner: cornerRadius ?? regular };
    },
  };
}
