import fc from "fast-check";
import { expect, it } from "vitest";
import { fewestLines } from "../../../src/sheets/bench-card/narrow-lines.js";
import { textWidth } from "../../../src/text-metrics.js";

/** Every way to part pieces into so many lines. */
function waysToPart(pieces: readonly string[], lines: number): string[][] {
  if (lines === 1) return [[pieces.join(" ")]];
  return pieces
    .slice(1)
    .flatMap((_, first) =>
      waysToPart(pieces.slice(first + 1), lines - 1).map((rest) => [
        pieces.slice(0, first + 1).join(" "),
        ...rest,
      ]),
    );
}

const widest = (lines: readonly string[]): number => Math.max(...lines.map((line) => textWidth(line, 2.5)));

it("lines are no wider than in the narrowest of all ways to part them", () => {
  const words = fc.array(fc.stringMatching(/^[a-z0-9]{1,9}$/u), { minLength: 1, maxLength: 7 });
  fc.assert(
    fc.property(words, fc.integer({ min: 1, max: 3 }), (pieces, most) => {
      const lines = fewestLines(pieces, " ", 2.5, 0, most);
      expect(lines.join(" ")).toBe(pieces.join(" "));
      expect(lines.length).toBeLessThanOrEqual(most);
      const counts = [1, 2, 3].filter((count) => count <= Math.min(most, pieces.length));
      const best = Math.min(...counts.flatMap((count) => waysToPart(pieces, count)).map(widest));
      expect(widest(lines)).toBeCloseTo(best, 9);
    }),
    { seed: 25, numRuns: 300 },
  );
});

it("take as few lines as stand on the width that is there anyway", () => {
  expect(fewestLines(["from", "the", "heel"], " ", 2.5, 100, 3)).toEqual(["from the heel"]);
  expect(fewestLines(["8+", "0.2+", "0.1"], "", 5, 0, 2, true)).toEqual(["8+0.2+", "0.1"]);
});
