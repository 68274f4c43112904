import { describe, expect, it } from "vitest";
import { papersFor } from "../src/index.js";

describe("papersFor", () => {
  it("has ISO 216's A series: A0 is one square metre, each next half of it, √2 to 1, cut down to whole mm", () => {
    for (const [n, paper] of [...papersFor("mm")].reverse().entries()) {
      expect(paper.name).toBe(`A${n}`);
      expect(paper.width).toBe(Math.floor(1000 * 2 ** (1 / 4 - n / 2) + 0.2));
      expect(paper.height).toBe(Math.floor(1000 * 2 ** (-1 / 4 - n / 2) + 0.2));
    }
  });

  it("has Letter, and twice the smaller side from one to the next", () => {
    const [first, ...rest] = papersFor("in");
    expect(first?.name).toBe("Letter");
    expect(first?.width).toBeCloseTo(11 * 25.4, 10);
    expect(first?.height).toBeCloseTo(8.5 * 25.4, 10);
    let smaller = first;
    for (const paper of rest) {
      expect(paper.height).toBeCloseTo(smaller?.width ?? 0, 10);
      expect(paper.width).toBeCloseTo(2 * (smaller?.height ?? 0), 10);
      smaller = paper;
    }
  });
});
