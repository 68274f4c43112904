import {
  bevelAt,
  endTangent,
  type Knife,
  type Path,
  type PieceState,
  pointAt,
  type SectionOutline,
  sectionAt,
  sectionMarks,
  sectionOutline,
  signedArea,
  stateSection,
} from "@scantling/geometry";
import { describe, expect, test } from "vitest";
import { type RandomKnife, randomKnife } from "../reference/random/knives.js";

// Sections as they are drawn, of random knives of every form: against the areas that the weighing has, against the face
// point by point, and against the angles that are written beside them.
const KNIVES = 100;
const STATES: readonly PieceState[] = ["finished", "ready", "forged"];

const areaOf = ({ contours }: SectionOutline): number =>
  contours.reduce((sum, contour) => sum + signedArea(contour), 0);

/** Odd places along blade and tang, away from the corners of the outline. */
const placesOf = ({ outline }: Knife): number[] => [
  outline.butt + 4.1,
  outline.handleFront - 3.3,
  ...[0.013, 0.37, 0.77, 0.93].map((share) => share * outline.edgeLength),
];

const knives: readonly RandomKnife[] = Array.from({ length: KNIVES }, (_, i) => randomKnife(i));

describe.each(STATES)("sections of the knife %s", (state) => {
  test("have the area that the weighing has", () => {
    for (const { index, kind, knife } of knives) {
      for (const x of placesOf(knife)) {
        const { area } = state === "finished" ? sectionAt(knife, x) : stateSection(knife, x, state);
        const drawn = areaOf(sectionOutline(knife, x, state));
        expect(Math.abs(drawn - area) / area, `${index} ${kind} at ${x}`).toBeLessThan(1e-6);
      }
    }
  });

  test("are closed and counter-clockwise", () => {
    for (const { index, kind, knife } of knives) {
      for (const x of placesOf(knife)) {
        for (const contour of sectionOutline(knife, x, state).contours) {
          expect(signedArea(contour), `${index} ${kind} at ${x}`).toBeGreaterThan(0);
          contour.segments.forEach((segment, i) => {
            const next = contour.segments[(i + 1) % contour.segments.length];
            expect(next?.from, `${index} ${kind} at ${x}`).toEqual(segment.to);
          });
        }
      }
    }
  });
});

/** Points of the right-hand and the left-hand face along the outline. */
const sampled = ({ segments }: Path): { x: number; y: number }[] =>
  segments.flatMap((segment) => [0.21, 0.5, 0.83].map((t) => pointAt(segment, t)));

test("lie on the faces, point by point", () => {
  for (const { index, kind, knife } of knives) {
    const body = knife.body("finished");
    for (const x of placesOf(knife)) {
      for (const contour of sectionOutline(knife, x).contours) {
        const ys = contour.segments.flatMap(({ from, to }) => [from.y, to.y]);
        const [low, high] = [Math.min(...ys), Math.max(...ys)];
        for (const { x: z, y } of sampled(contour)) {
          if (y < low + 1e-6 || y > high - 1e-6) continue;
          // A fitted point may lie 1e-7 beside the curve along its own direction: where a face runs nearly level the same
          // height has another half-thickness, so that the nearest of a few heights is taken.
          const gap = Math.min(
            ...[-1e-7, 0, 1e-7].flatMap((step) => [
              Math.abs(body.faceAt({ x, y: y + step }, "right") - z),
              Math.abs(-body.faceAt({ x, y: y + step }, "left") - z),
            ]),
          );
          const steps = [-1e-7, 1e-7].map((step) =>
            body.faceAt({ x, y: y + step }, z >= 0 ? "right" : "left"),
          );
          const [below = 0, above = 0] = steps;
          expect(gap, `${index} ${kind} at ${x}, ${y}`).toBeLessThan(3e-7 + Math.abs(above - below));
        }
      }
    }
  }
});

test("leave the edge at the angles that are written beside them, and pass the points that are dimensioned", () => {
  let seen = 0;
  for (const { index, kind, knife } of knives) {
    for (const x of placesOf(knife)) {
      const marks = sectionMarks(knife, x);
      const [contour] = sectionOutline(knife, x).contours;
      const first = contour?.segments[0];
      // Where a face has no plane a level line closes the edge.
      const last = contour?.segments.filter(({ from, to }) => Math.abs(from.y - to.y) > 1e-9).at(-1);
      if (
        marks.right === undefined ||
        marks.left === undefined ||
        first === undefined ||
        last === undefined
      ) {
        continue;
      }
      const where = `${index} ${kind} at ${x}`;
      const { microbevel } = knife.spec.blade;
      for (const [side, segment, end] of [
        ["right", first, "from"],
        ["left", last, "to"],
      ] as const) {
        const { sharpeningAngle, edgeBevel } = marks[side] ?? {};
        if (sharpeningAngle === undefined || edgeBevel === undefined || edgeBevel.height < 0.05) continue;
        const tangent = endTangent(segment, end) ?? { x: 0, y: 0 };
        const ground = microbevel === undefined ? sharpeningAngle : microbevel.angle;
        // Across a leaning edge a section square to x is stretched upward: the plane's slope goes with the cosine.
        const expected = Math.tan(ground) * Math.cos(marks.edgeLean);
        expect(Math.abs(tangent.x / tangent.y), where).toBeCloseTo(expected, 5);
        const { x: z, y } = segment[end];
        expect(Math.hypot(z - marks.apex, y - marks.low), where).toBeLessThan(1e-9);
        // A plane that runs out at the spine ends nowhere on the face.
        if (edgeBevel.height >= bevelAt(knife, x, side).spineDistance - 1e-9) continue;
        const near = Math.min(
          ...(contour?.segments.map(({ from }) =>
            Math.hypot(from.x - edgeBevel.top.x, from.y - edgeBevel.top.y),
          ) ?? []),
        );
        expect(near, where).toBeLessThan(1e-6);
        seen++;
      }
    }
  }
  expect(seen).toBeGreaterThan(300);
});
