import { describe, expect, it } from "vitest";
import { DEFAULT_TOLERANCES } from "../../src/blade/tolerances.js";
import { uncertainInputs } from "../../src/blade/uncertain-inputs.js";
import { materialDensity } from "../../src/materials/material-density.js";
import { findMaterial } from "../../src/materials/materials.js";
import { RICH_BLOCK, RICH_SLABS, SLAB_KNIFE } from "./interval-knives.js";

/** Limits either way, to six digits. */
const limits = (...args: Parameters<typeof uncertainInputs>): Record<string, number> =>
  Object.fromEntries(
    uncertainInputs(...args).map(({ input, plus, minus }) => {
      expect(minus).toBe(plus);
      return [input, Number(plus.toPrecision(6))];
    }),
  );

// Every limit below: common practice, no source.
describe("what is uncertain where the file gives no tolerance", () => {
  it("of a full tang with everything on it", () => {
    const walnut = materialDensity({ name: "black walnut", moisture: 0.09 }) ?? 0;
    expect(limits(RICH_SLABS, [], DEFAULT_TOLERANCES)).toEqual({
      "blade.thickness": 0.1,
      "blade.flankTaper": 0.1,
      "blade.bevel.edgeThickness": 0.05,
      "blade.bevel.height": 1,
      "blade.bevel.crown.mm": 0.05,
      "blade.bevel.left.height": 1,
      // A crown that is a share of the 3.5 mm which both faces gain from edge to spine.
      "blade.bevel.left.crown.share": 0.0142857,
      "blade.swedge.thickness": 0.1,
      "blade.fullers[0].depth": 0.1,
      "tang.thickness": 0.1,
      "steel.density": 0.0000784,
      "handle.slabs.thickness": 0.2,
      "handle.slabs.edgeRadius": 1,
      "handle.liners.thickness": 0.05,
      "handle.bolsters[0].height": 1,
      "handle.bolsters[0].width": 1,
      "handle.bolsters[0].length": 0.2,
      "handle.slabs.material.density": Number(Math.max(0.1 * walnut, 0).toPrecision(6)),
      "handle.slabs.material.moisture": 0.02,
      "handle.liners.material.density": 0.000185,
      // Metals are known as well as steel.
      "handle.pins.material.density": 0.000085,
      "handle.bolsters[0].material.density": 0.000085,
      "handle.parts[0].mass": 0.2,
    });
  });

  it("of a hidden tang", () => {
    const given = limits(RICH_BLOCK, [], DEFAULT_TOLERANCES);
    expect(given).toMatchObject({
      "blade.bevel.right.height": 1,
      "tang.buttThickness": 0.1,
      "handle.block.height": 1,
      "handle.block.width": 1,
      "handle.block.length": 1,
      "handle.guard.length": 0.2,
      "handle.pommel.width": 1,
      "handle.block.material.moisture": 0.02,
    });
    // Places, angles, radii that a tool makes, holes: as drawn.
    expect(Object.keys(given).filter((path) => /\.at|ngle|wheel|shoulder|ricasso|holes/u.test(path))).toEqual(
      [],
    );
  });

  it("a density errs by half the range of its sources where that is more", () => {
    const row = findMaterial("carbon fibre");
    const half = ((row?.high ?? 0) - (row?.low ?? 0)) / 2;
    const material = { name: "carbon fibre" };
    const spec = {
      ...SLAB_KNIFE,
      handle: { slabs: { material, thickness: 8 }, liners: { material: { name: "copper" }, thickness: 1 } },
    };
    expect(
      limits(spec, [], { ...DEFAULT_TOLERANCES, handleDensity: 0.001 })["handle.slabs.material.density"],
    ).toBe(Number(half.toPrecision(6)));
    expect(half).toBeGreaterThan(0.001 * (row?.density ?? 0));
  });

  it("thickness left from the hammer errs more than ground", () => {
    const forged = { ...SLAB_KNIFE, finish: { flats: "forged" } } as const;
    expect(limits(forged, [], DEFAULT_TOLERANCES)["blade.thickness"]).toBe(0.2);
  });
});

describe("tolerances of the file", () => {
  it("take the place of the defaults for the same input, and of one station only for that", () => {
    const inputs = uncertainInputs(
      RICH_SLABS,
      [
        { path: "blade.thickness[1].is", plus: 0.3, minus: 0.1 },
        { path: "handle.slabs.edgeRadius", plus: 0.5, minus: 0.5 },
        { path: "tang.length", plus: 1, minus: 1 },
      ],
      DEFAULT_TOLERANCES,
    );
    const named = (name: string) => inputs.filter(({ input }) => input === name);
    expect(named("blade.thickness")).toEqual([]);
    expect(named("blade.thickness[1].is")).toMatchObject([{ plus: 0.3, minus: 0.1 }]);
    expect(named("blade.thickness, other stations")).toMatchObject([
      { paths: ["blade.thickness[0].is", "blade.thickness[2].is"], plus: 0.1 },
    ]);
    expect(named("handle.slabs.edgeRadius")).toMatchObject([{ plus: 0.5 }]);
    expect(named("tang.length")).toMatchObject([{ plus: 1 }]);
  });

  it("of what is no part of the finished knife do not count", () => {
    const given = ["allowances.face", "forging.heats"].map((path) => ({ path, plus: 0.1, minus: 0.1 }));
    const inputs = uncertainInputs(SLAB_KNIFE, given, DEFAULT_TOLERANCES).map(({ input }) => input);
    expect(inputs).toEqual(uncertainInputs(SLAB_KNIFE, [], DEFAULT_TOLERANCES).map(({ input }) => input));
  });
});
