import { checkLayout, type DrillingModel, drillingContents, layOutSheet, papersFor } from "@scantling/render";
import { describe, expect, it } from "vitest";
import { loadJob } from "../../src/load.js";
import { measure } from "../../src/measure.js";
import { makeDrillingModel } from "../../src/models/drilling-model.js";
import { DEMO_KNIFE, demoWith } from "../support/demo.js";
import { fakeIo } from "../support/fake-io.js";

const FILE = "harvest.knife.yaml";

const modelOf = async (knife: string, drills = ""): Promise<DrillingModel> => {
  const files = { [FILE]: knife, ...(drills === "" ? {} : { "shop.yaml": `drills: ${drills}\n` }) };
  const measured = measure(await loadJob(fakeIo({ files }), FILE, {}));
  const model = makeDrillingModel(measured);
  if (model === undefined) throw new Error("nothing is drilled");
  return model;
};

describe("the demo's drill layout", () => {
  it("lays every centre off from two edges: the butt end at −138, the top at 92, the bottom by its two straight lines", async () => {
    const { holes, levelEdge, forged } = await modelOf(DEMO_KNIFE);
    expect(holes.map(({ places }) => places.map(({ end, along }) => [end, along]))).toEqual([
      [["butt end", 112]],
      [["butt end", 54]],
      [["butt end", 22]],
    ]);
    // Heights of 28, 25 and 30 at −10, −74 and −138: under −26 the bottom is at 64 + 3·16/64, under −84 at
    // 67 − 5·10/64, under −116 at 67 − 5·42/64.
    const bottoms = [64 + (3 * 16) / 64, 67 - (5 * 10) / 64, 67 - (5 * 42) / 64];
    for (const [index, { places }] of holes.entries()) {
      expect(places[0]?.fromTop).toBeCloseTo(16, 9);
      expect(places[0]?.fromBottom).toBeCloseTo(76 - (bottoms[index] ?? 0), 9);
    }
    expect(levelEdge).toEqual({ side: "top", y: 92, rear: -138 });
    expect(forged).toEqual({ outline: 1.5, butt: 3 });
  });

  it("says how much steel is left and how far the next centre is", async () => {
    const { holes } = await modelOf(DEMO_KNIFE);
    // Square to the leaning bottom edge: 3 in 64 under the first hole, 5 in 64 under the others.
    const left = [
      11.25 * Math.cos(Math.atan(3 / 64)) - 2,
      (9 + 50 / 64) * Math.cos(Math.atan(5 / 64)) - 2,
      (9 + 210 / 64) * Math.cos(Math.atan(5 / 64)) - 3,
    ];
    for (const [index, { rimToEdge }] of holes.entries()) expect(rimToEdge).toBeCloseTo(left[index] ?? 0, 9);
    expect(holes.map(({ pitch }) => pitch)).toEqual([undefined, 58, 32]);
  });

  it("gives each hole the shop's smallest drill that makes it, and none without one", async () => {
    const drills = async (given?: string) =>
      (await modelOf(DEMO_KNIFE, given)).holes.map(({ drill }) => drill);
    // Pins of 4 in holes of 4; a thong hole of 6.
    expect(await drills("[4 mm, 6.1 mm]")).toEqual(["4 mm", "4 mm", "6.1 mm"]);
    expect(await drills("[4.1 mm]")).toEqual(["4.1 mm", "4.1 mm", undefined]);
    expect(await drills("[]")).toEqual([undefined, undefined, undefined]);
  });

  it("tells the play of each pin, the hole as drilled less the pin of 4 mm, and none where no pin goes", async () => {
    const plays = async (given?: string) =>
      (await modelOf(DEMO_KNIFE, given)).holes.map(({ play }) => play?.toFixed(9));
    expect(await plays("[4.1 mm, 6.1 mm]")).toEqual(["0.100000000", "0.100000000", undefined]);
    // Without a drill the hole is as it is drawn.
    expect(await plays("[]")).toEqual(["0.000000000", "0.000000000", undefined]);
  });
});

describe("other layouts", () => {
  it("lay a hole in the blade off from the heel, and both ends of a slot", async () => {
    const knife = demoWith(
      [
        "  edgeAngle: 16 deg",
        "  holes:\n    - { kind: hanging, at: [205, 80], diameter: 10 }\n  edgeAngle: 16 deg",
      ],
      [
        "{ kind: thong, at: [-116, 76], diameter: 6 }",
        "{ kind: thong, at: [-116, 76], to: [-106, 80], diameter: 6 }",
      ],
    );
    const model = await modelOf(knife);
    const [hanging, ...others] = model.holes;
    expect(hanging?.places).toMatchObject([{ end: "heel", along: 205 }]);
    expect(hanging?.places[0]?.fromTop).toBeCloseTo(12, 9);
    // 12 to the spine less the radius of 5.
    expect(hanging?.rimToEdge).toBeCloseTo(7, 9);
    const slot = others.at(-1);
    expect(slot?.places.map(({ along }) => along)).toEqual([22, 32]);
    // The end at (−106, 80) is 12 from the top, less a radius of 3.
    expect(slot?.rimToEdge).toBeCloseTo(9, 6);
    const pages = layOutSheet(drillingContents(model), { kind: "smallest", papers: papersFor("mm") });
    expect(pages.flatMap(checkLayout)).toEqual([]);
  });

  it("are none where nothing is drilled", async () => {
    const holes = / {2}holes:[\s\S]*?(?=handle:)/.exec(DEMO_KNIFE)?.[0] ?? "";
    const pins = "  pins: { material: brass }\n";
    const knife = demoWith([holes, ""], [pins, ""]);
    const measured = measure(await loadJob(fakeIo({ files: { [FILE]: knife } }), FILE, {}));
    expect(makeDrillingModel(measured)).toBeUndefined();
  });
});
