import {
  extremeParameters,
  type Path,
  pathBounds,
  pointAt,
  runTurnedOver,
  type Segment,
  translateSegment,
  type Vec2,
} from "@scantling/geometry";
import { formatNumber } from "@scantling/geometry/units";
import { EXTENSION_GAP, extensionLine, levelDimension, uprightDimension } from "../../dimension.js";
import { type CircleItem, type DrawingItem, lettering, strokes } from "../../drawing.js";
import { lengthText, onOneLine } from "../../label-text.js";
import { KEY, SMALL } from "../../lettering-size.js";
import type { SheathModel } from "../../models/sheath-model.js";

/** A pricked hole as it is drawn, mm. */
const PRICK = 0.4;
const DIMENSION = 9;
/** From the blank's dimension to the welt's title, mm. */
const APART = 6;

const over = ({ x, y }: Vec2, fold: number): Vec2 => ({ x, y: 2 * fold - y });

/** Centres of the stitch holes on both halves. */
export const stitchCentres = ({ stitches, fold }: SheathModel["sheath"]): Vec2[] =>
  stitches.flatMap(({ at }) => [at, over(at, fold)]);

/** The sheath laid flat, the blade where it lies. */
export function sheathItems({ sheath, units }: SheathModel): DrawingItem[] {
  const { blank, fold, mouth, foldEnd, blade } = sheath;
  const open = (segments: readonly Segment[]): Path => ({ segments, closed: false });
  const box = pathBounds(blank);
  return [
    { kind: "path", role: "cut", name: "sheath-cut", paths: [blank] },
    {
      ...strokes("fold", [
        [
          { x: mouth, y: fold },
          { x: foldEnd, y: fold },
        ],
      ]),
      name: "sheath-fold",
    },
    {
      kind: "path",
      role: "thin",
      name: "sheath-finished",
      paths: [open(sheath.finished), open(runTurnedOver(sheath.finished, fold))],
    },
    { kind: "path", role: "adjacent", name: "sheath-blade", paths: [open(blade)] },
    ...stitchCentres(sheath).map(
      (centre): CircleItem => ({ kind: "circle", role: "thin", centre, radius: PRICK }),
    ),
    ...dimensions(sheath, box, units),
    ...words(sheath, box),
  ];
}

/** One layer of the welt, below the sheath, and how many are cut. */
export function weltItems({ sheath: { blank, welt, weltLayers } }: SheathModel): DrawingItem[] {
  const box = pathBounds(welt);
  const title = pathBounds(blank).minY - DIMENSION - APART - KEY;
  const down = title - 3 - box.maxY;
  const moved: Path = { ...welt, segments: welt.segments.map((one) => translateSegment(one, 0, down)) };
  return [
    lettering(weltWords(weltLayers), { x: box.minX, y: title }, { height: KEY, bold: true }),
    { kind: "path", role: "cut", name: "welt-cut", paths: [moved] },
  ];
}

/** The drawing is one layer: of more it says how many to cut. */
const weltWords = (layers: number): string =>
  layers === 1 ? "WELT: cut 1" : `WELT: cut ${formatNumber(layers, 1)}, glue together`;

function dimensions(
  { mouth, fold, halfWidth, blank }: SheathModel["sheath"],
  box: ReturnType<typeof pathBounds>,
  units: SheathModel["units"],
): DrawingItem[] {
  const y = box.minY - DIMENSION;
  const foremost = blank.segments
    .flatMap((segment) => [0, ...extremeParameters(segment, "x"), 1].map((t) => pointAt(segment, t)))
    .filter((point) => point.y <= fold + 1e-6)
    .reduce((a, b) => (b.x > a.x + 1e-9 || (Math.abs(b.x - a.x) <= 1e-9 && b.y < a.y) ? b : a));
  const low = fold - halfWidth;
  const from = mouth - EXTENSION_GAP;
  return [
    extensionLine({ x: mouth, y: low }, y),
    extensionLine(foremost, y),
    ...levelDimension({
      from: mouth,
      to: foremost.x,
      y,
      text: onOneLine(lengthText(foremost.x - mouth, units)),
      clearOf: [],
      beside: "right",
    }),
    ...uprightDimension({
      low,
      high: fold,
      lowFrom: from,
      highFrom: from,
      x: mouth - DIMENSION - 2,
      ...lengthText(halfWidth, units),
    }),
  ];
}

/** The words on the leather: where it folds, where the knife goes in. */
function words(
  { mouth, fold, halfWidth }: SheathModel["sheath"],
  box: ReturnType<typeof pathBounds>,
): DrawingItem[] {
  return [
    lettering("SHEATH, flesh side up", { x: mouth, y: box.maxY + 3 }, { height: KEY, bold: true }),
    lettering("fold", { x: mouth + 4, y: fold + 1.5 }, { height: SMALL }),
    lettering(
      "mouth",
      { x: mouth - 2, y: fold + halfWidth / 2 },
      { height: SMALL, anchor: "middle", rotation: Math.PI / 2 },
    ),
  ];
}
