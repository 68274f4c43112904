import { describe, expect, it } from "vitest";
import { formatTime } from "../../src/units/index.js";

const HOUR = 3600;

describe("formatTime", () => {
  it.each([
    [0, "0 min"],
    [29, "0 min"],
    [31, "1 min"],
    [HOUR - 1, "1 h"],
    [1.5 * HOUR, "1 h 30 min"],
    [12 * HOUR, "12 h"],
    // A day and a half is no whole number of days; one day is still counted in hours.
    [24 * HOUR, "24 h"],
    [36 * HOUR, "36 h"],
    [48 * HOUR, "2 days"],
    [50 * HOUR, "50 h"],
    [-1.5 * HOUR, "−1 h 30 min"],
    [-20, "0 min"],
  ])("%d s as %s", (seconds, text) => {
    expect(formatTime(seconds)).toBe(text);
  });
});
