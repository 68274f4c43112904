import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { EXIT } from "../../src/exit-code.js";
import { answer, flat, wideLines } from "../support/answer.js";

function example(folder: string, name: string): string {
  const url = new URL(`../../../../examples/${folder}/${name}`, import.meta.url);
  return readFileSync(fileURLToPath(url), "utf8");
}

const filesOf = (folder: string) => ({
  "a.knife.yaml": example(folder, `${folder}.knife.yaml`),
  "shop.yaml": example(folder, "shop.yaml"),
});
const BOWIE = filesOf("pattern-welded-bowie");
const PETTY = filesOf("three-layer-petty");

describe("stock of a pattern-welded blade", () => {
  it("tells the bars of each steel, the order, the welds and the layers", async () => {
    const { code, out } = await answer(["stock", "a.knife.yaml"], { files: BOWIE });
    expect(code).toBe(EXIT.done);
    const text = flat(out);
    expect(text).toMatch(/7 pieces, each \d+ mm \(.*?\) long, of 1084 3\.18 mm × 44\.45 mm/);
    expect(text).toMatch(/6 pieces, each \d+ mm \(.*?\) long, of 15N20 1\.57 mm × 44\.45 mm/);
    expect(text).toContain("1084, 15N20, 1084 and so on in turn, 13 bars, 1084 on top");
    expect(text).toContain("Restack: cut in 4, then 4, all the same way up.");
    expect(text).toContain("Layers: 193 that can be told apart (208 as multiplied up");
    expect(text).toContain("0.047 mm thick");
    expect(text).toContain("grooves take 8 %");
    expect(text).toContain("bars as cut");
    expect(wideLines(out)).toEqual([]);
  });

  it("shows what lies on the anvil, with its spare, and beside it what is needed; setup starts from that bar", async () => {
    const { out } = await answer(["stock", "a.knife.yaml"], { files: BOWIE });
    const { stack } = JSON.parse((await answer(["stock", "a.knife.yaml", "--json"], { files: BOWIE })).out);
    const setup = JSON.parse((await answer(["setup", "a.knife.yaml", "--json"], { files: BOWIE })).out);
    const text = flat(out);
    const [first, second] = stack.welds;
    expect(first.asCut.pieceLengthMm).toBeCloseTo(stack.cutLengthMm, 9);
    expect(first.asCut.pieceLengthMm).toBeGreaterThan(first.pieceLengthMm);
    expect(text).toContain(`13 × ${stack.cutLengthMm} mm ${first.pieceLengthMm.toFixed(1)} mm`);
    expect(text).toContain(
      `${second.asCut.barLengthMm.toFixed(1)} mm long (${second.barLengthMm.toFixed(1)} mm needed); cut in 4.`,
    );
    const dressed = `${stack.lastBar.asCutDressedLengthMm.toFixed(1)} mm`;
    expect(text).toContain(`pressed flat it is ${dressed}`);
    expect(setup.billet.lengthMm).toBeCloseTo(stack.lastBar.asCutDressedLengthMm, 9);
    expect(text).toContain(`The blade takes ${stack.lastBar.neededDressedLengthMm.toFixed(1)} mm of that`);
    // One blade, as planned.
    expect(stack.lastBar).toMatchObject({ blades: 1, bladesHighLosses: 1 });
    expect(text).not.toContain("It holds");
  });

  it("says how many blades a long last bar holds, and why it is so long", async () => {
    const shop = BOWIE["shop.yaml"].replace(/^limits:.*$/mu, "");
    const files = { ...BOWIE, "shop.yaml": `${shop}\nlimits: { minBilletLength: 240 mm }\n` };
    const { code, out } = await answer(["stock", "a.knife.yaml"], { files });
    expect(code).toBe(EXIT.done);
    expect(flat(out)).toContain("It holds 2 blades at usual losses, at high losses too.");
    expect(flat(out)).toContain("cut are 240 mm (the shop's shortest is 240 mm: limits.minBilletLength)");
    expect(wideLines(out)).toEqual([]);
  });

  it("says under the row of welding scale that it is all of a given yield, and only then", async () => {
    const { out } = await answer(["stock", "a.knife.yaml"], { files: BOWIE });
    expect(out).toMatch(/^ {2}\+ welding scale .*\n {6}\(your yield: all the weld loses\)$/mu);
    const own = { ...BOWIE, "a.knife.yaml": BOWIE["a.knife.yaml"].replace(/^ *yield: .*$/mu, "") };
    const { out: plain } = await answer(["stock", "a.knife.yaml"], { files: own });
    expect(plain).toContain("welding scale");
    expect(plain).not.toContain("your yield");
  });

  it("is narrow enough in inches too", async () => {
    const { out } = await answer(["stock", "a.knife.yaml", "--units", "in"], { files: BOWIE });
    expect(wideLines(out)).toEqual([]);
  });

  it("gives it to programs under stack, with the 19 rows of the ledger", async () => {
    const { out } = await answer(["stock", "a.knife.yaml", "--json"], { files: BOWIE });
    const { schema, plans, stack } = JSON.parse(out);
    expect(schema).toBe("scantling/stock/1");
    expect(plans).toEqual([]);
    expect(stack).toMatchObject({
      kind: "pattern-welded",
      layers: { nominal: 208, distinct: 193, thicknessMm: expect.closeTo(0.0466, 4) },
      lastBar: { widthMm: 38.1, thicknessMm: 12.7 },
    });
    expect(stack.welds).toHaveLength(3);
    expect(stack.ledger).toHaveLength(19);
    expect(stack.ledger[0].row).toBe("finished-blade");
    expect(stack.ledger[18].row).toBe("bars-as-cut");
    const [iron] = stack.bars;
    expect(iron).toMatchObject({ steel: "1084", pieces: 7, bar: "1/8 x 1 3/4 in", enough: true });
    const volume = stack.bars.reduce(
      (sum: number, bar: { thicknessMm: number; widthMm: number; pieces: number; cutLengthMm: number }) =>
        sum + bar.thicknessMm * bar.widthMm * bar.pieces * bar.cutLengthMm,
      0,
    );
    expect(volume).toBeCloseTo(stack.ledger[18].volumeMm3, 6);
  });
});

describe("stock of a blade with a core", () => {
  it("shows the core line along the blade, and what would put it right", async () => {
    const { out } = await answer(["stock", "a.knife.yaml"], { files: PETTY });
    const text = flat(out);
    expect(text).toContain("Stack: 1095 between two of 1020.");
    expect(text).toMatch(/0\.0 mm 1\.18 mm 13\.0 mm 13\.0 mm/);
    expect(text).toContain("STOP: The core line comes at 13 mm above the edge, outside 7 mm to 11 mm.");
    expect(text).toContain("3/16 x 1 1/4 in as cladding brings it to 8.7 mm");
    expect(wideLines(out)).toEqual([]);
  });
});

describe("check and plan", () => {
  it("hold the core line against what is asked: not met, exit code 4", async () => {
    const { code, out } = await answer(["check", "a.knife.yaml"], { files: PETTY });
    expect(code).toBe(EXIT.notMet);
    expect(flat(out)).toMatch(/core line 7\.0 mm to 11\.0 mm 13\.0 mm ± 3\.5 mm NOT MET by 2\.0 mm/);
  });

  it("with the thinner core it is at risk, for the core has to lie within 0.07 mm", async () => {
    const knife = PETTY["a.knife.yaml"].replace("0.140 in", "0.100 in");
    const { code, out } = await answer(["check", "a.knife.yaml"], {
      files: { ...PETTY, "a.knife.yaml": knife },
    });
    expect(code).toBe(EXIT.done);
    expect(flat(out)).toMatch(/core line 7\.0 mm to 11\.0 mm 9\.1 mm ± 3\.5 mm at risk/);
    expect(flat(out)).toContain("0.07 mm off the middle");
    expect(flat(out)).toContain("Ask for 9 mm ± 4 mm.");
  });

  it("count the layers that can be told apart", async () => {
    const { out } = await answer(["check", "a.knife.yaml", "--json"], { files: BOWIE });
    const ask = JSON.parse(out).asks.find((each: { ask: string }) => each.ask === "layers");
    expect(ask).toMatchObject({ verdict: "met", value: 193, atLeast: 180, atMost: 260, margin: 13 });
  });

  it("put the stack in place of plans in the summary", async () => {
    const { out } = await answer(["plan", "a.knife.yaml", "--out", "o"], { files: BOWIE });
    expect(flat(out)).toContain("Layers: 193 that can be told apart");
    expect(out).not.toContain("BARS TO CUT: none");
    expect(wideLines(out).filter((line) => !line.includes(".svg"))).toEqual([]);
  });

  it.each([
    ["layers: { above: 100 }", "Layers are asked for"],
    ["coreLine: { at: heel, about: 9 ± 2 }", "A core line is asked for"],
  ])("%s without such a stack is a mistake of the file", async (ask, says) => {
    const knife = PETTY["a.knife.yaml"].replace(/coreLine: .*/u, ask).replace(/\nstack:[\s\S]*$/u, "\n");
    const { code, err } = await answer(["check", "a.knife.yaml"], {
      files: { ...PETTY, "a.knife.yaml": knife },
    });
    expect(code).toBe(EXIT.file);
    expect(flat(err)).toContain(says);
  });

  it.each([
    [
      "{ at: heel, about: 8 ± 2 mm }",
      "order.asks.layers: at and about are not keys here; the keys are below, above, between, should",
    ],
    [
      "{ about: 200 }",
      "order.asks.layers: about is not a key here; the keys are below, above, between, should",
    ],
    ["{ abov: 200 }", "order.asks.layers.abov is not a key here; did you mean above?"],
  ])("layers: %s is one problem, not three", async (ask, says) => {
    const knife = BOWIE["a.knife.yaml"].replace(/layers: \{.*?\}/u, `layers: ${ask}`);
    const { code, err } = await answer(["check", "a.knife.yaml"], {
      files: { ...BOWIE, "a.knife.yaml": knife },
    });
    expect(code).toBe(EXIT.file);
    expect(flat(err)).toContain("has an error");
    expect(flat(err)).toContain(says);
  });

  it("an ask with a condition and a wrong key has that one problem, one without any keeps its own", async () => {
    const problems = async (ask: string): Promise<string> => {
      const knife = BOWIE["a.knife.yaml"].replace(/layers: \{.*?\}/u, `layers: ${ask}`);
      return flat(
        (await answer(["check", "a.knife.yaml"], { files: { ...BOWIE, "a.knife.yaml": knife } })).err,
      );
    };
    expect(await problems("{ should: true }")).toContain("needs exactly one of below, above, between");
    expect(await problems("{ below: 200, min: 3 }")).toContain("has an error");
  });

  it("a core that is not the file's steel is warned of", async () => {
    const knife = PETTY["a.knife.yaml"].replace(/^steel: .*$/mu, "steel: 52100");
    const { out } = await answer(["check", "a.knife.yaml"], { files: { ...PETTY, "a.knife.yaml": knife } });
    expect(flat(out)).toContain(
      "warning: The core, which comes to the edge, is 1095, but the file's steel is 52100.",
    );
  });

  it("what is wrong with the stack is told at its line by every command", async () => {
    const knife = BOWIE["a.knife.yaml"].replace("yield: 85 %", "yield: [85 %, 80 %]");
    const { code, err } = await answer(["weigh", "a.knife.yaml"], {
      files: { ...BOWIE, "a.knife.yaml": knife },
    });
    expect(code).toBe(EXIT.file);
    expect(flat(err)).toContain("2 yields are given for 3 welds");
    const one = PETTY["a.knife.yaml"].replace("  cleaning: 0.2 ", "  yield: [85 %, 80 %]\n  cleaning: 0.2 ");
    const clad = await answer(["weigh", "a.knife.yaml"], { files: { ...PETTY, "a.knife.yaml": one } });
    expect(flat(clad.err)).toContain("2 yields are given for 1 weld. Give one.");
    expect(err).toMatch(/a\.knife\.yaml:\d+/);
  });
});
