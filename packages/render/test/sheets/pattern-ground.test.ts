import { arcAround, line, type Path, vec2 } from "@scantling/geometry";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { checkLayout, type PatternModel, patternSheet, toSvg } from "../../src/index.js";
import { harvestKnife } from "../fixtures.js";
import { randomModel } from "../random-model.js";
import { attributeOf, boundsOfPoints, byId, pointsOfPathData, readSvg } from "../read-svg.js";

/** Level slot or groove rim between two centres. */
const stadium = (x0: number, x1: number, y: number, r: number): Path => ({
  closed: true,
  segments: [
    arcAround(vec2(x1, y), r, -Math.PI / 2, Math.PI),
    line(vec2(x1, y + r), vec2(x0, y + r)),
    arcAround(vec2(x0, y), r, Math.PI / 2, Math.PI),
    line(vec2(x0, y - r), vec2(x1, y - r)),
  ],
});

/** What a plain pattern does not have: a slot, a swedge, fullers of both faces and of the far one, fittings. */
const withGround = (model: PatternModel): PatternModel => {
  const { edgeLength, heelHeight, handleFront } = model;
  const slotY = heelHeight - 8;
  const from = 0.6 * edgeLength;
  return {
    ...model,
    holes: [
      ...model.holes,
      {
        centre: vec2(handleFront - 20, slotY),
        diameter: 8,
        kind: "lightening",
        slot: {
          to: vec2(handleFront - 40, slotY),
          rim: stadium(handleFront - 40, handleFront - 20, slotY, 4),
        },
      },
    ],
    stations: [...model.stations, { x: from, top: heelHeight, bottom: 0, thickness: 3.5, atSwedge: 1.5 }],
    swedge: {
      from,
      to: edgeLength,
      angle: Math.PI / 9,
      line: [[line(vec2(from, heelHeight), vec2(from, heelHeight - 3))]],
    },
    fullers: (["both", "left"] as const).map((faces, i) => ({
      from: vec2(5, heelHeight / 2 + 4 * i),
      to: vec2(30, heelHeight / 2 + 4 * i),
      radius: 4,
      depth: 0.5,
      faces,
      rim: stadium(5, 30, heelHeight / 2 + 4 * i, 1.9),
    })),
    fittings: [
      {
        name: "guard",
        front: handleFront,
        rear: handleFront - 6,
        lines: [handleFront, handleFront - 6].map((x) => line(vec2(x, slotY - 4), vec2(x, slotY + 4))),
      },
    ],
  };
};

describe("what is ground and what is put on", () => {
  const model = withGround(harvestKnife());
  const elements = async () => readSvg(await toSvg(patternSheet(model)));
  const words = async (): Promise<string[]> =>
    (await elements()).filter(({ tag }) => tag === "text").map(({ text }) => text);

  it("is drawn: the slot with its two round ends, swedge, fullers, both faces of the guard", async () => {
    const drawn = await elements();
    const slot = boundsOfPoints(pointsOfPathData(attributeOf(byId(drawn, "hole-D"), "d"), 4000));
    expect(slot.maxX - slot.minX).toBeCloseTo(20 + 8, 4);
    expect(slot.maxY - slot.minY).toBeCloseTo(8, 4);
    for (const id of ["swedge-line", "fuller-1", "fuller-2", "guard"]) {
      expect(attributeOf(byId(drawn, id), "d")).toMatch(/^M/);
    }
    // The far side is dashed.
    expect(attributeOf(byId(drawn, "fuller-2"), "stroke-dasharray")).not.toBe("");
  });

  it("is named and listed: both centres of the slot, ends of fullers, places of swedge and guard", async () => {
    const text = await words();
    expect(text).toEqual(expect.arrayContaining(["slot 8 mm", "swedge", "fuller 1", "fuller 2", "guard"]));
    expect(text).toEqual(expect.arrayContaining(["lightening, slot", '−50.00 mm [−1.969"]', "left, behind"]));
    expect(text).toEqual(expect.arrayContaining(["20° per side", '−16 mm [−5/8"]']));
  });

  it("has a station with the spine's thickness without the swedge, and with it", async () => {
    const text = await words();
    expect(text).toEqual(expect.arrayContaining(["3.5 mm", "swedge 1.5 mm"]));
    expect(text).toContain(
      "Thickness at the spine without its swedge, and with it, at distances from the heel",
    );
  });

  it("can be read on any knife", () => {
    fc.assert(
      fc.property(randomModel, (random) => {
        expect(checkLayout(patternSheet(withGround(random)))).toEqual([]);
      }),
      { seed: 20262, numRuns: 60 },
    );
  });
});
