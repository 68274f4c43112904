import { integrateAdaptive } from "../numeric/adaptive.js";
import { cutoutPath } from "./cutout-path.js";
import { Footprint } from "./footprint.js";
import { grooveHalfWidth } from "./groove-moments.js";
import { type Groove, grooveDepthAt, type SteelBody } from "./steel-body.js";

/** From one height to another, mm. */
type Span = readonly [low: number, high: number];

/** Error aimed at, mm². */
const TOLERANCE = Float64Array.of(1e-10);

/** Heights at x over which there is steel: those of the outline less every hole and slot, from below, mm. */
export function steelSpans(body: SteelBody, x: number): readonly Span[] {
  return cutSpans(body, x).reduce<readonly Span[]>(
    (spans, [low, high]) =>
      spans.flatMap(([from, to]): Span[] => {
        const below: Span = [from, Math.min(to, low)];
        const above: Span = [Math.max(from, high), to];
        return [below, above].filter(([a, b]) => b > a);
      }),
    body.footprint.spansAt(x),
  );
}

/** What holes, slots and fullers take out of the section at x, mm². */
export function areaOfCuts(body: SteelBody, x: number): number {
  const holes = cutSpans(body, x).reduce(
    (sum, span) =>
      sum + integral(span, (y) => body.faceUncut({ x, y }, "right") + body.faceUncut({ x, y }, "left")),
    0,
  );
  return holes + (body.input.grooves ?? []).reduce((sum, groove) => sum + areaOfGroove(groove, x), 0);
}

/** A groove is cut to its depth wherever the face lies, and no hole is in it: its own shape decides. */
function areaOfGroove(groove: Groove, x: number): number {
  const { from, to, faces } = groove;
  const rim = cutoutPath({ centre: from, to, radius: grooveHalfWidth(groove) });
  const one = new Footprint(rim)
    .spansAt(x)
    .reduce((sum, span) => sum + integral(span, (y) => grooveDepthAt(groove, { x, y })), 0);
  return faces === "both" ? 2 * one : one;
}

/** Heights at x that holes and slots take, mm. */
const cutSpans = (body: SteelBody, x: number): Span[] =>
  body.input.cutouts.flatMap((cutout) => [...new Footprint(cutoutPath(cutout)).spansAt(x)]);

function integral([low, high]: Span, f: (y: number) => number): number {
  const write = (y: number, out: Float64Array): void => {
    out[0] = f(y);
  };
  const { value } = integrateAdaptive(write, 1, [{ from: low, to: high }], { tolerance: TOLERANCE });
  return value[0] ?? 0;
}
