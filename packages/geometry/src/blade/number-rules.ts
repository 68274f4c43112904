import { type Issue, length, type QuantityValue } from "../errors/issue.js";
import type { LawSpec } from "./spec.js";

type Show = (value: number) => QuantityValue;

/** Rules that single numbers must keep; every breach is added to a list of issues. */
export interface NumberRules {
  /** Greater than a least value, and finite. Left out is right. */
  above(path: string, value: number | undefined, least: number, show?: Show): void;
  /** A least value or greater, and finite. */
  atLeast(path: string, value: number | undefined, least: number, show?: Show): void;
  finite(path: string, value: number | undefined): void;
  /** Every value of a law above 0, or 0 and more; a list of stations must not be empty. */
  law(path: string, law: LawSpec | "full" | undefined, how: "above" | "atLeast"): void;
}

/** Rules that write what they find into `issues`. */
export function numberRules(issues: Issue[]): NumberRules {
  const refuse = (path: string, value: number, least: number, strict: boolean, show: Show): void => {
    issues.push({
      code: Number.isFinite(value) ? (strict ? "not-positive" : "negative") : "not-a-number",
      path,
      text: !Number.isFinite(value)
        ? "This is not a number that can be measured."
        : strict
          ? "{value} is too small here: it must be more than {least}."
          : "{value} is too small here: it must be {least} or more.",
      values: { value: show(value), least: show(least) },
    });
  };
  const above: NumberRules["above"] = (path, value, least, show = length) => {
    if (value !== undefined && !(value > least && Number.isFinite(value))) {
      refuse(path, value, least, true, show);
    }
  };
  const atLeast: NumberRules["atLeast"] = (path, value, least, show = length) => {
    if (value !== undefined && !(value >= least && Number.isFinite(value))) {
      refuse(path, value, least, false, show);
    }
  };
  return {
    above,
    atLeast,
    finite(path, value) {
      if (value !== undefined && !Number.isFinite(value)) refuse(path, value, 0, false, length);
    },
    law(path, law, how) {
      const check = how === "above" ? above : atLeast;
      if (law === undefined || law === "full") return;
      if (typeof law === "number") check(path, law, 0);
      else if (law.length === 0) issues.push(noStations(path));
      else for (const [i, station] of law.entries()) check(`${path}[${i}].is`, station.is, 0);
    },
  };
}

function noStations(path: string): Issue {
  const tang = path.startsWith("tang");
  return {
    code: "no-stations",
    path,
    text:
      path === "blade.thickness"
        ? "The blade's thickness needs at least one station, for example { at: heel, is: 4 mm }."
        : `A list of stations needs at least one, for example { at: ${tang ? "handle" : "heel"}, is: 4 mm }. Else leave the list out.`,
  };
}
