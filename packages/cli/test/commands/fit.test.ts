import { describe, expect, it } from "vitest";
import { EXIT } from "../../src/exit-code.js";
import { readKnifeFile } from "../../src/file/index.js";
import { answer, flat, wideLines } from "../support/answer.js";
import { DEMO_FILES, DEMO_KNIFE, demoWith } from "../support/demo.js";
import { FILE, fit, fitJson } from "../support/fit.js";

/** What `weigh` says of a knife file. */
async function weighed(
  text: string,
): Promise<{ readonly massG: number; readonly balanceFromHeelMm: number }> {
  const { out } = await answer(["weigh", FILE, "--json"], { files: { ...DEMO_FILES, [FILE]: text } });
  return JSON.parse(out).knife;
}

describe("what is asked can be met", () => {
  it("tells each ask before and after, each size old and new, and writes nothing", async () => {
    const { code, out, err, written } = await fit(["--mass", "480g"]);
    expect(code).toBe(EXIT.done);
    expect(err).toBe("Looking: 4 to change, 3 asked.\n");
    expect(written).toEqual([]);
    expect(wideLines(out)).toEqual([]);
    expect(out).toMatch(/^FIT: all met$/m);
    expect(out).toMatch(/^mass +475 g to 485 g +4[78]\d g ± \d+ g +at risk: \d/m);
    expect(out).toMatch(/^ {2}as drawn +567 g ± 31 g +NOT MET by 82 g$/m);
    expect(out).toMatch(/^balance\* +45\.0 mm to 65\.0 mm +.* met by/m);
    expect(out).toMatch(/^thickness@heel +4\.6 mm +3\.9 mm +−0\.7 mm +85 to 115 %$/m);
    expect(flat(out)).toContain("* asked by the order, and to stay met");
  });

  it("leaves a knife alone that is as asked", async () => {
    const { code, out } = await fit([]);
    expect(code).toBe(EXIT.done);
    expect(out).toContain("FIT: all met; nothing has to be changed\n");
    expect(flat(out)).toContain(
      "CHANGE Nothing. As drawn: thickness, bevel.height, tang.buttThickness, handle.slabs.thickness.",
    );
  });

  it("takes the order's own asks where none is given", async () => {
    const text = demoWith(["mass: { below: 600 g }", "mass: { below: 530 g }"]);
    const { report, code } = await fitJson([], text);
    expect(code).toBe(EXIT.done);
    expect(report.asks.map(({ ask, source }) => `${ask} ${source}`)).toEqual([
      "mass order",
      "balance order",
      "overallLength order",
    ]);
    expect(report.asks[0]?.fittedG).toBeLessThan(530);
  });

  it("does not pursue an ask of the order that the drawing misses, when others are given", async () => {
    const text = demoWith(["balance: { between: [45 mm, 65 mm] }", "balance: { between: [5 mm, 15 mm] }"]);
    const { report } = await fitJson(["--mass", "<560g"], text);
    expect(report.asks.map(({ ask }) => ask)).toEqual(["mass", "overallLength"]);
    expect(report.verdict).toBe("met");
  });

  it("writes the knife file with the new sizes alone, and it weighs what was said", async () => {
    const { code, err, written, io } = await fit(["--mass", "<520 g", "--out", "fitted"]);
    expect(code).toBe(EXIT.done);
    expect(written).toEqual([`${io.cwd}/fitted/harvest.fit.txt`, `${io.cwd}/fitted/${FILE}`]);
    expect(err).toContain(`Wrote fitted/${FILE}\nWrote fitted/harvest.fit.txt\n`);
    const text = io.disk.text(`${io.cwd}/fitted/${FILE}`);
    expect(text.split("\n")).toHaveLength(DEMO_KNIFE.split("\n").length);
    expect(text).toContain("# full thickness at the spine");
    const { report } = await fitJson(["--mass", "<520 g"]);
    const { spec } = readKnifeFile(text, FILE);
    for (const { changed, sizes } of report.changes.filter(({ name }) => name === "thickness")) {
      expect(changed).toBe(true);
      expect(spec.blade.thickness.map(({ is }) => is)).toEqual(sizes.map(({ fittedMm }) => fittedMm));
    }
    const { massG, balanceFromHeelMm } = await weighed(text);
    expect(massG).toBeCloseTo(report.asks[0]?.fittedG ?? 0, 9);
    expect(balanceFromHeelMm).toBeCloseTo(report.asks[1]?.fittedMm ?? 0, 9);
  });

  it("overwrites nothing without --force", async () => {
    const first = await fit(["--mass", "<520g", "--out", "."]);
    expect(first.code).toBe(EXIT.write);
    expect(first.err).toContain("harvest.knife.yaml");
    expect(first.written).toEqual([]);
    expect(first.io.disk.text(`${first.io.cwd}/${FILE}`)).toBe(DEMO_KNIFE);
    const forced = await fit(["--mass", "<520g", "--out", ".", "--force"]);
    expect(forced.code).toBe(EXIT.done);
    expect(forced.io.disk.text(`${forced.io.cwd}/${FILE}`)).not.toBe(DEMO_KNIFE);
  });

  it("takes a knife from standard input, named by its order", async () => {
    const { code, written, io } = await answer(["fit", "-", "--mass", "<520g", "--out", "out"], {
      stdin: DEMO_KNIFE,
    });
    expect(code).toBe(EXIT.done);
    expect(written).toContain(`${io.cwd}/out/MG-14.knife.yaml`);
  });

  it("keeps the whole band inside where that is asked", async () => {
    const { report, code } = await fitJson(["--mass", "<560g", "--sure"]);
    expect(code).toBe(EXIT.done);
    expect(report.sure).toBe(true);
    const [mass] = report.asks;
    expect(mass?.verdict).toBe("met");
    expect(mass?.fittedIntervalG?.[1]).toBeLessThan(560);
    expect(report.asks.every(({ verdict }) => verdict === "met")).toBe(true);
    // No more than needed: a little over the band below the limit.
    expect(mass?.fittedG).toBeGreaterThan(
      560 - 1.2 * ((mass?.fittedIntervalG?.[1] ?? 0) - (mass?.fittedG ?? 0)),
    );
  });

  it("fits bevel, edge and steel", async () => {
    const options = [
      "--bevel-angle",
      "2.4..2.6deg",
      "--behind-edge",
      "<0.55mm",
      "--steel",
      "<980g",
      "--change",
      "bevel.height",
    ];
    const { report } = await fitJson([
      ...options,
      "--change",
      "bevel.edgeThickness=0.3..0.6",
      "--change",
      "thickness",
    ]);
    expect(report.asks.slice(0, 3).map(({ ask }) => ask)).toEqual(["bevel-angle", "behind-edge", "steel"]);
    expect(report.verdict).toBe("met");
    expect(report.asks[0]?.fittedDeg).toBeGreaterThan(2.4);
    expect(report.asks[1]?.fittedMm).toBeLessThan(0.55);
    expect(report.asks[2]?.fittedG).toBeLessThan(980);
    expect(report.asks[2]?.fittedIntervalG?.[1]).toBeGreaterThan(report.asks[2]?.fittedG ?? 0);
  });

  it("tells findings that are new", async () => {
    // 18 mm high, it stands at more than 5° per side.
    const { out, code } = await fit(["--mass", ">568g", "--change", "bevel.height=18..20mm"]);
    expect(code).toBe(EXIT.done);
    expect(out).toMatch(/^NEW WITH THIS CHANGE$/m);
    expect(flat(out)).toMatch(/warning: The bevel stands at 5\.\d° per side at the heel/);
    expect(flat(out)).toContain("18.0 to 20.0 mm; drawn outside");
    const before = await fit(["--mass", ">540g"]);
    expect(before.out).not.toContain("NEW WITH THIS CHANGE");
  });

  it("adds a weight, and a material that has still to be found", async () => {
    const options = [
      "--balance",
      "<52mm",
      "--change",
      "added@-100mm=0..60g",
      "--change",
      "handle.slabs.material.density=0.6..1.1",
    ];
    const { code, out, written, io } = await fit([...options, "--out", "out"]);
    expect(code).toBe(EXIT.done);
    expect(wideLines(out)).toEqual([]);
    expect(out).toMatch(/^added@-100mm +none +\d+ g +\+\d+ g/m);
    const path = written.find((each) => each.endsWith(FILE)) ?? "";
    const { spec } = readKnifeFile(io.disk.text(path), FILE);
    expect(spec.handle?.parts?.map(({ name, at }) => `${name} ${at.x}`)).toEqual(["balance weight -100"]);
    expect((await weighed(io.disk.text(path))).balanceFromHeelMm).toBeLessThan(52);
  });
});

describe("the order beside what the command line asks", () => {
  it("is told of where the fitted knife misses it, whether it was missed before or is missed now", async () => {
    const text = demoWith(["balance: { between: [45 mm, 65 mm] }", "balance: { between: [5 mm, 15 mm] }"]);
    const { out } = await fit(["--mass", "500g"], text);
    expect(flat(out)).toContain("FIT: all met; not all that the order asks: see below");
    expect(out).toMatch(/^NOT MET OF THE ORDER\nbalance +5\.0 mm to 15\.0 mm .* NOT MET by /m);
    // Another mass than the order's: fitted to one, the other is missed.
    const other = await fitJson(
      ["--mass", "580..590g"],
      demoWith(["mass: { below: 600 g }", "mass: { below: 530 g }"]),
    );
    expect(other.report.verdict).toBe("met");
    expect(other.report.missedOfOrder).toMatchObject([
      { ask: "mass", path: "order.asks.mass", verdict: "not-met" },
    ]);
    expect((await fitJson([])).report.missedOfOrder).toEqual([]);
  });

  it("is looked at where the bevel is ground, as check does: both tell the same of one ask", async () => {
    const text = demoWith(
      ["    overallLength: { below: 370 mm }", "    behindEdge: { below: 0.9 mm, up: 5 mm }"],
      ["plunge: { at: 0, length: 0 }", "plunge: { at: 3, length: 4 }"],
    );
    const checked = await answer(["check", FILE], { files: { ...DEMO_FILES, [FILE]: text } });
    const row = /^5 mm above edge at 7\.0 mm +below 0\.90 mm\n +(\d\.\d+ mm ± \d\.\d+ mm)/m.exec(checked.out);
    expect(row).not.toBeNull();
    const { out } = await fit([], text);
    expect(out).toContain(`5 mm above edge at 7.0 mm  ${row?.[1]}`);
    // Asked on the command line too it is one line, not two.
    const twice = await fitJson(["--behind-edge", "<0.9mm", "--above", "5mm"], text);
    expect(twice.report.asks.filter(({ ask }) => /behind/u.test(ask))).toHaveLength(1);
  });

  it("keeps what the drawing meets while another ask comes as near as it can", async () => {
    // Thicker slabs alone bring the mass, and take the balance out of its window behind.
    const { out, code } = await fit(["--mass", ">650g", "--change", "handle.slabs.thickness=6mm..30mm"]);
    expect(code).toBe(EXIT.notMet);
    expect(out).toMatch(/^mass +above 650 g .* NOT MET/m);
    expect(out).toMatch(/^balance\* .* 45\.02 mm \S+ mm +at risk/m);
    expect(flat(out)).toContain("CANNOT HOLD TOGETHER: mass and balance.");
  });
});
