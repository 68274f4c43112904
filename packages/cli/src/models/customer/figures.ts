import { countLayers, type HandleStock, pathBounds, stackRestacks } from "@scantling/geometry";
import { type FileUnits, formatAngle, formatLength, formatMass } from "@scantling/geometry/units";
import type { CustomerFigure } from "@scantling/render";
import { type AskAnswer, limitsOf } from "../../asks.js";
import type { AskName } from "../../file/index.js";
import type { Measured } from "../../measure.js";
import type { Quote } from "../../quote/quote.js";
import { askRows } from "../../report/asks-text.js";
import { type SizeName, sizeFigure } from "../../size-intervals.js";
import { sizesOf } from "../../sizes.js";
import { besideUnits } from "../sheet-units.js";

/** The lowest and the highest that is promised. */
type Limits = readonly [low: number, high: number];

/** What is agreed of a knife, with the limits that it will keep. */
export function customerFigures(quote: Quote, stock: HandleStock | undefined): CustomerFigure[] {
  const { measured, terms, hardness } = quote;
  const { job, knife, weight, interval } = measured;
  const { promise } = terms;
  const sizes = sizesOf(knife);
  const overall = overallOf(measured, stock);
  const mass = weight.knife.mass;
  const length = lengths(job.units, besideUnits(job));
  const row = (what: string, name: AskName | undefined, value: number, within: Limits, show: Shows) =>
    figureRow(measured, what, name, value, within, show);
  const about = (value: number, by: number): Limits => [value - by, value + by];
  // Around the value that is shown: of a knife with its handle that is not the steel's.
  const sized = (name: SizeName, value: number, by: number): Limits => {
    const reckoned = sizeFigure(knife, { name }, job.knife.tolerances, job.tolerances);
    const { value: middle, interval: [low, high] = [middle, middle] } = reckoned;
    return wider([value - (middle - low), value + (high - middle)], about(value, by));
  };
  return [
    row(
      overall.what,
      "overallLength",
      overall.length,
      sized("overallLength", overall.length, promise.length),
      length,
    ),
    row(
      "Edge, heel to tip",
      "edgeLength",
      sizes.edgeLength,
      sized("edgeLength", sizes.edgeLength, promise.length),
      length,
    ),
    row(
      "Height at the heel",
      "heelHeight",
      sizes.heelHeight,
      about(sizes.heelHeight, promise.height),
      length,
    ),
    ...thicknesses(measured).map(({ what, name, value }) =>
      row(
        what,
        name,
        value,
        sized("thickness", value, promise.thickness),
        thinLengths(job.units, besideUnits(job)),
      ),
    ),
    row("Mass", "mass", mass, wider(interval.massInterval, about(mass, promise.mass * mass)), masses(job)),
    row(
      "Balance",
      "balance",
      weight.knife.balanceFromHeel,
      wider(interval.balanceInterval, about(weight.knife.balanceFromHeel, promise.balance)),
      places(job.units, besideUnits(job)),
    ),
    ...edgeAngle(measured),
    ...(hardness === undefined
      ? []
      : [
          {
            what: "Hardness",
            value: `${hardness.low} to ${hardness.high} HRC`,
            within: "by published tables",
          },
        ]),
    ...layers(measured),
  ];
}

/** Overall length of the knife; of its steel where nobody knows how far the handle reaches. */
function overallOf({ knife }: Measured, stock: HandleStock | undefined): { what: string; length: number } {
  const { minX, maxX } = pathBounds(knife.outline.path);
  const isFull = knife.spec.tang.form === "full";
  if (stock === undefined && !isFull) return { what: "Steel, overall", length: maxX - minX };
  const rears = [
    minX,
    ...(stock?.kind === "block" ? [pathBounds(stock.side).minX] : []),
    ...(stock?.fittings ?? []).map(({ rear }) => rear),
  ];
  return { what: "Overall length", length: maxX - Math.min(...rears) };
}

/** How a value and its limits are written. */
interface Shows {
  readonly value: (value: number) => string;
  readonly within: (limits: Limits) => string;
}

function figureRow(
  { answers, job }: Measured,
  what: string,
  name: AskName | undefined,
  value: number,
  within: Limits,
  show: Shows,
): CustomerFigure {
  const answer = answers.find(({ ask }) => ask.name === name);
  const index = answer === undefined ? -1 : answers.indexOf(answer);
  const asked = index < 0 ? undefined : askRows(answers, job.units)[index]?.[1];
  return {
    what,
    value: show.value(value),
    within: show.within(answer === undefined ? within : keptWithin(answer, within)),
    ...(asked === undefined ? {} : { asked }),
    ...(answer?.verdict === "not-met" ? { differs: true } : {}),
  };
}

/** What was asked and is met as drawn is promised: the limits end there. */
function keptWithin({ ask, verdict }: AskAnswer, [low, high]: Limits): Limits {
  if (verdict === "not-met") return [low, high];
  const { atLeast, atMost } = limitsOf(ask.test);
  return [Math.max(low, atLeast), Math.min(high, atMost)];
}

const wider = (a: Limits, b: Limits): Limits => [Math.min(a[0], b[0]), Math.max(a[1], b[1])];

/** A figure, and the same in the other units in brackets where the sheets show both. */
const inUnits = (
  write: (units: FileUnits) => string,
  units: FileUnits,
  beside: FileUnits | undefined,
): string => (beside === undefined ? write(units) : `${write(units)} (${write(beside)})`);

const lengthIn = (mm: number, units: FileUnits, step: number): string =>
  formatLength(mm, units, units === "mm" ? { resolution: step } : { remainder: false });

const lengths = (units: FileUnits, beside: FileUnits | undefined): Shows => ({
  value: (mm) => inUnits((shown) => lengthIn(mm, shown, 0.1), units, beside),
  within: ([low, high]) => `${lengthIn(low, units, 0.1)} to ${lengthIn(high, units, 0.1)}`,
});

const thinIn = (mm: number, units: FileUnits): string =>
  formatLength(mm, units, { resolution: units === "mm" ? 0.1 : 0.005 });

const thinLengths = (units: FileUnits, beside: FileUnits | undefined): Shows => ({
  value: (mm) => inUnits((shown) => thinIn(mm, shown), units, beside),
  within: ([low, high]) => `${thinIn(low, units)} to ${thinIn(high, units)}`,
});

function masses({ units, shopPlaces }: Measured["job"]): Shows {
  const massIn = (grams: number, shown: FileUnits): string =>
    formatMass(grams, shown, shown === "mm" ? 1 : 0.1);
  const beside = besideUnits({ units, shopPlaces });
  return {
    value: (grams) => inUnits((shown) => massIn(grams, shown), units, beside),
    within: ([low, high]) => `${massIn(low, units)} to ${massIn(high, units)}`,
  };
}

const places = (units: FileUnits, beside: FileUnits | undefined): Shows => {
  const size = (mm: number, shown: FileUnits): string => lengthIn(Math.abs(mm), shown, 1);
  const side = (mm: number): string => (mm < 0 ? "behind" : "ahead of");
  return {
    value: (mm) => `${inUnits((shown) => size(mm, shown), units, beside)} ${side(mm)} the heel`,
    within: ([low, high]) =>
      low < 0 === high < 0
        ? `${size(low < 0 ? high : low, units)} to ${size(low < 0 ? low : high, units)} ${side(low)} it`
        : `${size(low, units)} behind to ${size(high, units)} ahead of it`,
  };
};

interface Thickness {
  readonly what: string;
  readonly name?: AskName;
  readonly value: number;
}

/** The spine at the heel, half way, and near the tip. */
function thicknesses({ knife, job }: Measured): Thickness[] {
  const { edgeLength } = knife.outline;
  const at = (x: number): number => knife.laws.spine.valueAt(x);
  const nearTip = 10;
  return [
    { what: "Spine at the heel", name: "thickness", value: at(0) },
    { what: "Spine half way", value: at(edgeLength / 2) },
    {
      what: `Spine ${lengthIn(nearTip, job.units, 1)} behind the tip`,
      value: at(Math.max(0, edgeLength - nearTip)),
    },
  ];
}

function edgeAngle({ job }: Measured): CustomerFigure[] {
  const { edgeAngle: angle } = job.spec.blade;
  const show = (side: number | "flat"): string => (side === "flat" ? "flat" : formatAngle(side, 0.5));
  if (typeof angle === "number") return [{ what: "Edge sharpened at", value: `${show(angle)} per side` }];
  return [{ what: "Edge sharpened at", value: `right ${show(angle.right)}, left ${show(angle.left)}` }];
}

/** Layers that can be told apart, and the core line where it was asked for. */
function layers(measured: Measured): CustomerFigure[] {
  const { job, answers } = measured;
  const { stack } = job.knife;
  const core = answers.find(({ ask }) => ask.name === "coreLine");
  const row = (what: string, name: AskName, value: string): CustomerFigure => {
    const index = answers.findIndex(({ ask }) => ask.name === name);
    const asked = askRows(answers, job.units)[index]?.[1];
    return {
      what,
      value,
      ...(asked === undefined ? {} : { asked }),
      ...(answers[index]?.verdict === "not-met" ? { differs: true } : {}),
    };
  };
  if (stack?.kind === "pattern-welded") {
    const { distinct } = countLayers(
      stack.layers.map(({ steel }) => steel.name),
      stackRestacks(stack).map(({ pieces }) => pieces),
    );
    return [row("Layers that can be told apart", "layers", String(distinct))];
  }
  if (core === undefined) return [];
  const height = lengthIn(core.figure.value, job.units, 0.5);
  return [row("Core line above the edge", "coreLine", height)];
}
