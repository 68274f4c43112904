import { GeometryError } from "@scantling/geometry";
import { describeQuantityError, type FileUnits, parseQuantity } from "@scantling/geometry/units";
import { type TileOptions, tileMeasures } from "@scantling/render";
import { readLength } from "./calibration.js";
import { EXIT } from "./exit-code.js";
import { CommandFailure } from "./failure.js";
import { readMasses, splitReadings } from "./gate-input.js";
import type { GateOptions } from "./options.js";
import { paperChoiceOf, plainPaper } from "./paper-choice.js";
import { readPlaces } from "./stations.js";

/** What bare numbers may be in. */
const UNITS: readonly FileUnits[] = ["mm", "in"];

/** Options of a command line, by their long names without dashes. */
type GivenOptions = Readonly<Record<string, unknown>>;

/**
 * What is wrong with options whatever the files say: told beside what is wrong with a file or another option, so that all are
 * mended at once.
 * What hangs on the units of a file is left until that can be read.
 *
 * @param command - Its name: `gate` has options of its own under the names of others.
 */
export function optionFailures(command: string, options: GivenOptions): CommandFailure[] {
  const text = (name: string): string | undefined => {
    const value = options[name];
    return typeof value === "string" ? value : undefined;
  };
  const checks: ((units: FileUnits) => unknown)[] =
    command === "gate"
      ? gateChecks(options)
      : [
          (units) => checkPaper(command, text("paper"), units),
          (units) => readPlaces(text("at"), units),
          (units) => lengthOption("--offset", text("offset"), units),
          ...(["margin", "overlap"] as const).map(
            (name) => (units: FileUnits) => tileLength(name, text(name), units),
          ),
          ...(command === "calibrate" ? calibrateChecks(text("short"), text("long")) : []),
        ];
  return checks.flatMap((check) => {
    const found = UNITS.map((units) => failureOf(() => check(units)));
    const [first] = found;
    return first === undefined || found.includes(undefined) ? [] : [first];
  });
}

function gateChecks(options: GivenOptions): ((units: FileUnits) => unknown)[] {
  const { stage, mass, at } = options;
  // Without these the command line itself is refused.
  if (typeof stage !== "string" || typeof mass !== "string") return [];
  const given = options as unknown as GateOptions;
  return [
    (units) => readMasses(given, units),
    ...(Array.isArray(at) ? [(units: FileUnits) => splitReadings(given, units)] : []),
  ];
}

/** As the command itself reads it: a print-check sheet has no page of its own size. */
function checkPaper(command: string, given: string | undefined, units: FileUnits): void {
  const source = { units, shopPlaces: undefined };
  if (command === "calibrate") plainPaper(source, given);
  else paperChoiceOf(source, given, "shop-paper");
}

/** Two lengths belong together; with none of them the sheet is drawn. */
function calibrateChecks(
  short: string | undefined,
  long: string | undefined,
): ((units: FileUnits) => unknown)[] {
  if (short === undefined && long === undefined) return [];
  return [
    (units) => readLength("short", short, { units, shopPlaces: undefined }),
    (units) => readLength("long", long, { units, shopPlaces: undefined }),
  ];
}

/**
 * `--margin` or `--overlap` in mm, within its limits whether or not pages are joined.
 *
 * @throws {CommandFailure} exit code 2 where it is no length or outside them.
 */
export function tileLength(
  name: keyof TileOptions,
  text: string | undefined,
  units: FileUnits,
): number | undefined {
  const value = lengthOption(`--${name}`, text, units);
  if (value === undefined) return undefined;
  try {
    tileMeasures({ [name]: value });
    return value;
  } catch (error) {
    if (!(error instanceof GeometryError)) throw error;
    throw new CommandFailure(
      EXIT.usage,
      error.code,
      `--${name} ${text}: ${error.message}`,
      "Give it within these limits, or leave it out.",
    );
  }
}

/**
 * A length of the command line in mm; undefined where the option is left out.
 *
 * @param units - Of a bare number.
 * @throws {CommandFailure} exit code 2 where it is no length.
 */
export function lengthOption(option: string, text: string | undefined, units: FileUnits): number | undefined {
  if (text === undefined) return undefined;
  const reading = parseQuantity(text, "length", units);
  if (reading.ok) return reading.quantity.value;
  throw new CommandFailure(
    EXIT.usage,
    "bad-length",
    `${option}: ${describeQuantityError(reading.error)}`,
    `Give a number with its unit, for example: ${option} 0.3mm`,
  );
}

function failureOf(run: () => unknown): CommandFailure | undefined {
  try {
    run();
    return undefined;
  } catch (error) {
    if (error instanceof CommandFailure) return error;
    throw error;
  }
}
