import type { Vec2 } from "@scantling/geometry";
import { boxOfItems } from "../../box.js";
import { type DrawingItem, lettering, moveItem } from "../../drawing.js";
import { fitText } from "../../fit-text.js";
import { SMALL } from "../../lettering-size.js";
import type { SectionStation } from "../../models/sections-model.js";
import type { SheetUnits } from "../../sheet-units.js";
import { boundsOf } from "../sections/layers.js";
import { enlargedText, reducedText } from "../sections/ratio.js";
import { heightDimensions, thicknessDimension } from "../sections/section-dimensions.js";
import { sectionView } from "../sections/section-view.js";

/** Ratios of a sketch, the largest that fits: 5 : 1 to 1 : 2 (ISO 5455, from memory). */
const RATIOS = [5, 2, 1, 0.5] as const;
/** Height that a section may take, and room for what stands under and over it, mm. */
const MOST_HEIGHT = 60;
/** Between two sections, and from a section down to its name, mm. */
const BETWEEN = 6;
const UNDER = 4;
const NAME_ROOM = 50;
/** From one line of a name to the next, in heights of its capitals. */
const PITCH = 1.6;

/** Sections beside one another at one ratio, with their thickness and heights, a name under each. */
export function sectionSketches(stations: readonly SectionStation[], units: SheetUnits): DrawingItem[] {
  const high = Math.max(0, ...stations.map(({ finished }) => heightOf(finished)));
  const ratio = RATIOS.find((one) => one * high <= MOST_HEIGHT) ?? RATIOS[RATIOS.length - 1] ?? 1;
  const items: DrawingItem[] = [];
  for (const station of stations) {
    const sketch = sketchOf(station, ratio, units);
    const box = boxOfItems(sketch);
    if (box === undefined) continue;
    const left = boxOfItems(items)?.maxX;
    const dx = left === undefined ? -box.minX : left + BETWEEN - box.minX;
    items.push(...sketch.map((item) => moveItem(item, dx, 0)));
  }
  return items;
}

const heightOf = (paths: SectionStation["finished"]): number => {
  const { minY, maxY } = boundsOf(paths);
  return maxY - minY;
};

function sketchOf(station: SectionStation, ratio: number, units: SheetUnits): DrawingItem[] {
  const view = sectionView(station, { ratio, hatched: true, states: [] });
  const words = ratio >= 1 ? enlargedText(ratio) : reducedText(1 / ratio);
  const name = [...fitText(`At ${station.place}`, SMALL, NAME_ROOM, 2), words];
  const at = (line: number): Vec2 => ({ x: 0, y: view.bottom - UNDER - SMALL - line * PITCH * SMALL });
  return [
    ...view.items,
    ...heightDimensions(station, view, units),
    ...thicknessDimension(station, view, units, "right"),
    ...name.map((text, line) => lettering(text, at(line), { height: SMALL, anchor: "middle" })),
  ];
}
