import { describe, expect, it } from "vitest";
import { EXIT } from "../../src/exit-code.js";
import { readKnifeFile } from "../../src/file/index.js";
import { answer, flat, wideLines } from "../support/answer.js";

/** Types lines on a terminal; a line is typed after each question. */
const type = (typed: readonly string[], words: readonly string[] = [], files: Record<string, string> = {}) =>
  answer(["new", ...words], { typed, files });

const read = (io: { disk: { text(path: string): string } }, name: string) =>
  readKnifeFile(io.disk.text(`/shop/${name}`), name);

describe("new on a terminal", () => {
  it("asks, tells each answer in both systems of units, and writes what was answered", async () => {
    const typed = [
      "bowie",
      "in",
      "9 1/4",
      "45 mm",
      "0.250",
      "hidden",
      "80 crv2",
      "walnut",
      "1 lb 4 oz",
      "first",
    ];
    const { code, out, err, io } = await type(typed);
    expect(code).toBe(EXIT.done);
    expect(out).toBe("first.knife.yaml\n");
    for (const echo of [
      '= 9 1/4" (235.0 mm)',
      '= 1 49/64" (45.0 mm)',
      '= 0.250" (6.35 mm)',
      "= 80CrV2, 0.2836 lb/in³ (7.85 g/cm³)",
      "= black walnut,",
      "= 1 lb 4 oz (567 g)",
    ])
      expect(err).toContain(echo);
    expect(wideLines(err)).toEqual([]);
    const { units, spec, order } = read(io, "first.knife.yaml");
    expect(units).toBe("in");
    // 9 1/4 in of 25.4 mm.
    expect(spec.blade.outline).toMatchObject({ family: "clip-point", edgeLength: 234.95, heelHeight: 45 });
    expect(spec.blade.thickness[0]?.is).toBeCloseTo(6.35, 9);
    expect([spec.tang.form, spec.steel.name, spec.handle?.block?.material.name]).toEqual([
      "hidden",
      "80CrV2",
      "black walnut",
    ]);
    // 20 oz of 28.349523125 g.
    expect(order.asks).toMatchObject([{ name: "mass", test: { kind: "below", limit: 566.9904625 } }]);
    expect((await answer(["check", "first.knife.yaml"], io)).code).toBe(EXIT.done);
  });

  it("takes what stands in brackets where nothing is typed: the file that --family writes", async () => {
    const asked = await type(["", "", "", "", "", "", "", "", "", ""]);
    expect(asked.out).toBe("drop-point.knife.yaml\n");
    const usual = await answer(["new", "--family", "drop-point"], { stdin: "" });
    expect(asked.io.disk.text("/shop/drop-point.knife.yaml")).toBe(
      usual.io.disk.text("/shop/drop-point.knife.yaml"),
    );
    for (const usualWord of [
      "[drop-point]",
      "[mm]",
      "[100]",
      "[28]",
      "[3.6]",
      "[full]",
      "[1084]",
      "[European ash]",
      "[none]",
    ])
      expect(asked.err).toContain(usualWord);
  });

  it("explains on ?, and asks again", async () => {
    const typed = ["?", "", "?", "", "?", "", "?", "", "?", "", "?", "", "?", "", "?", "", "?", "", "?", ""];
    const { code, err } = await type(typed);
    expect(code).toBe(EXIT.done);
    for (const words of [
      "full belly below it",
      "What numbers without a unit are in",
      "Heel to tip",
      "Usual for its type: 75.0 mm to 120.0 mm",
      "hidden: inside the handle",
      "behind a comma",
      "Usual for its type: 100 g to 220 g",
      "It ends in .knife.yaml",
    ])
      expect(flat(err)).toContain(words);
    expect(wideLines(err)).toEqual([]);
  });

  it("explains what cannot be, and asks again", async () => {
    const typed = [
      ...["tantoo", "tanto"],
      ...["cm", "mm"],
      ...["long", "3/4", "11,5", "24 in/cm", "115"],
      ...["-28", "28"],
      ...["0", "4"],
      ...["h1dden", "hid"],
      ...["1048", "brass", "Q-17", "Q-17, heavy", "Q-17, 7.8 g/cm3"],
      ...["1084", "ashh", "G10"],
      ...["light", "150"],
      ...["a/", "x.yaml", "mine"],
    ];
    const { code, err, io } = await type(typed);
    expect(code).toBe(EXIT.done);
    for (const words of [
      '"tantoo" is not known here; did you mean tanto?',
      '"cm" is not known here; write mm, in.',
      '"h1dden" is not known here; did you mean hidden?',
      '"1048" is not in the table. Did you mean 1084?',
      '"brass" is no steel.',
      '"Q-17" is not in the table. Or type its density behind a comma: Q-17, 7.8 g/cm3.',
      '"1084" is a steel.',
      '"a/" is no file name. Give one, such as hunter.knife.yaml.',
      "x.yaml is no name for a knife file: it ends in .knife.yaml.",
    ])
      expect(flat(err)).toContain(words);
    // What files say of sizes that they cannot read.
    for (const size of ["long", "3/4", "11,5", "in/cm", "-28", "heavy", "light"])
      expect(flat(err)).toContain(`"${size}"`);
    expect(flat(err)).toContain('"0" must be more than 0.');
    const { spec } = read(io, "mine.knife.yaml");
    expect(spec.steel.density).toBeCloseTo(0.0078, 12);
    expect(spec.tang.form).toBe("hidden");
  });

  it("takes a bare number that is far off for a slip of units; with its unit it is meant", async () => {
    const { err, io } = await type(["chefs", "", "24", "24 cm", "5", "50", "", "", "", "", "", "k"]);
    expect(flat(err)).toContain(
      '24.0 mm (15/16") is far from what is usual, 180.0 mm to 270.0 mm. If it is meant, type it with its unit: 24 mm.',
    );
    expect(read(io, "k.knife.yaml").spec.blade.outline).toMatchObject({ edgeLength: 240, heelHeight: 50 });
    const meant = await type(["chefs", "", "40 mm", "", "", "", "", "", "", "k"]);
    expect(flat(meant.err)).toContain("usual is 180.0 mm to 270.0 mm, kept as typed");
  });

  it("asks for the sizes once more where they make no knife", async () => {
    // Thinner at the spine than at the edge.
    const { code, err, io } = await type(["", "", "", "", "0.2 mm", "", "", "", "3.6", "", "", "", "", "k"]);
    expect(code).toBe(EXIT.done);
    expect(err).toContain("These sizes make no knife. Once more:");
    expect(read(io, "k.knife.yaml").spec.blade.thickness[0]?.is).toBe(3.6);
  });

  it.each([0, 1, 2, 3, 4, 5, 6, 7, 8, 9])(
    "leaves nothing behind where it ends before answer %i",
    async (answers) => {
      const { code, out, err, written } = await type(new Array<string>(answers).fill(""));
      expect(code).toBe(EXIT.usage);
      expect([out, written]).toEqual(["", []]);
      expect(err).toContain("stopped; nothing was written");
    },
  );

  it("does not ask for nothing: a name that is taken is refused before, one that is typed is asked again", async () => {
    const files = { "a.knife.yaml": "" };
    const before = await type([], ["a"], files);
    expect(before.code).toBe(EXIT.write);
    expect(before.err).not.toContain("What kind");
    const typed = await type(["", "", "", "", "", "", "", "", "", "a", "b"], [], files);
    expect(flat(typed.err)).toContain("a.knife.yaml exists; nothing was written. Give another name");
    expect(typed.out).toBe("b.knife.yaml\n");
  });

  it.each([[["--family", "seax"]], [["--json"]], [["shop.yaml"]]])("asks nothing with %s", async (words) => {
    const { code, err } = await type([], words);
    expect(code).toBe(EXIT.done);
    expect(err).not.toContain("[");
  });
});
