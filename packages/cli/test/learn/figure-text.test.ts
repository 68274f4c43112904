import { FIGURE_PATHS, type FigurePath, figureOf } from "@scantling/geometry";
import { describe, expect, it } from "vitest";
import { readShopFile } from "../../src/file/index.js";
import { exactFigureText, figureText, shownFigure } from "../../src/learn/figure-text.js";

describe("a figure in the shop file", () => {
  it.each([
    ["losses.scalePerHeat", { value: 0.0148, low: 0.0117, high: 0.0188 }, "mm", "1.48 % +0.4/-0.31 %"],
    ["losses.scalePerHeat", { value: 0.012, low: 0.009, high: 0.015 }, "mm", "1.2 % ± 0.3 %"],
    ["losses.skinPerHeat", { value: 0.0432, low: 0.031, high: 0.0601 }, "mm", "0.043 mm +0.017/-0.012 mm"],
    [
      "losses.skinPerHeat",
      { value: 0.0432, low: 0.031, high: 0.0601 },
      "in",
      "0.0017 in +0.00065/-0.0005 in",
    ],
    ["allowances.face", { value: 0.523, low: 0.4, high: 0.7 }, "mm", "0.52 mm"],
    ["limits.weldSpreadShare", { value: 0.317, low: 0.2, high: 0.4 }, "in", "32 %"],
    ["work.hours.forge", { value: 3.512, low: 2.9, high: 4.24 }, "mm", "3.5 h +0.75/-0.6 h"],
    // Never a band below nothing, never one of no width.
    ["losses.scalePerWeldingHeat", { value: 0.004, low: -0.003, high: 0.011 }, "mm", "0.4 % +0.7/-0.4 %"],
    ["losses.scalePerHeat", { value: 0.012, low: 0.01199, high: 0.01201 }, "mm", "1.2 % ± 0.01 %"],
    ["losses.scalePerWeldingHeat", { value: 0, low: -0.003, high: 0.007 }, "mm", "0 % +0.7/-0 %"],
    // What seems to have grown has a low side like any other.
    [
      "losses.scalePerWeldingHeat",
      { value: -0.0059, low: -0.0129, high: 0.007 },
      "mm",
      "-0.59 % +1.29/-0.7 %",
    ],
    ["losses.scalePerWeldingHeat", { value: -0.004, low: -0.007, high: -0.001 }, "mm", "-0.4 % ± 0.3 %"],
    [
      "losses.skinPerWeldingHeat",
      { value: -0.02, low: -0.0201, high: 0.01 },
      "mm",
      "-0.02 mm +0.03/-0.001 mm",
    ],
  ] as const)("%s %j in %s is %s", (path, figure, units, text) => {
    expect(figureText(path, figure, units)).toBe(text);
  });

  it("is rounded in reports", () => {
    expect(shownFigure("losses.scalePerHeat", 0.012345, "mm")).toBe("1.23 %");
    expect(shownFigure("work.hours.weld", 1.26, "mm")).toBe("1.25 h");
  });
});

describe("what stood there before", () => {
  const textOf = (path: FigurePath, units: "mm" | "in") => {
    const figure = { value: 0.123456, low: 0.1, high: 0.2 };
    return `scantling: 1\nunits: ${units}\nlearned:\n  ${path}: { was: ${exactFigureText(path, figure, units)}, is: ${figureText(path, figure, units)}, jobs: 3 }\n`;
  };

  it.each(FIGURE_PATHS.flatMap((path) => [[path, "mm"] as const, [path, "in"] as const]))(
    "is read as it was: %s in %s",
    (path, units) => {
      const { was, jobs } = readShopFile(textOf(path, units), "shop.yaml").learned[path] ?? {};
      expect(jobs).toBe(3);
      expect(was?.value).toBeCloseTo(0.123456, 4);
      if (!figureOf(path).banded) return;
      expect(was?.low).toBeCloseTo(0.1, 4);
      expect(was?.high).toBeCloseTo(0.2, 4);
    },
  );

  it("is told with its place where it cannot be read", () => {
    const text =
      "scantling: 1\nunits: mm\nlearned:\n  losses.scalePerHeat: { was: 3 mm, is: 1 %, jobs: 2 }\n  work.hours.forge: { is: 3 days, jobs: 2 }\n";
    expect(() => readShopFile(text, "shop.yaml")).toThrow(
      expect.objectContaining({
        problems: [
          expect.objectContaining({ code: "figure-unreadable", line: 4 }),
          expect.objectContaining({ code: "figure-unreadable", line: 5 }),
        ],
      }),
    );
  });
});
