import {
  CALIPER_STATES,
  type CaliperReading,
  type CaliperStage,
  GATE_STAGES,
  type GateStage,
  type Knife,
  type StageMass,
} from "@scantling/geometry";
import {
  describeQuantityError,
  type FileUnits,
  nearestWord,
  parseQuantity,
  type QuantityKind,
} from "@scantling/geometry/units";
import { EXIT } from "./exit-code.js";
import { CommandFailure } from "./failure.js";
import { showText } from "./file/index.js";
import type { GateOptions } from "./options.js";
import { placeOn, readPlace } from "./stations.js";

/** What the smith weighed, g. */
export interface GateMasses {
  /** What the scale shows. */
  readonly scale: number;
  /** Of the handling bar; undefined where none was told. */
  readonly tare: number | undefined;
  /** Steel alone, weighed at earlier stages. */
  readonly before: readonly StageMass[];
}

/** A caliper reading as it was written. */
export interface GateReading extends CaliperReading {
  readonly place: string;
  /** The option that it came with. */
  readonly option: "--at" | "--size";
  /** Whether it has no unit. */
  readonly bare: boolean;
}

/**
 * Reads the masses of the command line.
 *
 * @param units - Of bare numbers: grams or ounces.
 * @throws {CommandFailure} exit code 2 with what cannot be read.
 */
export function readMasses(options: GateOptions, units: FileUnits): GateMasses {
  const scale = readNumber("--mass", options.mass, "mass", units);
  const tare = options.tare === undefined ? undefined : readNumber("--tare", options.tare, "mass", units, 0);
  if (tare !== undefined && tare >= scale)
    throw wrong(
      "tare-too-great",
      `--tare ${options.tare} leaves no steel of --mass ${options.mass}`,
      "Give what the scale shows with --mass, and the handling bar's own mass with --tare.",
    );
  const before = list(options.before).map((text): StageMass => {
    const [word, given] = halves("--before", text, "STAGE=MASS, for example billet=702g");
    const stage = readStage(word);
    if (GATE_STAGES.indexOf(stage) >= GATE_STAGES.indexOf(options.stage))
      throw wrong(
        "before-not-earlier",
        `--before ${text}: ${stage} does not come before ${options.stage}`,
        `The order is ${GATE_STAGES.join(", ")}.`,
      );
    return { stage, mass: readNumber("--before", given, "mass", units) };
  });
  return { scale, tare, before };
}

/**
 * Reads the caliper readings of the command line.
 *
 * @throws {CommandFailure} exit code 2 with what cannot be read, or where the stage has no shape yet.
 */
export function readReadings(options: GateOptions, knife: Knife, units: FileUnits): readonly GateReading[] {
  return splitReadings(options, units).map(({ place, ...reading }) => ({
    x: placeOn(knife, place, units, PLACES),
    place,
    ...reading,
  }));
}

/**
 * The same as far as the knife need not be known.
 *
 * @throws {CommandFailure} exit code 2 with what cannot be read, or where the stage has no shape yet.
 */
export function splitReadings(options: GateOptions, units: FileUnits): readonly Omit<GateReading, "x">[] {
  const given = list(options.at);
  if (given.length > 0 && !isCaliperStage(options.stage))
    throw wrong(
      "reading-too-early",
      `--at tells thickness in the blade, which the ${options.stage} does not have yet`,
      `Give readings at ${Object.keys(CALIPER_STATES).join(", ")}.`,
    );
  return given.map((text) => {
    const [place, thickness] = halves("--at", text, READING_FORM);
    readPlace(place, units, PLACES);
    return {
      thickness: readNumber("--at", thickness, "length", units),
      place,
      option: "--at",
      bare: !/[^\d\s./,-]/u.test(thickness),
    };
  });
}

export function isCaliperStage(stage: GateStage): stage is CaliperStage {
  return Object.hasOwn(CALIPER_STATES, stage);
}

const READING_FORM = 'PLACE=THICKNESS, for example --at "60 %=4.2 mm"';
const PLACES = `Places are heel, tip, handle, butt, 60 % or 60 mm. Write ${READING_FORM}.`;

/** Several may be given one after the other, or parted by commas that a new `name=` follows. */
const list = (given: readonly string[] = []): string[] =>
  given.flatMap((text) => text.split(/,(?=[^,=]*=)/u)).map((text) => text.trim());

function halves(option: string, text: string, form: string): readonly [string, string] {
  const at = text.indexOf("=");
  if (at <= 0 || at === text.length - 1)
    throw wrong("no-pair", `${option} "${showText(text)}" is not understood`, `Write ${form}.`);
  return [text.slice(0, at).trim(), text.slice(at + 1).trim()];
}

function readStage(text: string): GateStage {
  const known = GATE_STAGES.find((stage) => stage === text.toLowerCase());
  if (known !== undefined) return known;
  const near = nearestWord(text, GATE_STAGES);
  throw wrong(
    "unknown-stage",
    `--before "${showText(text)}" is no stage${near === undefined ? "" : `; did you mean ${near}?`}`,
    `Stages are ${GATE_STAGES.join(", ")}.`,
  );
}

function readNumber(
  option: string,
  text: string,
  kind: QuantityKind & ("mass" | "length"),
  units: FileUnits,
  least?: number,
): number {
  const example = kind === "mass" ? "702g, 24.8 oz or 1 lb 8 oz" : "5.1 mm or 3/16 in";
  const parsed = parseQuantity(text, kind, units);
  if (!parsed.ok)
    throw wrong(
      "unreadable",
      `${option} "${showText(text)}": ${describeQuantityError(parsed.error)}`,
      `Write it like ${example}.`,
    );
  const { value, plus, minus } = parsed.quantity;
  if (plus > 0 || minus > 0)
    throw wrong("tolerance-not-taken", `${option} takes no tolerance`, `Write it like ${example}.`);
  if (!(least === undefined ? value > 0 : value >= least))
    throw wrong(
      "not-positive",
      `${option} "${showText(text)}" has to be more than nothing`,
      `Write it like ${example}.`,
    );
  return value;
}

const wrong = (code: string, message: string, todo: string): CommandFailure =>
  new CommandFailure(EXIT.usage, code, message, todo);
