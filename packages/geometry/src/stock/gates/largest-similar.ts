import { type Knife, makeKnife, rebuildKnife } from "../../blade/knife.js";
import { type SimilarChange, similarKnife, similarSize } from "../../blade/similar-knife.js";
import type { KnifeSpec } from "../../blade/spec.js";
import { GeometryError, SpecError } from "../../errors/errors.js";
import { type Issue, mass, share } from "../../errors/issue.js";
import { findRootBetween } from "../../numeric/roots.js";
import { type GateRoute, type GateStage, gateBodies, type StageNeed, stageNeed } from "./stage-need.js";

/** The largest knife of the same design, smaller in one way, that the steel in hand makes at the usual losses. */
export interface SimilarFound {
  readonly change: SimilarChange;
  readonly possible: true;
  /** What is left of the changed size, more than 0 and less than 1. */
  readonly share: number;
  /** Its description. */
  readonly spec: KnifeSpec;
  readonly knife: Knife;
  /** The changed size as drawn and as it becomes, mm. */
  readonly from: number;
  readonly to: number;
  /** To be sure at high losses too, mm; left out where even the least that is looked for is not enough. */
  readonly toBeSure?: number;
  /** What it needs at the stage, g; its `value` is the steel in hand. */
  readonly need: StageNeed;
}

/** Why no smaller knife in one way can be made of the steel in hand. */
export interface SimilarRefused {
  readonly change: SimilarChange;
  readonly possible: false;
  readonly issue: Issue;
}

/** What a smaller knife is looked for by. */
export interface SimilarQuestion {
  readonly knife: Knife;
  readonly route: GateRoute;
  readonly stage: GateStage;
  /** Steel in hand, handling bar off, g. */
  readonly mass: number;
  /** Least share that is looked for. */
  readonly least: number;
}

/** A guess that needs the steel in hand to this is it, g. */
const SAME_MASS = 2e-7;
/** The size that is sure at high losses is only shown. */
const SURE_MASS = 2e-3;
/** Where masses do not get so near: two shares of a bracket this near are one. */
const SHARE_TOLERANCE = 1e-11;
/** Halvings of the way to a size that cannot be drawn. */
const HALVINGS = 12;

/**
 * Solves for the largest knife of the same design that the steel in hand makes at the usual losses, smaller in one way only:
 * every guess is drawn, and its states are measured.
 *
 * @returns the knife, or why there is none; a knife that already has enough is refused too.
 *
 * @example
 * const { losses, limits } = DEFAULT_SHOP;
 * const route = { losses, limits, forging: knife.forging };
 * const need = stageNeed(ledgerBodies(knife), route, "forged")?.value ?? 0;
 * const question = { knife, route, stage: "forged", mass: 0.97 * need, least: 0.5 } as const;
 * largestSimilar(question, "shorter").possible; // true
 */
export function largestSimilar(
  question: SimilarQuestion,
  change: SimilarChange,
): SimilarFound | SimilarRefused {
  const { knife, mass: inHand, least } = question;
  const scale = new SimilarScale(question, change);
  const whole = scale.need(1);
  if (whole === undefined) return refused(change, { code: "need-unknown", text: UNKNOWN });
  if (whole.value <= inHand) return refused(change, { code: "enough-as-drawn", text: ENOUGH });
  const bracket = bracketOf(scale, inHand, least);
  if ("code" in bracket) return refused(change, bracket);
  const miss = (part: number): number => scale.miss(part, "value", SAME_MASS);
  const part = findRootBetween(
    miss,
    bracket.low,
    miss(bracket.low),
    bracket.high,
    miss(bracket.high),
    SHARE_TOLERANCE,
  );
  const need = part === undefined ? undefined : scale.need(part);
  if (part === undefined || need === undefined || !Number.isFinite(need.value))
    return refused(change, { code: "not-drawn", text: NOT_DRAWN, values: { share: share(bracket.low) } });
  const spec = similarKnife(knife, change, part);
  try {
    const smaller = makeKnife(spec, knife);
    const sure = scale.sureShare(least, part);
    return {
      change,
      possible: true,
      share: part,
      spec,
      knife: smaller,
      from: similarSize(knife, change),
      to: similarSize(smaller, change),
      ...(sure === undefined
        ? {}
        : { toBeSure: similarSize(rebuildKnife(similarKnife(knife, change, sure)), change) }),
      need,
    };
  } catch (error) {
    if (error instanceof SpecError && error.issues[0] !== undefined)
      return { change, possible: false, issue: error.issues[0] };
    if (error instanceof GeometryError)
      return refused(change, { code: "not-drawn", text: NOT_DRAWN, values: { share: share(part) } });
    throw error;
  }
}

const UNKNOWN =
  "How much this stage needs cannot be told without the section of the bars. Choose a plan with --plan.";
const ENOUGH = "The knife as drawn has enough steel.";
const TOO_SMALL = "Even {share} of it would need {need}. Start again with more steel.";
const NOT_DRAWN =
  "At {share} of it the knife can no longer be drawn, and it is not enough. Change the drawing.";

const refused = (change: SimilarChange, issue: Omit<Issue, "path">): SimilarRefused => ({
  change,
  possible: false,
  issue: { ...issue, path: "" },
});

/** Needs of a knife made smaller in one way, each measured once. */
class SimilarScale {
  private readonly known = new Map<number, StageNeed | undefined>();
  private readonly question: SimilarQuestion;
  private readonly change: SimilarChange;

  constructor(question: SimilarQuestion, change: SimilarChange) {
    this.question = question;
    this.change = change;
  }

  /** Undefined where the knife cannot be drawn or its need cannot be told. */
  need(part: number): StageNeed | undefined {
    if (!this.known.has(part)) this.known.set(part, this.measure(part));
    return this.known.get(part);
  }

  /** What a share needs beyond the steel in hand, g; nothing where that is less than `same`. */
  miss(part: number, side: keyof StageNeed, same: number): number {
    const by = (this.need(part)?.[side] ?? Number.NaN) - this.question.mass;
    return Math.abs(by) < same ? 0 : by;
  }

  /** The share that is enough at high losses; undefined where none is. */
  sureShare(least: number, below: number): number | undefined {
    const miss = (part: number): number => this.miss(part, "high", SURE_MASS);
    const high = miss(below);
    if (high <= 0) return below;
    for (const low of [Math.max(least, below - 3 * high * this.slope(below)), least]) {
      const atLow = miss(low);
      if (atLow <= 0) return findRootBetween(miss, low, atLow, below, high, SHARE_TOLERANCE);
    }
    return undefined;
  }

  /** Shares for a gram, between the whole knife and a part of it. */
  private slope(part: number): number {
    const [whole, some] = [this.need(1)?.high ?? 0, this.need(part)?.high ?? 0];
    return whole > some ? (1 - part) / (whole - some) : 1;
  }

  private measure(part: number): StageNeed | undefined {
    const { knife, route, stage } = this.question;
    try {
      const smaller = part === 1 ? knife : rebuildKnife(similarKnife(knife, this.change, part));
      return stageNeed(gateBodies(smaller, stage, route.losses.scaleModel), route, stage);
    } catch (error) {
      if (error instanceof SpecError || error instanceof GeometryError) return undefined;
      throw error;
    }
  }
}

/** Shares between which the steel in hand lies, or why there are none. */
function bracketOf(
  scale: SimilarScale,
  inHand: number,
  least: number,
): { readonly low: number; readonly high: number } | Omit<Issue, "path"> {
  const whole = scale.need(1)?.value ?? Number.NaN;
  // A smaller knife loses less than its share of steel: the first guess goes three times as far.
  const guess = Math.max(least, 1 - 3 * (1 - inHand / whole));
  let high = 1;
  for (const part of new Set([guess, least])) {
    const need = scale.need(part);
    if (need === undefined) return drawnBracket(scale, inHand, high, part);
    if (need.value <= inHand) return { low: part, high };
    high = part;
  }
  const need = scale.need(least)?.value ?? Number.NaN;
  return { code: "too-small", text: TOO_SMALL, values: { share: share(least), need: mass(need) } };
}

/** Where a size cannot be drawn: halves the way to it until one that can is small enough. */
function drawnBracket(
  scale: SimilarScale,
  inHand: number,
  from: number,
  to: number,
): { readonly low: number; readonly high: number } | Omit<Issue, "path"> {
  let high = from;
  let undrawn = to;
  for (let pass = 0; pass < HALVINGS; pass++) {
    const middle = (high + undrawn) / 2;
    const need = scale.need(middle);
    if (need === undefined) undrawn = middle;
    else if (need.value <= inHand) return { low: middle, high };
    else high = middle;
  }
  return { code: "not-drawn", text: NOT_DRAWN, values: { share: share(undrawn) } };
}
