import {
  buttWeight,
  type Changeable,
  changeables,
  type FitDimension,
  type KnifeSpec,
  usualChanges,
} from "@scantling/geometry";
import { limitsOf } from "../asks.js";
import { type AskName, KnifeText } from "../file/index.js";
import { placeName, usualDimension } from "../fit/changes.js";
import type { Measured } from "../measure.js";

/** Sizes that are changed too where what is asked of them is not met: only then is the drawing's own size in question. */
const OWN_CHANGES: Readonly<Partial<Record<AskName, RegExp>>> = {
  edgeLength: /^outline\.edgeLength$/u,
  overallLength: /^(?:outline\.edgeLength|tang\.length)$/u,
  heelHeight: /^outline\.heelHeight$/u,
  handleLength: /^(?:tang\.length|handle\.block\.length)$/u,
  behindEdge: /^bevel\.edgeThickness$/u,
  sharpeningAngle: /^edgeAngle(?:\.(?:left|right))?$/u,
};

/** The sizes of a knife that move what an ask is about, beside the usual ones. */
export function ownChanges(name: AskName, all: readonly Changeable[]): readonly Changeable[] {
  const pattern = OWN_CHANGES[name];
  return pattern === undefined ? [] : wholeOrStations(pattern, all);
}

/** The heaviest weight in the butt, as a share of the whole knife. Basis: common practice, no source. */
const MOST_IN_BUTT = 0.15;

/** What may be changed in a search, and the description that it is a change of. */
export interface ConflictChanges {
  readonly spec: KnifeSpec;
  readonly dimensions: readonly FitDimension[];
}

/**
 * The usual changes, and the sizes that are not as the order asks, each in its usual range; where the balance lies too far ahead,
 * a weight in the butt too.
 */
export function conflictChanges(measured: Measured): ConflictChanges {
  const { knife, job } = measured;
  const { units } = job.knife;
  const text = new KnifeText(job.texts.knife, units);
  const all = changeables(knife, placeName(units));
  const required = job.knife.order.asks.filter(({ should }) => !should);
  const places = required.filter(({ name }) => name === "thickness").length;
  const usual = usualChanges(all, knife).flatMap((each) =>
    // A spine that is asked for at several places is not changed in proportion.
    each.name === "thickness" && places > 1 ? stationsOf(each, all) : [each],
  );
  const missed = measured.answers.filter(({ ask, verdict }) => verdict === "not-met" && !ask.should);
  const own = missed.flatMap(({ ask: { name } }) => ownChanges(name, all));
  const named = new Map([...usual, ...own].map((each) => [each.name, each]));
  const dimensions = [...named.values()].map((each) => usualDimension(each, knife, text, units));
  return isTooFarAhead(measured) ? withButtWeight(measured, dimensions) : { spec: job.spec, dimensions };
}

const isTooFarAhead = ({ answers }: Measured): boolean =>
  answers.some(
    ({ ask, figure }) => ask.name === "balance" && !ask.should && figure.value > limitsOf(ask.test).atMost,
  );

/** A weight in the butt that is not there yet. */
function withButtWeight(
  { knife, weight, job: { spec } }: Measured,
  dimensions: readonly FitDimension[],
): ConflictChanges {
  const place = buttWeight(knife);
  const parts = spec.handle?.parts ?? [];
  const path = `handle.parts[${parts.length}].mass`;
  return {
    spec: { ...spec, handle: { ...spec.handle, parts: [...parts, { ...place, mass: 0 }] } },
    dimensions: [
      ...dimensions,
      {
        name: place.name,
        kind: "mass",
        sizes: [{ path, drawn: 0, steps: [1] }],
        least: 0,
        most: MOST_IN_BUTT * weight.knife.mass,
      },
    ],
  };
}

const stationsOf = ({ name }: Changeable, all: readonly Changeable[]): readonly Changeable[] =>
  all.filter((each) => each.name.startsWith(`${name}@`));

/** What a pattern names; a law of one station has no name but that of the station. */
function wholeOrStations(pattern: RegExp, all: readonly Changeable[]): readonly Changeable[] {
  const whole = all.filter(({ name }) => pattern.test(name));
  return whole.length > 0 ? whole : all.filter(({ name }) => pattern.test(name.replace(/@.*$/u, "")));
}
