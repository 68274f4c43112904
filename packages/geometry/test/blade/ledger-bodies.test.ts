import { describe, expect, it } from "vitest";
import { makeKnife } from "../../src/blade/knife.js";
import { ledgerBodies } from "../../src/blade/ledger-bodies.js";
import { measureBody } from "../../src/blade/measure-body.js";
import { VOLUME, X, Y } from "../../src/blade/moments.js";
import { profileStrips } from "../../src/blade/profile-strips.js";
import { weighKnife } from "../../src/blade/weigh-knife.js";
import { expectRelative, expectWithin } from "../numeric/close.js";
import { boxKnife, p } from "./bodies.js";
import { heel, randomKnives, tip } from "./random-knives.js";

describe("the ledger's bodies", () => {
  const knives = randomKnives(14, 11);

  it("have rows that are never negative and stations that sum to the forged blade", () => {
    knives.forEach(({ knife }, i) => {
      const rows = ledgerBodies(knife);
      const added = [
        rows.sharpening,
        rows.finishGrinding,
        rows.drilling,
        rows.bevelGrinding,
        rows.tangGrinding,
        rows.faceGrinding,
        rows.profileTrimming,
      ];
      for (const [k, row] of added.entries())
        expect(row, `knife ${i}, row ${k}`).toBeGreaterThanOrEqual(-1e-6);
      const forged = knife.body("forged");
      const own = measureBody(forged).value[VOLUME] as number;
      const upToForged = rows.finished + added.slice(0, 6).reduce((a, b) => a + b, 0);
      // The states are measured to 1e-9 each; along the ridge of a curved edge a hundredth of that is asked.
      expectRelative(upToForged, own, 1e-8, `knife ${i}, forged`);
      const sides = profileStrips(forged, knife.outline, { ...knife.allowances, tip: 0, butt: 0 });
      let sum = 0;
      rows.stations.forEach((station, k) => {
        const before = rows.stations[k - 1];
        if (before === undefined) return;
        expect(station.x).toBeGreaterThan(before.x);
        sum += ((station.area + before.area) / 2) * (station.x - before.x);
      });
      expectRelative(sum, own + (sides.value[VOLUME] as number), 1e-3, `knife ${i}, stations`);
      for (const { height, area, thickness } of rows.stations) {
        expect(height).toBeGreaterThan(0);
        expect(thickness ?? 0).toBeGreaterThan(0);
        expect(area).toBeLessThanOrEqual(height * (thickness ?? 0) * (1 + 1e-9));
      }
      expect(rows.readySurface).toBeGreaterThan(0);
      expect(rows.forgedSurface).toBeGreaterThan(rows.readySurface * 0.9);
    });
  });
});

describe("profile strips of a rectangular blade and tang", () => {
  const spec = boxKnife({ thickness: [heel(4), tip(3)] });
  const knife = makeKnife(spec);
  const body = knife.body("unsharpened");

  it("along the sides: as thick as the rim beside them", () => {
    const { value } = profileStrips(body, knife.outline, { outline: 2, tip: 0, butt: 0 });
    // Edge side 0.4 along 120, spine side 4 to 3; ricasso and tang 4 on both sides along 100.
    expectRelative(value[VOLUME] as number, 2 * (120 * 0.4 + 120 * 3.5 + 2 * 100 * 4), 1e-10);
    const edge = 2 * 120 * 0.4 * -1;
    const spine = 2 * 120 * 3.5 * 31;
    const back = 2 * 100 * 4 * (31 + 9);
    expectRelative(value[Y] as number, edge + spine + back, 1e-10);
    const spineX = 2 * 120 * 120 * (4 / 6 + 3 / 3);
    expectRelative(value[X] as number, 2 * 0.4 * 7200 + spineX + 2 * 2 * 4 * 100 * -50, 1e-9);
  });

  it("at the ends: the end's section drawn on", () => {
    const { value } = profileStrips(body, knife.outline, { outline: 0, tip: 5, butt: 4 });
    const tipEnd = (5 * 30 * (0.4 + 3)) / 2;
    const buttEnd = 4 * 20 * 4;
    expectRelative(value[VOLUME] as number, tipEnd + buttEnd, 1e-10);
    expectRelative(value[X] as number, tipEnd * 122.5 + buttEnd * -102, 1e-10);
  });

  it("nothing is nothing", () => {
    const { value, surface } = profileStrips(body, knife.outline, { outline: 0, tip: 0, butt: 0 });
    expect(Math.max(...value.map(Math.abs))).toBe(0);
    expectWithin(surface, 0, 1e-12);
  });
});

describe("the weight of a knife", () => {
  it("is the sum of its parts, and balances where they do", () => {
    const { knife, parts, steel } = weighKnife(
      makeKnife(
        boxKnife(
          {},
          {
            tang: { holes: [{ kind: "pin", at: p(-60, 20), diameter: 5 }] },
            handle: {
              slabs: { material: { name: "wood", density: 0.0007 }, thickness: 8, edgeRadius: 2 },
              pins: { material: { name: "pin metal", density: 0.0085 } },
              parts: [{ name: "bolster", mass: 31, at: p(-15, 20) }],
            },
          },
        ),
      ),
    );
    expect(parts.map(({ name }) => name)).toEqual(["steel", "slabs", "pins", "bolster"]);
    expectRelative(
      knife.mass,
      parts.reduce((sum, { mass }) => sum + mass, 0),
      1e-14,
    );
    const moment = parts.reduce((sum, { mass, centre }) => sum + mass * centre.x, 0);
    expectRelative(knife.balanceFromHeel, moment / knife.mass, 1e-12);
    expectWithin(knife.balanceFromHandle - knife.balanceFromHeel, 20, 1e-12);
    expectRelative(parts[0]?.mass ?? 0, steel.volume * 0.00785, 1e-14);
    expectRelative(parts[2]?.mass ?? 0, Math.PI * 2.5 ** 2 * 20 * 0.0085, 1e-9);
  });

  it("of two boxes, done by hand", () => {
    // Unsharpened boxes: an edge as thick as the spine and nothing for the planes to take but a sliver.
    const spec = boxKnife({
      bevel: { form: "flat", height: 30, edgeThickness: 4 },
      edgeAngle: Math.PI / 2 - 1e-7,
    });
    const { knife, steel } = weighKnife(
      makeKnife({
        ...spec,
        handle: { slabs: { material: { name: "wood", density: 0.0007 }, thickness: 8 } },
      }),
    );
    // Blade 120 × 30 × 4 about x = 60; ricasso and tang 100 × 20 × 4 about −50; wood 80 × 20 × 16 about −60.
    const [blade, back, wood] = [14_400 * 0.00785, 8000 * 0.00785, 25_600 * 0.0007];
    expectRelative(knife.mass, blade + back + wood, 1e-6);
    expectWithin(knife.balanceFromHeel, (blade * 60 - back * 50 - wood * 60) / (blade + back + wood), 1e-5);
    // Inertia about z of the steel by the parallel-axis theorem.
    const centre = {
      x: (blade * 60 - back * 50) / (blade + back),
      y: (blade * 15 + back * 20) / (blade + back),
    };
    const own = (m: number, l: number, h: number): number => (m * (l * l + h * h)) / 12;
    const zz =
      own(blade, 120, 30) +
      own(back, 100, 20) +
      blade * ((60 - centre.x) ** 2 + (15 - centre.y) ** 2) +
      back * ((-50 - centre.x) ** 2 + (20 - centre.y) ** 2);
    expectRelative(steel.inertia.zz, zz, 1e-6);
    const xy = blade * (60 - centre.x) * (15 - centre.y) + back * (-50 - centre.x) * (20 - centre.y);
    expectRelative(steel.inertia.xy, xy, 1e-6);
  });
});
