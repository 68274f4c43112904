import { InternalError } from "@scantling/geometry";
import { describe, expect, it } from "vitest";
import { jsonText, reportText } from "../../src/report/documents.js";

describe("JSON documents", () => {
  it("never turn a number that is not finite into null", () => {
    for (const value of [Number.POSITIVE_INFINITY, Number.NaN]) {
      expect(() => jsonText({ plans: [{ reach: value }] })).toThrow(InternalError);
    }
    expect(jsonText({ atLeastG: null, massG: 0.1 })).toBe('{\n  "atLeastG": null,\n  "massG": 0.1\n}\n');
  });
});

describe("reports for people", () => {
  it("explain the marks behind inch fractions where there are any", () => {
    expect(reportText(['24 1/32"+ left', ""])).toContain("\nIn inches, a + or − after a size:");
    expect(reportText(['1 3/16"− high'])).toContain("a little more or less");
    expect(reportText(['2" + 3"', "58 mm +1.9/−2.0 mm"])).toBe('2" + 3"\n58 mm +1.9/−2.0 mm\n');
  });
});
