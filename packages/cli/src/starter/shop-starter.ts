import {
  DEFAULT_TOLERANCES,
  type DefaultNumber,
  LIMIT_DEFAULTS,
  LOSS_DEFAULTS,
  PRESS_DEFAULTS,
} from "@scantling/geometry";
import type { FileUnits } from "@scantling/geometry/units";
import { sawOf } from "../load.js";
import { wrap } from "../report/layout.js";
import { type Commented, commentedLines } from "./commented-lines.js";
import { exactSize } from "./size-text.js";

/** Bars that many smiths have, and of which the starters of knives can be made; examples. */
const RACK: Readonly<Record<FileUnits, readonly string[]>> = {
  mm: [
    'size: 3 x 30 mm, steel: "1084", length: 1000, count: 2',
    'size: 6 x 25 mm, steel: "1084", length: 1000, count: 2',
    'size: 6 x 40 mm, steel: "1084", length: 1000, count: 3',
    'size: 8 x 40 mm, steel: "1084", length: 1000',
  ],
  in: [
    'size: 1/8 x 1 1/4 in, steel: "1084", length: 36, count: 2',
    'size: 1/4 x 1 in, steel: "1084", length: 36, count: 2',
    'size: 1/4 x 1 1/2 in, steel: "1084", length: 36, count: 3',
    'size: 5/16 x 1 1/2 in, steel: "1084", length: 36',
  ],
};

/** A shop file to begin with: some bars, and as comments what holds where the shop says nothing. */
export function shopStarter(units: FileUnits): string {
  return `${[
    ...heading(),
    ...commentedLines([
      ["scantling: 1"],
      [`units: ${units}`, "what bare numbers are in"],
      ["# currency: EUR", "if wanted: of the prices"],
      ["rack:", "EXAMPLES, thickness x width: put yours in"],
      ...RACK[units].map((bar): Commented => [`  - { ${bar} }`]),
      [`  # - { size: 10 x 40 mm, price: 9.20 }`, "if wanted: price of a kilogram"],
      ...sawLines(units),
      ...lossLines(units),
      ...pressLines(units),
      ...hardeningLines(units),
      ...benchLines(units),
      ...limitLines(),
      ...toleranceLines(units),
    ]),
  ].join("\n")}\n`;
}

function heading(): string[] {
  const words = [
    "The shop: the bars on the rack, and what fire, press and saw take. It is found from knife files beside it and in the folders below.",
    "",
    'Lines behind a # count for nothing. Those with "default" behind them show what holds without them, those with "if wanted" what more there is. To put your own figure in, take the # off its line, and off the line of its group above.',
  ];
  return words.flatMap((text) => (text === "" ? ["#"] : wrap(text, 78).map((line) => `# ${line}`)));
}

function sawLines(units: FileUnits): Commented[] {
  const { cutStep, kerf } = sawOf(units);
  return [
    [`# cutStep: ${exactSize(cutStep, units).text}`, "default: lengths to cut are rounded up to it"],
    [`# kerf: ${exactSize(kerf, units).text}`, "default: what the saw takes"],
    [`# minKeep: ${units === "mm" ? 100 : 4}`, "if wanted: shorter pieces are not kept"],
  ];
}

/** Each with its band; what weighing shows goes in its place. */
function lossLines(units: FileUnits): Commented[] {
  const loss = (key: keyof typeof LOSS_DEFAULTS, about: string): Commented => [
    `#   ${key}: ${bandText(LOSS_DEFAULTS[key], units)}`,
    `default${about}`,
  ];
  return [
    ["# losses:", "default: weigh a few jobs, put yours in"],
    ["#   scale: fraction", "default: of the mass; or skin, a depth"],
    loss("scalePerHeat", ": each forging heat"),
    loss("scalePerWeldingHeat", ""),
    loss("heatTreatmentScale", ""),
    loss("skinPerHeat", ": the same as depths, for skin"),
    loss("skinPerWeldingHeat", ""),
    loss("skinHeatTreatment", ""),
    loss("cropPerEnd", ": off each end of a welded billet"),
    loss("weldDressingPerSide", ": bead and seam"),
    loss("cleaningPerFace", ": off both faces of a joint"),
  ];
}

function pressLines(units: FileUnits): Commented[] {
  const { temperature, weldingTemperature, stopOffset, maxReduction } = PRESS_DEFAULTS;
  const mm = units === "mm";
  return [
    ["# press:", "default: no limits, no stops known"],
    [`#   opening: ${mm ? 75 : 3}`, "if wanted: dies apart, at their widest"],
    [`#   forgeLength: ${mm ? 450 : 18}`, "if wanted: longest billet that heats evenly"],
    [
      `#   stopBlocks: [${mm ? "4, 6, 8, 10, 12, 16, 20" : "1/8, 3/16, 1/4, 5/16, 3/8, 1/2, 3/4"}]`,
      "if wanted",
    ],
    [`#   shims: [${mm ? "0.2, 0.5, 1, 2" : "0.010, 0.020, 1/32, 1/16"}]`, "if wanted"],
    [`#   stopOffset: ${stopOffset.value}`, "default: hot piece over its stop"],
    [`#   maxReduction: ${percent(maxReduction.value)}`, "default: the most a pass takes"],
    [`#   temperature: ${temperature.value} °C`, "default: at the last squeeze"],
    [`#   weldingTemperature: ${weldingTemperature.value} °C`, "default"],
    [`# fullers: [${mm ? 6 : "1/4"}]`, "if wanted: radii, for a shoulder"],
  ];
}

function hardeningLines(units: FileUnits): Commented[] {
  const mm = units === "mm";
  return [
    [`# oven: { length: ${mm ? 500 : 20}, height: ${mm ? 120 : 5} }`, "if wanted: inside"],
    [`# quenchTank: { depth: ${mm ? 450 : 18}, litres: 15 }`, "if wanted: a US gallon is 3.785 l"],
  ];
}

function benchLines(units: FileUnits): Commented[] {
  const mm = units === "mm";
  return [
    ["# drills: [number, letter, fraction, metric]", "default: all four sets"],
    [`# wheels: [${mm ? "200, 250" : "8, 10"}]`, "if wanted: diameters, for hollow faces"],
    ["# wedges: [11 deg, 20 deg]", "if wanted: for the edge angle"],
    [`# jigLever: ${mm ? 60 : "2 1/2"}`, "if wanted: edge to the shim of the jig"],
    [`# paper: ${mm ? "a4" : "letter"}`, "default: what sheets are printed on"],
  ];
}

function limitLines(): Commented[] {
  const { maxBars, minWeldReduction, reachEasy, reachFlatDies, reachFullers } = LIMIT_DEFAULTS;
  const reach = [
    `easy: ${percent(reachEasy.value)}`,
    `flatDies: ${percent(reachFlatDies.value)}`,
    `fullers: ${percent(reachFullers.value)}`,
  ];
  return [
    ["# limits:", "default"],
    [`#   maxBars: ${maxBars.value}`, "default: in a stack"],
    [`#   minWeldReduction: ${percent(minWeldReduction.value)}`, "default: of a stack's height"],
    [`#   reach: { ${reach.join(", ")} }`, "default"],
  ];
}

function toleranceLines(units: FileUnits): Commented[] {
  const { forgedThickness, groundThickness, outline, steelDensity } = DEFAULT_TOLERANCES;
  const size = (mm: number): string => `${exactSize(mm, "mm").text}${units === "mm" ? "" : " mm"}`;
  return [
    ["# tolerances:", "default, for knife files that give none"],
    [`#   forgedThickness: ${size(forgedThickness)}`, "default"],
    [`#   groundThickness: ${size(groundThickness)}`, "default"],
    [`#   outline: ${size(outline)}`, "default"],
    [`#   density: ${percent(steelDensity)}`, "default: of the steel"],
  ];
}

/** `8 mm +4/-3 mm`, `1.2 % +0.8/-0.6 %`. */
function bandText(loss: Required<DefaultNumber>, units: FileUnits): string {
  const isShare = loss.quantity === "share";
  const factor = isShare ? 100 : 1;
  const unit = isShare ? " %" : units === "mm" ? "" : " mm";
  const [value, plus, minus] = [loss.value, loss.high - loss.value, loss.value - loss.low].map((part) =>
    String(Number((part * factor).toFixed(4))),
  );
  return `${value}${unit} +${plus}/-${minus}${unit}`;
}

const percent = (share: number): string => `${Number((share * 100).toFixed(2))} %`;
