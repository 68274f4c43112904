import { describe, expect, it } from "vitest";
import { EXIT } from "../../src/exit-code.js";
import { readShopFile } from "../../src/file/index.js";
import { answer, flat, wideLines } from "../support/answer.js";
import { DEMO_SHOP } from "../support/demo.js";

const LENGTHS = ["--short", "179.6mm", "--long", "270.9mm"] as const;
const LINES = "printer:\n  - { paper: a4, shortSide: 1.00223, longSide: 0.99668 }\n";
const SHOP = { "shop.yaml": DEMO_SHOP };
const MEASURED = { "shop.yaml": `${DEMO_SHOP}${LINES}` };

describe("calibrate without lengths", () => {
  it("writes the sheet into the current folder, on A4 where nothing else is known", async () => {
    const { code, out, err, written, io } = await answer(["calibrate"]);
    expect(code).toBe(EXIT.done);
    expect(out).toBe("calibrate.svg\n");
    expect(err).toContain("Print at 100 %");
    expect(written).toEqual(["/shop/calibrate.svg"]);
    const svg = io.disk.text("/shop/calibrate.svg");
    expect(svg).toContain('width="210mm" height="297mm" viewBox="0 0 210 297"');
    for (const id of ["bar-short", "bar-long", "check-mm-across", "check-mm-up"])
      expect(svg).toContain(`id="${id}"`);
  });

  it.each([
    [["--units", "in"], {}, "Letter", 7 * 25.4, 10 * 25.4],
    [["--paper", "a3"], {}, "A3", 270, 390],
    [[], { "shop.yaml": "paper: letter\n" }, "Letter", 190, 250],
    [[], { "shop.yaml": "units: in\n" }, "Letter", 7 * 25.4, 10 * 25.4],
    [["--paper", "11x17"], { "shop.yaml": "units: in\n" }, "Tabloid", 10 * 25.4, 16 * 25.4],
    [[], { "shop.yaml": "# nothing yet\n" }, "A4", 180, 270],
  ] as const)("takes paper and units from %j and %j", async (words, files, paper, short, long) => {
    const { out } = await answer(["calibrate", "--json", ...words], { files });
    const { schema, sheet, ...document } = JSON.parse(out);
    expect(schema).toBe("scantling/calibrate/1");
    expect(document.paper.name).toBe(paper);
    expect(sheet).toMatchObject({ file: "calibrate.svg", format: "svg", corrected: false });
    expect(sheet.shortSideBarMm).toBeCloseTo(short, 9);
    expect(sheet.longSideBarMm).toBeCloseTo(long, 9);
  });

  it("prints uncorrected unless the stored correction is to be proved", async () => {
    const plain = await answer(["calibrate"], { files: MEASURED });
    expect(plain.io.disk.text("/shop/calibrate.svg")).toContain("No correction on this sheet");
    const proof = await answer(["calibrate", "--corrected", "--out", "sheets"], { files: MEASURED });
    expect(proof.out).toBe("sheets/calibrate-corrected.svg\n");
    expect(proof.io.disk.text("/shop/sheets/calibrate-corrected.svg")).toContain(
      "short side × 1.00223, long side × 0.99668.",
    );
    const none = await answer(["calibrate", "--corrected"], { files: SHOP });
    expect(none.code).toBe(EXIT.usage);
    expect(none.err).toContain("no correction for A4 is stored");
  });

  it("is a PDF page of the paper's own size, corrected or not", async () => {
    for (const words of [[], ["--corrected"]]) {
      const { code, out, io } = await answer(["calibrate", "--format", "pdf", ...words], { files: MEASURED });
      expect(code).toBe(EXIT.done);
      const pdf = io.disk.text(`/shop/${out.trim()}`);
      expect(pdf).toMatch(/^%PDF-1/);
      const [, width, height] = /\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/.exec(pdf) ?? [];
      // Points: 72 to the inch.
      expect((Number(width) / 72) * 25.4).toBeCloseTo(210, 3);
      expect((Number(height) / 72) * 25.4).toBeCloseTo(297, 3);
    }
  });

  it("overwrites only under --force", async () => {
    const files = { "calibrate.svg": "mine" };
    expect((await answer(["calibrate"], { files })).code).toBe(EXIT.write);
    expect((await answer(["calibrate", "--force"], { files })).code).toBe(EXIT.done);
  });
});

describe("calibrate with two lengths", () => {
  it("says in plain words what the printer does, and writes a shop file where there is none", async () => {
    const { code, out, err, written, io } = await answer(["calibrate", ...LENGTHS]);
    expect(code).toBe(EXIT.done);
    expect(err).toBe("");
    expect(wideLines(out)).toEqual([]);
    expect(flat(out)).toContain("short, across 180 mm bar measures 179.6 mm prints 0.22 % small × 1.00223");
    expect(flat(out)).toContain("long, up 270 mm bar measures 270.9 mm prints 0.33 % large × 0.99668");
    expect(out).toContain("Stored in shop.yaml");
    expect(written).toEqual(["/shop/shop.yaml"]);
    const text = io.disk.text("/shop/shop.yaml");
    expect(text).toContain(LINES);
    expect(readShopFile(text, "shop.yaml")).toMatchObject({
      units: "mm",
      printer: [{ paper: { name: "A4" }, shortSide: 1.00223, longSide: 0.99668 }],
    });
  });

  it("names the shop file in all that is to be typed, where it was named", async () => {
    const files = { "/other/rack.yaml": DEMO_SHOP };
    const shop = ["--shop", "/other/rack.yaml"];
    const sheet = await answer(["calibrate", ...shop], { files });
    expect(sheet.io.disk.text("/shop/calibrate.svg")).toContain("--shop /other/rack.yaml");
    const stored = await answer(["calibrate", ...LENGTHS, ...shop, "--force"], { files });
    expect(flat(stored.out)).toContain(
      "Prove it: scantling calibrate --paper a4 --shop /other/rack.yaml --corrected",
    );
    const unproven = await answer(["calibrate", "--paper", "a3", "--corrected", ...shop], { files });
    expect(unproven.err).toContain("no correction for A3 is stored in /other/rack.yaml");
  });

  it("asks for --units where the lengths are nearer to the bars of the other sheet", async () => {
    const { code, err } = await answer([
      "calibrate",
      "--short",
      "189.6mm",
      "--long",
      "249mm",
      "--paper",
      "letter",
      "--units",
      "in",
    ]);
    expect(code).toBe(EXIT.usage);
    expect(err).toContain("--units mm");
  });

  it("leaves a shop file as it is without --force, and shows the lines", async () => {
    const { code, out, err, written, io } = await answer(["calibrate", ...LENGTHS], { files: SHOP });
    expect(code).toBe(EXIT.write);
    expect(out).toContain(LINES);
    expect(err).toContain("--force");
    expect(written).toEqual([]);
    expect(io.disk.text("/shop/shop.yaml")).toBe(DEMO_SHOP);
    const { out: json } = await answer(["calibrate", ...LENGTHS, "--json"], { files: SHOP });
    expect(JSON.parse(json)).toMatchObject({
      schema: "scantling/calibrate/1",
      sheet: null,
      inOrder: false,
      readings: [
        { side: "short", barMm: 180, measuredMm: 179.6, inOrder: false },
        { side: "long", barMm: 270, measuredMm: 270.9, inOrder: false },
      ],
      correction: {
        shortSide: 1.00223,
        longSide: 0.99668,
        stored: false,
        file: "shop.yaml",
        lines: LINES.trimEnd().split("\n"),
      },
      findings: [],
    });
  });

  it("changes only that key under --force, wherever the file is found", async () => {
    const argv = ["calibrate", ...LENGTHS, "--force"];
    const beside = await answer(argv, { files: SHOP });
    expect(beside.code).toBe(EXIT.done);
    expect(beside.io.disk.text("/shop/shop.yaml")).toBe(`${DEMO_SHOP}${LINES}`);
    const above = await answer(argv, {
      files: { "/yard/shop.json": '{\n  "kerf": 2\n}\n' },
      cwd: "/yard/knives/new",
    });
    expect(above.out).toContain("Stored in ../../shop.json");
    expect(JSON.parse(above.io.disk.text("/yard/shop.json"))).toMatchObject({
      kerf: 2,
      printer: [{ paper: "a4" }],
    });
    const named = await answer([...argv, "--shop", "other.yaml"], {
      files: { ...SHOP, "other.yaml": "kerf: 2\r\n" },
    });
    expect(named.io.disk.text("/shop/other.yaml")).toBe(`kerf: 2\r\n${LINES.replaceAll("\n", "\r\n")}`);
    expect(named.io.disk.text("/shop/shop.yaml")).toBe(DEMO_SHOP);
    const bare = await answer(argv, { files: { "shop.yaml": "# ours\n" } });
    expect(bare.io.disk.text("/shop/shop.yaml")).toBe(`# ours\n${LINES}`);
  });

  it("puts a second measurement in place of the first, by the paper's size where it has another word", async () => {
    const first =
      "printer:\n  - { paper: 297 x 210 mm, shortSide: 1.05, longSide: 1.05 } # ink\n  - { paper: a3, shortSide: 1, longSide: 1 }\n";
    const { io } = await answer(["calibrate", ...LENGTHS, "--force"], { files: { "shop.yaml": first } });
    expect(io.disk.text("/shop/shop.yaml")).toBe(
      first.replace("1.05,", "1.00223,").replace("1.05 }", "0.99668 }"),
    );
  });

  it("adds what is measured on a corrected sheet to the correction that it was printed with", async () => {
    const words = ["calibrate", "--corrected", "--short", "180.9", "--long", "270", "--force"];
    const { code, io } = await answer(words, { files: MEASURED });
    expect(code).toBe(EXIT.done);
    const [entry] = readShopFile(io.disk.text("/shop/shop.yaml"), "shop.yaml").printer;
    // By hand: 1.00223 · 180 / 180.9, and 0.99668 as it was.
    expect(entry?.shortSide).toBe(0.99724);
    expect(entry?.longSide).toBe(0.99668);
  });

  it("takes a bare number in the shop's units, and inches as they are written", async () => {
    const { out } = await answer(["calibrate", "--short", "6.98", "--long", '10 1/32"', "--json"], {
      files: { "shop.yaml": "units: in\n" },
    });
    const { paper, readings } = JSON.parse(out);
    expect(paper.name).toBe("Letter");
    expect(readings[0].measuredMm).toBeCloseTo(6.98 * 25.4, 9);
    expect(readings[1].measuredMm).toBeCloseTo(10.03125 * 25.4, 9);
  });

  it("stores nothing where both are within 0.2 %", async () => {
    const words = ["calibrate", "--short", "179.7", "--long", "270.5"];
    const fresh = await answer(words);
    expect(fresh).toMatchObject({ code: EXIT.done, written: [] });
    expect(fresh.out).toContain("no correction needed");
    // It may have been either sheet that was measured, so what is stored stays.
    const measured = await answer([...words, "--force"], { files: MEASURED });
    expect(flat(measured.out)).toContain(
      "If the sheet was printed with --corrected, that proves the stored correction.",
    );
    expect(measured.io.disk.text("/shop/shop.yaml")).toBe(MEASURED["shop.yaml"]);
    const proven = await answer([...words, "--corrected"], { files: MEASURED });
    expect(proven.out).toContain("the stored correction is proven");
  });

  it("suspects the print dialog beyond 3 %", async () => {
    const { out, code } = await answer(["calibrate", "--short", "173", "--long", "260"]);
    expect(code).toBe(EXIT.done);
    expect(flat(out)).toContain("Most likely the print dialog scaled the page: look there first");
    const { out: json } = await answer(["calibrate", "--short", "173", "--long", "260", "--json"]);
    expect(JSON.parse(json).findings).toMatchObject([{ severity: "warn", code: "page-scaled" }]);
    expect((await answer(["calibrate", "--short", "175", "--long", "263"])).out).not.toContain("dialog");
  });

  it.each([
    [["--short", "179.6mm"], "length-missing", "--long is missing"],
    [["--long", "179.6mm"], "length-missing", "--short is missing"],
    [["--short", "abc", "--long", "270"], "unreadable", '--short "abc"'],
    [["--short", "180 ± 1", "--long", "270"], "tolerance-not-taken", "--short takes no tolerance"],
    [["--short", "0", "--long", "270"], "not-positive", "more than nothing"],
    [["--short", "270", "--long", "180"], "out-of-range", "swapped"],
    [["--short", "150", "--long", "270"], "out-of-range", "83.3 % of its length"],
    [["--short", "18", "--long", "27"], "out-of-range", "print dialog"],
    [["--short", "7in", "--long", "10in"], "other-units", "--units in"],
    [["--short", "180", "--long", "270", "--corrected"], "no-correction", "--corrected"],
    [["--paper", "fit"], "unknown-paper", "not a paper"],
    [["--paper", "60x90"], "sheet-too-large", "does not fit on paper of 60 × 90 mm"],
  ] as const)("refuses %j: %s", async (words, reason, says) => {
    const { code, out, err, written } = await answer(["calibrate", ...words, "--json"]);
    expect(code).toBe(EXIT.usage);
    expect(JSON.parse(out).code).toBe(reason);
    expect(flat(err)).toContain(says);
    expect(written).toEqual([]);
  });

  it("tells of a broken shop file as the other commands do", async () => {
    const { code, err } = await answer(["calibrate"], { files: { "shop.yaml": "paper: a44\n" } });
    expect(code).toBe(EXIT.file);
    expect(err).toContain("did you mean a4?");
  });

  it("leaves everything as it was when the disk fails", async () => {
    const world = await answer(["check", "-"], { files: SHOP, stdin: "" });
    world.io.disk.faults.push({ step: "rename", code: "ENOSPC" });
    const { code, written } = await answer(["calibrate", ...LENGTHS, "--force"], world.io);
    expect(code).toBe(EXIT.write);
    expect(written).toEqual([]);
    expect(world.io.disk.text("/shop/shop.yaml")).toBe(DEMO_SHOP);
  });

  it("shows the lines for a shop file from standard input, which cannot be changed", async () => {
    const { code, out } = await answer(["calibrate", ...LENGTHS, "--shop", "-", "--force"], {
      stdin: "kerf: 2\n",
    });
    expect(code).toBe(EXIT.write);
    expect(out).toContain(LINES);
  });
});
