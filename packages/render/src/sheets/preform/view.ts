import { line, type Path, type Segment, type Vec2 } from "@scantling/geometry";
import { type DrawingItem, lettering, strokes } from "../../drawing.js";
import { SMALL } from "../../lettering-size.js";
import type { PreformModel } from "../../models/preform-model.js";
import { type Silhouette, silhouetteOf } from "../../silhouette.js";
import { textReach, textWidth } from "../../text-metrics.js";

/** How far the mark of a section reaches into the steel from either side, mm. */
const TICK = 3;
/** From a mark to its number, and from the outline down to it, mm. */
const BESIDE_MARK = 1;
const UNDER_OUTLINE = 1;
/** Places at which the outline over a number is looked at. */
const LOOKS = 48;

/** A size of the preform when hot. */
export const hotSizeOf =
  ({ elongation }: PreformModel) =>
  (cold: number): number =>
    cold * (1 + elongation);

/** The outline when hot: every size greater by the same share, from the butt end and the blade's spine side. */
export function hotOutline(model: PreformModel): Path {
  const grow = hotSizeOf(model);
  const at = ({ x, y }: Vec2): Vec2 => ({ x: grow(x), y: grow(y) });
  const grown = (segment: Segment): Segment => {
    const ends = { from: at(segment.from), to: at(segment.to) };
    switch (segment.kind) {
      case "line":
        return { ...segment, ...ends };
      case "arc":
        return { ...segment, ...ends, centre: at(segment.centre), radius: grow(segment.radius) };
      case "cubic":
        return {
          ...segment,
          ...ends,
          control1: at(segment.control1),
          control2: at(segment.control2),
        };
    }
  };
  return { ...model.outline, segments: model.outline.segments.map(grown) };
}

/** x of the marks across the bar, hot: shoulder and heel. */
export const crossMarks = (model: PreformModel): number[] => {
  const hot = hotSizeOf(model);
  return [model.shoulder, ...(model.heel === undefined ? [] : [model.heel])].map(hot);
};

/** The preform itself: hot and cold outline, marks across it, sections with their numbers, the bent spine. */
export function preformView(model: PreformModel, hot: Path, silhouette: Silhouette): DrawingItem[] {
  const at = hotSizeOf(model);
  const bend = bentSpine(model, silhouette);
  const level = heelLevel(model, silhouette);
  const cold = silhouetteOf(model.outline);
  const lowestAt = (x: number): number =>
    Math.min(silhouette.bottomAt(x), cold.bottomAt(x), ...(bend === undefined ? [] : [bendAt(bend, x)]));
  return [
    { kind: "path", role: "outline", paths: [hot], name: "outline" },
    { kind: "path", role: "hidden", paths: [model.outline], name: "cold-outline" },
    {
      ...strokes(
        "thin",
        crossMarks(model).map((x): readonly [Vec2, Vec2] => [
          { x, y: silhouette.topAt(x) },
          { x, y: lowestAbout(silhouette, x) },
        ]),
      ),
      name: "cross-marks",
    },
    ...model.marks.flatMap(({ fromShoulder }, index) =>
      stationItems(at(model.shoulder + fromShoulder), index + 1, silhouette, lowestAt),
    ),
    ...(bend === undefined
      ? []
      : [{ kind: "path" as const, role: "adjacent" as const, paths: [through(bend)], name: "bent-spine" }]),
    ...(level === undefined ? [] : [{ ...strokes("thin", [level.ends]), name: "heel-level" }]),
  ];
}

const through = (points: readonly Vec2[]): Path => ({
  closed: false,
  segments: points.slice(1).map((to, index) => line(points[index] ?? to, to)),
});

/** At a step of the outline the lower side counts, mm beside it. */
const BESIDE = 1e-3;

const lowestAbout = ({ bottomAt }: Silhouette, x: number): number =>
  Math.min(bottomAt(x - BESIDE), bottomAt(x + BESIDE));

/**
 * A section: a tick at either side and its number under the bar.
 *
 * @param lowestAt - y of the lowest line over x.
 */
function stationItems(
  x: number,
  number: number,
  silhouette: Silhouette,
  lowestAt: (x: number) => number,
): DrawingItem[] {
  const { bounds, topAt, bottomAt } = silhouette;
  const inside = Math.min(bounds.maxX - BESIDE, Math.max(bounds.minX + BESIDE, x + BESIDE));
  const [top, bottom] = [topAt(inside), bottomAt(inside)];
  const tick = Math.min(TICK, (top - bottom) / 3);
  const text = `${number}`;
  const width = textWidth(text, SMALL);
  const under = Math.min(
    ...Array.from({ length: LOOKS + 1 }, (_, look) =>
      lowestAt(x + ((BESIDE_MARK + width + BESIDE_MARK) * look) / LOOKS),
    ),
  );
  const y = under - UNDER_OUTLINE - textReach(text, SMALL).over;
  return [
    strokes("thin", [
      [
        { x, y: top },
        { x, y: top - tick },
      ],
      [
        { x, y: bottom },
        { x, y: bottom + tick },
      ],
    ]),
    lettering(text, { x: x + BESIDE_MARK, y }, { height: SMALL }),
  ];
}

/** y of the bent spine over x, beyond its ends at the nearest of them. */
function bendAt(bend: readonly Vec2[], x: number): number {
  const next = bend.findIndex((point) => point.x >= x);
  const b = bend.at(next);
  const a = next > 0 ? bend[next - 1] : undefined;
  if (a === undefined || b === undefined) return b?.y ?? 0;
  return a.y + ((b.y - a.y) * (x - a.x)) / (b.x - a.x);
}

/** Along the bent spine from one point to the next, mm at the most: its curve leaves the chord by less than is seen. */
const BEND_STEP = 1;

/** The spine side when bent down before the bevels go in: more and more from the heel to the end, as u². */
export function bentSpine(model: PreformModel, silhouette: Silhouette): readonly Vec2[] | undefined {
  const { bendDown, heel, shoulder, length } = model;
  if (bendDown === undefined || bendDown <= 0) return undefined;
  const hot = hotSizeOf(model);
  const [from, to] = [hot(heel ?? shoulder), hot(length)];
  const steps = Math.max(1, Math.ceil((to - from) / BEND_STEP));
  return Array.from({ length: steps + 1 }, (_, step) => {
    const u = step / steps;
    const x = from + (to - from) * u;
    const inside = Math.min(Math.max(x, from + BESIDE), to - BESIDE);
    return { x, y: silhouette.topAt(inside) - hot(bendDown) * u * u };
  });
}

/** An end that lies lower than the heel by less is level with it, mm. */
export const LEVEL = 0.5;

/** Shares of the level of the heel at which its label may point to it, the best first. */
const LABEL_AT = [0.7, 0.8, 0.9, 0.6] as const;

/** A level line over the blade, and where on it its label points to. */
export interface HeelLevel {
  readonly ends: readonly [Vec2, Vec2];
  readonly labelAt: Vec2;
}

/**
 * The level of the spine side at the heel, over the blade. Left out where its end is not lower, and where the spine rises over
 * it wherever its label could point to it: the note has to do there, for a line that nobody names is taken for one to work to.
 */
export function heelLevel(model: PreformModel, { topAt }: Silhouette): HeelLevel | undefined {
  const { pointDrop, heel, shoulder, length } = model;
  if (pointDrop < LEVEL) return undefined;
  const hot = hotSizeOf(model);
  const [from, to] = [hot(heel ?? shoulder), hot(length)];
  const x = LABEL_AT.map((share) => from + (to - from) * share).find((at) => topAt(at) <= 0);
  if (x === undefined) return undefined;
  return {
    ends: [
      { x: from, y: 0 },
      { x: to, y: 0 },
    ],
    labelAt: { x, y: 0 },
  };
}
