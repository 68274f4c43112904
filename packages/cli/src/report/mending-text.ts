import { type BalanceWay, balanceWays, massShares } from "@scantling/geometry";
import { type FileUnits, formatCaliper, formatDensity } from "@scantling/geometry/units";
import { type AskAnswer, limitsOf } from "../asks.js";
import type { Measured } from "../measure.js";
import { lengthText, massText, percentText, signedText } from "./figures.js";
import { item, layOutTable, wrap } from "./layout.js";
import { limitText } from "./outward-text.js";

/** What helps where mass or balance is not as asked: where the mass is, and ways to move the balance. */
export function mendingLines(measured: Measured): string[] {
  return [...massLines(measured), ...balanceLines(measured)];
}

const find = ({ answers }: Measured, name: "mass" | "balance"): AskAnswer | undefined =>
  answers.find(({ ask }) => ask.name === name);

const TOGETHER = "None of them reaches it alone: put several into the file together, and check again.";

/** Where the mass is, part by part, where it is not met or at risk. */
function massLines(measured: Measured): string[] {
  const answer = find(measured, "mass");
  if (answer === undefined || answer.verdict === "met") return [];
  const { units } = measured.job;
  const rows = massShares(measured.knife, measured.weight).map(({ name, mass, share }) => [
    name,
    massText(mass, units),
    percentText(share),
  ]);
  return ["", "WHERE THE MASS IS", ...layOutTable(rows, ["left", "right", "right"])];
}

/** Ways to bring the balance to the nearest limit, the earliest first, where it is not met. */
function balanceLines(measured: Measured): string[] {
  const answer = find(measured, "balance");
  const target = answer === undefined ? undefined : balanceTarget(answer);
  if (target === undefined) return [];
  const { units } = measured.job;
  const ways = balanceWays(measured.knife, target);
  return [
    "",
    ...wrap(
      `TO BRING THE BALANCE to ${lengthText(target, units)}, the nearest that is asked for; in the order in which it can still be done`,
    ),
    ...(ways.length === 0
      ? wrap("Nothing on tang and handle moves it there: change the blade, or ask for another balance.")
      : [
          ...ways.flatMap((way) => item("- ", wayText(way, measured))),
          ...(ways.some(({ reaches }) => reaches) ? [] : wrap(TOGETHER)),
        ]),
  ];
}

/** The nearest limit of a balance that is not met; undefined where it is. */
export function balanceTarget({ ask, figure, verdict }: AskAnswer): number | undefined {
  if (verdict !== "not-met") return undefined;
  const { atLeast, atMost } = limitsOf(ask.test);
  return figure.value < atLeast ? atLeast : atMost;
}

function wayText(way: BalanceWay, measured: Measured): string {
  const { units } = measured.job;
  const then = way.reaches
    ? `then ${massText(way.mass, units)}`
    : `comes to ${lengthText(way.balance, units)} only, ${massText(way.mass, units)}`;
  return `${actionText(way, units)}: ${then}${massWords(way, measured)}.`;
}

function actionText(way: BalanceWay, units: FileUnits): string {
  switch (way.kind) {
    case "tang-taper":
      return `taper the tang from ${formatCaliper(way.from, units)} to ${enough("thin", way, units)} at the butt, before hardening`;
    case "tang-holes": {
      const { diameter, places } = way;
      const [rear] = places;
      const where = rear === undefined ? "" : `, the rearmost at x ${signedText(lengthText, rear.x, units)}`;
      return `drill ${places.length} ${places.length === 1 ? "hole" : "holes"} of ${lengthText(diameter, units)} in the tang${where}, before hardening`;
    }
    case "handle-density":
      return `${way.part} of ${formatDensity(way.to, units)}, now ${formatDensity(way.from, units)}${way.material === undefined ? "" : `: ${way.material}`}`;
    case "part-mass":
      return `${way.part}: ${enough("mass", way, units)} in place of ${massText(way.from, units)}`;
    case "butt-mass":
      return `${enough("mass", { from: 0, to: way.added }, units)} in the butt, at x ${signedText(lengthText, way.x, units)}`;
  }
}

/** A size or mass that has to be reached, rounded onward: short of it by a hair is not met. */
const enough = (
  kind: "mass" | "thin",
  { from, to }: { readonly from: number; readonly to: number },
  units: FileUnits,
): string => limitText(kind, to, to > from ? "up" : "down", units);

/** Whether the mass that was asked for still holds. */
function massWords({ mass }: BalanceWay, measured: Measured): string {
  const answer = find(measured, "mass");
  if (answer === undefined) return "";
  const { atLeast, atMost } = limitsOf(answer.ask.test);
  if (mass > atMost) return `, over the ${massText(atMost, measured.job.units)} asked for`;
  return mass < atLeast ? `, under the ${massText(atLeast, measured.job.units)} asked for` : "";
}

/** The same for programs, beside the ask that it belongs to. */
export function mendingJson(answer: AskAnswer, { knife, weight }: Measured): object {
  if (answer.ask.name === "mass" && answer.verdict !== "met")
    return {
      parts: massShares(knife, weight).map(({ name, mass, share }) => ({ name, massG: mass, share })),
    };
  const target = answer.ask.name === "balance" ? balanceTarget(answer) : undefined;
  if (target === undefined) return {};
  return { targetMm: target, ways: balanceWays(knife, target).map(wayJson) };
}

function wayJson(way: BalanceWay): object {
  const { kind, mass, balance, reaches } = way;
  return { way: kind, ...amountJson(way), thenMassG: mass, thenBalanceMm: balance, reaches };
}

function amountJson(way: BalanceWay): object {
  switch (way.kind) {
    case "tang-taper":
      return { fromMm: way.from, toMm: way.to };
    case "tang-holes":
      return { diameterMm: way.diameter, placesMm: way.places.map(({ x, y }) => [x, y]) };
    case "handle-density":
      return {
        part: way.part,
        fromGPerCm3: way.from * 1000,
        toGPerCm3: way.to * 1000,
        material: way.material ?? null,
      };
    case "part-mass":
      return { part: way.part, fromG: way.from, toG: way.to };
    case "butt-mass":
      return { addedG: way.added, xMm: way.x };
  }
}
