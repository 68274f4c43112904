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
      "atSwedgeMm",
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

  it("that are asked for twice, or shown anyway, are told once", async () => {
    const { stations } = await json(["--at", "heel, 0, 50 %"]);
    expect(stations.map(({ xMm }: Station) => xMm)).toEqual([0, 56.25, 112.5, 168.75, 213.75]);
    expect(stations.map((one: Station) => one.contoursMm !== undefined)).toEqual([
      true,
      false,
      true,
      false,
      false,
    ]);
  });

  it("tell the spine with its swedge and without it, where there is one", async () => {
    const text = demoWith([
      "edgeAngle: 16 deg",
      "swedge: { from: 150, to: tip, angle: 25 deg, thickness: 1.2 }\n  edgeAngle: 16 deg",
    ]);
    const found = (await json([], text)).stations;
    expect(found.map((one: { atSwedgeMm: number | null }) => one.atSwedgeMm)).toEqual([
      null,
      null,
      null,
      1.2,
      1.2,
    ]);
    const out = await weighed([], text);
    expect(out).toMatch(/thickness, no swedge +4\.60 mm/);
    expect(out).toMatch(/spine with swedge +– +– +– +1\.20 mm/);
    expect(await weighed()).not.toContain("swedge");
  });

  it("have no steel where a slot goes through: area and section agree", async () => {
    const text = demoWith([
      "    - { kind: thong",
      "    - { kind: lightening, at: [-40, 76], to: [-70, 76], diameter: 9 }\n    - { kind: thong",
    ]);
    const [slot, plain] = (await json(["--at", "-55, -30"], text)).stations;
    expect(slot.contoursMm).toHaveLength(2);
    expect(plain.contoursMm).toHaveLength(1);
    expect(slot.areaMm2).toBeCloseTo((slot.heightMm - 9) * slot.thicknessMm, 6);
    expect(plain.areaMm2).toBeCloseTo(plain.heightMm * plain.thicknessMm, 6);
  });

  it("say mm above the edge in inches too, where those are read", async () => {
    expect(await weighed(["--units", "in"])).toMatch(/1 mm above edge \(0\.039"\) +\S/);
  });

  it("that are no place on the knife are told, with exit code 2", async () => {
    for (const [place, words] of [
      ["hel", "did you mean heel?"],
      ["400", "reaches from −138 mm to 225 mm"],
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

describe("names of materials", () => {
  it("that the table takes for another are shown beside it, and pins without a hole are left out", async () => {
    const text = demoWith(["material: European ash", "material: ironwood"]);
    expect(flat(await weighed([], text))).toContain("desert ironwood (for ironwood) 1.21 g/cm³");
    expect(flat(await weighed([], demoWith(["1084", "10 84"])))).not.toContain("(for");
    const without = demoWith(
      ["kind: pin, at: [-26", "kind: thong, at: [-26"],
      ["kind: pin, at: [-84", "kind: thong, at: [-84"],
    );
    expect(await weighed([], without)).not.toContain("brass");
  });
});

describe("what weigh says of findings", () => {
  it("is how many there are, STOP first, and where they are told", async () => {
    const text = demoWith(
      ["at: [-26, 76], diameter: 4", "at: [-26, 76], diameter: 13"],
      [
        "pins: { material: brass }",
        "pins: { material: brass }\n  bolsters: [{ material: brass, at: -80, length: 4, height: 20, width: 30 }]",
      ],
    );
    expect(await weighed([], text)).toMatch(/\n1 STOP, \d+ warnings?, \d+ notes?: scantling check FILE\n/u);
    expect(await weighed()).toContain("\n1 warning, 4 notes: scantling check FILE\n");
  });

  it("does not say steel twice", async () => {
    expect(await weighed([], demoWith(['steel: "1084"', "steel: carbon steel"]))).toContain(
      "\ncarbon steel, edge",
    );
    expect(await weighed()).toContain("\n1084 steel, edge");
  });
});
