import {
  type BevelGauge,
  type EdgeGauge,
  type HandleGauge,
  line,
  type RadiusGauge,
} from "@scantling/geometry";
import { cleanText } from "../clean-text.js";
import type { DrawingItem } from "../drawing.js";
import type { Part } from "../lay-out/part.js";
import type { SheetContent } from "../lay-out/sheet-content.js";
import type { GaugesModel } from "../models/gauges-model.js";
import { arcCard, halfCard, quarterCard, slotCard } from "./gauges/cards.js";
import { flatFaceItems } from "./gauges/flat-faces.js";
import { bevelWords, edgeWords, handleWords, radiusWords } from "./gauges/words.js";
import { orderFields, orderTitle } from "./order-words.js";
import { partOf } from "./part-of.js";
import { printWords } from "./words.js";

/** Depth of the notch of an edge gauge, mm. */
const NOTCH = 15;

/**
 * Gauges to cut out and hold against the work: sections of the handle, bevels as ground, radii and the edge's angle. Every
 * profile is the measured curve itself. A knife that has none of them has no such sheet.
 *
 * @example
 * layOutSheet(gaugesContents(model), { kind: "smallest", papers: papersFor("mm") }).length; // 1
 */
export function gaugesContents(model: GaugesModel): SheetContent[] {
  const parts = gaugeParts(model);
  if (parts.length === 0) return [];
  const cards = parts.length - (model.gauges.flatFaces.length === 0 ? 0 : 1);
  return [
    {
      name: "gauges",
      trueSize: true,
      trueLine: "True size is the middle of the cut line.",
      title: orderTitle(model, "gauges to cut out"),
      describe: ({ paper }) =>
        cleanText(
          `${cards === 1 ? "One gauge" : `${cards} gauges`} to cut out and hold against the work, at true size: ` +
            `sections of the handle, bevels, radii and the edge's angle, as far as the knife has them. ${printWords(paper)}.`,
        ),
      fields: (page) =>
        orderFields(
          model,
          [
            ["Handle, radii, edge", "finished"],
            ["Bevels", "before sharpening"],
          ],
          page,
        ),
      parts,
    },
  ];
}

function gaugeParts({ gauges, units }: GaugesModel): Part[] {
  const numbered = <T>(
    kind: string,
    all: readonly T[],
    draw: (one: T, name: string) => DrawingItem[],
  ): Part[] =>
    all.map((one, index) => {
      const name = `${kind}-${index + 1}`;
      return { ...partOf(name, draw(one, `${name}-cut`)), trueSize: true };
    });
  return [
    ...numbered("handle-gauge", gauges.handle, (one: HandleGauge, name) =>
      halfCard(name, one.half, handleWords(one, units)),
    ),
    ...numbered("bevel-gauge", gauges.bevels, (one: BevelGauge, name) =>
      slotCard(name, one.left.profile, one.right.profile, bevelWords(one, units)),
    ),
    ...numbered("radius-gauge", gauges.radii, (one: RadiusGauge, name) => radiusCard(one, name, units)),
    ...(gauges.flatFaces.length === 0 ? [] : [partOf("flat-faces", flatFaceItems(gauges.flatFaces, units))]),
    ...numbered("edge-gauge", gauges.edges, edgeCard),
  ];
}

function radiusCard(gauge: RadiusGauge, name: string, units: GaugesModel["units"]): DrawingItem[] {
  const words = radiusWords(gauge, units);
  const { use, radius, chord } = gauge;
  if (use === "spine" || use === "handle") return quarterCard(name, radius, words);
  return arcCard(name, radius, chord, use === "hollow" ? 1 : -1, words);
}

function edgeCard(gauge: EdgeGauge, name: string): DrawingItem[] {
  const apex = { x: 0, y: 0 };
  const side = (angle: number): { x: number; y: number } => ({ x: NOTCH * Math.tan(angle), y: NOTCH });
  const left = { ...side(gauge.left), x: -side(gauge.left).x };
  return slotCard(name, line(apex, left), line(apex, side(gauge.right)), edgeWords(gauge));
}
