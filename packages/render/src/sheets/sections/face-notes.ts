import type { EdgeBevel, FaceMarks, SectionMarks, Vec2 } from "@scantling/geometry";
import { formatLength } from "@scantling/geometry/units";
import { dualText, onOneLine, sizeText } from "../../label-text.js";
import type { SectionStation, SectionsModel } from "../../models/sections-model.js";
import type { SideNote } from "./callout-column.js";
import { angleText, edgeLines, leanLines, SAME_ANGLE } from "./edge-words.js";

type Units = SectionsModel["units"];

/** Lengths that differ by less are written once, mm. */
const SAME_LENGTH = 0.005;
/** An apex nearer to the centre plane is in it, mm. */
const CENTRED = 0.005;

/** Where up the ground face its note points to, as a share: low, so that there is room over the notes. */
const FACE_NOTE = 0.3;

/** Both faces of a section, where they differ; the right-hand one alone where they are alike. */
export function facesShown({ right, left, apex }: SectionMarks): readonly ["right" | "left", FaceMarks][] {
  if (right === undefined || left === undefined) return [];
  const alike =
    Math.abs(apex) < CENTRED &&
    right.form === left.form &&
    Math.abs(right.bevelHeight - left.bevelHeight) < SAME_LENGTH &&
    Math.abs(right.bevelAngle - left.bevelAngle) < SAME_ANGLE &&
    Math.abs((right.sharpeningAngle ?? 0) - (left.sharpeningAngle ?? 0)) < SAME_ANGLE &&
    Math.abs((right.radius ?? 0) - (left.radius ?? 0)) < SAME_LENGTH;
  return alike
    ? [["right", right]]
    : [
        ["right", right],
        ["left", left],
      ];
}

/** What is written beside an enlarged section, each note at the point that it is about, in the section's own mm. */
export function sectionNotes(
  station: SectionStation,
  units: Units,
  pointAt: (y: number) => Vec2,
): SideNote[] {
  const { marks, atSwedge } = station;
  const faces = facesShown(marks);
  const right = marks.right;
  const write = (mm: number): string => onOneLine(sizeText(mm, units));
  const swedge =
    atSwedge === undefined ? [] : [{ at: pointAt(marks.high), lines: ["swedge leaves", write(atSwedge)] }];
  if (right === undefined) return swedge;
  const top = right.edgeBevel?.top ?? { x: marks.apex, y: marks.low };
  const behind = right.edgeBevel ?? marks.left?.edgeBevel;
  return [
    ...swedge,
    { at: pointAt(top.y + FACE_NOTE * (right.bevelLine.y - top.y)), lines: faceLines(marks, faces, units) },
    ...(behind === undefined ? [] : [{ at: pointAt(behind.top.y), lines: behindLines(behind, units) }]),
    {
      at: { x: marks.apex, y: marks.low },
      lines: [...edgeLines(marks), ...apexLines(marks.apex, write), ...leanLines(marks.edgeLean)],
    },
  ];
}

const behindLines = (bevel: EdgeBevel, units: Units): string[] => [
  "behind the edge",
  onOneLine(sizeText(bevel.behind, units)),
  `${sizeText(bevel.height, units).main} above it`,
];

/** Both faces in words; a height that the drawing has a dimension for is not said again. */
function faceLines(marks: SectionMarks, faces: ReturnType<typeof facesShown>, units: Units): string[] {
  const differ = faces.length > 1;
  const isLevel = leanLines(marks.edgeLean).length === 0;
  return faces.flatMap(([side, face]) => {
    const { form, radius, reachesSpine, bevelHeight } = face;
    const name = differ ? `${side}: ` : "";
    const isDimensioned = isLevel && (!differ || side === "left");
    const plain = isDimensioned ? [] : ["bevel height", onOneLine(sizeText(bevelHeight, units))];
    const height = reachesSpine ? ["bevel to the spine"] : plain;
    if (radius === undefined) {
      return face.bevelAngle < SAME_ANGLE
        ? [`${name}flat, no bevel`]
        : [`${name}flat, ${angleText(face.bevelAngle)}${differ ? "" : " per side"}`, ...height];
    }
    return [
      form === "hollow" ? `${name}hollow, wheel` : `${name}convex`,
      `R ${radiusText(radius, units)}`,
      `${angleText(face.angleAtEdge)} at the edge,`,
      `${angleText(face.angleAtBevelLine)} at the top`,
      ...height,
    ];
  });
}

/** The radius of a wheel or a crown: to 0.1 mm and 0.01 in, finer than either is known. */
function radiusText(mm: number, units: Units): string {
  const step = { mm: 0.1, in: 0.01 } as const;
  return onOneLine(dualText(units, (shown) => formatLength(mm, shown, { resolution: step[shown] })));
}

function apexLines(apex: number, write: (mm: number) => string): string[] {
  if (Math.abs(apex) < CENTRED) return [];
  return [`apex ${write(Math.abs(apex))}`, `${apex > 0 ? "right" : "left"} of the centre plane`];
}
