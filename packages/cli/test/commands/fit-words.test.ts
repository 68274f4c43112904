import { describe, expect, it } from "vitest";
import { EXIT } from "../../src/exit-code.js";
import { answer, flat, wideLines } from "../support/answer.js";
import { DEMO_KNIFE, demoWith } from "../support/demo.js";
import { fit, fitJson } from "../support/fit.js";

describe("what can be changed", () => {
  it("is listed", async () => {
    const { out, code } = await fit(["--change", "help"]);
    expect(code).toBe(EXIT.done);
    expect(wideLines(out)).toEqual([]);
    expect(out).toMatch(/^\* thickness +in proportion$/m);
    expect(out).toMatch(/^ {2}thickness@60% +3\.6 mm$/m);
    expect(out).toMatch(/^ {2}tang\.holes\.diameter@C +6\.0 mm$/m);
    const { out: text } = await fit(["--change", "help", "--json"]);
    const { schema, changes } = JSON.parse(text);
    expect(schema).toBe("scantling/fit-changes/1");
    expect(changes).toContainEqual({
      name: "thickness@heel",
      kind: "length",
      usual: false,
      paths: ["blade.thickness[0].is"],
    });
  });

  it("is found by other spellings of a name", async () => {
    const text = demoWith(["{ at: 60 %, is: 3.6 }", "{ at: 135, is: 3.6 }"]);
    for (const name of [
      "blade.thickness@135=3..4",
      "thickness@135mm=3..4mm",
      "Thickness @ 135 = 3 mm..4 mm",
      "thickness@135=85%..110%",
    ]) {
      const { report } = await fitJson(["--mass", "<566g", "--change", name], text);
      expect(report.changes.map((each) => each.name)).toEqual(["thickness@135mm"]);
      expect(report.verdict).toBe("met");
    }
  });
});

describe("mistakes: exit 2, and what to write", () => {
  const cases: readonly (readonly [string, readonly string[], readonly string[]])[] = [
    [
      "a name with a full stop",
      ["--mass", "480g", "--change", "thickness.heel=4..5mm"],
      [
        "this knife has no such size; did you mean thickness@heel?",
        "What can be changed: outline.edgeLength",
      ],
    ],
    [
      "a name without its group",
      ["--mass", "480g", "--change", "edgeThickness"],
      ["did you mean bevel.edgeThickness?"],
    ],
    [
      "a length as the asks call it",
      ["--mass", "480g", "--change", "handleLength=100..120mm"],
      ["did you mean tang.length?"],
    ],
    [
      "a name that is none",
      ["--mass", "480g", "--change", "colour"],
      ["--change colour: this knife has no such size", "--change help"],
    ],
    ["an empty range", ["--mass", "480g", "--change", "bevel.height=48..48mm"], ["leaves nothing to change"]],
    [
      "a range the wrong way round",
      ["--mass", "480g", "--change", "bevel.height=50..40mm"],
      ["has the greater value first"],
    ],
    [
      "a range that is none",
      ["--mass", "480g", "--change", "bevel.height=50mm"],
      ["is no range", "--change bevel.height=4..5.5mm or 90%..110%"],
    ],
    [
      "a range of nothing",
      ["--mass", "480g", "--change", "bevel.height=0..50mm"],
      ["has to begin at more than nothing"],
    ],
    [
      "sizes where shares are needed",
      ["--mass", "480g", "--change", "thickness=4..5mm"],
      ["in proportion", "--change thickness=90%..110%"],
    ],
    ["masses for a length", ["--mass", "480g", "--change", "bevel.height=40..50g"], ["cannot be read"]],
    [
      "two names for one size",
      ["--mass", "480g", "--change", "thickness", "--change", "thickness@heel"],
      ["thickness and thickness@heel change the same size"],
    ],
    [
      "a weight without a range",
      ["--mass", "480g", "--change", "added@-100"],
      ["needs a range", "added@-100mm=0..40g"],
    ],
    [
      "a weight off the knife",
      ["--mass", "480g", "--change", "added@-900=0..40g"],
      ["--change added@-900 lies beside the knife"],
    ],
    [
      "a weight at no place",
      ["--mass", "480g", "--change", "added@nowhere=0..40g"],
      ["--change added@nowhere is no place"],
    ],
    ["a mass that is none", ["--mass", "heavy"], ["--mass"]],
    ["a mass of nothing", ["--mass", "0g"], ["has to be more than nothing"]],
    ["a length for a mass", ["--mass", "20mm"], ["--mass"]],
    ["limits the wrong way round", ["--balance", "30..20mm"], ["has the greater value first"]],
    ["a tolerance behind a limit", ["--mass", "<480g ± 5g"], ["has a tolerance behind a limit"]],
    ["a place without anything asked there", ["--mass", "480g", "--at", "50%"], ["--at tells where"]],
    ["a place off the blade", ["--bevel-angle", "3deg", "--at", "900"], ["lies beside the knife"]],
    ["a height where there is no steel", ["--behind-edge", "3mm", "--above", "200mm"], ["there is no steel"]],
  ];
  it.each(cases)("%s", async (_, options, says) => {
    const { code, err, out } = await fit(options);
    expect(code).toBe(EXIT.usage);
    expect(out).toBe("");
    for (const words of says) expect(flat(err)).toContain(words);
    expect(wideLines(err)).toEqual([]);
  });

  it("the length of a handle on a hidden tang, as the asks call it", async () => {
    const { io } = await answer(["new", "a", "--family", "petty", "--tang", "hidden"]);
    const starter = io.disk.text("/shop/a.knife.yaml");
    const { code, err } = await fit(["--mass", "150g", "--change", "handleLength=100..120mm"], starter);
    expect(code).toBe(EXIT.usage);
    expect(flat(err)).toContain("did you mean handle.block.length?");
  });

  it("nothing asked at all", async () => {
    const { code, err } = await fit([], DEMO_KNIFE.replace(/ {2}asks:[\s\S]*?(?=^units)/mu, ""));
    expect(code).toBe(EXIT.usage);
    expect(flat(err)).toContain("nothing is asked for");
  });

  it("a range in which no knife can be built", async () => {
    const { code, err } = await fit(["--mass", "<560g", "--change", "bevel.edgeThickness=6..8mm"]);
    expect(code).toBe(EXIT.notMet);
    expect(flat(err)).toContain("no knife in these ranges keeps its own rules");
  });
});

it("shows its help within 80 columns", async () => {
  const { out, code } = await answer(["fit", "--help"]);
  expect(code).toBe(EXIT.done);
  expect(wideLines(out)).toEqual([]);
  for (const option of [
    "--mass",
    "--balance",
    "--bevel-angle",
    "--behind-edge",
    "--steel",
    "--change",
    "--sure",
    "--out",
  ])
    expect(out).toContain(option);
});
