import { type KnifeSpec, ledgerBodies, makeKnife, weighKnife } from "@scantling/geometry";
import { describe, expect, test } from "vitest";
import { referenceKnives, squareFront } from "../reference/blades.js";
import { referenceBody } from "../reference/body.js";
import { hardKnives } from "../reference/hard-blades.js";
import { integrateBody } from "../reference/integrate.js";
import type { ReferenceKnife } from "../reference/outlines.js";

// The same knives by a second method: a thickness function written apart from the kernel, summed in strips.
// Accuracy: from a tolerance of 1e-9 to one of 1e-10 no figure of the reference moves by more than 1e-10 of itself, so
// what is left between it and the kernel is the kernel's own error, promised to be 1e-9.
const PROMISED = 1e-9;

/** The demo's blade by its landmarks; the outline that they make is taken as given, the thickness is not. */
function fromLandmarks(): ReferenceKnife {
  const { spec } = squareFront();
  const knife: KnifeSpec = {
    ...spec,
    blade: {
      ...spec.blade,
      outline: { family: "vegetable", edgeLength: 225, heelHeight: 92, straightEdge: 150, tipHeight: 80 },
    },
    tang: { ...spec.tang, length: 128, heights: { front: 28, middle: 25, butt: 30 } },
  };
  return { name: "square front by landmarks", spec: knife, outline: makeKnife(knife).outline };
}

describe.each([...referenceKnives(), fromLandmarks(), ...hardKnives()])("$name", ({ spec, outline }) => {
  const knife = makeKnife(spec);
  const { steel } = weighKnife(knife);
  const reference = integrateBody(referenceBody(spec, outline), 1e-10);
  const { volume } = reference;
  const centre = { x: reference.x / volume, y: reference.y / volume };
  const length = outline.edgeLength;

  test("the description is read as the outline that the reference has", () => {
    expect(knife.outline.path.segments).toHaveLength(outline.path.segments.length);
    expect(knife.outline.edgeLength).toBeCloseTo(outline.edgeLength, 9);
    expect(knife.outline.handleFront).toBeCloseTo(outline.handleFront, 9);
    expect(knife.outline.butt).toBeCloseTo(outline.butt, 9);
  });

  test("volume", () => {
    expect(Math.abs(steel.volume / volume - 1)).toBeLessThan(PROMISED);
  });

  test("mass centre", () => {
    expect(Math.abs(steel.centre.x - centre.x) / length).toBeLessThan(PROMISED);
    expect(Math.abs(steel.centre.y - centre.y) / length).toBeLessThan(PROMISED);
    expect(steel.centre.z).toBe(0);
  });

  test("inertia about the mass centre", () => {
    const density = spec.steel.density ?? Number.NaN;
    const xx = reference.xx - volume * centre.x ** 2;
    const yy = reference.yy - volume * centre.y ** 2;
    const xy = reference.xy - volume * centre.x * centre.y;
    const { inertia } = steel;
    expect(Math.abs(inertia.xx / (density * (yy + reference.zz)) - 1)).toBeLessThan(PROMISED);
    expect(Math.abs(inertia.yy / (density * (xx + reference.zz)) - 1)).toBeLessThan(PROMISED);
    expect(Math.abs(inertia.zz / (density * (xx + yy)) - 1)).toBeLessThan(PROMISED);
    // A product of inertia may be near nothing: against the larger of its squares.
    expect(Math.abs(inertia.xy / density - xy) / xx).toBeLessThan(PROMISED);
    expect([inertia.yz, inertia.zx]).toEqual([0, 0]);
  });
});

describe.each(referenceKnives())("$name", ({ spec, outline }) => {
  test("what the sharpening planes take off, as the ledger has it", () => {
    const [sharp, unsharpened] = [true, false].map(
      (sharpened) => integrateBody(referenceBody(spec, outline, { sharpened }), 1e-9).volume,
    ) as [number, number];
    const { sharpening } = ledgerBodies(makeKnife(spec));
    expect(Math.abs(sharpening - (unsharpened - sharp)) / sharp).toBeLessThan(PROMISED);
  });
});
