import { BevelMoments } from "./bevel-moments.js";
import { measureBody, noMoments } from "./measure-body.js";
import { addMoments, type Moments } from "./moments.js";
import type { Outline } from "./outline.js";
import { slabbedTang, tangPath } from "./rounded-slab.js";
import type { SlabLaw } from "./slab-law.js";
import { discMoments, slabMoments } from "./slab-moments.js";
import type { HandleSpec, HoleSpec } from "./spec.js";
import type { Cutout, SteelBody } from "./steel-body.js";

/** Relative error that a measurement of the handle aims at: wood is not known better than to a few per cent. */
const AIM = 1e-10;

/** A part of the handle as it is made: volume integrals and the material's name. */
export interface HandlePart {
  readonly name: string;
  readonly material: string;
  readonly density: number | undefined;
  readonly moments: Moments;
}

/** Radius of what fills a hole through the handle: the pin's own where it has one. */
const throughRadius = (hole: HoleSpec): number =>
  (hole.kind === "pin" ? (hole.pin ?? hole.diameter) : hole.diameter) / 2;

/**
 * Slabs and pins of a full tang.
 *
 * Slabs lie on the tang along its outline, their long outer edges rounded by a quarter circle; pin, hanging and thong
 * holes go through them, lightening holes stay covered. Pins fill their holes to the outside of the slabs. The gap
 * between a pin and a larger hole in the tang is left empty: glue is not weighed.
 */
export function handleParts(
  handle: HandleSpec | undefined,
  outline: Outline,
  tang: SlabLaw,
  holes: readonly HoleSpec[],
): HandlePart[] {
  const parts: HandlePart[] = [];
  const slabs = handle?.slabs;
  const through = holes.filter((hole) => hole.kind !== "lightening" && hole.at.x < outline.handleFront);
  const body = slabbedTang(outline, tang, slabs?.thickness ?? 0, slabs?.edgeRadius ?? 0);
  if (slabs !== undefined) {
    let moments = addMoments(measureBody(body, AIM), slabMoments(tangPath(outline), tang), -1);
    for (const hole of through) {
      const disc = { centre: hole.at, radius: throughRadius(hole) };
      moments = addMoments(moments, addMoments(filled(body, disc), discMoments(disc, tang), -1), -1);
    }
    parts.push({
      name: "slabs",
      material: slabs.material.name,
      density: slabs.material.density,
      moments,
    });
  }
  const pins = through.filter((hole) => hole.kind === "pin");
  if (handle?.pins !== undefined && pins.length > 0) {
    const moments = pins.reduce(
      (sum, pin) => addMoments(sum, filled(body, { centre: pin.at, radius: throughRadius(pin) })),
      noMoments(),
    );
    parts.push({
      name: "pins",
      material: handle.pins.material.name,
      density: handle.pins.material.density,
      moments,
    });
  }
  return parts;
}

/** A round rod through a body, cut off flush with its faces. */
function filled(body: SteelBody, disc: Cutout): Moments {
  const whole = discMoments(disc, body.slab);
  const scale = whole.value.map((v) => Math.max(1, Math.abs(v)));
  return addMoments(whole, new BevelMoments(body).overDisc(disc, scale, AIM), -1);
}
