import type { Issue } from "../errors/issue.js";
import { numberRules } from "./number-rules.js";
import type { BevelSpec, FaceSpec } from "./spec.js";

type Side = "right" | "left";
const SIDES: readonly Side[] = ["right", "left"];

/** A face as it is ground: what is said for both, and what differs on this side. */
export const faceOf = (bevel: BevelSpec, side: Side): FaceSpec => ({ ...bevel, ...bevel[side] });

/**
 * Where a face's own value of a key stands in the file: under its side if that gives one, else under the bevel.
 *
 * @example
 * facePath({ ...bevel, left: { height: 20 } }, "left", "height"); // "blade.bevel.left.height"
 * facePath(bevel, "left", "height"); // "blade.bevel.height"
 */
export const facePath = (bevel: BevelSpec, side: Side, key: keyof FaceSpec): string =>
  bevel[side]?.[key] === undefined ? `blade.bevel.${key}` : `blade.bevel.${side}.${key}`;

/** Checks the ground faces: numbers of both and of each side, what a form needs, and what none of them uses. */
export function checkFaces(bevel: BevelSpec): Issue[] {
  const issues: Issue[] = [];
  const need = numberRules(issues);
  const face = (path: string, { height, crown, wheelRadius }: Partial<FaceSpec>): void => {
    need.law(`${path}.height`, height, "above");
    if (crown !== undefined) need.law(`${path}.crown`, "mm" in crown ? crown.mm : crown.share, "atLeast");
    need.above(`${path}.wheelRadius`, wheelRadius, 0);
  };
  face("blade.bevel", bevel);
  need.law("blade.bevel.edgeThickness", bevel.edgeThickness, "atLeast");
  for (const side of SIDES) face(`blade.bevel.${side}`, bevel[side] ?? {});
  const { apex } = bevel;
  if (apex !== undefined && !(apex >= -1 && apex <= 1)) {
    issues.push({
      code: "apex-range",
      path: "blade.bevel.apex",
      text: "The apex lies between −1 (on the left face) and 1 (on the right face); {value} does not.",
      values: { value: { quantity: "count", value: apex } },
    });
  }
  return [...issues, ...missingWheels(bevel), ...unusedKeys(bevel)];
}

function missingWheels(bevel: BevelSpec): Issue[] {
  const without = SIDES.filter((side) => {
    const { form, wheelRadius } = faceOf(bevel, side);
    return form === "hollow" && wheelRadius === undefined;
  });
  const [first] = without;
  if (first === undefined) return [];
  const path =
    without.length > 1 || bevel[first] === undefined ? "blade.bevel" : (`blade.bevel.${first}` as const);
  return [
    {
      code: "no-wheel",
      path,
      text: "A hollow bevel needs the radius of its wheel, for example wheelRadius: 5 in.",
    },
  ];
}

/** What only one form of face uses. */
const OF_FORM = {
  crown: { form: "convex", code: "crown-unused", what: "A crown belongs to a convex face" },
  wheelRadius: {
    form: "hollow",
    code: "wheel-unused",
    what: "The radius of a wheel belongs to a hollow face",
  },
} as const;

/** A key that changes nothing is a slip: the form is another than meant. */
function unusedKeys(bevel: BevelSpec): Issue[] {
  return (["crown", "wheelRadius"] as const).flatMap((key) => {
    const { form, code, what } = OF_FORM[key];
    const uses = (side: Side): boolean => faceOf(bevel, side).form === form;
    const issues: Issue[] = [];
    // A value for both that each side overrides is the rule and its exceptions, and no slip.
    const inherited = SIDES.some((side) => uses(side) && bevel[side]?.[key] === undefined);
    if (bevel[key] !== undefined && bevel.form !== form && !inherited) {
      issues.push({
        code,
        path: `blade.bevel.${key}`,
        text: `${what}, and this bevel is {form}, so it changes nothing. Leave it out, or make the form ${form}.`,
        values: { form: bevel.form },
      });
    }
    for (const side of SIDES) {
      if (bevel[side]?.[key] === undefined || uses(side)) continue;
      issues.push({
        code,
        path: `blade.bevel.${side}.${key}`,
        text: `${what}, and the ${side} one is {form}, so it changes nothing. Leave it out, or make the form ${form}.`,
        values: { form: faceOf(bevel, side).form },
      });
    }
    return issues;
  });
}
