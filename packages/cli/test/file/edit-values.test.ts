import { describe, expect, it } from "vitest";
import { KnifeText, type NewPart, type NewSize, readKnifeFile } from "../../src/file/index.js";
import { sameButFor } from "../../src/fit/same-but-for.js";
import { DEMO_KNIFE, demoWith } from "../support/demo.js";

const HEEL: NewSize = { path: "blade.thickness[0].is", kind: "length", value: 4.3 };
const BUTT: NewSize = { path: "tang.buttThickness", kind: "length", value: 2.1 };
const SLABS: NewSize = { path: "handle.slabs.thickness", kind: "length", value: 7.5 };
const WOOD: NewSize = { path: "handle.slabs.material.density", kind: "density", value: 0.00092 };
const PART: NewPart = { name: "balance weight", mass: 29, at: { x: -73, y: 22 } };

const edit = (text: string, sizes: readonly NewSize[], part?: NewPart): string => {
  const edited = new KnifeText(text, "mm").withSizes(sizes, part);
  if (edited === undefined) throw new Error("this can be changed");
  return edited;
};

const specOf = (text: string) => readKnifeFile(text, "a.knife.yaml").spec;

/** Lines that are not the same. */
const changedLines = (before: string, after: string): string[] => {
  const old = new Set(before.split("\n"));
  return after.split("\n").filter((line) => !old.has(line));
};

describe("new sizes in a knife file", () => {
  it("are all that is changed in the demo: comments, blanks and order stay", () => {
    const after = edit(DEMO_KNIFE, [HEEL, BUTT, SLABS]);
    expect(changedLines(DEMO_KNIFE, after)).toEqual([
      "    - { at: heel, is: 4.3 }",
      "  buttThickness: 2.1                      # tapered; leave out for a parallel tang",
      "  slabs: { material: European ash, thickness: 7.5, edgeRadius: 6 }",
    ]);
    expect(after.split("\n")).toHaveLength(DEMO_KNIFE.split("\n").length);
    expect(sameButFor(specOf(DEMO_KNIFE), specOf(after), [HEEL, BUTT, SLABS], undefined)).toBe(true);
  });

  it("keep unit, fraction, tolerance, quotes and line ends", () => {
    const before = demoWith(
      ["{ at: heel, is: 4.6 }", '{ at: heel, is: "3/16 in ± 5 thou" }'],
      ["buttThickness: 2.4 ", "buttThickness: 0.24 cm "],
    ).replaceAll("\n", "\r\n");
    const after = edit(before, [{ ...HEEL, value: (25.4 * 11) / 64 }, BUTT]);
    expect(after).toContain('{ at: heel, is: "11/64 in ± 5 thou" }');
    expect(after).toContain("buttThickness: 0.21 cm ");
    expect(after.replaceAll("\r\n", "")).not.toContain("\n");
  });

  it("give a parallel tang its taper as one more key", () => {
    const before = DEMO_KNIFE.replace(/ {2}buttThickness.*\n/u, "");
    const after = edit(before, [BUTT]);
    expect(specOf(after).tang.buttThickness).toBe(2.1);
    expect(changedLines(before, after)).toEqual(["  buttThickness: 2.1"]);
    const flow = before.replace(/tang:\n[\s\S]*?(?=handle:)/u, "tang: { form: full, length: 128 }\n");
    expect(edit(flow, [BUTT])).toContain("tang: { form: full, length: 128, buttThickness: 2.1 }");
  });

  it("say that a material of another density has still to be found", () => {
    const after = edit(DEMO_KNIFE, [WOOD]);
    expect(after).toContain(
      "slabs: { material: { name: material still to be chosen, density: 0.92 }, thickness: 8",
    );
    const given = demoWith(["material: European ash", "material: { name: European ash, moisture: 10 % }"]);
    expect(edit(given, [WOOD])).toBe(after);
    expect(sameButFor(specOf(given), specOf(after), [WOOD], undefined)).toBe(true);
  });

  it("add a weight to the parts that there are, to a handle without, or to a knife without one", () => {
    const added = "{ name: balance weight, mass: 29, at: [-73, 22] }";
    expect(edit(DEMO_KNIFE, [], PART)).toContain(`  pins: { material: brass }\n  parts: [${added}]\n`);
    const withParts = demoWith([
      "  pins: { material: brass }\n",
      "  pins: { material: brass }\n  parts:\n    - { name: bead, mass: 4 g, at: [-100, 70] }\n",
    ]);
    expect(edit(withParts, [], PART)).toContain(
      `    - { name: bead, mass: 4 g, at: [-100, 70] }\n    - ${added}\n`,
    );
    const bare = DEMO_KNIFE.replace(/handle:\n[\s\S]*?(?=finish:)/u, "");
    expect(edit(bare, [], PART)).toBe(`${bare}handle: { parts: [${added}] }\n`);
    for (const text of [DEMO_KNIFE, withParts, bare])
      expect(sameButFor(specOf(text), specOf(edit(text, [], PART)), [], PART)).toBe(true);
  });

  it("are JSON where the file is", () => {
    const json = JSON.stringify({
      scantling: 1,
      units: "in",
      steel: "1084",
      blade: {
        outline: { family: "drop-point", edgeLength: 4, heelHeight: "1 1/8" },
        thickness: [
          { at: "heel", is: "5/32" },
          { at: "tip", is: 0.0625 },
        ],
        bevel: { form: "flat", height: "full", edgeThickness: 0.02 },
        edgeAngle: { included: 36 },
      },
      tang: { form: "full", length: 4.25 },
    });
    const angle: NewSize = { path: "blade.edgeAngle", kind: "angle", value: (17.5 * Math.PI) / 180 };
    const tip: NewSize = { path: "blade.thickness[1].is", kind: "length", value: 25.4 / 20 };
    const butt: NewSize = { path: "tang.buttThickness", kind: "length", value: (25.4 * 3) / 32 };
    const after =
      new KnifeText(json, "in").withSizes([angle, tip, butt, { ...HEEL, value: (25.4 * 9) / 64 }], PART) ??
      "";
    const read = JSON.parse(after);
    expect(read.blade.edgeAngle).toEqual({ included: 35 });
    expect(read.blade.thickness).toEqual([
      { at: "heel", is: "9/64" },
      { at: "tip", is: 0.05 },
    ]);
    expect(read.tang.buttThickness).toBe("3/32");
    expect(read.handle.parts).toHaveLength(1);
    expect(specOf(after).handle?.parts?.[0]?.mass).toBeCloseTo(29, 6);
  });

  it("write the share of a crown where the file has it", () => {
    const before = demoWith([
      "bevel: { form: flat,",
      "bevel: { form: convex, crown: [{ at: heel, is: 8 % }, { at: tip, is: 6 % }],",
    ]);
    const crown: NewSize = { path: "blade.bevel.crown.share[1].is", kind: "share", value: 0.05 };
    expect(edit(before, [crown])).toContain("crown: [{ at: heel, is: 8 % }, { at: tip, is: 5 % }]");
  });

  it("are none where a size stands in a way that cannot be changed", () => {
    expect(
      new KnifeText(DEMO_KNIFE, "mm").withSizes([{ ...HEEL, path: "blade.swedge.angle", kind: "angle" }]),
    ).toBeUndefined();
  });
});

describe("whether nothing else was changed", () => {
  it("sees every other change", () => {
    const before = specOf(DEMO_KNIFE);
    const after = specOf(edit(DEMO_KNIFE, [HEEL]));
    expect(sameButFor(before, after, [HEEL], undefined)).toBe(true);
    expect(sameButFor(before, after, [], undefined)).toBe(false);
    expect(sameButFor(before, before, [HEEL], undefined)).toBe(false);
    expect(sameButFor(before, after, [{ ...HEEL, value: 4.2 }], undefined)).toBe(false);
    expect(sameButFor(before, specOf(edit(DEMO_KNIFE, [HEEL], PART)), [HEEL], undefined)).toBe(false);
    expect(sameButFor(before, after, [HEEL], PART)).toBe(false);
    expect(sameButFor(before, after, [HEEL, { ...BUTT, path: "tang.drop" }], undefined)).toBe(false);
  });
});
