import { letterName, pathBounds, type Vec2 } from "@scantling/geometry";
import { boxOfItems } from "../../box.js";
import { calloutRow } from "../../callouts.js";
import { type DrawingItem, lettering, strokes } from "../../drawing.js";
import type { Part } from "../../lay-out/part.js";
import { KEY, LINE_PITCH, SMALL } from "../../lettering-size.js";
import type { SectionsModel } from "../../models/sections-model.js";
import type { Role } from "../../role.js";
import { leanLines } from "./edge-words.js";
import { reducedText, reductionOf } from "./ratio.js";
import { similarPath } from "./similar.js";
import { partOf } from "./station-part.js";
import { columnWords } from "./tables.js";

/** Width that the knife may take, mm: on a standing sheet of A4 its legend stands beside it. */
const ROOM = 84;
/** How far the lines of the sections run past the outline, mm. */
const PAST = 2.5;
const SAMPLE = 14;
/** Between the knife and its legend, mm. */
const BESIDE = 6;
const UNDER_HEADING = 2;
const PITCH = SMALL * LINE_PITCH;

/** The knife with the places of its sections, and beside it what the lines and figures of the sheet mean. */
export function keyPart(model: SectionsModel): Part {
  const whole = pathBounds(model.outline);
  const reduction = reductionOf(whole.maxX - whole.minX, ROOM);
  const outline = similarPath(model.outline, { factor: 1 / reduction });
  const { minX, maxX, minY, maxY } = pathBounds(outline);
  const planes = model.stations.map(({ x }): [Vec2, Vec2] => [
    { x: x / reduction, y: minY - PAST },
    { x: x / reduction, y: maxY + PAST },
  ]);
  const letters = calloutRow(
    planes.map(([, from], index) => ({ from, lines: [letterName(index)] })),
    maxY + PAST,
    maxX - minX,
  );
  const knife: DrawingItem[] = [
    { kind: "path", role: "outline", paths: [outline] },
    ...planes.map((plane) => strokes("centre", [plane])),
    ...letters.items,
  ];
  const box = boxOfItems(knife) ?? { minX, maxX, minY, maxY };
  const x = box.maxX + BESIDE;
  const heading = lettering(
    `Where the sections are, ${reducedText(reduction)}`,
    { x, y: box.maxY - KEY },
    { height: KEY, bold: true },
  );
  return partOf("key", [...knife, heading, ...legend(model, { x, y: box.maxY - KEY - UNDER_HEADING })]);
}

/** Samples of the lines, then words, line under line from the top. */
function legend(model: SectionsModel, corner: Vec2): DrawingItem[] {
  const has = (state: "ready" | "forged"): boolean =>
    model.stations.some((station) => station.drawn && station[state] !== undefined);
  const lines: readonly (readonly [Role, string])[] = [
    ["outline", "finished"],
    ...(has("ready") ? [["hidden", "ready to harden, where it can be told from it"] as const] : []),
    ...(has("forged") ? [["adjacent", "as forged"] as const] : []),
  ];
  const words = [
    "Seen from the handle, right-hand face on the right.",
    `Drawn: ${drawnLetters(model)}. The table has them all.`,
    ...(model.stations.some(({ drawn, marks }) => drawn && leanLines(marks.edgeLean).length > 0)
      ? ["Figures in words are square to the edge."]
      : []),
    ...columnWords(model),
  ];
  const baseOf = (row: number): number => corner.y - SMALL - row * PITCH;
  return [
    ...lines.flatMap(([role, name], row) => {
      const y = baseOf(row) + 0.45 * SMALL;
      return [
        strokes(role, [
          [
            { x: corner.x, y },
            { x: corner.x + SAMPLE, y },
          ],
        ]),
        lettering(name, { x: corner.x + SAMPLE + 3, y: baseOf(row) }, { height: SMALL }),
      ];
    }),
    ...words.map((text, index) =>
      lettering(text, { x: corner.x, y: baseOf(lines.length + index) }, { height: SMALL }),
    ),
  ];
}

const drawnLetters = ({ stations }: SectionsModel): string =>
  stations.flatMap(({ drawn }, index) => (drawn ? [letterName(index)] : [])).join(", ");
