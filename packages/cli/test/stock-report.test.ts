import { describe, expect, it } from "vitest";
import { EXIT } from "../src/exit-code.js";
import { answer, flat } from "./support/answer.js";
import { DEMO_FILES, DEMO_KNIFE } from "./support/demo.js";

const FILE = "harvest.knife.yaml";
const rack = (...lines: readonly string[]): string =>
  `scantling: 1\nunits: mm\nrack:\n${lines.map((line) => `  - ${line}\n`).join("")}`;
const withShop = (shop: string) => ({ ...DEMO_FILES, "shop.yaml": shop });

describe("bars of other steels", () => {
  const shop = rack(
    "{ size: 6 x 40 mm, steel: 1o84 }",
    "{ size: 8 x 40 mm, steel: 1o84 }",
    "{ size: 6 x 50 mm, steel: 5160 }",
  );

  it("are refused with both names", async () => {
    const { out } = await answer(["stock", FILE], { files: withShop(shop) });
    expect(flat(out)).toMatch(
      /The bar is of another steel than the knife \(bar: (1o84|5160); knife: 1084\)\. Nearest/,
    );
    const checked = await answer(["check", FILE], { files: withShop(shop) });
    expect(flat(checked.out)).toContain("another steel than the knife (bar: 1o84; knife: 1084).");
  });

  it("are noted once where the table does not know their steel, with the nearest name and the line", async () => {
    const { out } = await answer(["check", FILE, "--json"], { files: withShop(shop) });
    const notes = JSON.parse(out).findings.filter(
      ({ code }: { code: string }) => code === "bar-steel-unknown",
    );
    expect(notes).toHaveLength(1);
    expect(notes[0]).toMatchObject({ severity: "note", path: "rack[0]", file: "shop.yaml", line: 4 });
    expect(notes[0].message).toContain("1o84");
    expect(notes[0].message).toContain("Did you mean 1084");
  });

  it("are not noted where the knife is of the same unknown steel", async () => {
    const knife = DEMO_KNIFE.replace('steel: "1084"', "steel: { name: 1o84, density: 7.85 g/cm3 }");
    const { out } = await answer(["check", FILE], { files: { [FILE]: knife, "shop.yaml": shop } });
    expect(out).not.toContain("table of materials");
  });
});

describe("no bars known", () => {
  it("says in stock too what to write, and where", async () => {
    const { out } = await answer(["stock", FILE], { files: { [FILE]: DEMO_KNIFE } });
    expect(flat(out)).toContain(
      "List yours under rack: in shop.yaml beside the knife file; scantling new shop.yaml",
    );
    const checked = await answer(["check", FILE], { files: { [FILE]: DEMO_KNIFE } });
    expect(flat(checked.out)).toContain("shop.yaml beside the knife file");
  });

  it("names the option where the knife comes from standard input", async () => {
    const { out } = await answer(["stock", "-"], { stdin: DEMO_KNIFE });
    expect(flat(out)).toContain("in the current folder (or another file, named with --shop FILE)");
  });

  it("names the shop file that has no rack", async () => {
    const { out } = await answer(["stock", FILE], { files: withShop("scantling: 1\nunits: in\n") });
    expect(flat(out)).toContain(
      "List yours under rack: in shop.yaml, a line such as - size: 1/4 x 2 in for each.",
    );
  });
});

describe("bars that are too short", () => {
  const thick = "{ size: 10 x 60 mm, length: 60, count: 3 }";
  const inHand = withShop(rack("{ size: 3 x 20 mm, length: 60 }", thick));
  const enough = withShop(rack("{ size: 3 x 20 mm }", "{ size: 10 x 60 mm }"));

  it("are told with the stack that longer ones would be cut for, in stock and in the STOP", async () => {
    const { out: json } = await answer(["stock", FILE, "--json"], { files: enough });
    const [{ bars, bar, cutLengthMm }] = JSON.parse(json).plans;
    const wanted = `With bars long enough: ${bars} × ${cutLengthMm} mm of ${bar}.`;
    expect(flat((await answer(["stock", FILE], { files: inHand })).out)).toContain(wanted);
    for (const command of ["check", "plan"]) {
      const { out, code } = await answer([command, FILE], { files: inHand });
      expect(code).toBe(EXIT.notMet);
      // More stacks fail by their height, but steel is what can be had.
      expect(flat(out)).toMatch(
        /STOP: Nothing on the rack .* The bars in hand are too short\. Pieces wanted: /,
      );
      expect(flat(out)).toContain(wanted);
    }
  });

  it("leave the reason that refused most where no stack would do", async () => {
    const files = withShop(rack("{ size: 3 x 20 mm }"));
    const { out } = await answer(["check", FILE], { files });
    expect(flat(out)).toMatch(/STOP: Nothing on the rack .* Nearest: \d+ × 3 x 20 mm\./);
  });

  it("leave a forge card that says that there is no plan", async () => {
    const { io } = await answer(["plan", FILE, "--out", "p"], { files: inHand });
    expect(flat(io.disk.text("/shop/p/setup.txt"))).toContain("No plan: nothing on the rack");
  });
});

describe("losses that no shop has", () => {
  const files = withShop(`${rack("{ size: 10 x 60 mm }")}losses:\n  scalePerHeat: 60 %\n`);

  it("are warned of with the usual range and their line, before any length, and stop nothing", async () => {
    const { out, code } = await answer(["stock", FILE], { files });
    expect(code).toBe(EXIT.done);
    const said = flat(out);
    expect(said).toContain(
      "warning: 60 % is far more than is usually lost of the mass in a forging heat: 0.6 % to 2 %.",
    );
    expect(said).toContain("(losses.scalePerHeat, shop.yaml:6:");
    expect(said.indexOf("far more")).toBeLessThan(said.indexOf("1. Cut"));
    expect(flat((await answer(["check", FILE], { files })).out)).toContain("60 % is far more");
  });

  it("are not warned of at 5 %", async () => {
    const usual = { ...files, "shop.yaml": files["shop.yaml"].replace("60 %", "5 %") };
    expect((await answer(["check", FILE], { files: usual })).out).not.toContain("far more");
  });
});

describe("the saw of a shop that measures in inches", () => {
  const stepOf = async (shop: string): Promise<number[]> => {
    const { out } = await answer(["stock", FILE, "--json"], { files: withShop(shop) });
    return JSON.parse(out).plans.map(({ cutLengthMm }: { cutLengthMm: number }) => cutLengthMm);
  };
  const expectWhole = (steps: number) => expect(Math.abs(steps - Math.round(steps))).toBeLessThan(1e-9);
  const bars = "rack:\n  - { size: 1/4 x 2 in }\n  - { size: 3/8 x 1 1/2 in }\n";

  it("cuts in quarters of an inch", async () => {
    const lengths = await stepOf(`units: in\n${bars}`);
    expect(lengths.length).toBeGreaterThan(0);
    for (const length of lengths) expectWhole(length / 6.35);
    for (const length of await stepOf(`units: mm\n${bars}`)) expectWhole(length / 5);
  });

  it("cuts as its own file says", async () => {
    const lengths = await stepOf(`units: in\ncutStep: 1\n${bars}`);
    for (const length of lengths) expectWhole(length / 25.4);
  });

  it("loses 1/16 in to a cut", async () => {
    const shop = `units: in\nrack:\n  - { size: 1/4 x 2 in, price: 10, steel: "1084" }\n`;
    const { out } = await answer(["stock", FILE, "--json"], { files: withShop(shop) });
    const [best] = JSON.parse(out).plans;
    // Steel 1084 at its own density; the price is for what is sawn off, a cut with each piece.
    const perMm = best.massG / best.cutLengthMm / 1000;
    expect(best.cost).toBeCloseTo(perMm * (best.cutLengthMm + 25.4 / 16) * 10, 5);
  });
});

describe("findings say what they are about", () => {
  it("by the drawing's letter for a hole, with file, line and column", async () => {
    const text = DEMO_KNIFE.replace("at: [-116, 76], diameter: 6", "at: [-116, 76], diameter: 11");
    const { out } = await answer(["check", FILE], { files: { ...DEMO_FILES, [FILE]: text } });
    const line = text.slice(0, text.indexOf("at: [-116, 76]")).split("\n").length;
    expect(flat(out)).toContain(`(hole C, tang.holes[3rd], ${FILE}:${line}:`);
    // Lists are counted from 1, by words: never by the number of a program.
    expect(out).not.toMatch(/holes\[\d+\]/u);
    const drawn = await answer(["pattern", FILE], { files: DEMO_FILES });
    const svg = drawn.io.disk.text("/shop/harvest.pattern.svg");
    // The third hole of the file, the thong's, is C on the drawing too.
    expect(svg).toContain("hole-C");
    expect(svg).not.toContain("hole-D");
  });

  it("by its size for a bar", async () => {
    const { out } = await answer(["check", FILE], { files: withShop(rack("{ size: 6 x 50 mm }")) });
    expect(flat(out)).toContain("(6 x 50 mm, shop.yaml:4:5)");
    expect(out).not.toContain("rack[");
  });

  it("lists a wish that is missed as a warning", async () => {
    const text = DEMO_KNIFE.replace("mass: { below: 600 g }", "mass: { below: 100 g, should: true }");
    const { out, code } = await answer(["check", FILE], { files: { ...DEMO_FILES, [FILE]: text } });
    expect(code).toBe(0);
    expect(flat(out)).toMatch(
      /warning: A wish is missed: the mass of [\d.]+ g is [\d.]+ g outside its limits\./,
    );
    expect(out).not.toContain("Nothing to warn of");
  });
});
