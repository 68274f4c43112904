import {
  type Changeable,
  changeables,
  type FitAsk,
  type FitConflict,
  type FitDimension,
  findConflict,
  usualChanges,
} from "@scantling/geometry";
import { limitsOf } from "../asks.js";
import { type AskName, KnifeText } from "../file/index.js";
import { placeName, usualDimension } from "../fit/changes.js";
import { fitAskOf } from "../fit/fit-report.js";
import { askKey, orderTargets } from "../fit/order-targets.js";
import type { FitTarget } from "../fit/targets.js";
import { inFileTerms, type Measured } from "../measure.js";
import type { AskConflict, ConflictAsk, OrderConflicts } from "./ask-conflict.js";

/** Knives that are measured at the most, so that a check is no wait. */
export const MOST_KNIVES = 240;

/** Sizes that are changed too where they, or what follows from them, are asked for: they are the order's own. */
const OWN_CHANGES: Readonly<Partial<Record<AskName, RegExp>>> = {
  edgeLength: /^outline\.edgeLength$/u,
  overallLength: /^(?:outline\.edgeLength|tang\.length)$/u,
  heelHeight: /^outline\.heelHeight$/u,
  handleLength: /^(?:tang\.length|handle\.block\.length)$/u,
  behindEdge: /^bevel\.edgeThickness$/u,
  sharpeningAngle: /^edgeAngle(?:\.(?:left|right))?$/u,
};

/**
 * Asks that no usual change of the knife brings together. Nothing is looked for where the knife as drawn meets them all.
 *
 * @param mostKnives - how many are measured before it looks no further.
 */
export function searchedConflicts(measured: Measured, mostKnives = MOST_KNIVES): OrderConflicts {
  const open = measured.answers.some(
    ({ ask, verdict }) => verdict === "not-met" && !ask.should && isOfSizes(askKey(ask)),
  );
  const changed = open ? changesFor(measured) : [];
  const targets = orderTargets(measured, []).filter(({ name }) => isOfSizes(name));
  const none: OrderConflicts = { conflicts: [], outOfReach: [], search: "none", changed: [] };
  if (changed.length === 0 || targets.length === 0) return none;
  return inFileTerms(measured.job, () => {
    const asks = targets.map((target) => fitAskOf(target));
    const look = (some: readonly FitAsk[]): FitConflict | undefined =>
      findConflict({ spec: measured.job.spec, dimensions: changed, asks: some }, { mostKnives });
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

/** The usual changes, and what the order asks for itself, each in its usual range. */
function changesFor({ knife, job }: Measured): readonly FitDimension[] {
  const { units } = job.knife;
  const text = new KnifeText(job.texts.knife, units);
  const all = changeables(knife, placeName(units));
  const required = job.knife.order.asks.filter(({ should }) => !should);
  const places = required.filter(({ name }) => name === "thickness").length;
  const usual = usualChanges(all, knife).flatMap((each) =>
    // A spine that is asked for at several places is not changed in proportion.
    each.name === "thickness" && places > 1 ? stationsOf(each, all) : [each],
  );
  const own = required.flatMap(({ name }) => {
    const pattern = OWN_CHANGES[name];
    return pattern === undefined ? [] : wholeOrStations(pattern, all);
  });
  const named = new Map([...usual, ...own].map((each) => [each.name, each]));
  return [...named.values()].map((each) => usualDimension(each, knife, text, units));
}

const stationsOf = ({ name }: Changeable, all: readonly Changeable[]): readonly Changeable[] =>
  all.filter((each) => each.name.startsWith(`${name}@`));

/** What a pattern names; a law of one station has no name but that of the station. */
function wholeOrStations(pattern: RegExp, all: readonly Changeable[]): readonly Changeable[] {
  const whole = all.filter(({ name }) => pattern.test(name));
  return whole.length > 0 ? whole : all.filter(({ name }) => pattern.test(name.replace(/@.*$/u, "")));
}
