import { afterAll, beforeAll, describe, expect, it } from "vitest";

// A browser has no `global`; the unit library reads it while it loads. Nothing else may be imported here first.
const scope: { global?: unknown } = globalThis;
const before = scope.global;
beforeAll(() => {
  delete scope.global;
});
afterAll(() => {
  scope.global = before;
});

describe("the units in a browser", () => {
  it("load where there is no `global`", async () => {
    expect("global" in globalThis).toBe(false);
    const { parseQuantity } = await import("../../src/units/index.js");
    expect(parseQuantity("1 in", "length", "mm")).toMatchObject({ quantity: { value: 25.4 } });
  });
});
