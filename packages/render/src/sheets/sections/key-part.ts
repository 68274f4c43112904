import { pathBounds, type Vec2 } from "@scantling/geometry";
import { calloutRow } from "../../callouts.js";
import { type DrawingItem, lettering, strokes } from "../../drawing.js";
import type { Part } from "../../lay-out/part.js";
import { LINE_PITCH, SMALL } from "../../lettering-size.js";
import type { SectionsModel } from "../../models/sections-model.js";
import type { Role } from "../../role.js";
import { holeLetter } from "../pattern/view.js";
import { reducedText, reductionOf } from "./ratio.js";
import { similarPath } from "./similar.js";
import { partOf, withTitle } from "./station-part.js";

/** Width that the knife may take, mm. */
const ROOM = 124;
/** How far the lines of the sections run past the outline, mm. */
const PAST = 2.5;
const SAMPLE = 22;

/** The knife with the places of its sections, and what the lines of the sheet mean. */
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
    planes.map(([, from], index) => ({ from, lines: [holeLetter(index)] })),
    maxY + PAST,
    maxX - minX,
  );
  const items: DrawingItem[] = [
    { kind: "path", role: "outline", paths: [outline] },
    ...planes.map((plane) => strokes("centre", [plane])),
    ...letters.items,
    ...legend(model, { x: minX, y: minY - PAST - 7 }),
  ];
  return partOf("key", withTitle(items, `Where the sections are, ${reducedText(reduction)}`));
}

function legend(model: SectionsModel, corner: Vec2): DrawingItem[] {
  const has = (state: "ready" | "forged"): boolean =>
    model.stations.some((station) => station[state] !== undefined);
  const rows: readonly (readonly [Role, string])[] = [
    ["outline", "finished"],
    ...(has("ready") ? [["hidden", "ready to harden, where it can be told from it"] as const] : []),
    ...(has("forged") ? [["adjacent", "as forged"] as const] : []),
  ];
  const last = corner.y - rows.length * SMALL * LINE_PITCH;
  const seen = "seen from the handle: the right-hand face is on the right";
  const words = lettering(seen, { x: corner.x, y: last - 0.45 * SMALL }, { height: SMALL });
  return [
    words,
    ...rows.flatMap(([role, name], index) => {
      const y = corner.y - index * SMALL * LINE_PITCH;
      return [
        strokes(role, [
          [
            { x: corner.x, y },
            { x: corner.x + SAMPLE, y },
          ],
        ]),
        lettering(name, { x: corner.x + SAMPLE + 3, y: y - 0.45 * SMALL }, { height: SMALL }),
      ];
    }),
  ];
}
