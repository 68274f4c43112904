import type { FlatFace } from "@scantling/geometry";
import type { DrawingItem } from "../../drawing.js";
import { lengthText, sizeText } from "../../label-text.js";
import type { SheetUnits } from "../../sheet-units.js";
import { type TableContent, tableItems, tableSize } from "../../table.js";
import { small, textBlock } from "../part-of.js";
import { inTwoLines } from "../two-lines.js";
import { read, USES } from "./words.js";

/** Between the table and what to do with it, mm. */
const GAP = 1.5;

/** Faces that are too flat for a card: how much light a straight edge shows on each, and how to hold it. */
export function flatFaceItems(faces: readonly FlatFace[], units: SheetUnits): DrawingItem[] {
  const table = flatFaceTable(faces, units);
  const has = (use: FlatFace["use"]): boolean => faces.some((face) => face.use === use);
  const notes = [
    "Straight edge square to the edge, gap by feeler.",
    ...(has("convex") ? ["Convex: on the middle; light at both ends, alike."] : []),
    ...(has("hollow") ? ["Hollow: from rim to rim; light in the middle."] : []),
  ].map(small);
  return [
    ...tableItems(table, { left: 0, top: 0 }),
    ...textBlock(notes, { left: 0, top: -tableSize(table).height - GAP }),
  ];
}

function flatFaceTable(faces: readonly FlatFace[], units: SheetUnits): TableContent {
  return {
    caption: "Too flat for a card to cut: straight edge and feeler",
    header: ["Face", "From heel", "Length of straight edge", "Gap", "Radius"],
    rows: faces.flatMap(({ use, faces: side, at, chord, light, radius }) =>
      at.flatMap((x) =>
        inTwoLines([
          `${USES[use]}${side === "both" ? "" : `, ${side}`}`,
          lengthText(x, units),
          lengthText(chord, units),
          sizeText(light, units),
          sizeText(read(radius), units),
        ]),
      ),
    ),
  };
}
