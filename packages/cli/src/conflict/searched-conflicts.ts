import { type FitAsk, type FitConflict, findConflict } from "@scantling/geometry";
import { limitsOf } from "../asks.js";
import { fitAskOf } from "../fit/fit-report.js";
import { askKey, orderTargets } from "../fit/order-targets.js";
import type { FitTarget } from "../fit/targets.js";
import { inFileTerms, type Measured } from "../measure.js";
import type { AskConflict, ConflictAsk, OrderConflicts } from "./ask-conflict.js";
import { conflictChanges } from "./conflict-changes.js";

/** Knives that are measured at the most, so that a check is no wait. */
const MOST_KNIVES = 300;

const NOTHING: OrderConflicts = { conflicts: [], outOfReach: [], search: "none", changed: [] };

/**
 * Asks that no usual change of the knife brings together. Nothing is looked for where the knife as drawn meets them all.
 *
 * @param mostKnives - how many are measured before it looks no further.
 */
export function searchedConflicts(measured: Measured, mostKnives = MOST_KNIVES): OrderConflicts {
  const open = measured.answers.some(
    ({ ask, verdict }) => verdict === "not-met" && !ask.should && isOfSizes(askKey(ask)),
  );
  if (!open) return NOTHING;
  const { spec, dimensions: changed } = conflictChanges(measured);
  if (changed.length === 0) return NOTHING;
  const targets = orderTargets(measured, []).filter(({ name }) => isOfSizes(name));
  return inFileTerms(measured.job, () => {
    const asks = targets.map((target) => fitAskOf(target));
    const look = (some: readonly FitAsk[]): FitConflict | undefined =>
      findConflict({ spec, dimensions: changed, asks: some }, { mostKnives });
    const first = look(asks);
    const alone = first?.outOfReach.map(({ ask }) => ask) ?? [];
    // What nothing reaches hides what quarrels among the others.
    const rest = asks.filter((ask) => !alone.includes(ask));
    const second = alone.length === 0 || rest.length < 2 ? undefined : look(rest);
    const toldBy = (name: string): FitTarget => targets.find((target) => target.name === name) as FitTarget;
    const isWhole = first?.isWhole !== false && second?.isWhole !== false;
    return {
      conflicts: [first, second].flatMap((found) => conflictFrom(found, toldBy)),
      outOfReach: (first?.outOfReach ?? [])
        .filter(({ ask, nearest }) => isMoved(ask, nearest, measured))
        .map(({ ask, nearest }) => ({ ask: askFrom(toldBy(ask.name)), nearest })),
      search: isWhole ? "whole" : "stopped",
      changed,
    };
  });
}

/** Where the core line comes is a matter of the bars, not of the knife's sizes; which bars would do is told by itself. */
const isOfSizes = (key: string): boolean => key !== "coreLine" && key !== "layers";

const askFrom = ({ name, words, kind }: FitTarget): ConflictAsk => ({ key: name, words, kind });

function conflictFrom(
  found: FitConflict | undefined,
  toldBy: (name: string) => FitTarget,
): readonly AskConflict[] {
  if (found === undefined || found.asks.length === 0) return [];
  return [
    {
      kind: "changes",
      asks: found.asks.map(({ name }) => askFrom(toldBy(name))),
      relaxations: found.relaxations.map(({ ask, limit, by }) => {
        const target = toldBy(ask.name);
        const from = limitsOf(target.test)[limit];
        return { ask: askFrom(target), limit, from, to: limit === "atMost" ? from + by : from - by };
      }),
    },
  ];
}

/** Shares of a figure: what is no more than the last digits of a double. */
const SAME = 1e-9;

/** A figure that none of the changes moves quarrels with nothing: the drawing is to be changed. */
function isMoved({ name }: FitAsk, nearest: number, { answers }: Measured): boolean {
  const drawn = answers.find(({ ask }) => askKey(ask) === name)?.figure.value ?? Number.NaN;
  return Math.abs(nearest - drawn) > SAME * Math.abs(drawn);
}
