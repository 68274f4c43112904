import { describe, expect, it } from "vitest";
import { InternalError, type Issue, length, mass } from "../../src/index.js";
import { describeIssue } from "../../src/units/index.js";

const issue: Issue = {
  code: "edge-too-thick",
  path: "blade.bevel.edgeThickness",
  text: "The edge is {edge} at {place}, the blade only {thickness}.",
  values: { edge: length(6.35), thickness: length(0.508), place: "the heel" },
};

describe("describeIssue", () => {
  it("fills numbers in, in the reader's units", () => {
    expect(describeIssue(issue, "mm")).toBe("The edge is 6.35 mm at the heel, the blade only 0.51 mm.");
    expect(describeIssue(issue, "in")).toBe('The edge is 1/4" at the heel, the blade only 0.02".');
  });

  it("shows every kind of quantity", () => {
    const all: Issue = {
      code: "all",
      path: "",
      text: "{m} {a} {t} {s} {n} {f} {v}",
      values: {
        m: mass(480),
        a: { quantity: "angle", value: Math.PI / 12 },
        t: { quantity: "temperature", value: 820 },
        s: { quantity: "share", value: 0.3 },
        n: { quantity: "count", value: 3 },
        f: { quantity: "area", value: 100 },
        v: { quantity: "volume", value: 1000 },
      },
    };
    expect(describeIssue(all, "mm")).toBe("480 g 15° 820 °C 30 % 3 100 mm² 1 cm³");
    expect(describeIssue(all, "in")).toBe("1 lb 0.93 oz 15° 1508 °F 30 % 3 0.155 in² 0.061 in³");
  });

  it("takes a text that names a missing value for our own mistake", () => {
    expect(() => describeIssue({ ...issue, values: {} }, "mm")).toThrow(InternalError);
  });
});
