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
      'edge length | below 10" | 10.004" | NOT MET by 0.004"',
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
    expect(line("balance", about, 50.8, [25.4 / 32, 25.4 / 16], "in")).toContain('2" +1/16"/−1/32"');
    // Ten thousandths are no 64th.
    expect(line("heelHeight", below(50.8), 34.925, [0.254, 0.254], "in")).toContain('1 3/8" ± 0.01"');
    expect(line("heelHeight", below(50.8), 34.925, [25.4 / 32, 25.4 / 32], "in")).toContain('1 3/8" ± 1/32"');
    expect(line("mass", below(600), 500, [20, 30])).toContain("500 g +30/−20 g");
  });
});
