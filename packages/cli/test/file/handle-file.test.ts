import { describe, expect, it } from "vitest";
import { readKnifeFile } from "../../src/file/index.js";
import { inShort, knifeProblems, SMALL } from "./files.js";

const withHandle = (handle: string): string => `${SMALL}handle:\n${handle}`;
const read = (handle: string) => readKnifeFile(withHandle(handle), "order.knife.yaml");
const problems = (handle: string): string[] => inShort(knifeProblems(withHandle(handle)));

describe("the handle of a knife file", () => {
  it("takes slabs with a contour, liners and woods with their moisture", () => {
    const { spec, tolerances } = read(`  slabs:
    material: { name: European ash, moisture: 8 % }
    thickness: [{ at: handle, is: 9 ± 0.2 }, { at: 60, is: 3/8 in }, { at: 50 %, is: 8 }, { at: butt, is: 6 }]
    between: smooth
    edgeRadius: 5
  liners: { material: G10, thickness: 0.8 }
  pins: { material: { name: house rod, density: 8.4 g/cm3 } }
`);
    expect(spec.handle).toEqual({
      slabs: {
        material: { name: "European ash", moisture: 0.08 },
        thickness: [
          { at: { kind: "handle" }, is: 9 },
          { at: { kind: "distance", mm: 60 }, is: 9.525 },
          { at: { kind: "fraction", share: 0.5 }, is: 8 },
          { at: { kind: "butt" }, is: 6 },
        ],
        between: "smooth",
        edgeRadius: 5,
      },
      liners: { material: { name: "G10" }, thickness: 0.8 },
      pins: { material: { name: "house rod", density: 0.0084 } },
    });
    expect(tolerances).toEqual([{ path: "handle.slabs.thickness[0].is", plus: 0.2, minus: 0.2 }]);
  });

  it("takes the handle of a hidden tang with its guard and pommel", () => {
    const text = withHandle(`  block:
    material: African blackwood
    section: octagonal
    length: 130
    height: [{ at: handle, is: 24 }, { at: butt, is: 27 }]
    width: 21
    cornerRadius: 6
    centre: 78
  guard: { material: brass, at: -10, length: 1/4 in, height: 34, width: 14, section: oval }
  pommel: { material: bronze, at: -146, length: 12, height: 26, width: 22, centre: 78 }
`).replace("form: full", "form: hidden\n  shoulderRadius: 1.5");
    const { spec, positionOf } = readKnifeFile(text, "order.knife.yaml");
    expect(spec.tang).toEqual({ form: "hidden", shoulderRadius: 1.5, length: 128 });
    expect(spec.handle).toEqual({
      block: {
        material: { name: "African blackwood" },
        section: "octagonal",
        length: 130,
        height: [
          { at: { kind: "handle" }, is: 24 },
          { at: { kind: "butt" }, is: 27 },
        ],
        width: 21,
        cornerRadius: 6,
        centre: 78,
      },
      guard: {
        material: { name: "brass" },
        at: -10,
        length: 6.35,
        height: 34,
        width: 14,
        section: "oval",
      },
      pommel: { material: { name: "bronze" }, at: -146, length: 12, height: 26, width: 22, centre: 78 },
    });
    expect(positionOf("handle.guard.length")?.line).toBe(
      text.split("\n").findIndex((l) => l.includes("guard:")) + 1,
    );
  });

  it("takes bolsters as a list", () => {
    const { spec } = read(`  bolsters:
    - { material: nickel silver, at: -10, length: 14, height: 28, width: 20 }
    - { material: nickel silver, at: -130, length: 8, height: 30, width: 20 }
`);
    expect(spec.handle?.bolsters?.map(({ at }) => at)).toEqual([-10, -130]);
  });

  it.each([
    [
      "  liners: { material: G10, thickness: 0 }\n",
      '14:39 out-of-range | handle.liners.thickness: "0" must be more than 0',
    ],
    [
      "  slabs: { material: ash, thickness: [{ at: heel, is: 8 }] }\n",
      '14:45 unknown-place | handle.slabs.thickness[1st].at: "heel" is not a place on the tang; use handle, butt, 60 % or a distance',
    ],
    [
      "  slabs: { material: { name: ash, moisture: 300 % }, thickness: 8 }\n",
      '14:45 out-of-range | handle.slabs.material.moisture: "300 %" must be 200 % or less',
    ],
    [
      "  guard: { material: brass, at: -10, length: 6, height: 30 }\n",
      '14:10 missing | handle.guard.width is missing; it needs a length, for example 190 mm, 7 1/2 in or 3/16"',
    ],
    [
      "  bolster: { material: brass, at: -10, length: 6, height: 30, width: 12 }\n",
      "14:3 unknown-key | handle.bolster is not a key here; did you mean bolsters?",
    ],
    [
      "  block: { material: ash, section: octagon, length: 120, height: 28, width: 22 }\n",
      '14:36 unknown-word | handle.block.section: "octagon" is not known here; did you mean octagonal?',
    ],
  ])("says what is wrong: %s", (handle, expected) => {
    expect(problems(handle)).toEqual([expected]);
  });

  it("knows moisture for woods of the handle only", () => {
    const steel = SMALL.replace('steel: "1084"', "steel: { name: 1084, moisture: 8 % }");
    expect(inShort(knifeProblems(steel))[0]).toContain("steel.moisture is not a key here");
  });
});
