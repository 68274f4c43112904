import type { Vec2 } from "@scantling/geometry";
import { spread } from "../../callouts.js";
import { type DrawingItem, lettering, strokes } from "../../drawing.js";
import { LINE_PITCH, SMALL } from "../../lettering-size.js";

/** A few lines of lettering beside a view, tied by a thin line to a point of it. */
export interface SideNote {
  readonly at: Vec2;
  readonly lines: readonly string[];
}

/** Room in which the lines fan out, and between them and the lettering, mm. */
const FAN = 3;
const GAP = 1;
const BETWEEN = 2;
const PITCH = LINE_PITCH * SMALL;

/**
 * Notes in a column to the right of a view, in the order of their points from above, moved apart just as far as they must.
 *
 * @param x - where the lines begin to fan out: right of everything else that stands at the same heights, mm.
 */
export function noteColumn(notes: readonly SideNote[], x: number): DrawingItem[] {
  const sorted = [...notes].sort((a, b) => b.at.y - a.at.y);
  // Counted downward, so that wishes ascend.
  const places = spread(
    sorted.map(({ at }) => -at.y),
    sorted.map(({ lines }) => lines.length * PITCH),
    BETWEEN,
  );
  return sorted.flatMap(({ at, lines }, index) => {
    const middle = -(places[index] ?? 0);
    const top = middle + (lines.length * PITCH) / 2;
    const left = x + FAN + GAP;
    return [
      strokes("thin", [
        [at, { x, y: at.y }],
        [
          { x, y: at.y },
          { x: x + FAN, y: middle },
        ],
      ]),
      ...lines.map((line, i) =>
        lettering(line, { x: left, y: top - (i + 0.5) * PITCH - 0.5 * SMALL }, { height: SMALL }),
      ),
    ];
  });
}
