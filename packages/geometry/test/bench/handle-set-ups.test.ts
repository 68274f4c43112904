import { drillSizes } from "@scantling/geometry/units";
import { describe, expect, test } from "vitest";
import { handleBlank } from "../../src/bench/blanks.js";
import { glueSetUp, glueToMix } from "../../src/bench/glue.js";
import { guardSlot, holesApart } from "../../src/bench/guard-slot.js";
import { holesAcross, mortiseSetUp } from "../../src/bench/mortise.js";
import { gripAt, pinLength, pinsSetUp } from "../../src/bench/pins.js";
import { makeKnife } from "../../src/blade/knife.js";
import { signedArea } from "../../src/plane/measure.js";
import { randomKnives } from "../blade/random-knives.js";
import { chopper, hidden } from "./bench-knives.js";

const DRILLS = drillSizes();

describe("pins", () => {
  test("are as long as the tang is thick there, slabs and what stands out", () => {
    const set = pinsSetUp(chopper(), 1);
    // 20 mm behind the handle front: 5 − 2 · 20/120; 100 mm: 5 − 2 · 100/120.
    expect(set?.pins[0]?.grip).toBeCloseTo(5 - 1 / 3 + 16, 9);
    expect(set?.pins[1]?.grip).toBeCloseTo(5 - 5 / 3 + 16, 9);
    expect(set?.pins[0]?.sawn).toBeCloseTo(pinLength(5 - 1 / 3, 8, 2), 9);
    // Peened: 1 to 1.5 radii of 2 mm on each side.
    expect(set?.pins[0]?.peened.least).toBeCloseTo(5 - 1 / 3 + 16 + 4, 9);
    expect(set?.pins[0]?.peened.most).toBeCloseTo(5 - 1 / 3 + 16 + 6, 9);
    expect(set?.rods).toEqual([{ diameter: 4, count: 2, length: expect.closeTo(10 - 2 + 32 + 8 + 2, 9) }]);
  });

  test("through liners and a bolster", () => {
    const knife = chopper((spec) => ({
      ...spec,
      handle: {
        slabs: { material: { name: "European ash" }, thickness: 8 },
        liners: { material: { name: "brass" }, thickness: 1 },
        bolsters: [{ material: { name: "brass" }, at: -10, length: 30, height: 30, width: 19 }],
      },
    }));
    expect(gripAt(knife, { x: -30, y: 36 })).toBeCloseTo(19, 12);
    expect(gripAt(knife, { x: -110, y: 36 })).toBeCloseTo(5 - 5 / 3 + 18, 9);
    // Ahead of the handle there is nothing but steel.
    expect(gripAt(knife, { x: 50, y: 30 })).toBeCloseTo(4.25, 12);
    expect(pinsSetUp(knife, 1)).toBeUndefined();
  });
});

describe("glue", () => {
  test("covers the tang less its holes, on both sides", () => {
    const glue = glueSetUp(chopper());
    // 120 × 28, less the holes of 6, 4 and 10 mm.
    const area = 120 * 28 - (Math.PI / 4) * (36 + 16 + 100);
    expect(glue?.area).toBeCloseTo(area, 6);
    expect(glue?.joints).toBe(2);
    const ring = (Math.PI / 4) * (36 - 16) * (5 - 1 / 3);
    expect(glue?.needed).toBeCloseTo(2 * area * 0.15 + ring, 6);
    expect(glue?.toMix).toBe(4000);
  });

  test("takes four joints with liners, and leaves a bolster's place out", () => {
    const knife = chopper((spec) => ({
      ...spec,
      tang: { ...spec.tang, holes: [] },
      handle: {
        slabs: { material: { name: "European ash" }, thickness: 8 },
        liners: { material: { name: "brass" }, thickness: 1 },
        bolsters: [{ material: { name: "brass" }, at: -10, length: 20, height: 30, width: 19 }],
      },
    }));
    expect(glueSetUp(knife)).toMatchObject({ joints: 4, area: expect.closeTo(100 * 28, 6) });
  });

  test("is twice what the joints take, and never less than can be measured", () => {
    expect(glueToMix(0)).toBe(4000);
    expect(glueToMix(2000)).toBe(4000);
    expect(glueToMix(2500)).toBe(5000);
  });

  test("round a hidden tang fills the mortise", () => {
    const glue = glueSetUp(hidden());
    // From 18 mm behind the heel, behind the guard, to the tang's end at −110. Heights 20 − 10·u, thickness 4 − 2·u over
    // u = share of 100 mm behind the handle front at −10; from u = 0.08 on, and Simpson is exact for a quadratic.
    const at = (u: number): { h: number; t: number } => ({ h: 20 - 10 * u, t: 4 - 2 * u });
    const simpson = (f: (u: number) => number): number =>
      ((1 - 0.08) / 6) * (f(0.08) + 4 * f(0.54) + f(1)) * 100;
    expect(glue?.area).toBeCloseTo(
      simpson((u) => 2 * (at(u).h + at(u).t)),
      3,
    );
    expect(glue?.needed).toBeCloseTo(
      simpson((u) => (at(u).h + 0.5) * (at(u).t + 0.5) - at(u).h * at(u).t),
      3,
    );
  });

  test("of bare random knives is the area of their tangs", () => {
    const slabs = { slabs: { material: { name: "European ash" }, thickness: 7 } };
    for (const { knife } of randomKnives(20)) {
      const { tangTop, butt, tangBottom } = knife.outline.runs;
      const [first, last] = [tangTop[0], tangBottom.at(-1)];
      if (first === undefined || last === undefined) continue;
      const glue = glueSetUp({ ...knife, spec: { ...knife.spec, handle: slabs } });
      const closing = { kind: "line" as const, from: last.to, to: first.from };
      const segments = [...tangTop, ...butt, ...tangBottom, closing];
      // The heel face is level behind the handle front, so the closing line is upright there.
      if (Math.abs(closing.from.x - closing.to.x) > 1e-9) continue;
      expect(glue?.area).toBeCloseTo(signedArea({ segments, closed: true }), 4);
    }
  });
});

describe("blanks", () => {
  test("of slabs: 6 mm over the outline, 1 mm over the thickness, a pair out of one block", () => {
    expect(handleBlank(chopper(), 1.6)).toEqual({
      kind: "slabs",
      material: "European ash",
      length: expect.closeTo(126, 9),
      height: expect.closeTo(34, 9),
      thickness: 9,
      bookMatched: 19.6,
    });
  });

  test("of slabs on a tang with shoulders: the shoulders are the blade's", () => {
    // Spine at 60, heel at 0; the tang from 20 to 44 at the handle front and 22 to 40 at the butt, 110 behind.
    const shouldered = makeKnife({
      steel: { name: "1084" },
      blade: {
        outline: {
          runs: {
            edge: "M0 0 H190",
            front: "L190 3",
            spine: "L0 60",
            tangTop: "L0 44 L-110 40",
            butt: "L-110 22",
            tangBottom: "L0 20",
          },
        },
        thickness: [{ at: { kind: "heel" }, is: 4 }],
        bevel: { form: "flat", height: 14, edgeThickness: 0.5 },
        edgeAngle: 0.3,
      },
      tang: { form: "full" },
      handle: { slabs: { material: { name: "European ash" }, thickness: 8 } },
    });
    expect(handleBlank(shouldered, 2)).toMatchObject({
      length: expect.closeTo(116, 9),
      height: expect.closeTo(30, 9),
    });
  });

  test("of slabs between bolster and butt", () => {
    const knife = chopper((spec) => ({
      ...spec,
      handle: {
        ...spec.handle,
        bolsters: [{ material: { name: "brass" }, at: -10, length: 20, height: 30, width: 19 }],
      },
    }));
    expect(handleBlank(knife, 1)?.length).toBeCloseTo(106, 9);
  });

  test("of a block around a hidden tang", () => {
    expect(handleBlank(hidden(), 1)).toMatchObject({ kind: "block", length: 126, height: 40, thickness: 30 });
  });
});

describe("a mortise", () => {
  test("is drilled by the tang's sizes at each depth", () => {
    const set = mortiseSetUp(hidden(), DRILLS);
    const [deepest] = set?.steps ?? [];
    // Front face 8 mm behind the handle front; the tang ends 92 mm deeper, 10 high and 2 thick there.
    expect(deepest?.depth).toBeCloseTo(92, 6);
    expect(deepest?.tang.height).toBeCloseTo(10, 4);
    expect(deepest?.mortise.thickness).toBeCloseTo(2.5, 4);
    expect(deepest?.drill?.diameter).toBeGreaterThanOrEqual((deepest?.mortise.thickness ?? 0) - 1e-6);
    expect(deepest?.drill?.diameter).toBeLessThan(2.6);
    const mouth = set?.steps.at(-1);
    expect(mouth?.depth).toBe(0);
    expect(mouth?.tang.thickness).toBeCloseTo(4 - 2 * 0.08, 4);
    expect(set?.through).toBe(false);
  });

  test("leaves less wall than the tang itself does by half of what it is larger", () => {
    const set = mortiseSetUp(hidden(), []);
    // Thinnest above and below at the mouth: (34 − 19.2)/2; the oval's sides are nearer to the corners: less than that.
    expect(set?.wall).toBeGreaterThan(0);
    expect(set?.wall).toBeLessThan((34 - 19.2) / 2);
  });

  test("of a full tang is none", () => {
    expect(mortiseSetUp(chopper(), DRILLS)).toBeUndefined();
  });

  test("takes holes that overlap by half", () => {
    expect(holesAcross(10, 10)).toBe(1);
    expect(holesAcross(10.1, 10)).toBe(2);
    expect(holesAcross(15, 10)).toBe(2);
    expect(holesAcross(20, 10)).toBe(3);
    // Heights are read 10⁻⁶ mm inside the tang's end: no hole more for that.
    expect(holesAcross(10.5 + 2e-7, 3.5)).toBe(5);
    expect(holesAcross(10.5 + 0.01, 3.5)).toBe(6);
  });
});

describe("a guard's slot", () => {
  test("is as the tang where it is largest, and covered by the shoulders", () => {
    const slot = guardSlot(hidden(), DRILLS);
    expect(slot?.height).toBeCloseTo(20, 4);
    expect(slot?.thickness).toBeCloseTo(4, 4);
    // Ahead of it the ricasso: 50 high, 5 thick.
    expect(slot?.coverThickness).toBeCloseTo(0.5, 4);
    expect(slot?.drill).toMatchObject({ name: "4 mm" });
    // 16 mm from the first middle to the last: 3 times 4.5 mm goes into it, a fourth does not.
    expect(slot?.holes).toBe(4);
  });

  test("does not count the fillets of the shoulders", () => {
    const knife = hidden();
    const { spec } = knife;
    const filleted = chopper(() => ({ ...spec, tang: { ...spec.tang, shoulderRadius: 2 } }));
    const slot = guardSlot(filleted, []);
    expect(slot?.relief).toBe(2);
    expect(slot?.height).toBeCloseTo(20 - 0.2, 2);
  });

  test("is drilled with holes that stay clear of one another", () => {
    for (let height = 4; height < 40; height += 0.37) {
      for (const drill of [2, 3.175, 4]) {
        const holes = holesApart(height, drill);
        expect(holes).toBeGreaterThanOrEqual(1);
        // Steel left between them, the outer ones touching the ends, and too little for one more.
        if (holes > 1) expect((height - holes * drill) / (holes - 1)).toBeGreaterThan(0.5 - 1e-3);
        expect((height - (holes + 1) * drill) / holes).toBeLessThan(0.5);
      }
    }
  });

  test("is none without a guard", () => {
    expect(guardSlot(chopper(), DRILLS)).toBeUndefined();
  });
});
