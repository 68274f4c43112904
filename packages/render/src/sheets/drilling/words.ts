import { onOneLine, sizeText } from "../../label-text.js";
import type { DrillingModel } from "../../models/drilling-model.js";

/** What is to be minded, how to lay the centres off, and what the edges are. */
export function drillingNotes({ warnings = [], levelEdge, forged, state, units }: DrillingModel): string[] {
  const write = (mm: number): string => onOneLine(sizeText(mm, units));
  const square =
    levelEdge === undefined
      ? "Neither edge of the tang is straight and level: strike a line along the blade first, or punch through the print."
      : `The ${levelEdge.side} edge of the tang is straight and level: lay the square on it.`;
  const over = [
    ...((forged?.outline ?? 0) > 0 ? [`${write(forged?.outline ?? 0)} at top and bottom`] : []),
    ...((forged?.butt ?? 0) > 0 ? [`${write(forged?.butt ?? 0)} at the butt end`] : []),
  ].join(", ");
  return [
    ...warnings,
    square,
    `Edges: ${state}, and the same ready to harden.${over === "" ? "" : ` As forged, before the profile is trimmed, add ${over}.`}`,
    "Punch every centre. Drill before hardening, work clamped, edge covered, eyes protected.",
  ];
}
