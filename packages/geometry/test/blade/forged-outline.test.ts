import { describe, expect, it } from "vitest";
import { forgedOutline } from "../../src/blade/forged-outline.js";
import { makeKnife } from "../../src/blade/knife.js";
import { VOLUME } from "../../src/blade/moments.js";
import type { Outline } from "../../src/blade/outline.js";
import { type ProfileAllowance, profileStrips } from "../../src/blade/profile-strips.js";
import { SectionLaw } from "../../src/blade/section-law.js";
import { SlabLaw } from "../../src/blade/slab-law.js";
import { SteelBody } from "../../src/blade/steel-body.js";
import { Law } from "../../src/numeric/law.js";
import { pathBounds } from "../../src/plane/bounds.js";
import { signedArea } from "../../src/plane/measure.js";
import { validateOutline } from "../../src/plane/validate.js";
import { expectRelative, expectWithin } from "../numeric/close.js";
import { boxKnife } from "./bodies.js";
import { heel, randomKnives } from "./random-knives.js";

const ALLOWANCE: ProfileAllowance = { outline: 1.5, tip: 3, butt: 4 };

/** A sheet 1 mm thick all over, so that a volume is an area. */
function sheet(outline: Outline): SteelBody {
  const one = Law.constant(1);
  return new SteelBody({
    path: outline.path,
    edges: [outline.runs.edge],
    slab: new SlabLaw({
      spine: one,
      tang: undefined,
      handleFront: outline.handleFront,
      onFlats: 0,
      onTang: 0,
    }),
    section: new SectionLaw({
      side: 1,
      apex: 0,
      spine: one,
      flankTaper: Law.constant(0),
      bevelHeight: "full",
      form: "flat",
      edge: one,
      onBevel: 0,
      onFlats: 0,
      faceOnBevel: 0,
      faceOnFlats: 0,
    }),
    plunge: { at: 1e6, length: 0 },
    cutouts: [],
  });
}

/** What the outline gains, and what the ledger's strips take off a sheet of it. */
function expectAreaOfStrips(outline: Outline, allowance: ProfileAllowance): void {
  const gained = signedArea(forgedOutline(outline, allowance).path) - signedArea(outline.path);
  const strips = profileStrips(sheet(outline), outline, allowance).value[VOLUME] as number;
  expectWithin(gained, strips, 1e-6);
}

const drawn = (runs: Readonly<Record<string, string>>): Outline =>
  makeKnife(boxKnife({ outline: { runs: runs as never } })).outline;

describe("the forged outline of a box knife", () => {
  const { outline } = makeKnife(boxKnife());
  const forged = forgedOutline(outline, ALLOWANCE);

  it("has its sides 1.5 farther out and its ends 3 and 4 farther on, corner for corner", () => {
    const corners = forged.path.segments.map(({ from }) => [from.x, from.y]);
    expect(corners).toEqual([
      [0, -1.5],
      [120, -1.5],
      [123, -1.5],
      [123, 31.5],
      [120, 31.5],
      [-20, 31.5],
      [-100, 31.5],
      [-104, 31.5],
      [-104, 8.5],
      [-100, 8.5],
      [-20, 8.5],
      [0, 8.5],
    ]);
    expect([forged.edgeLength, forged.handleFront, forged.butt]).toEqual([123, -20, -104]);
  });

  it("encloses what the strips add: 660 mm² along the sides, 99 and 92 at the ends", () => {
    expectRelative(
      signedArea(forged.path) - signedArea(outline.path),
      2 * 1.5 * 220 + 3 * 33 + 4 * 23,
      1e-12,
    );
  });

  it("times the thickness is the ledger's row where all is equally thick", () => {
    const flat = makeKnife(
      boxKnife({ thickness: [heel(4)], bevel: { form: "flat", height: 30, edgeThickness: 4 } }),
    );
    const { value } = profileStrips(flat.body("unsharpened"), flat.outline, ALLOWANCE);
    const gained = signedArea(forgedOutline(flat.outline, ALLOWANCE).path) - signedArea(flat.outline.path);
    expectRelative(value[VOLUME] as number, 4 * gained, 1e-10);
  });
});

describe("whatever the outline", () => {
  const knives = randomKnives(40, 31);

  it("it encloses the area that the ledger's profile trimming takes", () => {
    for (const { knife } of knives) {
      expectAreaOfStrips(knife.outline, ALLOWANCE);
      expectAreaOfStrips(knife.outline, { outline: 0, tip: 2, butt: 5 });
      expectAreaOfStrips(knife.outline, { outline: 2.5, tip: 0, butt: 0 });
    }
  });

  it("it is one closed line without crossings that holds the finished one", () => {
    for (const { knife } of knives) {
      const { path } = forgedOutline(knife.outline, ALLOWANCE);
      expect(validateOutline(path)).toEqual([]);
      const [inner, outer] = [pathBounds(knife.outline.path), pathBounds(path)];
      expectWithin(outer.maxX - inner.maxX, 3, 1e-9);
      expectWithin(inner.minX - outer.minX, 4, 1e-9);
      expectWithin(outer.maxY - inner.maxY, 1.5, 1e-9);
      expectWithin(inner.minY - outer.minY, 1.5, 1e-9);
    }
  });

  it("without allowances it is the outline itself", () => {
    for (const { knife } of knives) {
      const forged = forgedOutline(knife.outline, { outline: 0, tip: 0, butt: 0 });
      expectRelative(signedArea(forged.path), signedArea(knife.outline.path), 1e-13);
      expect(forged.edgeLength).toBe(knife.outline.edgeLength);
    }
  });

  it.each<[string, Readonly<Record<string, string>>]>([
    [
      "a round butt",
      {
        edge: "M0 0 L120 0",
        front: "L120 30",
        spine: "L-20 30",
        tangTop: "L-90 30",
        butt: "A10 10 0 0 1 -90 10",
        tangBottom: "L-20 10",
        heelFace: "L0 10 L0 0",
      },
    ],
    [
      "a front that leans ahead",
      {
        edge: "M0 0 L120 0",
        front: "L128 30",
        spine: "L-20 30",
        tangTop: "L-100 30",
        butt: "L-100 10",
        tangBottom: "L-20 10",
        heelFace: "L0 10 L0 0",
      },
    ],
    [
      "a front that leans back",
      {
        edge: "M0 0 L120 0",
        front: "L110 30",
        spine: "L-20 30",
        tangTop: "L-100 30",
        butt: "L-100 10",
        tangBottom: "L-20 10",
        heelFace: "L0 10 L0 0",
      },
    ],
    [
      "a heel that leans back",
      {
        edge: "M0 0 L120 0",
        front: "L120 30",
        spine: "L-20 30",
        tangTop: "L-100 30",
        butt: "L-100 10",
        tangBottom: "L-20 10",
        heelFace: "L0 0",
      },
    ],
    [
      "a point",
      {
        edge: "M0 0 L80 0 C100 0 115 10 120 25",
        spine: "L-20 30",
        tangTop: "L-100 30",
        butt: "L-100 10",
        tangBottom: "L-20 10",
        heelFace: "L0 10 L0 0",
      },
    ],
    [
      "a heel with a chin that hangs back under the tang",
      {
        edge: "M0 0 L120 0",
        front: "L120 30",
        spine: "L-20 30",
        tangTop: "L-100 30",
        butt: "L-100 14",
        tangBottom: "L2 14",
        heelFace: "L-6 5 L0 0",
      },
    ],
  ])("with %s too", (_, runs) => {
    const outline = drawn(runs);
    expectAreaOfStrips(outline, ALLOWANCE);
    expect(validateOutline(forgedOutline(outline, ALLOWANCE).path)).toEqual([]);
  });
});
