import { describe, expect, it } from "vitest";
import { asWritten } from "../../src/report/size-text.js";

describe("a length as it was written", () => {
  it("is in the file's units where it is whole in them", () => {
    expect(asWritten(1, "mm")).toBe("1 mm");
    expect(asWritten(25.4 / 16, "in")).toBe('1/16"');
    expect(asWritten(0.04 * 25.4, "in")).toBe('0.040"');
  });

  it("else in the other ones, with the file's in brackets: 1 mm is 0.0394 in, 1/16 in 1.5875 mm", () => {
    expect(asWritten(1, "in")).toBe('1 mm (0.039")');
    expect(asWritten(25.4 / 16, "mm")).toBe('1/16" (1.59 mm)');
  });
});
