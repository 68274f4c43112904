import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { EXIT } from "../../src/exit-code.js";
import { readShopFile } from "../../src/file/index.js";
import { answer, flat, wideLines } from "../support/answer.js";
import { DEMO_KNIFE, DEMO_SHOP } from "../support/demo.js";

interface CutListDocument {
  readonly schema: string;
  readonly kerfMm: number;
  readonly minKeepMm: number;
  readonly orders: readonly {
    readonly order: string;
    readonly served: boolean;
    readonly plan: { readonly bar: string; readonly bars: number; readonly cutLengthMm: number } | null;
    readonly missing: readonly { readonly bar: string; readonly lengthMm: number; readonly count: number }[];
    readonly instead?: { readonly bar: string; readonly bars: number; readonly cutLengthMm: number };
  }[];
  readonly cutLists: readonly {
    readonly bar: string;
    readonly bars: readonly {
      readonly barLengthMm?: number;
      readonly pieces: readonly { readonly order: string; readonly lengthMm: number }[];
      readonly leftoverMm?: number;
      readonly kept: boolean;
    }[];
    readonly takenMm: number;
    readonly provenOptimal: boolean;
    readonly takenAtLeastMm: number;
    readonly rackAfter: readonly {
      readonly name: string;
      readonly lengthMm: number;
      readonly count: number;
    }[];
  }[];
}

/** The demo's knife, with the code of another order. */
const knife = (code: string): string => DEMO_KNIFE.replace("code: MG-14", `code: ${code}`);
const shop = (rack: readonly string[], keys = ""): string =>
  `scantling: 1\nunits: mm\nkerf: 2\nminKeep: 100\n${keys}rack:\n${rack.map((line) => `  - ${line}\n`).join("")}`;
const bar = (length: string, count = 1) =>
  `{ size: 1/4 x 2 in, steel: "1084", length: ${length}, count: ${count} }`;

const world = (rack: readonly string[], codes: readonly string[] = ["A-1", "B-2", "C-3"]) => ({
  files: {
    ...Object.fromEntries(codes.map((code) => [`${code}.knife.yaml`, knife(code)])),
    "shop.yaml": shop(rack),
  },
});
const files = (...codes: readonly string[]): string[] => codes.map((code) => `${code}.knife.yaml`);

async function cutList(rack: readonly string[], ...codes: readonly string[]): Promise<CutListDocument> {
  const { code, out, err } = await answer(["stock", ...files(...codes), "--json"], world(rack, codes));
  expect(err).toBe("");
  expect(code).toBe(EXIT.done);
  return JSON.parse(out);
}

describe("one cut list over several orders", () => {
  it("cuts every order's best plan, bar by bar, and loses no steel", async () => {
    const { schema, kerfMm, minKeepMm, orders, cutLists } = await cutList(
      [bar("900"), bar("500"), bar("345")],
      "A-1",
      "B-2",
    );
    expect(schema).toBe("scantling/cut-list/1");
    expect([kerfMm, minKeepMm]).toEqual([2, 100]);
    expect(cutLists).toHaveLength(1);
    const [list] = cutLists;
    const wanted = orders.flatMap(({ order, plan }) =>
      Array.from({ length: plan?.bars ?? 0 }, () => ({ order, lengthMm: plan?.cutLengthMm })),
    );
    const cut = list?.bars.flatMap(({ pieces }) => pieces) ?? [];
    const byOrder = (a: { order: string }, b: { order: string }): number => (a.order < b.order ? -1 : 1);
    expect([...cut].sort(byOrder)).toEqual(wanted.sort(byOrder));
    for (const { barLengthMm = 0, pieces, leftoverMm = 0, kept } of list?.bars ?? []) {
      const steel = pieces.reduce((sum, { lengthMm }) => sum + lengthMm, 0);
      // What is neither piece nor leftover is saw cuts, the last one perhaps beside the bar.
      const cuts = barLengthMm - steel - leftoverMm;
      expect(cuts).toBeGreaterThanOrEqual((pieces.length - 1) * kerfMm - 1e-6);
      expect(cuts).toBeLessThanOrEqual(pieces.length * kerfMm + 1e-6);
      expect(kept).toBe(leftoverMm >= 100);
    }
    expect(list?.provenOptimal).toBe(true);
    expect(list?.takenAtLeastMm).toBe(list?.takenMm);
  });

  it("never gives one bar to two orders, and says who is left without and what is missing", async () => {
    // Three pieces of about 160 mm each.
    const { orders, cutLists } = await cutList([bar("500"), bar("340")], "A-1", "B-2");
    const [first, second] = orders;
    expect(first).toMatchObject({ order: "A-1", served: true, missing: [] });
    expect(second).toMatchObject({ order: "B-2", served: false });
    expect(second?.missing).toEqual([{ bar: "1/4 x 2 in", lengthMm: second?.plan?.cutLengthMm, count: 1 }]);
    const [list] = cutLists;
    expect(list?.bars.flatMap(({ pieces }) => pieces.map(({ order }) => order))).toEqual([
      "A-1",
      "A-1",
      "A-1",
    ]);
    // The one bar that holds all three, not the two that are 840 mm.
    expect(list?.takenMm).toBe(500);
    expect(list?.rackAfter).toEqual([expect.objectContaining({ lengthMm: 340, count: 1 })]);
  });

  it("serves first who is named first", async () => {
    const { orders } = await cutList([bar("500")], "B-2", "A-1");
    expect(orders.map(({ order, served }) => [order, served])).toEqual([
      ["B-2", true],
      ["A-1", false],
    ]);
  });

  it("proposes for an order left without what the others leave, each bar once", async () => {
    const other = '{ size: 5 x 40 mm, steel: "1084", length: 850 }';
    const { orders } = await cutList([bar("500"), other], "A-1", "B-2", "C-3");
    expect(orders[0]?.served).toBe(true);
    expect(orders[1]).toMatchObject({ served: false, instead: { bar: "5 x 40 mm" } });
    // Five of about 165 mm leave nothing for the third.
    expect(orders[2]).not.toHaveProperty("instead");
    const { out } = await answer(["stock", ...files("A-1", "B-2", "C-3")], world([bar("500"), other]));
    expect(flat(out)).toContain("B-2: 3 pieces of 160 mm of 1/4 x 2 in too few, so nothing is cut for it.");
    expect(flat(out)).toMatch(/From what the others leave it could be \d pieces, each .* of 5 x 40 mm/);
    expect(flat(out)).toContain("Nothing that the others leave on the rack would do instead.");
  });

  it("counts an order that is named twice as two", async () => {
    const { out } = await answer(["stock", ...files("A-1", "A-1"), "--json"], world([bar("1100")]));
    const { orders, cutLists }: CutListDocument = JSON.parse(out);
    expect(orders.map(({ order }) => order)).toEqual(["A-1", "A-1 (2)"]);
    expect(cutLists[0]?.bars[0]?.pieces).toHaveLength(6);
  });

  it("takes from a bar without a length what the others do not hold", async () => {
    const { cutLists } = await cutList(['{ size: 1/4 x 2 in, steel: "1084" }', bar("340")], "A-1", "B-2");
    const [inHand, endless] = cutLists[0]?.bars ?? [];
    expect(inHand?.pieces).toHaveLength(2);
    expect(endless?.pieces).toHaveLength(4);
    expect(endless).not.toHaveProperty("barLengthMm");
    expect(endless).not.toHaveProperty("leftoverMm");
  });
});

describe("bars a little too high for some of the orders", () => {
  const small = (code: string, edge: number, heel: number): string =>
    `scantling: 1
order: { code: ${code} }
units: mm
steel: 80CrV2
blade:
  outline: { family: drop-point, edgeLength: ${edge}, heelHeight: ${heel} }
  ricasso: 8
  thickness: [ { at: heel, is: 3.2 }, { at: tip, is: 1.5 } ]
  bevel: { form: flat, height: full, edgeThickness: 0.4 }
  edgeAngle: 18 deg
tang: { form: full, length: 100 }
handle: { slabs: { material: walnut, thickness: 7 } }
`;
  const rackOf = (...lengths: readonly number[]) => ({
    files: {
      "tall.knife.yaml": small("tall", 150, 38),
      "low.knife.yaml": small("low", 95, 32),
      "shop.yaml": shop(lengths.map((length) => `{ size: 5 x 40 mm, steel: 80CrV2, length: ${length} }`)),
    },
  });
  const argv = ["stock", "tall.knife.yaml", "low.knife.yaml", "low.knife.yaml"];

  it("are sawn into one piece each, leftovers first, with a warning where they have to be narrowed", async () => {
    const { out } = await answer([...argv, "--json"], rackOf(500, 310));
    const { orders, cutLists }: CutListDocument = JSON.parse(out);
    expect(orders.map(({ plan, served }) => [plan?.bars, served])).toEqual([
      [1, true],
      [1, true],
      [1, true],
    ]);
    expect(cutLists.flatMap(({ bars }) => bars.flatMap(({ pieces }) => pieces))).toHaveLength(3);
    const { out: text } = await answer(argv, rackOf(500, 310));
    // Only the low knives: the tall one stands as high as the bar.
    expect(flat(text).match(/warning: On edge the bar is 8 times as high as thick/gu)).toHaveLength(2);
    expect(flat(text)).toMatch(/saw or grind it down to 38\.5 mm first and then cut it \d+ mm long/u);
  });

  it("are proposed, with that care, to an order that is left without bars of its own", async () => {
    const given = rackOf(500, 310);
    const own = given.files["shop.yaml"].concat("  - { size: 6 x 30 mm, steel: 80CrV2, length: 150 }\n");
    const { out } = await answer(argv, { files: { ...given.files, "shop.yaml": own } });
    expect(flat(out)).toMatch(
      /it could be 1 piece .* of 5 x 40 mm; nothing to weld; on edge it is 8 times as high as thick/u,
    );
  });
});

describe("the rack afterwards", () => {
  for (const units of ["mm", "in"] as const) {
    it(`can be pasted into a shop file in ${units} and is what was not cut`, async () => {
      const rack = [
        bar("36 in", 3),
        bar("345"),
        '{ name: "odd, \\"old\\" bar: 2 #1", width: 50.8, thickness: 6.35, steel: "1084", length: 930.25 }',
      ].map((line) => (units === "mm" ? line : line.replace(/(length: 345|50\.8|6\.35|930\.25)/g, "$1 mm")));
      const given = {
        files: {
          ...world([]).files,
          "shop.yaml": shop(rack)
            .replace("units: mm", `units: ${units}`)
            .replace("kerf: 2", "kerf: 2 mm")
            .replace("minKeep: 100", "minKeep: 100 mm"),
        },
      };
      const { out } = await answer(["stock", ...files("A-1", "B-2", "C-3")], given);
      const json = await answer(["stock", ...files("A-1", "B-2", "C-3"), "--json"], given);
      const text = out.slice(out.indexOf("RACK AFTERWARDS"));
      const lines = text.slice(text.indexOf("\n  - "), text.indexOf("\n\n"));
      const read =
        readShopFile(`scantling: 1\nunits: ${units}\nrack:${lines}\n`, "pasted.yaml").shop.rack ?? [];
      const { cutLists }: CutListDocument = JSON.parse(json.out);
      const after = cutLists[0]?.rackAfter ?? [];
      expect(after.length).toBeGreaterThan(1);
      expect(read.map(({ name, count = 1 }) => [name, count])).toEqual(
        after.map(({ name, count }) => [name, count]),
      );
      read.forEach(({ length = 0, width, thickness }, i) => {
        expect(length).toBeCloseTo(after[i]?.lengthMm ?? Number.NaN, 2);
        expect([width, thickness]).toEqual([50.8, 6.35]);
      });
      // Bars that were not touched are all there.
      const opened = cutLists[0]?.bars.length ?? 0;
      const kept = cutLists[0]?.bars.filter((one) => one.kept).length ?? 0;
      expect(after.reduce((sum, { count }) => sum + count, 0)).toBe(5 - opened + kept);
    });
  }

  it("is told on 80 columns, in mm and inches", async () => {
    for (const units of ["mm", "in"]) {
      const { out } = await answer(
        ["stock", ...files("A-1", "B-2", "C-3"), "--units", units],
        world([bar("36 in", 2), bar("345"), '{ size: 5 x 40 mm, steel: "1084", length: 900, price: 8.75 }']),
      );
      expect(wideLines(out)).toEqual([]);
      expect(out).not.toMatch(/NaN|undefined|Infinity/);
      expect(out).toContain("Proven best");
    }
  });
});

describe("a stack of several steels among the orders", () => {
  const bowie = readFileSync(
    fileURLToPath(
      new URL("../../../../examples/pattern-welded-bowie/pattern-welded-bowie.knife.yaml", import.meta.url),
    ),
    "utf8",
  );
  const dark = '{ size: 1/8 x 1 3/4 in, steel: "1084", length: 2000 }';
  const bright = (length: number) =>
    `{ width: 1.75 in, thickness: 1.57, name: bright, steel: 15N20, length: ${length} }`;
  const run = async (rack: readonly string[]): Promise<CutListDocument> => {
    const { out } = await answer(["stock", "bowie.knife.yaml", "A-1.knife.yaml", "--json"], {
      files: { "bowie.knife.yaml": bowie, "A-1.knife.yaml": knife("A-1"), "shop.yaml": shop(rack) },
    });
    return JSON.parse(out);
  };

  it("is cut from the bars of each steel", async () => {
    const { orders, cutLists } = await run([dark, bright(1500), bar("600")]);
    expect(orders.map(({ served }) => served)).toEqual([true, true]);
    expect(cutLists.map((list) => list.bars.flatMap(({ pieces }) => pieces).length)).toEqual([7, 6, 3]);
  });

  it("gives back the bars of one steel where it lacks another", async () => {
    const { orders, cutLists } = await run([dark, bright(300), bar("600")]);
    expect(orders.map(({ served }) => served)).toEqual([false, true]);
    expect(orders[0]?.missing[0]?.bar).toBe("bright");
    expect(cutLists.map((list) => list.bar)).toEqual(["1/4 x 2 in"]);
  });
});

describe("what cannot be one list", () => {
  it("orders of two shops, unless one is named", async () => {
    const two = {
      files: {
        "a/A-1.knife.yaml": knife("A-1"),
        "a/shop.yaml": DEMO_SHOP,
        "b/B-2.knife.yaml": knife("B-2"),
        "b/shop.yaml": DEMO_SHOP,
      },
    };
    const argv = ["stock", "a/A-1.knife.yaml", "b/B-2.knife.yaml"];
    const { code, err } = await answer(argv, two);
    expect(code).toBe(EXIT.usage);
    expect(flat(err)).toContain("different shops: a/shop.yaml, b/shop.yaml");
    expect(err).toContain("--shop FILE");
    expect((await answer([...argv, "--shop", "a/shop.yaml"], two)).code).toBe(EXIT.done);
  });

  it("two orders, or the shop, from standard input", async () => {
    for (const argv of [
      ["-", "-"],
      [...files("A-1", "B-2"), "--shop", "-"],
    ]) {
      const { code } = await answer(["stock", ...argv], { ...world([]), stdin: DEMO_KNIFE });
      expect(code).toBe(EXIT.usage);
    }
    const { code } = await answer(["stock", "-", ...files("B-2")], {
      ...world([bar("1100")]),
      stdin: knife("A-1"),
    });
    expect(code).toBe(EXIT.done);
  });
});

it("one order alone is told as ever, with the bars that its pieces come from", async () => {
  const { out } = await answer(
    ["stock", ...files("A-1"), "--json"],
    world([bar("500"), bar("345"), bar("180")]),
  );
  const document = JSON.parse(out);
  expect(document.schema).toBe("scantling/stock/1");
  const [best] = document.plans;
  // 345 and 180 together are longer than the 500 that hold all three.
  expect(best.cuts).toEqual([
    { bar: "1/4 x 2 in", barLengthMm: 500, pieces: 3, leftoverMm: 500 - 3 * (best.cutLengthMm + 2) },
  ]);
});
