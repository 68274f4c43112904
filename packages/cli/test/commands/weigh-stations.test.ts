import { describe, expect, it } from "vitest";
import { EXIT } from "../../src/exit-code.js";
import { answer, flat, wideLines } from "../support/answer.js";
import { DEMO_FILES, demoWith } from "../support/demo.js";

const FILE = "harvest.knife.yaml";

async function weighed(words: readonly string[] = [], text?: string) {
  const files = text === undefined ? DEMO_FILES : { ...DEMO_FILES, [FILE]: text };
  const { code, out, err } = await answer(["weigh", FILE, ...words], { files });
  expect(code, err).toBe(EXIT.done);
  return out;
}
const json = async (words: readonly string[] = [], text?: string) =>
  JSON.parse(await weighed(["--json", ...words], text));

interface Station {
  readonly xMm: number;
  readonly contoursMm?: readonly (readonly (readonly [number, number])[])[];
}

describe("stations of a weighing", () => {
  it("go from heel to tip, with every figure that a smith measures", async () => {
    const { stations } = await json();
    expect(stations.map(({ xMm }: Station) => xMm)).toEqual([0, 56.25, 112.5, 168.75, 213.75]);
    // The demo by hand, half way: T = 4.6 − 1/0.6·½ = 3.7667, less 0.3 flank at the bevel line, 48 up; 0.5 at the edge.
    const middle = stations[2];
    const line = 4.6 - 0.5 / 0.6 - 0.3;
    expect(Object.keys(middle)).toEqual([
      "xMm",
      "thicknessMm",
      "heightMm",
      "areaMm2",
      "edgeThicknessMm",
      "aboveEdge",
      "right",
      "left",
    ]);
    expect(middle.thicknessMm).toBeCloseTo(line + 0.3, 6);
    expect(middle.edgeThicknessMm).toBe(0.5);
    const above = Object.fromEntries(
      middle.aboveEdge.map((one: { aboveMm: number; thicknessMm: number }) => [one.aboveMm, one.thicknessMm]),
    );
    expect(Object.keys(above)).toEqual(["1", "5", "10", "20"]);
    expect(above["20"]).toBeCloseTo(0.5 + ((line - 0.5) * 20) / 48, 6);
    const slope = (line - 0.5) / 2 / 48;
    expect(middle.right.bevelHeightMm).toBeCloseTo(48, 6);
    expect(middle.right.bevelAngleDeg).toBeCloseTo((Math.atan(slope) * 180) / Math.PI, 6);
    expect(middle.right.sharpeningAngleDeg).toBeCloseTo(16, 9);
    const tan = Math.tan((16 * Math.PI) / 180);
    const height = 0.25 / (tan - slope);
    expect(middle.right.edgeBevel.heightMm).toBeCloseTo(height, 6);
    expect(middle.right.edgeBevel.widthMm).toBeCloseTo(height / Math.cos((16 * Math.PI) / 180), 6);
    expect(middle.right.edgeBevel.behindMm).toBeCloseTo(2 * height * tan, 6);
    expect(middle.left).toEqual(middle.right);
  });

  it("are told anywhere on the knife with --at, with the section itself", async () => {
    const { stations } = await json(["--at", "handle, -60, 1 in, 100 %"]);
    const asked = stations.filter((one: Station) => one.contoursMm !== undefined);
    expect(asked.map(({ xMm }: Station) => xMm)).toEqual([-60, -10, 25.4, 225]);
    const [tang] = asked;
    expect(tang.right).toBeNull();
    expect(tang.edgeThicknessMm).toBeNull();
    // A rectangle: as wide as the tang is thick there, 4.6 − 2.2·50/128.
    const zs = tang.contoursMm[0].map(([z]: readonly [number, number]) => z);
    expect(Math.max(...zs) - Math.min(...zs)).toBeCloseTo(4.6 - (2.2 * 50) / 128, 6);
    expect(tang.areaMm2).toBeCloseTo(tang.heightMm * tang.thicknessMm, 6);
  });

  it("that are no place on the knife are told, with exit code 2", async () => {
    for (const [place, words] of [
      ["hel", "did you mean heel?"],
      ["400", "reaches from -138 mm to 225 mm"],
      ["60 kg", "is no place on a knife"],
    ] as const) {
      const { code, err } = await answer(["weigh", FILE, "--at", place], { files: DEMO_FILES });
      expect(code).toBe(EXIT.usage);
      expect(flat(err)).toContain(words);
    }
  });

  for (const units of ["mm", "in"]) {
    it(`fit on 80 columns in ${units}, also with faces that differ`, async () => {
      const single = demoWith(
        [
          "bevel: { form: flat, height: 48, edgeThickness: 0.5 }",
          "bevel: { form: flat, height: 48, edgeThickness: 0.5, apex: -1 }",
        ],
        ["edgeAngle: 16 deg", "edgeAngle: { right: 16 deg, left: flat }"],
      );
      for (const text of [demoWith(), single]) {
        const out = await weighed(["--units", units, "--at", "-60"], text);
        expect(wideLines(out)).toEqual([]);
        for (const word of [
          "thickness",
          "bevel height",
          "bevel angle",
          "20 mm above edge",
          "behind the edge",
        ]) {
          expect(out).toContain(word);
        }
      }
      expect(await weighed(["--units", units], single)).toMatch(/edge bevel, right +\S/);
    });
  }
});

describe("densities from memory", () => {
  it("are said in every report for people", async () => {
    for (const command of ["weigh", "check", "stock", "plan"]) {
      const { out } = await answer([command, FILE], { files: DEMO_FILES });
      expect(flat(out), command).toContain("Density from memory, not looked up: 1084");
    }
    expect(flat(await weighed())).toContain("1084 7.85 g/cm³ (from memory), European ash 0.68 g/cm³, brass");
  });

  it("are marked in every report for programs, with the source of each", async () => {
    for (const command of ["weigh", "check", "stock"]) {
      const { out } = await answer([command, FILE, "--json"], { files: DEMO_FILES });
      const { materials } = JSON.parse(out);
      expect(materials.map(({ part, name, mark }: Record<string, string>) => [part, name, mark])).toEqual([
        ["steel", "1084", "from memory"],
        ["handle.slabs", "European ash", "secondary copy"],
        ["handle.pins", "brass", "secondary copy"],
      ]);
      expect(materials[0].densityGPerCm3).toBeCloseTo(7.85, 12);
      expect(materials[1].source).toContain("wood database");
    }
  });

  it("are not said of what the file gives itself, nor of what was looked up", async () => {
    const own = demoWith(['steel: "1084"', 'steel: { name: "1084", density: 7.84 g/cm3 }']);
    expect(await weighed([], own)).not.toContain("from memory");
    expect((await json([], own)).materials[0]).toMatchObject({ mark: "given", source: "the knife file" });
    const handle = demoWith(["material: European ash", "material: canvas micarta"]);
    expect(flat(await weighed([], handle))).toContain("not looked up: 1084, canvas phenolic");
  });
});
