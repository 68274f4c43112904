import { describe, expect, it } from "vitest";
import { inShort, knifeProblems, SMALL, shopProblems } from "./files.js";

const inFractions = SMALL.replace("is: 4.6", "is: 3/16")
  .replace("edgeLength: 225", "edgeLength: 8 7/8")
  .replace("heelHeight: 92", "heelHeight: 3 5/8");

describe("fractions without a unit", () => {
  it("are told one by one while they are few", () => {
    expect(knifeProblems(inFractions).map(({ code }) => code)).toEqual(
      Array(3).fill("quantity-fraction-without-unit"),
    );
  });

  it("are told once where they are many: the file is in inches", () => {
    expect(inShort(knifeProblems(inFractions.replace("height: 48", "height: 1 7/8")))).toEqual([
      "2:8 quantity-fraction-without-unit | 4 fractions have no unit in a file in mm, the first on line 5: did you mean units: in (line 2)? If not, write each one's unit: 3/16 in",
    ]);
  });

  it("are told once at the first of them where the file names no units", () => {
    const rack = ["3/16", "1/4", "3/8", "1/2"]
      .map((size) => `  - { width: 40, thickness: ${size} }\n`)
      .join("");
    const [only, ...others] = shopProblems(`rack:\n${rack}`);
    expect(others).toEqual([]);
    expect(only).toMatchObject({ line: 2, code: "quantity-fraction-without-unit" });
    expect(only?.message).toContain("did you mean units: in?");
  });

  it("are no fault where nobody knows the units; what else is wrong is still told", () => {
    const cm = inFractions
      .replace("units: mm", "units: cm")
      .replace("edgeAngle: 16 deg", "edgeAngle: 95 deg");
    expect(knifeProblems(cm).map(({ path }) => path)).toEqual(["units", "blade.edgeAngle"]);
  });
});
