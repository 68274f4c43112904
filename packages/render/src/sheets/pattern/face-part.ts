import { lettering } from "../../drawing.js";
import type { Part } from "../../lay-out/part.js";
import type { PatternModel } from "../../models/pattern-model.js";
import { textReach, textWidth } from "../../text-metrics.js";

/** Height of the capitals, mm: to be read before the pattern is glued on the wrong way round. */
const HEIGHT = 5;

/** Which face is seen, large, where the two are told apart. */
export function facePart({ mirror }: PatternModel): Part[] {
  if (mirror === undefined) return [];
  const text = mirror ? "LEFT FACE, TIP TO THE LEFT" : "RIGHT FACE, TIP TO THE RIGHT";
  const { over, under } = textReach(text, HEIGHT);
  return [
    {
      name: "face",
      width: textWidth(text, HEIGHT, true),
      height: over + under,
      wish: "foot",
      items: ({ x, y }) => [lettering(text, { x, y: y + under }, { height: HEIGHT, bold: true })],
    },
  ];
}
