import { formatLength } from "@scantling/geometry/units";
import { lengthText, onOneLine, sizeText } from "../../label-text.js";
import { KEY } from "../../lettering-size.js";
import type { AlongBlade, PlotsModel } from "../../models/plots-model.js";
import { type Block, gap, lineBlock, paragraph, stackBlocks } from "../../plot/block.js";
import { curvePlot, type PlotCurve } from "../../plot/curve-plot.js";
import { mainUnits } from "../../sheet-units.js";
import { ruleText } from "../preform/figures.js";
import { axisArea, axisLength, lengthUnit, volumeText } from "./figures.js";

const ALONG = "from the heel";
const AFTER_HEADING = 0.8;

/** Thickness at the spine and just above the edge, finished and as forged. */
export function thicknessPlot(model: PlotsModel, width: number): Block {
  const { units, thickness } = model;
  const over = (points: AlongBlade): AlongBlade =>
    points.map(({ x, y }) => ({ x: axisLength(x, units), y: axisLength(y, units) }));
  const curves: PlotCurve[] = [
    { label: "finished, spine", role: "outline", points: over(thickness.spine), name: "thickness-spine" },
    {
      label: `finished, ${aboveWords(thickness.above, units)} above edge`,
      role: "thin",
      points: over(thickness.aboveEdge),
      name: "thickness-above-edge",
    },
    {
      label: "as forged, spine",
      role: "hidden",
      points: over(thickness.forgedSpine),
      name: "thickness-forged-spine",
    },
    {
      label: "as forged, edge",
      role: "adjacent",
      points: over(thickness.forgedEdge),
      name: "thickness-forged-edge",
    },
  ];
  const dots = thickness.stations.map(({ x, y }) => ({
    at: { x: axisLength(x, units), y: axisLength(y, units) },
    text: sizeText(y, units).main,
  }));
  const [first] = thickness.stations;
  const last = thickness.stations.at(-1);
  const stations = [...new Set([first, last])].flatMap((station) => (station === undefined ? [] : [station]));
  // Not every dot has room for its figure: in words all of them are told.
  const between = thickness.stations
    .slice(1, -1)
    .map(({ x, y }) => `at ${placeWords(x, units)}: ${sizeText(y, units).main}`);
  return stackBlocks([
    paragraph("Thickness", width, KEY),
    paragraph(`in ${lengthUnit(units)}, full; dots: stations`, width),
    gap(AFTER_HEADING),
    curvePlot(
      {
        curves: curves.filter(({ points }) => points.length > 1),
        dots,
        along: `${lengthUnit(units)} ${ALONG}`,
      },
      width,
    ),
    gap(AFTER_HEADING),
    ...stations.map(({ x, y }) =>
      paragraph(`Spine at ${placeWords(x, units)}: ${onOneLine(sizeText(y, units))}`, width),
    ),
    ...(between.length === 0 ? [] : [paragraph(between.join("; "), width)]),
    ...(thickness.swedge === undefined
      ? []
      : [paragraph(`Steps: ends of the swedge, ${swedgeWords(thickness.swedge, units)}`, width)]),
  ]);
}

/** Steel in the sections, finished and as forged, and the billet as a block of the same steel. */
export function areaPlot(model: PlotsModel, width: number): Block {
  const { units, area } = model;
  const { billet } = area;
  const over = (points: AlongBlade): AlongBlade =>
    points.map(({ x, y }) => ({ x: axisLength(x, units), y: axisArea(y, units) }));
  const curves: PlotCurve[] = [
    { label: "finished", role: "outline", points: over(area.finished), shaded: true, name: "area-finished" },
    { label: "as forged", role: "hidden", points: over(area.forged), name: "area-forged" },
  ];
  if (billet !== undefined) {
    const { from, length } = billet;
    const block = [
      { x: from, y: 0 },
      { x: from, y: billet.area },
      { x: from + length, y: billet.area },
      { x: from + length, y: 0 },
    ];
    curves.push({ label: billet.words, role: "adjacent", points: over(block), name: "area-billet" });
  }
  const line = (name: string, mm3: number): Block =>
    lineBlock([name, onOneLine(volumeText(mm3, units))], width);
  return stackBlocks([
    paragraph("Steel along the blade", width, KEY),
    paragraph(
      `areas in ${mainUnits(units) === "mm" ? "mm²" : "square inches"}: equal areas, equal steel`,
      width,
    ),
    gap(AFTER_HEADING),
    curvePlot({ curves, along: `${lengthUnit(units)} ${ALONG}` }, width),
    gap(AFTER_HEADING),
    line("finished", area.finishedVolume),
    line("as forged", area.forgedVolume),
    ...(billet === undefined
      ? []
      : [
          // The bar is sawn longer than this: the spare comes on top.
          line(`${billet.words} without spare`, billet.area * billet.length),
          lineBlock(["length without spare", onOneLine(ruleText(billet.length, units))], width),
        ]),
  ]);
}

/** A height that is told in mm everywhere: first in inches where the sheet is. */
const aboveWords = (mm: number, units: PlotsModel["units"]): string =>
  mainUnits(units) === "mm" ? formatLength(mm, "mm") : onOneLine(sizeText(mm, units));

const swedgeWords = ({ from, to }: { from: number; to: number }, units: PlotsModel["units"]): string =>
  `${lengthText(from, units).main} and ${lengthText(to, units).main}`;

const placeWords = (x: number, units: PlotsModel["units"]): string =>
  x === 0 ? "the heel" : lengthText(x, units).main;
