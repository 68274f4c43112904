import { FINDING_LIMIT_NAMES, FINDING_LIMITS } from "@scantling/geometry";
import { describe, expect, it } from "vitest";
import { type FileError, readShopFile } from "../../src/file/index.js";

const read = (limits: string, units = "mm") =>
  readShopFile(`scantling: 1\nunits: ${units}\nlimits:\n  ${limits}\n`, "shop.yaml").shop.limits;

function problems(limits: string): string[] {
  try {
    read(limits);
  } catch (error) {
    return (error as FileError).problems.map(({ code, path, message }) => `${code} ${path}: ${message}`);
  }
  throw new Error("the file was taken");
}

describe("limits.findings", () => {
  it("takes every name of the table, in the units of its kind", () => {
    const limits =
      "findings: { holeWall: 1/8 in, bevelAngle: 6 deg, holeEdgeStop: 1.4, skin: 0.2, droop: 75 %, lowestTemper: 400 °F }";
    expect(read(limits)?.findings).toEqual({
      holeWall: 3.175,
      bevelAngle: expect.closeTo((6 * Math.PI) / 180, 12),
      holeEdgeStop: 1.4,
      skin: 0.2,
      droop: 0.75,
      lowestTemper: expect.closeTo(204.444, 3),
    });
    // A bare length is in the file's units.
    expect(read("findings: { holeWall: 0.125 }", "in")?.findings).toEqual({ holeWall: 3.175 });
  });

  it("takes each limit's own default", () => {
    for (const name of FINDING_LIMIT_NAMES) {
      const { quantity, value } = FINDING_LIMITS[name];
      const unit =
        { length: "mm", angle: "rad", share: "", temperature: "°C", count: "" }[quantity as "length"] ?? "";
      const written =
        quantity === "angle"
          ? `${(value * 180) / Math.PI} deg`
          : quantity === "share"
            ? `${100 * value} %`
            : `${value} ${unit}`.trim();
      expect(read(`findings: { ${name}: ${written} }`)?.findings?.[name], name).toBeCloseTo(value, 9);
    }
  });

  it("answers a typo with the nearest name, and a wrong unit with the right kind", () => {
    expect(problems("findings: { holeWal: 4 }")).toEqual([
      expect.stringMatching(/^unknown-key limits\.findings\.holeWal: .*holeWall/u),
    ]);
    expect(problems("findings: { holeWall: 4 deg, bevelAngle: 4 mm }")).toHaveLength(2);
    expect(problems("findings: { holeWall: -1 mm }")[0]).toContain("out-of-range");
  });

  it("refuses limits that contradict one another, a default among them", () => {
    expect(problems("findings: { holeEdgeStop: 3 }")[0]).toContain(
      "holeEdgeStop must not be greater than holeEdgeGood",
    );
    expect(problems("findings: { stopFar: 0.05 }")[0]).toContain("limits-swapped limits.findings.stopFar");
    expect(read("findings: { holeEdgeStop: 3, holeEdgeGood: 4 }")?.findings).toEqual({
      holeEdgeStop: 3,
      holeEdgeGood: 4,
    });
  });
});

describe("limits.types", () => {
  it("takes ranges of a type, low before high", () => {
    expect(read("types: { camp: { spine: [5, 8], hardness: [55, 60] } }")?.types).toEqual({
      camp: { spine: { low: 5, high: 8 }, hardness: { low: 55, high: 60 } },
    });
    expect(problems("types: { camp: { spine: [8, 5] } }")[0]).toContain("limits-swapped");
    // In inches: an edge 3 to 7 in thick, where its length was meant; in mm the same is far too much too.
    expect(problems("types: { hunter: { edge: [3 in, 7 in] } }")[0]).toMatch(
      /^limits-senseless limits\.types\.hunter\.edge: .*before sharpening is 0 mm to 2 mm .* called length\. Is the unit right\?/u,
    );
    expect(problems("types: { hunter: { mass: [3, 7] } }")[0]).toContain("limits-senseless");
    expect(
      read("types: { hunter: { edge: [0.3, 2.5], balance: [-40, -5] } }")?.types?.hunter?.edge?.high,
    ).toBe(2.5);
    expect(problems("types: { campknife: { spine: [5, 8] } }")[0]).toContain("camp");
  });
});

it("the keys that were there before are as they were", () => {
  expect(
    read(
      "{ maxBars: 5, reach: { easy: 20 %, flatDies: 50 %, fullers: 80 % }, forge: { cornerRadius: 2 }, mixed: { coreCentring: 0.2 } }",
    ),
  ).toEqual({
    maxBars: 5,
    reach: { easy: 0.2, flatDies: 0.5, fullers: 0.8 },
    forge: { cornerRadius: 2 },
    mixed: { coreCentring: 0.2 },
  });
});
