import { describe, expect, it } from "vitest";
import { EXIT } from "../../src/exit-code.js";
import { flat, wideLines } from "../support/answer.js";
import { demoWith } from "../support/demo.js";
import { fit, fitJson } from "../support/fit.js";

describe("what is asked cannot be met", () => {
  it("answers 4, tells how near it gets and what would settle it, and writes no knife", async () => {
    const { code, out, written, io } = await fit(["--mass", "480g", "--balance", "20..30mm", "--out", "out"]);
    expect(code).toBe(EXIT.notMet);
    expect(wideLines(out)).toEqual([]);
    expect(written).toEqual([`${io.cwd}/out/harvest.fit.txt`]);
    expect(out).toMatch(/^FIT: cannot be met by these changes$/m);
    expect(out).toMatch(/^balance +20\.0 mm to 30\.0 mm +\d+\.\d mm .* NOT MET by \d+\.\d mm$/m);
    expect(flat(out)).toMatch(
      /OUT OF REACH by itself: balance \(nearest \d+\.\d mm\)\. What would settle it: - balance up to \d+\.\d mm instead of 30\.0 mm, with thickness@heel/,
    );
    expect(flat(out)).toContain(
      "Only the usual sizes were changed. More can be: scantling fit FILE --change help",
    );
  });

  it("names two asks that cannot hold together, and either that could give way", async () => {
    const changes = ["--change", "handle.slabs.thickness=6..14mm"];
    const { report, code } = await fitJson(["--mass", "<575g", "--balance", "<55mm", ...changes]);
    expect(code).toBe(EXIT.notMet);
    expect(report.verdict).toBe("cannot");
    expect(report.conflict?.outOfReach).toEqual([]);
    expect(report.conflict?.asks).toEqual(["mass", "balance"]);
    const [ofMass, ofBalance] = report.conflict?.relax ?? [];
    expect(ofMass).toMatchObject({ ask: "mass", limit: "atMost" });
    expect(ofBalance).toMatchObject({ ask: "balance", limit: "atMost" });
    // Either relaxed by as much, and the other holds.
    const relaxed = await fitJson([
      "--mass",
      `<${(ofMass?.toG ?? 0) + 0.001}g`,
      "--balance",
      "<55mm",
      ...changes,
    ]);
    expect(relaxed.report.verdict).toBe("met");
    const other = await fitJson([
      "--mass",
      "<575g",
      "--balance",
      `<${(ofBalance?.toMm ?? 0) + 0.001}mm`,
      ...changes,
    ]);
    expect(other.report.verdict).toBe("met");
    const { out } = await fit(["--mass", "<575g", "--balance", "<55mm", ...changes]);
    expect(out).toMatch(/^CANNOT HOLD TOGETHER: mass and balance\.$/m);
    expect(out).toMatch(/^Any one of these would settle it:$/m);
    expect(wideLines(out)).toEqual([]);
  });

  it("says that nothing moves a figure which no change has to do with", async () => {
    const { out, code } = await fit(["--behind-edge", "0.7mm", "--change", "tang.buttThickness"]);
    expect(code).toBe(EXIT.notMet);
    expect(flat(out)).toContain("Nothing that may be changed here moves: 1 mm above the edge.");
  });

  it("names the sizes that would move it, where there are some", async () => {
    const text = demoWith(["    overallLength: { below: 370 mm }", "    handleLength: { above: 140 mm }"]);
    const { out, code } = await fit([], text);
    expect(code).toBe(EXIT.notMet);
    expect(flat(out)).toContain(
      "Nothing that may be changed here moves: handle length. Add --change tang.length.",
    );
  });

  it("says when a window is narrower than its band", async () => {
    const { out, code } = await fit(["--mass", "540g", "--sure"]);
    expect(code).toBe(EXIT.notMet);
    expect(flat(out)).toContain("The band is wider than what is asked of: mass.");
  });

  it("reports in inches within 80 columns", async () => {
    const { out } = await fit([
      "--mass",
      "480g",
      "--balance",
      "20..30mm",
      "--bevel-angle",
      "2.4deg",
      "--units",
      "in",
    ]);
    expect(wideLines(out)).toEqual([]);
  });
});
