import { describe, expect, it } from "vitest";
import { makeKnife } from "../../src/blade/knife.js";
import type { KnifeSpec, StationPlace } from "../../src/blade/spec.js";
import { readAt } from "../../src/blade/spec-path.js";
import { type Changeable, changeables } from "../../src/fitting/changeable.js";
import { type FitDimension, withDimension } from "../../src/fitting/dimension.js";
import { usualChanges, usualRange } from "../../src/fitting/usual-range.js";
import { BLOCK_KNIFE, RICH_BLOCK, RICH_SLABS, SINGLE_BEVEL, SLAB_KNIFE } from "../blade/interval-knives.js";
import { RUNS } from "../blade/similar-fixtures.js";
import { expectWithin } from "../numeric/close.js";

const placeName = (at: StationPlace): string =>
  at.kind === "distance" ? `${at.mm}mm` : at.kind === "fraction" ? `${at.share * 100}%` : at.kind;

const of = (spec: KnifeSpec): readonly Changeable[] => changeables(makeKnife(spec), placeName);
const namesOf = (spec: KnifeSpec): readonly string[] => of(spec).map(({ name }) => name);

const KNIVES = { RICH_SLABS, RICH_BLOCK, SLAB_KNIFE, BLOCK_KNIFE, SINGLE_BEVEL, RUNS };

describe("what can be changed on a knife", () => {
  it("goes by the keys of its file, stations by their places, holes by their letters, parts by their numbers", () => {
    const names = namesOf(RICH_SLABS);
    for (const name of [
      "outline.edgeLength",
      "thickness",
      "thickness@heel",
      "thickness@60mm",
      "flankTaper@80%",
      "bevel.height@tip",
      "bevel.crown",
      "bevel.left.height",
      "edgeAngle.right",
      "microbevel.angle",
      "fullers.depth@1",
      "holes.diameter@A",
      "tang.holes.diameter@B",
      "tang.holes.diameter@C",
      "tang.thickness",
      "tang.thickness@50mm",
      "handle.slabs.thickness@butt",
      "handle.liners.material.density",
      "handle.bolsters.width@1",
      "handle.parts.mass@1",
    ])
      expect(names).toContain(name);
    expect(names).not.toContain("tang.buttThickness");
    expect(namesOf(RUNS).some((name) => name.startsWith("outline."))).toBe(false);
  });

  it.each(Object.entries(KNIVES))(
    "%s: each name is one of its own, and leads to the number that is drawn",
    (_, spec) => {
      const all = of(spec);
      expect(new Set(all.map(({ name }) => name)).size).toBe(all.length);
      for (const { sizes } of all) {
        for (const { path, drawn } of sizes) {
          const there = readAt(spec, path);
          // A parallel tang and a material by its name have no number in the file.
          if (there === undefined) expect(path).toMatch(/^tang\.buttThickness$|\.density$/u);
          else expect(there).toBe(drawn);
          expect(drawn).toBeGreaterThan(0);
        }
      }
    },
  );

  it.each(Object.entries(KNIVES))(
    "%s: a size that is set is there, and nothing else has moved",
    (_, spec) => {
      for (const each of of(spec)) {
        const values = each.sizes.map(({ drawn }) => drawn * 1.01);
        const dimension: FitDimension = {
          ...each,
          sizes: each.sizes.map((size) => ({ ...size, steps: [1] })),
          least: 0,
          most: 1,
        };
        const changed = withDimension(spec, dimension, values);
        const paths = each.sizes.map(({ path }) => path);
        for (const [i, path] of paths.entries()) expect(readAt(changed, path)).toBe(values[i]);
        const before = numbersIn(spec);
        const after = numbersIn(changed);
        const isMaterial = paths.some((path) => path.endsWith(".density"));
        const moved = [...after].filter(([path, value]) => before.get(path) !== value).map(([path]) => path);
        expect(moved.sort()).toEqual([...paths].sort());
        const lost = [...before.keys()].filter((path) => !after.has(path));
        // A density that is told takes the place of a wood's moisture.
        expect(lost.every((path) => isMaterial && path.endsWith(".moisture"))).toBe(true);
        expect(withDimension(spec, dimension, undefined)).toBe(spec);
      }
    },
  );

  it("has the butt of a parallel tang as thick as its front", () => {
    const { buttThickness: _, ...tang } = SLAB_KNIFE.tang;
    const butt = of({ ...SLAB_KNIFE, tang }).find(({ name }) => name === "tang.buttThickness");
    expect(butt?.sizes).toEqual([{ path: "tang.buttThickness", drawn: 4.2 }]);
  });
});

/** Every number of a description by its path. */
function numbersIn(spec: KnifeSpec): ReadonlyMap<string, number> {
  const found = new Map<string, number>();
  const walk = (node: unknown, path: string): void => {
    if (typeof node === "number") found.set(path, node);
    else if (Array.isArray(node)) for (const [i, item] of node.entries()) walk(item, `${path}[${i}]`);
    else if (typeof node === "object" && node !== null)
      for (const [key, item] of Object.entries(node)) walk(item, path === "" ? key : `${path}.${key}`);
  };
  walk(spec, "");
  return found;
}

describe("what is usually changed", () => {
  it("is no size of the outline, and no taper on a tang that is drawn parallel", () => {
    const usual = (spec: KnifeSpec) => usualChanges(of(spec), makeKnife(spec)).map(({ name }) => name);
    expect(usual(SLAB_KNIFE)).toEqual([
      "thickness",
      "bevel.height",
      "tang.buttThickness",
      "handle.slabs.thickness",
    ]);
    expect(usual(BLOCK_KNIFE)).toEqual([
      "thickness",
      "tang.buttThickness",
      "handle.block.height",
      "handle.block.width",
      "handle.parts.mass@1",
    ]);
    const { buttThickness: _, ...tang } = SLAB_KNIFE.tang;
    expect(usual({ ...SLAB_KNIFE, tang })).not.toContain("tang.buttThickness");
    const oneStation = {
      ...SLAB_KNIFE,
      blade: { ...SLAB_KNIFE.blade, thickness: SLAB_KNIFE.blade.thickness.slice(0, 1) },
    };
    expect(usual(oneStation)).toContain("thickness@heel");
  });

  it("has the drawing inside its range, and something on either side of it", () => {
    for (const spec of Object.values(KNIVES)) {
      const knife = makeKnife(spec);
      for (const each of of(spec)) {
        const { least, most } = usualRange(each, knife);
        const drawn = each.sizes.length > 1 ? 1 : (each.sizes[0]?.drawn ?? 0);
        expect(least, each.name).toBeLessThanOrEqual(drawn);
        expect(most, each.name).toBeGreaterThanOrEqual(drawn);
        expect(least, each.name).toBeGreaterThan(0);
        expect(most - least, each.name).toBeGreaterThan(0);
      }
    }
  });

  it("keeps the bevel below the spine, the tang no thicker at the butt than in front, the slab as thick as its rounding", () => {
    const low = {
      ...SLAB_KNIFE,
      blade: { ...SLAB_KNIFE.blade, bevel: { ...SLAB_KNIFE.blade.bevel, height: 27 } },
    };
    const range = (spec: KnifeSpec, name: string) => {
      const found = of(spec).find((each) => each.name === name);
      if (found === undefined) throw new Error(`${name} is none`);
      return usualRange(found, makeKnife(spec));
    };
    // The heel is 30 high, the spine right above the straight edge.
    expectWithin(range(low, "bevel.height").most, 30, 1e-9);
    expectWithin(range(SLAB_KNIFE, "bevel.height").most, 1.25 * 17, 1e-9);
    expectWithin(range(SLAB_KNIFE, "tang.buttThickness").most, Math.min(1.3 * 3.2, 4.2), 1e-9);
    expectWithin(range(SLAB_KNIFE, "tang.buttThickness").least, 0.7 * 3.2, 1e-9);
    const thin = { ...SLAB_KNIFE, tang: { ...SLAB_KNIFE.tang, buttThickness: 2 } };
    const round = {
      ...SLAB_KNIFE,
      handle: { slabs: { material: { name: "beech" }, thickness: 8, edgeRadius: 7 } },
    };
    expectWithin(range(round, "handle.slabs.thickness").least, 7, 1e-9);
    // Where a pin goes through, it keeps the 1.6 mm that findings ask for.
    expectWithin(range(thin, "tang.buttThickness").least, 1.6, 1e-9);
  });
});
