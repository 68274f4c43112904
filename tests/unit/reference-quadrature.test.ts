import { makeKnife, weighKnife } from "@scantling/geometry";
import { describe, expect, test } from "vitest";
import { referenceKnives } from "../reference/blades.js";
import { referenceBody } from "../reference/body.js";
import { hardKnives } from "../reference/hard-blades.js";
import { integrateBody } from "../reference/integrate.js";

// The same knives by a second method: a thickness function written apart from the kernel, summed in strips.
// Accuracy: from a tolerance of 1e-9 to one of 1e-10 no figure of the reference moves by more than 1e-10 of itself, so
// what is left between it and the kernel is the kernel's own error, promised to be 1e-9.
const PROMISED = 1e-9;

describe.each([...referenceKnives(), ...hardKnives()])("$name", ({ spec, outline }) => {
  const knife = makeKnife(spec);
  const { steel } = weighKnife(knife);
  const reference = integrateBody(referenceBody(spec, outline), 1e-10);
  const { volume } = reference;
  const length = outline.edgeLength;

  test("the path data are read as the outline that the reference has", () => {
    expect(knife.outline.path.segments).toHaveLength(outline.path.segments.length);
    expect(knife.outline.edgeLength).toBeCloseTo(outline.edgeLength, 9);
    expect(knife.outline.butt).toBeCloseTo(outline.butt, 9);
  });

  test("volume", () => {
    expect(Math.abs(steel.volume / volume - 1)).toBeLessThan(PROMISED);
  });

  test("mass centre", () => {
    expect(Math.abs(steel.centre.x - reference.x / volume) / length).toBeLessThan(PROMISED);
    expect(Math.abs(steel.centre.y - reference.y / volume) / length).toBeLessThan(PROMISED);
    expect(steel.centre.z).toBe(0);
  });
});
