import { describe, expect, test } from "vitest";
import { makeKnife } from "../../src/blade/knife.js";
import type { HandleSpec, HoleSpec, KnifeSpec, TangSpec } from "../../src/blade/spec.js";
import { boxKnife, p } from "./bodies.js";
import { DEGREE, heel } from "./random-knives.js";

const ash = { name: "European ash" } as const;
const brass = { name: "brass" } as const;
const slabs = { material: ash, thickness: 8 } as const;
const pin = (x: number, diameter = 4): HoleSpec => ({ kind: "pin", at: p(x, 20), diameter });

// A tang of 80 × 20 behind a ricasso of 20; its middle at y = 20.
const found = (handle: HandleSpec | undefined, tang: Partial<TangSpec> = {}): string[] =>
  makeKnife(boxKnife({}, { tang, ...(handle === undefined ? {} : { handle }) })).findings.map(
    ({ code, severity, path }) => `${severity} ${code} ${path}`,
  );

describe("pins and their holes", () => {
  test("pins without a hole, holes without pins", () => {
    expect(found({ slabs, pins: { material: brass } })).toEqual(["warn pins-without-holes handle.pins"]);
    expect(found({ slabs }, { holes: [pin(-50)] })).toEqual(["note pin-holes-empty tang.holes[0].kind"]);
    expect(found({ slabs, pins: { material: brass } }, { holes: [pin(-50)] })).toEqual([]);
    expect(found(undefined, { holes: [pin(-50)] })).toEqual([]);
  });

  test("a pin across the rear face of the bolsters", () => {
    const bolsters = [{ material: brass, at: -20, length: 12, height: 20, width: 20 }];
    const handle = { slabs, pins: { material: brass }, bolsters };
    expect(found(handle, { holes: [pin(-33)] })).toEqual(["warn pin-across-joint tang.holes[0].at"]);
    expect(found(handle, { holes: [pin(-27)] })).toEqual([]);
    expect(found(handle, { holes: [pin(-34)] })).toEqual([]);
  });
});

describe("tangs", () => {
  test("a tang thicker at the butt than at the front", () => {
    expect(found(undefined, { buttThickness: 5 })).toEqual(["warn tang-thickens tang.buttThickness"]);
    expect(found(undefined, { buttThickness: 4 })).toEqual([]);
  });

  test("a through tang that stands out of its handle, unless a pommel is on it", () => {
    const block = { material: ash, section: "oval", height: 34, width: 24 } as const;
    const out = (length: number, pommel?: HandleSpec["pommel"]): string[] =>
      found(
        { block: { ...block, length }, ...(pommel === undefined ? {} : { pommel }) },
        { form: "through" },
      );
    expect(out(71)).toEqual(["warn tang-past-handle tang.length"]);
    expect(out(77)).toEqual([]);
    expect(out(71, { material: brass, at: -91, length: 9, height: 34, width: 24 })).toEqual([]);
  });
});

test("wood of 80 % moisture is green, wood of 12 % not dry enough to fit, wood of 7 % ready", () => {
  const of = (moisture: number): string[] => found({ slabs: { ...slabs, material: { ...ash, moisture } } });
  expect(of(0.8)).toEqual(["warn wood-green handle.slabs.material.moisture"]);
  expect(of(0.12)).toEqual(["warn wood-not-dry handle.slabs.material.moisture"]);
  expect(of(0.07)).toEqual([]);
});

test("a swedge that runs down over more than half the blade", () => {
  const spec = (degrees: number): KnifeSpec =>
    boxKnife({
      thickness: [heel(4)],
      bevel: { form: "flat", height: 12, edgeThickness: 0.4 },
      swedge: {
        from: { kind: "distance", mm: 60 },
        to: { kind: "tip" },
        angle: degrees * DEGREE,
        thickness: 1.5,
      },
    });
  const codes = (degrees: number): string[] => makeKnife(spec(degrees)).findings.map(({ code }) => code);
  // 1.25 mm a side: 15 mm down at 4.76°.
  expect(codes(4.7)).toContain("swedge-deep");
  expect(codes(4.85)).not.toContain("swedge-deep");
});
