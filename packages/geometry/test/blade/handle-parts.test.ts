import { describe, expect, test } from "vitest";
import { type HandlePart, handleParts } from "../../src/blade/handle-parts.js";
import { VOLUME, X, Y, ZZ } from "../../src/blade/moments.js";
import type { Outline } from "../../src/blade/outline.js";
import type { SlabLaw } from "../../src/blade/slab-law.js";
import type { BlockSpec, HandleSpec, HoleSpec, LawSpec } from "../../src/blade/spec.js";
import { arcAround, line } from "../../src/plane/segment.js";
import { fullTang, hiddenTang, outlineWith, relative, steelLaw } from "./handle-fixtures.js";

/** Relative error that rounding leaves where one volume is the difference of two. */
const EXACT = 1e-11;
/** What the quadrature over rounded edges promises. */
const ROUNDED = 1e-9;

const ash = { name: "European ash" };
const brass = { name: "brass" };
const contour = (front: number, rear: number): LawSpec => [
  { at: { kind: "handle" }, is: front },
  { at: { kind: "butt" }, is: rear },
];
const parts = (handle: HandleSpec, outline: Outline, steel: SlabLaw, holes: readonly HoleSpec[] = []) =>
  new Map(handleParts(handle, outline, steel, holes).map((part) => [part.name, part]));
const volume = (part: HandlePart | undefined): number => part?.moments.value[VOLUME] ?? Number.NaN;

/** What a quarter-round of radius r takes off a square edge: area, and how far its centroid lies from the edge. */
const spandrel = (r: number) => ({
  area: (1 - Math.PI / 4) * r * r,
  inset: ((10 - 3 * Math.PI) / (3 * (4 - Math.PI))) * r,
});

describe("slabs", () => {
  const outline = fullTang(110, 24);
  const steel = steelLaw(outline, 4, 2);

  test("square edges: two plates", () => {
    const found = parts({ slabs: { material: ash, thickness: 8 } }, outline, steel);
    expect([...found.keys()]).toEqual(["slabs"]);
    expect(relative(volume(found.get("slabs")), 2 * 8 * 110 * 24)).toBeLessThan(EXACT);
    expect(found.get("slabs")?.density).toBe(0.00068);
  });

  test("long edges rounded by a quarter circle, four times the length of the handle", () => {
    const slabs = parts({ slabs: { material: ash, thickness: 8, edgeRadius: 6 } }, outline, steel).get(
      "slabs",
    );
    const v = 2 * 8 * 110 * 24 - 4 * spandrel(6).area * 110;
    expect(relative(volume(slabs), v)).toBeLessThan(ROUNDED);
    expect(relative(slabs?.moments.value[X] as number, v * -55)).toBeLessThan(ROUNDED);
    expect(relative(slabs?.moments.value[Y] as number, v * 18)).toBeLessThan(ROUNDED);
  });

  test("edges that run round a curve: the spandrel's area times the way of its centroid (Pappus)", () => {
    // A handle bent about (−60, −100): its ends stand square to its long sides.
    const centre = { x: -60, y: -100 };
    const [outer, inner, turn] = [125, 103, 0.5];
    const start = Math.PI / 2 - turn / 2;
    const top = arcAround(centre, outer, start, turn);
    const bottom = arcAround(centre, inner, start + turn, -turn);
    const bent = outlineWith({ top: [top], butt: [line(top.to, bottom.from)], bottom: [bottom] });
    const flat = steelLaw(bent, 4);
    const slabs = parts({ slabs: { material: ash, thickness: 7, edgeRadius: 5 } }, bent, flat).get("slabs");
    const { area, inset } = spandrel(5);
    const plates = 2 * 7 * ((turn * (outer ** 2 - inner ** 2)) / 2);
    const rounded = 2 * area * turn * (outer - inset + inner + inset);
    expect(relative(volume(slabs), plates - rounded)).toBeLessThan(ROUNDED);
  });

  test("a contour: thickness straight between stations over a handle that widens", () => {
    const low = [
      { x: -120, y: 0 },
      { x: 0, y: 6 },
    ] as const;
    const flared = outlineWith({
      top: [line({ x: 0, y: 30 }, { x: -120, y: 30 })],
      butt: [line({ x: -120, y: 30 }, low[0])],
      bottom: [line(low[0], low[1])],
    });
    const slabs = { material: ash, thickness: contour(9, 6) };
    const found = parts({ slabs }, flared, steelLaw(flared, 4)).get("slabs");
    // 2∫(9 − 3s/120)(24 + 6s/120) ds, a product of two straight lines: Simpson's rule is exact.
    expect(relative(volume(found), 2 * 20 * (9 * 24 + 4 * 7.5 * 27 + 6 * 30))).toBeLessThan(EXACT);
  });

  test("a contour with stations by distance and share, and rounded edges that follow it", () => {
    const thickness: LawSpec = [
      { at: { kind: "distance", mm: 20 }, is: 7 },
      { at: { kind: "fraction", share: 0.5 }, is: 10 },
      { at: { kind: "butt" }, is: 6 },
    ];
    const found = parts({ slabs: { material: ash, thickness, edgeRadius: 5 } }, outline, steel).get("slabs");
    const mean = 20 * 7 + (35 * (7 + 10)) / 2 + (55 * (10 + 6)) / 2;
    expect(relative(volume(found), 2 * 24 * mean - 4 * spandrel(5).area * 110)).toBeLessThan(ROUNDED);
  });

  test("a smooth contour of two stations is straight, of three it swells without overshoot", () => {
    const of = (thickness: LawSpec): number =>
      volume(parts({ slabs: { material: ash, between: "smooth", thickness } }, outline, steel).get("slabs"));
    expect(relative(of(contour(9, 6)), 2 * 24 * 110 * 7.5)).toBeLessThan(EXACT);
    const swell = of([
      { at: { kind: "handle" }, is: 6 },
      { at: { kind: "fraction", share: 0.5 }, is: 9 },
      { at: { kind: "butt" }, is: 6 },
    ]);
    // Each half is Hermite from slope p at its outer end to 0 at the crest, p = 1.5·(3/55)·2 limited… 3·6/110 here:
    // mean (6 + 9)/2 + p·55/12 with the three-point end slope p = (3·m0 − m1)/2, m0 = −m1 = 3/55.
    const p = (3 * (3 / 55) + 3 / 55) / 2;
    expect(relative(swell, 2 * 24 * 110 * (7.5 + (p * 55) / 12))).toBeLessThan(EXACT);
  });

  test("holes for pins and thongs go through, lightening holes stay covered", () => {
    const holes: HoleSpec[] = [
      { kind: "pin", at: { x: -30, y: 18 }, diameter: 5, pin: 4 },
      { kind: "lightening", at: { x: -55, y: 18 }, diameter: 9 },
      { kind: "thong", at: { x: -80, y: 18 }, to: { x: -88, y: 18 }, diameter: 6 },
    ];
    const found = parts({ slabs: { material: ash, thickness: 8, edgeRadius: 6 } }, outline, steel, holes);
    const solid = 2 * 8 * 110 * 24 - 4 * spandrel(6).area * 110;
    const drilled = 2 * 8 * (Math.PI * 4 + Math.PI * 9 + 8 * 6);
    expect(relative(volume(found.get("slabs")), solid - drilled)).toBeLessThan(ROUNDED);
    expect(found.has("pins")).toBe(false);
  });
});

describe("liners and pins", () => {
  const outline = fullTang(110, 24);
  const steel = steelLaw(outline, 4, 2);
  const pin: HoleSpec = { kind: "pin", at: { x: -44, y: 18 }, diameter: 5 };
  const handle: HandleSpec = {
    slabs: { material: ash, thickness: contour(9, 6), edgeRadius: 5 },
    liners: { material: { name: "G10" }, thickness: 0.8 },
    pins: { material: brass },
  };

  test("liners are sheets of one thickness along the tang, outside its faces", () => {
    const { value } = parts(handle, outline, steel).get("liners")?.moments ?? { value: [] };
    expect(relative(value[VOLUME] as number, 2 * 0.8 * 110 * 24)).toBeLessThan(EXACT);
    // ∫z² between the tang's face t/2 and t/2 + 0.8: 24·∫(2/3)((t/2 + 0.8)³ − (t/2)³), t from 4 to 2.
    const fourth = (a: number): number => a ** 4 / 4;
    const over = (rise: number): number => (fourth(2 + rise) - fourth(1 + rise)) * 110;
    expect(relative(value[ZZ] as number, (24 * 2 * (over(0.8) - over(0))) / 3)).toBeLessThan(EXACT);
  });

  test("a pin is as long as tang, liners and slabs are thick there", () => {
    const pins = parts(handle, outline, steel, [pin]).get("pins");
    // Everything is straight along x, so the mean over the pin is the thickness at its middle.
    const long = 4 - 2 * 0.4 + 2 * (0.8 + 9 - 3 * 0.4);
    expect(relative(volume(pins), Math.PI * 2.5 ** 2 * long)).toBeLessThan(EXACT);
    expect(pins?.material).toBe("brass");
  });

  test("a pin near the edge ends flush with the rounding: as much as thin strips across it", () => {
    const low: HoleSpec = { kind: "pin", at: { x: -44, y: 9.2 }, diameter: 5 };
    const n = 1500;
    let sum = 0;
    // Strips along x, whose ends y ± half the chord are exact; distance from the straight lower edge is y − 6.
    for (let i = 0; i < n; i++) {
      const y = 9.2 - 2.5 * Math.cos((Math.PI * (i + 0.5)) / n);
      const chord = 2 * Math.sqrt(2.5 ** 2 - (y - 9.2) ** 2);
      const v = y - 6;
      const lost = v >= 5 ? 0 : 5 - Math.sqrt(25 - (5 - v) ** 2);
      const long = 4 - 2 * 0.4 + 2 * (0.8 + 9 - 3 * 0.4 - lost);
      sum += chord * long * 2.5 * Math.sin((Math.PI * (i + 0.5)) / n) * (Math.PI / n);
    }
    expect(relative(volume(parts(handle, outline, steel, [low]).get("pins")), sum)).toBeLessThan(1e-6);
  });

  test("the parts fill the handle: with pins as wide as their holes they add up to the one without holes", () => {
    const holes: HoleSpec[] = [pin, { kind: "pin", at: { x: -90, y: 9.5 }, diameter: 6 }];
    const sum = (found: ReadonlyMap<string, HandlePart>, i: number): number =>
      [...found.values()].reduce((total, { moments }) => total + (moments.value[i] as number), 0);
    const drilled = parts(handle, outline, steel, holes);
    const solid = parts(handle, outline, steel);
    // The pins also fill what the holes took out of the steel.
    const steelHole = (at: { x: number; y: number }, r: number): number =>
      Math.PI * r * r * (4 + (2 * at.x) / 110);
    const taken = steelHole({ x: -44, y: 18 }, 2.5) + steelHole({ x: -90, y: 9.5 }, 3);
    expect(relative(sum(drilled, VOLUME), sum(solid, VOLUME) + taken)).toBeLessThan(EXACT);
  });
});

describe("bolsters", () => {
  const outline = fullTang(110, 24);
  const steel = steelLaw(outline, 4);
  const bolster: BlockSpec = {
    material: { name: "nickel silver" },
    at: 0,
    length: 15,
    height: 24,
    width: 20,
  };

  test("a pair leaves out the tang, and the slabs begin behind it", () => {
    const handle: HandleSpec = {
      slabs: { material: ash, thickness: 8, edgeRadius: 6 },
      liners: { material: { name: "G10" }, thickness: 0.5 },
      bolsters: [bolster],
    };
    const found = parts(handle, outline, steel);
    expect([...found.keys()]).toEqual(["liners", "slabs", "bolsters"]);
    expect(relative(volume(found.get("bolsters")), 15 * 24 * (20 - 4))).toBeLessThan(EXACT);
    expect(relative(volume(found.get("liners")), 2 * 0.5 * 95 * 24)).toBeLessThan(EXACT);
    const slabs = 2 * 8 * 95 * 24 - 4 * spandrel(6).area * 95;
    expect(relative(volume(found.get("slabs")), slabs)).toBeLessThan(ROUNDED);
    expect(relative(found.get("slabs")?.moments.value[X] as number, slabs * -62.5)).toBeLessThan(ROUNDED);
  });

  test("a pin through a pair is as long as the pair is wide, and is drilled out of it", () => {
    const holes: HoleSpec[] = [{ kind: "pin", at: { x: -7, y: 18 }, diameter: 4 }];
    const found = parts({ bolsters: [bolster], pins: { material: brass } }, outline, steel, holes);
    expect(relative(volume(found.get("pins")), Math.PI * 4 * 20)).toBeLessThan(EXACT);
    expect(relative(volume(found.get("bolsters")), (15 * 24 - Math.PI * 4) * 16)).toBeLessThan(EXACT);
  });

  test("a pin half in the pair and half in the slabs is flush with both", () => {
    const holes: HoleSpec[] = [{ kind: "pin", at: { x: -15, y: 18 }, diameter: 4 }];
    const handle: HandleSpec = {
      slabs: { material: ash, thickness: 7, edgeRadius: 5 },
      bolsters: [bolster],
      pins: { material: brass },
    };
    const found = parts(handle, outline, steel, holes);
    expect(relative(volume(found.get("pins")), (Math.PI * 4 * (20 + 18)) / 2)).toBeLessThan(EXACT);
  });

  test("several are told apart", () => {
    const rear = { ...bolster, at: -98, length: 12 };
    expect([...parts({ bolsters: [bolster, rear] }, outline, steel).keys()]).toEqual([
      "bolsters 1",
      "bolsters 2",
    ]);
  });
});

describe("handles of hidden tangs", () => {
  const outline = hiddenTang(90, 16, 8);
  const steel = steelLaw(outline, 4, 2);
  const block = { material: ash, section: "oval", length: 120, height: 30, width: 20 } as const;
  const solid = (Math.PI / 4) * 30 * 20 * 120;
  const tang = (90 / 6) * (16 * 4 + 4 * 12 * 3 + 8 * 2);

  test("handle and tang fill the block", () => {
    const found = parts({ block }, outline, steel);
    expect([...found.keys()]).toEqual(["handle"]);
    expect(relative(volume(found.get("handle")), solid - tang)).toBeLessThan(EXACT);
    expect(relative(found.get("handle")?.moments.value[Y] as number, (solid - tang) * 15)).toBeLessThan(
      EXACT,
    );
  });

  test("holes in the tang stay empty inside the handle", () => {
    const holes: HoleSpec[] = [{ kind: "lightening", at: { x: -40, y: 15 }, diameter: 6 }];
    expect(
      relative(volume(parts({ block }, outline, steel, holes).get("handle")), solid - tang),
    ).toBeLessThan(EXACT);
  });

  test("with a pin as wide as its hole, handle, pin and drilled tang fill the block", () => {
    const holes: HoleSpec[] = [{ kind: "pin", at: { x: -30, y: 15 }, diameter: 5 }];
    const found = parts({ block, pins: { material: brass } }, outline, steel, holes);
    const steelHole = Math.PI * 2.5 ** 2 * (4 - 2 / 3);
    const filled = volume(found.get("handle")) + volume(found.get("pins")) + tang - steelHole;
    expect(relative(filled, solid)).toBeLessThan(EXACT);
    // Its ends follow the oval: a little shorter than the handle is wide.
    const area = Math.PI * 2.5 ** 2;
    expect(volume(found.get("pins"))).toBeLessThan(area * 20);
    expect(volume(found.get("pins"))).toBeGreaterThan(area * 20 * Math.sqrt(1 - (2.5 / 15) ** 2));
  });

  test("a pin thinner than its hole leaves the gap empty", () => {
    const of = (diameter: number): Map<string, HandlePart> =>
      parts({ block, pins: { material: brass } }, outline, steel, [
        { kind: "pin", at: { x: -30, y: 15 }, diameter, pin: 4 },
      ]);
    expect(volume(of(5).get("pins"))).toBe(volume(of(4).get("pins")));
    expect(volume(of(5).get("handle"))).toBe(volume(of(4).get("handle")));
  });

  test("a guard has the tang's slot in it, and the handle begins behind it", () => {
    const guard: BlockSpec = { material: brass, at: 0, length: 6, height: 34, width: 14 };
    const found = parts({ block, guard }, outline, steel);
    expect([...found.keys()]).toEqual(["handle", "guard"]);
    const height = (s: number): number => 16 - (8 * s) / 90;
    const thickness = (s: number): number => 4 - (2 * s) / 90;
    const slot = height(0) * thickness(0) + 4 * height(3) * thickness(3) + height(6) * thickness(6);
    expect(relative(volume(found.get("guard")), 6 * 34 * 14 - slot)).toBeLessThan(EXACT);
    expect(relative(volume(found.get("handle")), solid - (tang - slot))).toBeLessThan(EXACT);
    const first = solid * (-6 - 60);
    const tangFirst = found.get("handle")?.moments.value[X] as number;
    // What is left of the solid's first moment is the tang's behind the guard.
    const at = (s: number): number => -s * height(s) * thickness(s);
    const cubic = ((90 - 6) / 6) * (at(6) + 4 * at(48) + at(90));
    expect(relative(tangFirst, first - cubic)).toBeLessThan(EXACT);
  });

  test("a through tang reaches into the pommel", () => {
    const pommel: BlockSpec = {
      material: brass,
      at: -70,
      length: 30,
      height: 24,
      width: 24,
      section: "oval",
    };
    const short = { ...block, length: 70 };
    const found = parts({ block: short, pommel }, outline, steel);
    expect([...found.keys()]).toEqual(["handle", "pommel"]);
    const height = (s: number): number => 16 - (8 * s) / 90;
    const thickness = (s: number): number => 4 - (2 * s) / 90;
    const inside = (20 / 6) * (height(70) * thickness(70) + 4 * height(80) * thickness(80) + 8 * 2);
    expect(relative(volume(found.get("pommel")), (Math.PI / 4) * 24 * 24 * 30 - inside)).toBeLessThan(EXACT);
  });

  test("fittings in several materials weigh by their own densities", () => {
    const guard: BlockSpec = { material: { name: "bronze" }, at: 0, length: 6, height: 34, width: 14 };
    const found = parts({ block: { ...block, material: { ...ash, moisture: 0.12 } }, guard }, outline, steel);
    expect(found.get("guard")?.density).toBe(0.00878);
    expect(found.get("handle")?.density).toBeCloseTo(0.00068, 12);
    const own = parts({ guard: { ...guard, material: { name: "odd", density: 0.002 } } }, outline, steel);
    expect(own.get("guard")?.density).toBe(0.002);
    const odd = parts({ guard: { ...guard, material: { name: "unheard of" } } }, outline, steel);
    expect(odd.get("guard")?.density).toBeUndefined();
  });
});

test("no handle, no parts", () => {
  const outline = fullTang(110, 24);
  expect(handleParts(undefined, outline, steelLaw(outline, 4), [])).toEqual([]);
  expect(handleParts({}, outline, steelLaw(outline, 4), [])).toEqual([]);
});
