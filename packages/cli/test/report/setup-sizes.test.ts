import { expect, it } from "vitest";
import { pairText } from "../../src/report/setup-sizes.js";

it("a block for two slabs holds both as each is told to be sawn, and the saw cut", () => {
  // Each 8.14: sawn to 9, or to 3/8 in; 2 · 9 + 1.6 = 19.6, 3/4 in and 1.6 mm are 0.813 in, a hair over 13/16.
  expect(pairText(8.14, 2 * 8.14 + 1.6, "mm")).toBe("20 mm");
  expect(pairText(8.14, 2 * 8.14 + 1.5875, "in")).toBe('13/16"');
  expect(pairText(9, 2 * 9 + 1.6, "mm")).toBe("20 mm");
});
