import type { Vec2 } from "@scantling/geometry";
import { boxOfItems } from "../../box.js";
import { type DrawingItem, lettering, moveItem } from "../../drawing.js";
import type { Part } from "../../lay-out/part.js";
import { KEY, LINE_PITCH, SMALL } from "../../lettering-size.js";
import type { SectionStation, SectionsModel } from "../../models/sections-model.js";
import { noteColumn } from "./callout-column.js";
import { sectionNotes } from "./face-notes.js";
import { boundsOf, rightmost } from "./layers.js";
import { enlargedText, enlargementOf } from "./ratio.js";
import { ABOVE, CLEAR, heightDimensions, thicknessDimension } from "./section-dimensions.js";
import { type SectionView, sectionView } from "./section-view.js";
import { stationTitle } from "./words.js";

/** Between the true-size section and what stands about the enlarged one, mm. */
const BETWEEN = 5;
/** From a section down to its ratio, and from everything up to the title, mm. */
const UNDER = 4;
const OVER = 4;
/** Enlargement of a section without bevels, where there is little to be seen. */
const PLAIN = 2;
/** Half the width of the widest line, mm: a part holds its lines whole. */
const PEN = 0.5;
const NOTE_GAP = 3;

/** One station: the section at true size, and enlarged with its dimensions. */
export function stationPart(station: SectionStation, letter: string, units: SectionsModel["units"]): Part {
  const box = boundsOf([...station.finished, ...(station.forged ?? [])]);
  const { ratio, upTo } = enlargementOf(
    box.maxY - box.minY,
    box.maxX - box.minX,
    station.marks.right === undefined ? PLAIN : undefined,
  );
  const large = sectionView(station, {
    ratio,
    ...(upTo === undefined ? {} : { upTo }),
    hatched: true,
    states: ["ready", "forged"],
  });
  const over = large.isCut ? [] : thicknessDimension(station, large, units);
  const enlarged = [...large.items, ...over, ...heightDimensions(station, large, units), ratioLabel(large)];
  const notes = notesOf(station, large, units);
  const whole = sectionView(station, { ratio: 1, hatched: false, states: ["forged"] });
  // Over the lower part of a high section there is room for the figure of its thickness.
  const side = whole.top + ABOVE - CLEAR > large.top ? "right" : "left";
  const overWhole = large.isCut ? thicknessDimension(station, whole, units, side) : [];
  const besideWhole = [
    ...whole.items,
    ...(large.isCut ? heightDimensions(station, whole, units) : []),
    ratioLabel(whole),
  ];
  const trueSize = [...overWhole, ...besideWhole];
  // The figure of a thickness stands over both.
  const beside = enlarged.filter((item) => !over.includes(item));
  const left = boxOfItems(beside)?.minX ?? 0;
  const shift = left - BETWEEN - (boxOfItems(besideWhole)?.maxX ?? 0);
  const drawn = [...enlarged, ...notes, ...trueSize.map((item) => moveItem(item, shift, 0))];
  return partOf(`section-${letter}`, withTitle(drawn, ...stationTitle(station, letter, units)));
}

function notesOf(station: SectionStation, view: SectionView, units: SectionsModel["units"]): DrawingItem[] {
  const limit = view.isCut ? view.top - 8 : Number.POSITIVE_INFINITY;
  const own = (paper: number): number => paper / view.ratio + station.marks.low;
  const pointAt = (y: number): Vec2 => {
    const there = Math.min(y, own(limit));
    return onRightFace(station, there);
  };
  const notes = sectionNotes(station, units, pointAt).map(({ at, lines }) => ({
    at: view.toPaper(at),
    lines,
  }));
  return noteColumn(notes, view.right + NOTE_GAP);
}

/** Steps in which a place beside a hole is looked for. */
const STEPS = 40;

/** The point of the right-hand face at a height, or the next one below where a hole is there. */
function onRightFace({ finished, marks }: SectionStation, y: number): Vec2 {
  for (let step = 0; step < STEPS; step++) {
    const there = marks.low + (y - marks.low) * (1 - step / STEPS);
    const x = rightmost(finished, there);
    if (Number.isFinite(x)) return { x, y: there };
  }
  return { x: marks.apex, y: marks.low };
}

const ratioLabel = (view: SectionView): DrawingItem =>
  lettering(
    enlargedText(view.ratio),
    { x: 0, y: view.bottom - UNDER - SMALL },
    { height: KEY, anchor: "middle" },
  );

/** The items with a heading above them, flush left, and a line of words under it. */
export function withTitle(items: readonly DrawingItem[], title: string, under?: string): DrawingItem[] {
  const box = boxOfItems(items) ?? { minX: 0, minY: 0, maxX: 0, maxY: 0 };
  const x = box.minX;
  const y = box.maxY + OVER;
  if (under === undefined) return [...items, lettering(title, { x, y }, { height: KEY, bold: true })];
  return [
    ...items,
    lettering(title, { x, y: y + SMALL * LINE_PITCH }, { height: KEY, bold: true }),
    lettering(under, { x, y }, { height: SMALL }),
  ];
}

/** A part of the sheet made of items that were drawn anywhere. */
export function partOf(name: string, items: readonly DrawingItem[]): Part {
  const box = boxOfItems(items) ?? { minX: 0, minY: 0, maxX: 0, maxY: 0 };
  return {
    name,
    width: box.maxX - box.minX + 2 * PEN,
    height: box.maxY - box.minY + 2 * PEN,
    wish: "corner",
    items: ({ x, y }) => items.map((item) => moveItem(item, x - box.minX + PEN, y - box.minY + PEN)),
  };
}
