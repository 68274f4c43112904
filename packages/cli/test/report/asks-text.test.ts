import type { FileUnits } from "@scantling/geometry/units";
import { describe, expect, it } from "vitest";
import { answerAsk } from "../../src/asks.js";
import type { AskName, AskTest } from "../../src/file/index.js";
import { askTable } from "../../src/report/asks-text.js";

function line(
  name: AskName,
  test: AskTest,
  value: number,
  band?: readonly [number, number],
  units: FileUnits = "mm",
) {
  const figure =
    band === undefined ? { value } : { value, interval: [value - band[0], value + band[1]] as const };
  const [first = ""] = askTable([answerAsk({ name, test, should: false, path: "" }, figure)], units);
  return first.replace(/ {2,}/gu, " | ");
}

const below = (limit: number): AskTest => ({ kind: "below", limit });

describe("a line of what was asked", () => {
  it("shows digits until limit and value differ", () => {
    expect(line("mass", below(600), 567)).toBe("mass | below 600 g | 567 g | met by 33 g");
    expect(line("mass", below(155), 155.7)).toBe("mass | below 155 g | 156 g | NOT MET by 1 g");
    expect(line("mass", below(155), 155.3)).toBe("mass | below 155.00 g | 155.30 g | NOT MET by 0.30 g");
    // 155 g are 5.4675 oz, 155.7 g 5.4922 oz: both 5.5 oz.
    expect(line("mass", below(155), 155.7, [5, 5], "in")).toBe(
      "mass | below 5.47 oz | 5.49 oz ± 0.2 oz | NOT MET by 0.02 oz",
    );
    expect(line("overallLength", below(370), 369.97)).toBe(
      "overall length | below 370.00 mm | 369.97 mm | met by 0.03 mm",
    );
    // 1/64 in is 0.4 mm; 0.1 mm is 0.004 in.
    expect(line("edgeLength", below(254), 254.1, undefined, "in")).toBe(
      'edge length | below 10.000" | 10.004" | NOT MET by 0.004"',
    );
  });

  it("says that the value is equal to the limit rather than that it fails by nothing", () => {
    expect(line("overallLength", below(363), 363)).toBe(
      "overall length | below 363.0 mm | 363.0 mm | NOT MET: equal to the limit",
    );
    expect(line("balance", { kind: "between", low: 45, high: 65 }, 65)).toBe(
      "balance | 45.0 mm to 65.0 mm | 65.0 mm | met: equal to the limit",
    );
  });

  it("shows an uneven band with both its sides", () => {
    const about = { kind: "between", low: 45, high: 65 } as const;
    expect(line("balance", about, 58.1, [2, 1.9])).toBe(
      "balance | 45.0 mm to 65.0 mm | 58.1 mm +1.9/−2.0 mm | met by 6.9 mm",
    );
    expect(line("balance", about, 58, [2, 2])).toBe(
      "balance | 45.0 mm to 65.0 mm | 58.0 mm ± 2.0 mm | met by 7.0 mm",
    );
    const inInches = { kind: "between", low: 25.4, high: 63.5 } as const;
    expect(line("balance", inInches, 50.8, [25.4 / 32, 25.4 / 16], "in")).toContain('2" +1/16"/−1/32"');
    // Ten thousandths are no 64th.
    expect(line("heelHeight", below(50.8), 34.925, [0.254, 0.254], "in")).toContain('1 3/8" ± 0.010"');
    expect(line("heelHeight", below(50.8), 34.925, [25.4 / 32, 25.4 / 32], "in")).toContain('1 3/8" ± 1/32"');
    expect(line("mass", below(600), 500, [20, 30])).toContain("500 g +30/−20 g");
  });
});

describe("a limit", () => {
  const inches = (low: number, high: number): AskTest => ({
    kind: "between",
    low: low * 25.4,
    high: high * 25.4,
  });

  it("is not moved by rounding: what is no 64th of an inch is told in decimals, and its value too", () => {
    expect(line("thickness", inches(0.12, 0.15), 0.135 * 25.4, [0.127, 0.127], "in")).toBe(
      'thickness | 0.120" to 0.150" | 0.135" ± 0.005" | met by 0.015"',
    );
    // What is thin and no fraction is none: 0.224 in is 7/32 in and a little.
    expect(line("thickness", inches(0.125, 0.25), 0.224 * 25.4, [0.127, 0.127], "in")).toBe(
      'thickness | 0.125" to 0.250" | 0.224" ± 0.005" | met by 0.026"',
    );
    expect(line("thickness", inches(0.125, 0.1875), 0.15625 * 25.4, undefined, "in")).toBe(
      'thickness | 1/8" to 3/16" | 5/32" | met by 1/32"',
    );
    expect(line("thickness", inches(0.1255, 0.15), 0.14 * 25.4, undefined, "in")).toBe(
      'thickness | 0.1255" to 0.1500" | 0.140" | met by 0.010"',
    );
    expect(line("edgeLength", below(45.25), 44, [1, 1])).toBe(
      "edge length | below 45.25 mm | 44.0 mm ± 1.0 mm | met in band by 1.3 mm",
    );
    expect(line("mass", below(155.5), 140, [5, 5])).toBe("mass | below 155.50 g | 140 g ± 5 g | met by 16 g");
    expect(line("mass", below(6.25 * 28.349523125), 142, [8, 8], "in")).toBe(
      "mass | below 6.25 oz | 5 oz ± 0.3 oz | met by 1.2 oz",
    );
    expect(line("layers", { kind: "between", low: 180, high: 260 }, 193)).toBe(
      "layers | 180 to 260 | 193 | met by 13",
    );
  });

  it("from the other units has a mark that says on which side of its decimals it lies", () => {
    // 370 mm are 14.56693 in, 65 mm 2.55906 in, 45 mm 1.77165 in.
    expect(line("overallLength", below(370), 363, [1, 1], "in")).toBe(
      'overall length | below 14.567"− | 14.291" ± 0.039" | met by 0.276"',
    );
    expect(line("balance", { kind: "between", low: 45, high: 65 }, 58, undefined, "in")).toBe(
      'balance | 1.772"− to 2.559"+ | 2.283" | met by 0.276"',
    );
    // 2.0 and 2.1 mm are both 5/64 in.
    expect(line("balance", { kind: "between", low: 45, high: 65 }, 58, [2.1, 2], "in")).toContain(
      '2.283" ± 0.081"',
    );
    // 2.0 and 2.5 mm are 5/64 and 3/32 in.
    expect(line("balance", { kind: "between", low: 45, high: 65 }, 58, [2.5, 2], "in")).toContain(
      '2.283" +0.079"/−0.098"',
    );
  });
});
