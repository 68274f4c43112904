import type { FaceMarks, SectionMarks, Vec2 } from "@scantling/geometry";
import { boxOfItems } from "../../box.js";
import { EXTENSION_GAP, EXTENSION_PAST, levelDimension } from "../../dimension.js";
import { type DrawingItem, lettering, strokes } from "../../drawing.js";
import { linesOf, onOneLine, sizeText } from "../../label-text.js";
import type { Part } from "../../lay-out/part.js";
import { LINE_PITCH, SMALL } from "../../lettering-size.js";
import type { SectionStation, SectionsModel } from "../../models/sections-model.js";
import { angleDimension, slantDimension } from "./edge-dimensions.js";
import { angleAtApex, angleText, edgeLines, leanLines } from "./edge-words.js";
import { enlargedText } from "./ratio.js";
import { type SectionView, sectionView } from "./section-view.js";
import { partOf, withTitle } from "./station-part.js";

type Units = SectionsModel["units"];

/** Enlargements of an edge, the one to aim at first, and how much of the height may be taken on paper, mm. */
const RATIOS = [20, 10, 5] as const;
const ROOM = 64;
/** Height that is shown as a multiple of the edge bevel's, and the least, mm of the knife. */
const OVER_BEVEL = 1.35;
const LEAST = 1.9;
/** An edge bevel lower than this is none to be dimensioned, mm. */
const LOWEST_BEVEL = 0.05;
/** From the edge down to the arc of its angle, and to the thickness behind it, mm on paper. */
const ARC_RADIUS = 10;
const BEHIND_LINE = 21;
/** From the view to the words beside it, and from the highest dimension up to them, mm. */
const BESIDE = 6;
const OVER = 2.5;

/** The last few mm of a section, many times enlarged; nothing where it has no edge. */
export function edgePart(station: SectionStation, letter: string, units: Units): Part | undefined {
  const { marks } = station;
  const bevelTop = Math.max(heightOf(marks.right), heightOf(marks.left));
  const height = Math.max(LEAST, OVER_BEVEL * bevelTop);
  const ratio = RATIOS.find((one) => one * height <= ROOM);
  if (marks.right === undefined || ratio === undefined || height > marks.high - marks.low) return undefined;
  const view = sectionView(station, { ratio, upTo: height, hatched: true, states: ["ready"] });
  const apex = view.toPaper({ x: marks.apex, y: marks.low });
  const width = widthItems(marks, view, apex, units);
  const behind = behindUnder(width, (down) => behindDimension(marks, view, units, down));
  const beside = {
    x: view.right + BESIDE,
    y: (boxOfItems(width)?.maxY ?? apex.y) + OVER,
  };
  const items = [
    ...view.items,
    ...angleItems(marks, apex, Math.min(apex.x, boxOfItems(behind.slice(0, 1))?.minX ?? apex.x)),
    ...behind,
    ...width,
    ...wordsBeside(marks, beside, units),
  ];
  const title = `${letter}: edge, ${enlargedText(ratio)}`;
  return partOf(`edge-${letter}`, withTitle(items, title));
}

/** The thickness behind the edge at its usual place under it, or lower where the width along the face reaches down there. */
function behindUnder(
  width: readonly DrawingItem[],
  dimension: (down: number) => DrawingItem[],
): DrawingItem[] {
  const usual = dimension(BEHIND_LINE);
  // The first item is the extension lines, which may pass.
  const [above, own] = [boxOfItems(width), boxOfItems(usual.slice(1))];
  if (above === undefined || own === undefined) return usual;
  const meet =
    own.minX < above.maxX && above.minX < own.maxX && own.minY < above.maxY && above.minY < own.maxY;
  return meet ? dimension(BEHIND_LINE + own.maxY - above.minY + OVER) : usual;
}

const heightOf = (face: FaceMarks | undefined): number => face?.edgeBevel?.height ?? 0;

/** Angle of a face at the very edge as a section square to x shows it: across a leaning edge it is less, rad. */
const drawnAngle = (marks: SectionMarks, face: FaceMarks | undefined): number =>
  Math.atan(Math.tan(angleAtApex(face, marks)) * Math.cos(marks.edgeLean));

function angleItems(marks: SectionMarks, apex: Vec2, clearOf: number): DrawingItem[] {
  const [right, left] = [drawnAngle(marks, marks.right), drawnAngle(marks, marks.left)];
  // A face without a plane does not reach the apex: there is no angle to be drawn.
  const meets = marks.right?.sharpeningAngle !== undefined && marks.left?.sharpeningAngle !== undefined;
  const single = Math.abs(Math.abs(marks.apex) - Math.abs(marks.right?.bevelLine.x ?? 0)) < 1e-6;
  if (!meets && !single) return [];
  return angleDimension({ apex, right, left, radius: ARC_RADIUS, text: angleText(right + left), clearOf });
}

/** Thickness where the ground face begins, drawn out under the edge. */
function behindDimension(marks: SectionMarks, view: SectionView, units: Units, down: number): DrawingItem[] {
  const own = [marks.right, marks.left]
    .filter((face) => heightOf(face) >= LOWEST_BEVEL)
    .sort((a, b) => heightOf(b) - heightOf(a))[0]?.edgeBevel;
  if (own === undefined) return [];
  const other = {
    x:
      own.top.x > marks.apex || own === marks.right?.edgeBevel
        ? own.top.x - own.behind
        : own.top.x + own.behind,
    y: own.top.y,
  };
  const ends = [view.toPaper(own.top), view.toPaper(other)].sort((a, b) => a.x - b.x);
  const [left, right] = ends;
  if (left === undefined || right === undefined) return [];
  const y = view.toPaper({ x: 0, y: marks.low }).y - down;
  return [
    strokes(
      "dimension",
      [left, right].map((end): [Vec2, Vec2] => [
        { x: end.x, y: end.y - EXTENSION_GAP },
        { x: end.x, y: y - EXTENSION_PAST },
      ]),
    ),
    ...levelDimension({
      from: left.x,
      to: right.x,
      y,
      text: onOneLine(sizeText(own.behind, units)),
      clearOf: [left.x, right.x],
      beside: "right",
    }),
  ];
}

/** Width of the edge bevel along the right-hand face, as a section square to x shows it: across a leaning edge it is more. */
function widthItems(marks: SectionMarks, view: SectionView, apex: Vec2, units: Units): DrawingItem[] {
  const bevel = marks.right?.edgeBevel;
  if (bevel === undefined || bevel.height < LOWEST_BEVEL || marks.microbevel !== undefined) return [];
  const top = view.toPaper(bevel.top);
  const text = sizeText(Math.hypot(top.x - apex.x, top.y - apex.y) / view.ratio, units);
  return slantDimension({
    from: apex,
    to: top,
    // The centre plane is drawn, be there steel or not.
    clearOf: Math.max(0, view.right),
    lines: linesOf(text),
  });
}

/** How wide the edge bevels are: once where both are alike. */
function widthLines(marks: SectionMarks, write: (mm: number) => string): string[] {
  const [right, left] = (["right", "left"] as const).map((side) => {
    const bevel = marks[side]?.edgeBevel;
    return bevel === undefined || bevel.height < LOWEST_BEVEL ? undefined : write(bevel.width);
  });
  if (right === left) return right === undefined ? [] : ["edge bevels", `${right} wide`];
  return [
    ...(right === undefined ? [] : ["right: edge bevel", `${right} wide`]),
    ...(left === undefined ? [] : ["left: edge bevel", `${left} wide`]),
  ];
}

/** Angles and widths in words, to the right of the view over the size along its face. */
function wordsBeside(marks: SectionMarks, corner: Vec2, units: Units): DrawingItem[] {
  const { microbevel } = marks;
  const write = (mm: number): string => onOneLine(sizeText(mm, units));
  const lines = [
    ...edgeLines(marks).slice(0, -1),
    ...(microbevel === undefined ? [] : [`microbevel ${write(microbevel.height)} high`]),
    ...widthLines(marks, write),
    ...(leanLines(marks.edgeLean).length === 0 ? [] : ["square to the edge"]),
  ];
  return lines.map((line, i) =>
    lettering(
      line,
      { x: corner.x, y: corner.y + (lines.length - 1 - i) * SMALL * LINE_PITCH },
      { height: SMALL },
    ),
  );
}
