import { describe, expect, it } from "vitest";
import { heatText, heatWords } from "../../src/card/heat-text.js";

describe("a temperature of a source", () => {
  it("that gave it in °C is told to 5 °F, and that it is about so", () => {
    // 870 °C are 1598 °F, 600 and 650 °C 1112 and 1202 °F, 815 °C 1499 °F.
    expect(heatWords(870, 870, "in")).toBe("about 1600 °F");
    expect(heatWords(600, 650, "in")).toBe("about 1110 to 1200 °F");
    expect(heatWords(815, 815, "in")).toBe("about 1500 °F");
    expect(heatText(870, 870, "mm")).toEqual({ text: "870 °C", about: false });
  });

  it("that gave it in °F stands as it was given, whatever it is", () => {
    for (const fahrenheit of [1500, 1525, 1473, 403])
      expect(heatWords((fahrenheit - 32) / 1.8, (fahrenheit - 32) / 1.8, "in")).toBe(`${fahrenheit} °F`);
    // 785 °C are 1445 °F, round in both.
    expect(heatWords(785, 785, "in")).toBe("1445 °F");
  });

  it("is never more than 2.5 °F from where it is", () => {
    for (let celsius = 150; celsius < 1150; celsius += 0.7) {
      const told = Number(heatText(celsius, celsius, "in").text.replace(" °F", ""));
      expect(Math.abs(told - (celsius * 1.8 + 32))).toBeLessThanOrEqual(2.5 + 1e-9);
    }
  });
});
