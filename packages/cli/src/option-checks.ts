import { type FileUnits, parseQuantity } from "@scantling/geometry/units";
import { EXIT } from "./exit-code.js";
import { CommandFailure } from "./failure.js";
import { readMasses, splitReadings } from "./gate-input.js";
import type { GateOptions } from "./options.js";
import { isOwnPage, plainPaper } from "./paper-choice.js";
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
          (units) => checkPaper(text("paper"), units),
          (units) => readPlaces(text("at"), units),
          ...["offset", "margin", "overlap"].map(
            (name) => (units: FileUnits) => lengthOption(`--${name}`, text(name), units),
          ),
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

function checkPaper(given: string | undefined, units: FileUnits): void {
  if (given === undefined || isOwnPage(given)) return;
  plainPaper({ units, shopPlaces: undefined }, given);
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
    `${option} "${text}" is no length`,
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
