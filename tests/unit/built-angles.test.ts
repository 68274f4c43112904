import {
  bevelAt,
  edgeBevelAt,
  type KnifeSpec,
  type LawSpec,
  makeKnife,
  type SizeState,
  type StationSpec,
  sectionAt,
  thicknessAbove,
} from "@scantling/geometry";
import { describe, expect, test } from "vitest";
import { type FaceSide, referenceBody } from "../reference/body.js";
import {
  along,
  type EdgePlace,
  edgePlaces,
  type Surface,
  slopeSquare,
  steepest,
} from "../reference/edge-angles.js";
import { drawnKnives } from "../reference/edge-knives.js";
import { familyKnives } from "../reference/family-knives.js";
import { makeLaw } from "../reference/law.js";
import { DEGREE } from "../reference/outlines.js";

// Angles on the built surface, measured square to the edge at places all along it: by the model's own thickness and by the
// library's.
const ASKED = 0.01 * DEGREE;
const PER_SEGMENT = 16;
const SIDES = ["right", "left"] as const;
const KNIVES = [...familyKnives(), ...drawnKnives()];

/**
 * The same face twice: as the independent reference has it, and as the library has it. Both from the surface that the apex
 * lies on, z = a·T/2, from which the planes rise: with the apex off centre it tapers with the blade, so against the centre
 * plane itself they lie up to 0.06° off on the bellies of these knives.
 */
function surfaces(spec: KnifeSpec, side: FaceSide, state: SizeState = "finished") {
  const knife = makeKnife(spec);
  const model = referenceBody(spec, knife.outline, { sharpened: state === "finished" });
  const body = knife.body(state);
  const share = ((spec.blade.bevel.apex ?? 0) * (side === "right" ? 1 : -1)) / 2;
  const thickness = thicknessLaw(spec, knife.outline.edgeLength);
  const both: readonly Surface[] = [
    (x, y) => model.face(x, y, side) - share * thickness.at(x),
    (x, y) => body.faceAt({ x, y }, side) - share * thickness.at(x),
  ];
  return { knife, model, both };
}

const thicknessLaw = ({ blade }: KnifeSpec, edgeLength: number) =>
  bladeLaw(blade.thickness, edgeLength, blade.between === "smooth");

/** A law with stations at heel, tip and shares of the edge only. */
function bladeLaw(law: LawSpec, edgeLength: number, smooth = false) {
  const place = ({ at }: StationSpec): number => {
    if (at.kind === "heel") return 0;
    if (at.kind === "tip") return edgeLength;
    if (at.kind === "fraction") return at.share * edgeLength;
    throw new Error("no other station is used here");
  };
  return makeLaw(law, place, smooth);
}

/** Ahead of the plunge, where the bevel has fully come in. */
const ahead = ({ blade }: KnifeSpec): ((place: EdgePlace) => boolean) => {
  const from = blade.plunge ? blade.plunge.at + blade.plunge.length : 0;
  return ({ at }) => at.x > from + 0.1;
};

function anglesOf({ edgeAngle, microbevel }: KnifeSpec["blade"], side: FaceSide) {
  const plane = typeof edgeAngle === "number" ? edgeAngle : edgeAngle[side];
  if (plane === "flat") return undefined;
  return { plane, micro: microbevel };
}

function expectAngle(surface: Surface, place: EdgePlace, depth: number, step: number, angle: number): void {
  expect(Math.abs(slopeSquare(surface, place, depth, step) - angle)).toBeLessThan(ASKED);
  const { angle: greatest, skew } = steepest(surface, place, depth + step, step / 2);
  expect(Math.abs(greatest - angle)).toBeLessThan(ASKED);
  expect(Math.abs(skew)).toBeLessThan(ASKED / Math.tan(angle));
}

describe.each(KNIVES)("sharpening of $name", ({ spec }) => {
  test.each(SIDES)("plane on the %s face", (side) => {
    const { knife, both } = surfaces(spec, side);
    const places = edgePlaces(knife.outline.runs.edge, PER_SEGMENT).filter(ahead(spec));
    const angles = anglesOf(spec.blade, side);
    expect(places.length).toBeGreaterThanOrEqual(PER_SEGMENT - 3);
    for (const place of places)
      for (const surface of both) {
        if (angles === undefined) {
          // No plane: the face leaves the edge as it was ground, here within a few degrees of the centre plane.
          expect(slopeSquare(surface, place, 1e-4, 1e-4)).toBeLessThan(9 * DEGREE);
          continue;
        }
        expectAngle(surface, place, 1e-4, 1e-4, angles.micro?.angle ?? angles.plane);
        if (angles.micro) expectAngle(surface, place, angles.micro.height + 1e-4, 1e-4, angles.plane);
      }
  });

  test("plane in the sections and the heights above the edge that the library gives", () => {
    const { knife, model } = surfaces(spec, "right");
    const angles = anglesOf(spec.blade, "right");
    const angle = angles?.micro?.angle ?? angles?.plane;
    const places = edgePlaces(knife.outline.runs.edge, PER_SEGMENT)
      .filter(ahead(spec))
      .filter(({ inward }) => inward.y > 0.1);
    expect(places.length).toBeGreaterThan(0);
    const half: Surface = (x, y) => {
      const low = model.slicer.crossings(x)[0] ?? Number.NaN;
      return (thicknessAbove(knife, x, [y - low])[0]?.thickness ?? Number.NaN) / 2;
    };
    for (const place of places) {
      const [first, second] = sectionAt(knife, place.at.x).contours[0] ?? [];
      if (angle !== undefined && first && second) {
        // The section is cut square to x: there the plane rises by its own slope times how upright the edge's normal is.
        const slope = (second.x - first.x) / (second.y - first.y) / place.inward.y;
        expect(Math.abs(Math.atan(slope) - angle)).toBeLessThan(ASKED);
      }
      if (angle !== undefined && model.alike) expectAngle(half, place, 1e-4, 1e-4, angle);
      const bevel = edgeBevelAt(knife, place.at.x);
      expect(bevel === undefined).toBe(angle === undefined);
      if (bevel && model.alike && !spec.blade.microbevel)
        expect(Math.abs(Math.atan2(bevel.behind / 2, bevel.height) - (angle ?? 0))).toBeLessThan(ASKED);
    }
  });
});

/** The same blade with a flat bevel on both faces, its apex in the middle and its edge of one thickness. */
function flatGround({ blade, ...knife }: KnifeSpec, change: Partial<KnifeSpec["blade"]> = {}): KnifeSpec {
  const { easedSpine, swedge, fullers, holes, microbevel, ...rest } = blade;
  const { height } = blade.bevel;
  return { ...knife, blade: { ...rest, bevel: { form: "flat", height, edgeThickness: 0.4 }, ...change } };
}

describe.each(KNIVES)("flat bevel of $name", ({ spec }) => {
  test("leaves the edge at atan((Tb − e)/2/B), whatever the taper", () => {
    const flat = flatGround(spec);
    const { knife, model, both } = surfaces(flat, "right", "unsharpened");
    const { edgeLength, runs } = knife.outline;
    const { blade } = flat;
    const thickness = thicknessLaw(flat, edgeLength);
    const taper = bladeLaw(blade.flankTaper ?? 0, edgeLength);
    const asked = blade.bevel.height === "full" ? Number.POSITIVE_INFINITY : blade.bevel.height;
    const height = bladeLaw(asked, edgeLength);
    let measured = 0;
    for (const place of edgePlaces(runs.edge, PER_SEGMENT).filter(ahead(flat))) {
      const { x } = place.at;
      const top = model.reach(x);
      // Where the section is lower than that, the angle changes too fast along the way that it is measured over.
      if (top < 1) continue;
      const line = Math.min(height.at(x), top);
      const atLine = thickness.at(x) - taper.at(x) * Math.min(1, (4 * (top - line)) / top);
      const angle = Math.atan((atLine - 0.4) / 2 / line);
      for (const surface of both)
        expect(Math.abs(slopeSquare(surface, place, 1e-5, 1e-4) - angle)).toBeLessThan(ASKED);
      expect(Math.abs(bevelAt(knife, x).angle - angle)).toBeLessThan(ASKED / 100);
      measured++;
    }
    expect(measured).toBeGreaterThan(PER_SEGMENT / 2);
  });

  // The low bevel reaches places that the spine or the next stretch of the edge keep the high one from.
  test.each([0.4, 0.15])(
    "keeps its angle all the way up a parallel blade, bevel of %d of the height",
    (share) => {
      const { heelHeight = 30 } = "heelHeight" in spec.blade.outline ? spec.blade.outline : {};
      const height = share * heelHeight;
      const flat = flatGround(spec, {
        thickness: [{ at: { kind: "heel" }, is: 4 }],
        flankTaper: 0.5,
        bevel: { form: "flat", height, edgeThickness: 0.2 },
        edgeAngle: 35 * DEGREE,
      });
      const { knife, model, both } = surfaces(flat, "right");
      const angle = Math.atan((3.5 - 0.2) / 2 / height);
      const isAhead = ahead(flat);
      let measured = 0;
      for (const place of edgePlaces(knife.outline.runs.edge, PER_SEGMENT).filter(isAhead))
        for (const depth of [0.2, 0.5, 0.85].map((part) => part * height)) {
          const at = along(place, depth);
          const [low = 0, high = 0] = model.slicer.crossings(at.x);
          // Only on the blade, where no other place of the edge is nearer and the flank is high enough for its whole taper.
          if (at.y < low || at.y > high || !isAhead({ ...place, at })) continue;
          if (model.distance(at.x, at.y) < depth - 1e-9 || 0.74 * model.reach(at.x) < height) continue;
          for (const surface of both) expectAngle(surface, place, depth, 1e-3, angle);
          measured++;
        }
      expect(measured).toBeGreaterThan(2 * PER_SEGMENT);
    },
  );
});
