import { describe, expect, it } from "vitest";
import { formatCoordinate } from "../src/number.js";

describe("formatCoordinate", () => {
  it.each([
    [12.340004, "12.34"],
    [100, "100"],
    [101.6, "101.6"],
    [0, "0"],
    [-0, "0"],
    [-0.000001, "0"],
    [1e-7, "0"],
    [-26.5, "-26.5"],
    [0.1 + 0.2, "0.3"],
    [120000, "120000"],
  ])("writes %d as %s", (value, text) => {
    expect(formatCoordinate(value)).toBe(text);
  });

  it.each([Number.NaN, Number.POSITIVE_INFINITY, -1e21])("refuses %d", (value) => {
    expect(() => formatCoordinate(value)).toThrow(/coordinate is finite/);
  });
});
