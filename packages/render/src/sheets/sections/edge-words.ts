import type { FaceMarks, SectionMarks } from "@scantling/geometry";
import { formatAngle } from "@scantling/geometry/units";

/** Angles that differ by less are written once, rad. */
export const SAME_ANGLE = 0.0005;

/** An angle to 0.1°, what a bevel gauge shows. */
export const angleText = (rad: number): string => formatAngle(rad, 0.1);

/** Angle of a face against the centre plane where it is sharpened; of one that is not, where it comes to the edge. */
const planeAngle = (face: FaceMarks | undefined): number => face?.sharpeningAngle ?? face?.angleAtEdge ?? 0;

/** The same at the very edge, where a microbevel may be steeper; square to the edge, rad. */
export const angleAtApex = (face: FaceMarks | undefined, { microbevel }: SectionMarks): number =>
  face?.sharpeningAngle === undefined ? planeAngle(face) : (microbevel?.angle ?? face.sharpeningAngle);

/** The angle of the edge, per side and included. */
export function edgeLines(marks: SectionMarks): string[] {
  const { right, left, microbevel } = marks;
  const included = `${angleText(angleAtApex(right, marks) + angleAtApex(left, marks))} included`;
  if (right?.sharpeningAngle === undefined && left?.sharpeningAngle === undefined) {
    return [`edge ${included}`, "no edge bevel"];
  }
  const [a, b] = [planeAngle(right), planeAngle(left)];
  return [
    Math.abs(a - b) < SAME_ANGLE
      ? `edge ${angleText(a)} per side`
      : `edge ${angleText(a)} right, ${angleText(b)} left`,
    ...(microbevel === undefined ? [] : [`microbevel ${angleText(microbevel.angle)}`]),
    included,
  ];
}

/** An edge that leans by less is level to a protractor, rad. */
const LEVEL = 0.005;

/**
 * Whether the edge leans: across it a section square to x shows heights longer and angles smaller than they are ground, as
 * the words beside it give them.
 */
export function leanLines(lean: number): string[] {
  if (Math.abs(lean) <= LEVEL) return [];
  return [`edge ${lean > 0 ? "rises" : "falls"} ${angleText(Math.abs(lean))}`];
}
