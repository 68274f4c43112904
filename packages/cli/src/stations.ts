import { bladeStation, type Knife, reportStations, type StationPlace } from "@scantling/geometry";
import { type FileUnits, formatLength, nearestWord, parseQuantity } from "@scantling/geometry/units";
import { EXIT } from "./exit-code.js";
import { CommandFailure } from "./failure.js";

/** A station that a report shows. */
export interface ReportStation {
  /** mm ahead of the heel. */
  readonly x: number;
  /** Whether it was asked for with `--at`: then the section itself is given too. */
  readonly asked: boolean;
}

const WORDS = ["heel", "tip", "handle", "butt"] as const;

/** Farthest that a station may lie from the outline's ends, mm: rounding of what was read off a report. */
const ROUNDING = 1e-6;

/**
 * The stations of a report: heel to tip by quarters, and those asked for.
 *
 * @param at - Places parted by commas: heel, tip, handle, butt, a share of the edge length, a distance from the heel.
 * @param units - Of bare distances.
 * @throws {CommandFailure} exit code 2 where one cannot be read or lies beside the knife.
 */
export function stationsOf(knife: Knife, at?: string, units: FileUnits = "mm"): readonly ReportStation[] {
  const asked = at === undefined ? [] : at.split(",").map((text) => placeOn(knife, text.trim(), units));
  // What is asked for is told once, though the report would have shown it anyway.
  const others = reportStations(knife).filter((x) => asked.every((other) => Math.abs(other - x) > ROUNDING));
  return [
    ...others.map((x) => ({ x, asked: false })),
    ...[...new Set(asked)].map((x) => ({ x, asked: true })),
  ].sort((a, b) => a.x - b.x);
}

/**
 * Places of `--at` as they were written, parted by commas.
 *
 * @throws {CommandFailure} exit code 2 where one cannot be read.
 */
export const readPlaces = (at: string | undefined, units: FileUnits): StationPlace[] =>
  (at ?? "").split(",").flatMap((text) => (text.trim() === "" ? [] : [readPlace(text.trim(), units)]));

const PLACES_EXAMPLE = "Give places parted by commas, for example: --at heel,60 mm,75 %";

/**
 * x of one place on a knife, mm ahead of the heel.
 *
 * @param todo - What to write where it is no place.
 * @param typed - The option with what was typed behind it.
 * @throws {CommandFailure} exit code 2 where it cannot be read or lies beside the knife.
 */
export function placeOn(
  knife: Knife,
  text: string,
  units: FileUnits,
  todo = PLACES_EXAMPLE,
  typed?: string,
): number {
  const x = bladeStation(readPlace(text, units, todo, typed), knife.outline);
  const { minX, maxX } = knife.body("finished").footprint;
  if (x < minX - ROUNDING || x > maxX + ROUNDING) {
    const show = (mm: number): string => formatLength(mm, units).replace(/^-/u, "−");
    throw new CommandFailure(
      EXIT.usage,
      "station-outside",
      `${typed ?? `--at ${text}`} lies beside the knife, which reaches from ${show(minX)} to ${show(maxX)} ahead of the heel`,
      "Give a place on it; behind the heel distances are negative.",
    );
  }
  return Math.min(maxX, Math.max(minX, x));
}

/** One place as it was written. */
export function readPlace(
  text: string,
  units: FileUnits,
  todo = PLACES_EXAMPLE,
  typed = `--at "${text}"`,
): StationPlace {
  const word = WORDS.find((known) => known === text.toLowerCase());
  if (word !== undefined) return { kind: word };
  const share = text.includes("%") ? parseQuantity(text, "share", units) : undefined;
  if (share?.ok === true) return { kind: "fraction", share: share.quantity.value };
  const distance = parseQuantity(text, "length", units);
  if (distance.ok) return { kind: "distance", mm: distance.quantity.value };
  const near = nearestWord(text, WORDS);
  throw new CommandFailure(
    EXIT.usage,
    "unknown-place",
    `${typed} is no place on a knife${near === undefined ? "" : `; did you mean ${near}?`}`,
    todo,
  );
}
