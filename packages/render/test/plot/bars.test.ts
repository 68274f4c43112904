import { pathBounds } from "@scantling/geometry";
import { describe, expect, it } from "vitest";
import { boxOfItems } from "../../src/box.js";
import { barItems } from "../../src/plot/bars.js";

describe("barItems", () => {
  it("is as long as its value, whatever its look", () => {
    for (const look of ["grey", "hatched", "white"] as const) {
      const box = boxOfItems(barItems(3, 41.5, { bottom: -2.4, height: 2.4, look }));
      expect([box?.minX, box?.maxX]).toEqual([3, 41.5]);
      expect(box?.minY).toBeCloseTo(-2.4, 9);
      expect(box?.maxY).toBeCloseTo(0, 9);
    }
  });

  it("keeps its hatching inside, also where it is narrower than the hatching is wide", () => {
    for (const [from, to] of [
      [10, 30],
      [10, 10.3],
      [10.9, 12.2],
    ] as const) {
      const items = barItems(from, to, { bottom: 0, height: 2.4, look: "hatched" });
      const lines = items.flatMap((item) =>
        item.kind === "path" && item.role === "hatch" ? item.paths : [],
      );
      for (const line of lines) {
        const box = pathBounds(line);
        expect(box.minX).toBeGreaterThanOrEqual(from - 1e-9);
        expect(box.maxX).toBeLessThanOrEqual(to + 1e-9);
        expect(box.minY).toBeGreaterThanOrEqual(-1e-9);
        expect(box.maxY).toBeLessThanOrEqual(2.4 + 1e-9);
        expect(box.maxX - box.minX).toBeCloseTo(box.maxY - box.minY, 9);
      }
      if (to - from > 2) expect(lines.length).toBeGreaterThan(5);
    }
  });

  it("tells grey, hatched and white apart without their tones", () => {
    const kinds = (look: "grey" | "hatched" | "white"): string =>
      barItems(0, 20, { bottom: 0, height: 3, look })
        .map((item) => (item.kind === "path" ? `${item.role}${item.fill ?? ""}` : item.kind))
        .join();
    expect([kinds("grey"), kinds("hatched"), kinds("white")]).toEqual([
      "thinlight,thin",
      "hatch,thin",
      "thin",
    ]);
  });
});
