import { describe, expect, test } from "vitest";
import { checkHandleNumbers } from "../../src/blade/check-handle.js";
import { checkHandleFit, handleFindings } from "../../src/blade/check-handle-fit.js";
import { handleMaterials, withHandleMaterials } from "../../src/blade/handle-materials.js";
import type { Outline } from "../../src/blade/outline.js";
import type { BlockSpec, HandleBlockSpec, HandleSpec, TangSpec } from "../../src/blade/spec.js";
import { fullTang, hiddenTang, knifeWith, steelLaw } from "./handle-fixtures.js";

const ash = { name: "European ash" };
const brass = { name: "brass" };
const block: HandleBlockSpec = { material: ash, section: "oval", length: 120, height: 30, width: 22 };
const guard: BlockSpec = { material: brass, at: 0, length: 6, height: 34, width: 14 };

const numbers = (form: TangSpec["form"], handle: HandleSpec): string[] =>
  checkHandleNumbers(knifeWith(form, handle)).map(({ code, path }) => `${code} ${path}`);
const fit = (form: TangSpec["form"], handle: HandleSpec, outline: Outline): string[] =>
  checkHandleFit(knifeWith(form, handle), outline, steelLaw(outline, 4, 3)).map(
    ({ code, path }) => `${code} ${path}`,
  );

describe("numbers of a handle", () => {
  test("good ones pass", () => {
    expect(
      numbers("full", { slabs: { material: ash, thickness: 8, edgeRadius: 8 }, pins: { material: brass } }),
    ).toEqual([]);
    expect(numbers("hidden", { block, guard, pommel: { ...guard, at: -130 } })).toEqual([]);
    expect(checkHandleNumbers(knifeWith("full", undefined))).toEqual([]);
  });

  test.each<[string, TangSpec["form"], HandleSpec, string[]]>([
    [
      "slabs on a hidden tang",
      "hidden",
      { slabs: { material: ash, thickness: 8 } },
      ["slabs-on-hidden-tang handle.slabs"],
    ],
    ["a block on a full tang", "full", { block }, ["block-on-full-tang handle.block"]],
    [
      "liners with no slabs over them",
      "full",
      { liners: { material: brass, thickness: 1 } },
      ["liners-without-slabs handle.liners"],
    ],
    [
      "a radius more than the contour's thinnest place",
      "full",
      {
        slabs: {
          material: ash,
          edgeRadius: 7,
          thickness: [
            { at: { kind: "handle" }, is: 9 },
            { at: { kind: "butt" }, is: 6 },
          ],
        },
      },
      ["radius-over-slab handle.slabs.edgeRadius"],
    ],
    [
      "sizes that are no sizes",
      "hidden",
      {
        block: { ...block, length: 0, width: [{ at: { kind: "handle" }, is: -3 }] },
        guard: { ...guard, height: Number.NaN },
      },
      [
        "not-positive handle.block.length",
        "not-positive handle.block.width[0].is",
        "not-a-number handle.guard.height",
      ],
    ],
    [
      "no stations",
      "full",
      { slabs: { material: ash, thickness: [] } },
      ["no-stations handle.slabs.thickness"],
    ],
    [
      "corners of an oval",
      "hidden",
      { block: { ...block, cornerRadius: 3 } },
      ["corner-radius-unused handle.block.cornerRadius"],
    ],
    [
      "a rounded handle without its radius",
      "hidden",
      { block: { ...block, section: "rounded" } },
      ["corner-radius-missing handle.block.cornerRadius"],
    ],
    [
      "corners that meet",
      "hidden",
      { block: { ...block, section: "octagonal", cornerRadius: 11.5 } },
      ["corner-over-handle handle.block.cornerRadius"],
    ],
    [
      "moisture of a metal, with a density, out of range",
      "hidden",
      {
        block: { ...block, material: { ...ash, density: 0.0007, moisture: 0.1 } },
        bolsters: [{ ...guard, material: { ...brass, moisture: 0.1 } }],
        pins: { material: { ...ash, moisture: 8 } },
      },
      [
        "moisture-range handle.pins.material.moisture",
        "moisture-and-density handle.block.material.moisture",
        "moisture-not-wood handle.bolsters[0].material.moisture",
      ],
    ],
    [
      "a part that weighs less than nothing",
      "full",
      { parts: [{ name: "cap", mass: -1, at: { x: 0, y: 0 } }] },
      ["negative handle.parts[0].mass"],
    ],
  ])("%s", (_name, form, handle, expected) => {
    expect(numbers(form, handle)).toEqual(expected);
  });

  test("every text has its numbers", () => {
    for (const issue of checkHandleNumbers(
      knifeWith("hidden", { block: { ...block, length: 0, section: "rounded" } }),
    )) {
      for (const [, name] of issue.text.matchAll(/(?<!: )\{(\w+)\}/g))
        expect(issue.values, issue.code).toHaveProperty(name ?? "");
    }
  });
});

describe("a handle on its tang", () => {
  const hidden = hiddenTang(90, 16, 8);
  const full = fullTang(110, 24);

  test("good ones pass", () => {
    expect(fit("hidden", { block, guard }, hidden)).toEqual([]);
    expect(
      fit("through", { block: { ...block, length: 80 }, pommel: { ...guard, at: -80, length: 20 } }, hidden),
    ).toEqual([]);
    expect(
      fit("full", { slabs: { material: ash, thickness: 8 }, bolsters: [{ ...guard, height: 24 }] }, full),
    ).toEqual([]);
  });

  test("a hidden tang longer than its handle; the guard counts", () => {
    expect(fit("hidden", { block: { ...block, length: 89 } }, hidden)).toEqual([
      "handle-shorter-than-tang handle.block.length",
    ]);
    expect(fit("hidden", { block: { ...block, length: 90 } }, hidden)).toEqual([]);
    expect(fit("hidden", { block: { ...block, length: 84 }, guard }, hidden)).toEqual([]);
  });

  test("a through tang that does not come through", () => {
    expect(fit("through", { block }, hidden)).toEqual(["tang-not-through handle.block.length"]);
  });

  test("a tang higher than its handle, thicker, or out of its corners", () => {
    expect(fit("hidden", { block: { ...block, height: 15 } }, hidden)).toEqual([
      "tang-outside-handle handle.block",
    ]);
    expect(fit("hidden", { block: { ...block, width: 3.5 } }, hidden)).toEqual([
      "tang-outside-handle handle.block",
    ]);
    // 16 high of 17: the oval is only 11·√(1 − (16/17)²)/2 wide beside the tang's corner.
    expect(fit("hidden", { block: { ...block, height: 17, width: 10 } }, hidden)).toEqual([
      "tang-outside-handle handle.block",
    ]);
    expect(fit("hidden", { block: { ...block, height: 17, width: 14 } }, hidden)).toEqual([]);
  });

  test("a guard too small for its slot, or beside it", () => {
    expect(fit("hidden", { block, guard: { ...guard, height: 14 } }, hidden)).toEqual([
      "slot-outside-block handle.guard",
    ]);
    expect(fit("hidden", { block, guard: { ...guard, width: 3.9 } }, hidden)).toEqual([
      "slot-outside-block handle.guard",
    ]);
    expect(fit("hidden", { block, guard: { ...guard, centre: 30 } }, hidden)).toEqual([
      "slot-outside-block handle.guard",
    ]);
  });

  test("bolsters thinner than the tang between them", () => {
    expect(fit("full", { bolsters: [{ ...guard, width: 4 }] }, full)).toEqual([
      "bolster-inside-tang handle.bolsters[0].width",
    ]);
  });

  test("blocks on the bevel, off the tang, and in one another", () => {
    expect(fit("full", { bolsters: [{ ...guard, at: 3 }] }, full)).toEqual([
      "block-on-bevel handle.bolsters[0].at",
    ]);
    expect(fit("full", { bolsters: [{ ...guard, at: -108 }] }, full)).toEqual([
      "block-off-tang handle.bolsters[0].at",
    ]);
    expect(fit("hidden", { block, pommel: { ...guard, at: -110 } }, hidden)).toEqual([
      "handle-blocks-overlap handle.pommel.at",
    ]);
  });

  test("stations outside, or twice in one place", () => {
    const at = (mm: number, is: number) => ({ at: { kind: "distance", mm } as const, is });
    expect(fit("hidden", { block: { ...block, width: [at(0, 20), at(121, 20)] } }, hidden)).toEqual([
      "station-outside handle.block.width[1].at",
    ]);
    expect(fit("full", { slabs: { material: ash, thickness: [at(10, 8), at(10, 7)] } }, full)).toEqual([
      "station-twice handle.slabs.thickness[1].at",
    ]);
  });

  test("a thin mortise wall is a finding, with the least wall behind it", () => {
    const findings = (height: number) =>
      handleFindings(
        knifeWith("hidden", { block: { ...block, section: "rounded", cornerRadius: 0, height } }),
        hidden,
        steelLaw(hidden, 4, 3),
      );
    // 16 high at the front: (22.8 − 16)/2 = 3.4 above and below.
    expect(findings(22.8)).toMatchObject([
      { code: "mortise-wall-thin", severity: "warn", path: "handle.block" },
    ]);
    const { wall } = { wall: undefined, ...findings(22.8)[0]?.values };
    expect(wall).toMatchObject({ quantity: "length", value: expect.closeTo(3.4, 6) });
    expect(findings(24)).toEqual([]);
    expect(handleFindings(knifeWith("hidden", {}), hidden, steelLaw(hidden, 4))).toEqual([]);
  });
});

test("materials of a handle, with their places, and changed all at once", () => {
  const handle: HandleSpec = {
    slabs: { material: ash, thickness: 8 },
    liners: { material: { name: "G10" }, thickness: 1 },
    pins: { material: brass },
    block,
    bolsters: [guard, guard],
    guard,
    pommel: guard,
    parts: [{ name: "cap", mass: 3, at: { x: -100, y: 15 } }],
  };
  expect(handleMaterials(handle).map(([path]) => path)).toEqual([
    "handle.slabs.material",
    "handle.liners.material",
    "handle.pins.material",
    "handle.block.material",
    "handle.guard.material",
    "handle.pommel.material",
    "handle.bolsters[0].material",
    "handle.bolsters[1].material",
  ]);
  const changed = withHandleMaterials(handle, (material) => ({ ...material, density: 0.001 }));
  expect(handleMaterials(changed).every(([, { density }]) => density === 0.001)).toBe(true);
  expect(changed.parts).toBe(handle.parts);
  expect(withHandleMaterials({}, () => brass)).toEqual({});
  expect(handleMaterials(undefined)).toEqual([]);
});
