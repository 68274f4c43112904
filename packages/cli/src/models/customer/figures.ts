import { countLayers, invariant, stackRestacks } from "@scantling/geometry";
import { formatAngle } from "@scantling/geometry/units";
import type { CustomerFigure } from "@scantling/render";
import { type AskAnswer, limitsOf } from "../../asks.js";
import { ASK_KINDS } from "../../file/index.js";
import type { Measured } from "../../measure.js";
import type { Quote } from "../../quote/quote.js";
import { answerCells } from "../../report/asks-text.js";
import { askedHardness } from "../../report/hardness-text.js";
import { type SizeName, sizeFigure } from "../../size-intervals.js";
import { isRearKnown, sizesOf } from "../../sizes.js";
import { besideUnits } from "../sheet-units.js";
import { askedWords, isAbout, isSameFigure, type Told } from "./asked.js";
import {
  angles,
  BEHIND_EDGE_STEPS,
  counts,
  type Limits,
  lengthIn,
  lengths,
  masses,
  places,
  type Shows,
  thinLengths,
} from "./shows.js";

/** A figure that stands on the sheet whether or not it was asked for. */
interface Row extends Told {
  readonly what: string;
  readonly text: string;
  readonly show: Shows;
  /** Left out where no limits are promised unless they are asked for. */
  readonly within?: Limits;
}

/** What is agreed of a knife, with the limits that it will keep. Everything that was asked for has a row, met or not. */
export function customerFigures(quote: Quote): CustomerFigure[] {
  const { measured } = quote;
  const rows = [...sizeRows(quote), ...weightRows(quote), ...edgeRows(measured), ...layerRows(measured)];
  const answers = rows.map((row) =>
    measured.answers.filter((answer) => isAbout(row, answer, measured.knife)),
  );
  // The first that is about a row stands in it, every other one in a row of its own behind the last of its kind.
  const placed = answers.flatMap(([first]) => first ?? []);
  const others = measured.answers.filter((answer) => !placed.includes(answer));
  const lastOf = (row: Row): boolean => rows.findLast(({ name }) => name === row.name) === row;
  const known = others.filter(({ ask }) => rows.some(({ name }) => name === ask.name));
  return [
    ...rows.flatMap((row, index) => [
      agreed(row, measured, answers[index] ?? []),
      ...(lastOf(row)
        ? known.filter(({ ask }) => ask.name === row.name).map((answer) => askedRow(answer, quote))
        : []),
    ]),
    ...others.filter((answer) => !known.includes(answer)).map((answer) => askedRow(answer, quote)),
    ...hardnessRow(quote),
  ];
}

function sizeRows({ measured, terms: { promise } }: Quote): Row[] {
  const { job, knife } = measured;
  const sizes = sizesOf(knife);
  const overall = sizes.overallLength;
  const length = lengths(job.units, besideUnits(job));
  const thin = thinLengths(job.units, besideUnits(job));
  // Around the value that is shown: of a knife with its handle that is not the steel's.
  const sized = (name: SizeName, value: number, by: number): Limits => {
    const reckoned = sizeFigure(knife, { name }, job.knife.tolerances, job.tolerances);
    const { value: middle, interval: [low, high] = [middle, middle] } = reckoned;
    return wider([value - (middle - low), value + (high - middle)], about(value, by));
  };
  const row = (what: string, name: SizeName, value: number, within: Limits): Row => ({
    ...{ what, name, value, within, text: length.value(value), show: length },
  });
  return [
    row(
      isRearKnown(knife) ? "Overall length" : "Blade with tang",
      "overallLength",
      overall,
      sized("overallLength", overall, promise.length),
    ),
    row(
      "Edge, heel to tip",
      "edgeLength",
      sizes.edgeLength,
      sized("edgeLength", sizes.edgeLength, promise.length),
    ),
    row("Height at the heel", "heelHeight", sizes.heelHeight, about(sizes.heelHeight, promise.height)),
    ...thicknesses(measured).map(({ what, x, value }) => ({
      ...row(what, "thickness", value, sized("thickness", value, promise.thickness)),
      ...{ x, text: thin.value(value), show: thin },
    })),
  ];
}

function weightRows({ measured, terms: { promise } }: Quote): Row[] {
  const { job, weight, interval } = measured;
  const { mass, balanceFromHeel: balance } = weight.knife;
  const inMass = masses(job);
  const place = places(job.units, besideUnits(job));
  return [
    {
      ...{ what: "Mass", name: "mass", value: mass, text: inMass.value(mass), show: inMass },
      within: wider(interval.massInterval, about(mass, promise.mass * mass)),
    },
    {
      ...{ what: "Balance", name: "balance", value: balance, text: place.value(balance), show: place },
      within: wider(interval.balanceInterval, about(balance, promise.balance)),
    },
  ];
}

const about = (value: number, by: number): Limits => [value - by, value + by];

interface Thickness {
  readonly what: string;
  readonly x: number;
  readonly value: number;
}

/** The spine at the heel, half way, and near the tip. */
function thicknesses({ knife, job }: Measured): Thickness[] {
  const { edgeLength } = knife.outline;
  const nearTip = 10;
  const at = (what: string, x: number): Thickness => ({ what, x, value: knife.laws.spine.valueAt(x) });
  return [
    at("Spine at the heel", 0),
    at("Spine half way", edgeLength / 2),
    at(`Spine ${lengthIn(nearTip, job.units, 1)} behind the tip`, Math.max(0, edgeLength - nearTip)),
  ];
}

function edgeRows({ job }: Measured): Row[] {
  const { edgeAngle: angle } = job.spec.blade;
  const shown = (side: number | "flat"): string => (side === "flat" ? "flat" : formatAngle(side, 0.5));
  const sides = typeof angle === "number" ? [angle] : [angle.right, angle.left];
  const text =
    typeof angle === "number"
      ? `${shown(angle)} per side`
      : `right ${shown(angle.right)}, left ${shown(angle.left)}`;
  // The steeper face is what is asked about, as `check` has it.
  const value = Math.max(...sides.filter((side) => side !== "flat"));
  return [{ what: "Edge sharpened at", name: "sharpeningAngle", value, text, show: angles }];
}

/** Layers that can be told apart. */
function layerRows({ job }: Measured): Row[] {
  const { stack } = job.knife;
  if (stack?.kind !== "pattern-welded") return [];
  const { distinct } = countLayers(
    stack.layers.map(({ steel }) => steel.name),
    stackRestacks(stack).map(({ pieces }) => pieces),
  );
  return [
    {
      ...{ what: "Layers that can be told apart", name: "layers", value: distinct },
      ...{ text: String(distinct), show: counts },
    },
  ];
}

/** A row with what was asked of its figure; its limits end where any of that is met. */
function agreed(
  { what, text, within, show }: Pick<Row, "what" | "text" | "within" | "show">,
  { job }: Measured,
  answers: readonly AskAnswer[],
): CustomerFigure {
  const [answer] = answers;
  const kept = within && answers.reduce((limits, one) => keptWithin(one, limits), within);
  return {
    what,
    value: text,
    ...(kept === undefined ? {} : { within: show.within(kept) }),
    ...(answer === undefined
      ? {}
      : { asked: answerCells(answer, ASK_KINDS[answer.ask.name], job.units).condition }),
    ...(answer?.verdict === "not-met" ? { differs: true } : {}),
  };
}

/** What was asked for and stands in no other row. */
function askedRow(answer: AskAnswer, { measured, terms: { promise } }: Quote): CustomerFigure {
  const { job, knife, answers } = measured;
  const { name } = answer.ask;
  const { value, interval } = answer.figure;
  const by: Partial<Record<typeof name, number>> = {
    ...{ overallLength: promise.length, edgeLength: promise.length, handleLength: promise.length },
    ...{ heelHeight: promise.height, thickness: promise.thickness, balance: promise.balance },
    ...{ mass: promise.mass * value },
  };
  const within = interval && wider(interval, about(value, by[name] ?? 0));
  const show = showOf(answer, job);
  return agreed(
    {
      ...{ what: askedWords(answer.ask, job.units), text: show.value(value), show },
      ...(within === undefined ? {} : { within }),
    },
    measured,
    [answer, ...answers.filter((one) => one !== answer && isSameFigure(one, answer, knife))],
  );
}

function showOf({ ask: { name } }: AskAnswer, job: Measured["job"]): Shows {
  const beside = besideUnits(job);
  if (name === "balance") return places(job.units, beside);
  if (name === "thickness") return thinLengths(job.units, beside);
  if (name === "behindEdge") return thinLengths(job.units, beside, BEHIND_EDGE_STEPS);
  return { mass: masses(job), length: lengths(job.units, beside), angle: angles, count: counts }[
    ASK_KINDS[name]
  ];
}

/** Computed figures carry the last digits of a double, and an answer takes a limit that they touch for met. */
const TOUCH = 1e-4;

/** What was asked and is met as drawn is promised: the limits end there. */
function keptWithin({ ask, verdict }: AskAnswer, [low, high]: Limits): Limits {
  if (verdict === "not-met") return [low, high];
  const { atLeast, atMost } = limitsOf(ask.test);
  const kept: Limits = [Math.max(low, atLeast), Math.min(high, atMost)];
  invariant(
    kept[0] <= kept[1] + TOUCH,
    `the limits of ${ask.name} that are promised lie around what is drawn`,
  );
  return kept;
}

const wider = (a: Limits, b: Limits): Limits => [Math.min(a[0], b[0]), Math.max(a[1], b[1])];

/** What tables say of the hardness, and what was asked of it: it is tested on the blade, never computed. */
function hardnessRow({ hardness, measured }: Quote): CustomerFigure[] {
  const { hardness: answer } = measured;
  if (hardness === undefined && answer === undefined) return [];
  const misses =
    hardness !== undefined &&
    answer !== undefined &&
    (hardness.high < answer.asked.low || hardness.low > answer.asked.high);
  const isSure =
    hardness === undefined ||
    answer === undefined ||
    (hardness.low >= answer.asked.low && hardness.high <= answer.asked.high);
  const stops = answer?.findings.some(({ severity }) => severity === "stop") ?? false;
  return [
    {
      what: "Hardness",
      ...(hardness === undefined
        ? { value: "to be tested on the blade" }
        : { value: `${hardness.low} to ${hardness.high} HRC`, within: "by published tables" }),
      ...(answer === undefined
        ? {}
        : { asked: `${askedHardness(answer)}${isSure || misses ? "" : ": not sure, to be tested"}` }),
      ...(misses || stops ? { differs: true } : {}),
    },
  ];
}
