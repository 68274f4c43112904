import type { Bounds, Vec2 } from "@scantling/geometry";
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
const UNDER = 3;
const OVER = 3;
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
  const view = sectionView(station, {
    ratio,
    ...(upTo === undefined ? {} : { upTo }),
    hatched: true,
    states: ["ready", "forged"],
  });
  const notes = notesOf(station, view, units);
  // The figure runs on over the notes where they are not as high as it.
  const side = notes.length > 0 && boxOf(notes).maxY < view.top + ABOVE - CLEAR ? "right" : "left";
  const over = view.isCut ? [] : thicknessDimension(station, view, units, side);
  const enlarged: Enlarged = {
    view,
    beside: [...view.items, ...heightDimensions(station, view, units), ratioLabel(view)],
    notes,
  };
  const trueSize = view.isCut
    ? trueSizeAndDimensions(station, enlarged, units)
    : trueSizeAlone(station, enlarged);
  const drawn = [...enlarged.beside, ...over, ...enlarged.notes, ...trueSize];
  return partOf(`section-${letter}`, withTitle(drawn, ...stationTitle(station, letter, units)));
}

/** The enlarged section, what stands at its heights, and the notes on its right. */
interface Enlarged {
  readonly view: SectionView;
  readonly beside: readonly DrawingItem[];
  readonly notes: readonly DrawingItem[];
}

const trueSizeView = (station: SectionStation): SectionView =>
  sectionView(station, { ratio: 1, hatched: false, states: ["forged"] });

const emptyBox = { minX: 0, minY: 0, maxX: 0, maxY: 0 };
const boxOf = (items: readonly DrawingItem[]): Bounds => boxOfItems(items) ?? emptyBox;

/** Of a high section the enlarged view shows the lower part only: the sizes of the whole stand at the true-size one, on its left. */
function trueSizeAndDimensions(
  station: SectionStation,
  { view, beside, notes }: Enlarged,
  units: SectionsModel["units"],
): DrawingItem[] {
  const whole = trueSizeView(station);
  const items = [...whole.items, ...heightDimensions(station, whole, units), ratioLabel(whole)];
  // Over the lower part there is room for the figure of the thickness.
  const isClear = whole.top + ABOVE - CLEAR > Math.max(view.top, boxOf(notes).maxY);
  const over = thicknessDimension(station, whole, units, isClear ? "right" : "left");
  const shift = boxOf(beside).minX - BETWEEN - boxOf(items).maxX;
  return [...items, ...over].map((item) => moveItem(item, shift, 0));
}

/** Between the notes and the figure of the thickness where there is room, else to the left of the enlarged section. */
function trueSizeAlone(station: SectionStation, { view, beside, notes }: Enlarged): DrawingItem[] {
  const whole = trueSizeView(station);
  const items = [...whole.items, ratioLabel(whole)];
  const own = boxOf(items);
  const foot = boxOf(notes).maxY + BETWEEN;
  const top = Math.max(view.top, foot + own.maxY - own.minY);
  if (notes.length > 0 && top <= view.top + ABOVE - CLEAR) {
    const x = view.right + NOTE_GAP + BETWEEN - own.minX;
    return items.map((item) => moveItem(item, x, top - own.maxY));
  }
  const shift = boxOf(beside).minX - BETWEEN - own.maxX;
  return items.map((item) => moveItem(item, shift, 0));
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
  const usual = noteColumn(notes, view.right + NOTE_GAP);
  // Under a narrow view the ratio stands out beside it, and a line may fan down through it.
  const label = boxOf([ratioLabel(view)]);
  return runsThrough(usual, label) ? noteColumn(notes, label.maxX + CLEAR) : usual;
}

/** Whether a line to a note runs through a box: seen at points along it. */
function runsThrough(items: readonly DrawingItem[], { minX, maxX, minY, maxY }: Bounds): boolean {
  return items.some(
    (item) =>
      item.kind === "path" &&
      item.paths.some(({ segments }) =>
        segments.some(({ from, to }) =>
          Array.from({ length: STEPS + 1 }, (_, step) => step / STEPS).some((t) => {
            const [x, y] = [from.x + (to.x - from.x) * t, from.y + (to.y - from.y) * t];
            return x > minX && x < maxX && y > minY && y < maxY;
          }),
        ),
      ),
  );
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
