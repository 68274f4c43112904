import { type Finding, length, mass, type QuantityValue, type SizeSlip } from "@scantling/geometry";
import { type AskAnswer, limitsOf } from "./asks.js";
import { ASK_KINDS } from "./file/index.js";
import { MASS_SLIPS, SIZE_SLIPS } from "./size-slips.js";
import { ASK_WORDS } from "./wishes.js";

/** So many times over or under what is drawn, an ask is out of all proportion. */
const PROPORTION = 8;
/** Taken for what was meant, it is not farther than so many times off; a limit that is met may be farther. */
const NEAR = 2;
const NEAR_IF_MET = 5;
/** A point put wrong is no proportion: only units that lie so many times apart are thought of. */
const LEAST_TIMES = 16;
/** A balance has no proportion, for it may be nothing: mm that it is off, and that it may be off if it is what was meant. */
const BALANCE_OFF = 60;
const BALANCE_NEAR = 20;

const BASIS = `common practice, no source: no order is ${PROPORTION} times off the knife that is drawn for it`;

/**
 * Asks that are out of all proportion to the knife, and that another unit would explain.
 * They are told whether they are met or not: below 9 kg is met by every knife.
 */
export function askSlips(answers: readonly AskAnswer[]): Finding[] {
  return answers.flatMap(slipOf);
}

function slipOf({ ask, figure: { value } }: AskAnswer): readonly Finding[] {
  const { atLeast, atMost } = limitsOf(ask.test);
  const limits = [atLeast, atMost].filter(Number.isFinite);
  const [low, high] = [Math.min(...limits), Math.max(...limits)];
  const isBalance = ask.name === "balance";
  const isOff = isBalance
    ? low > value + BALANCE_OFF || high < value - BALANCE_OFF
    : low > PROPORTION * value || high < value / PROPORTION;
  if (!isOff) return [];
  const { kind } = ask.test;
  const over = kind === "below" ? NEAR_IF_MET : NEAR;
  const under = kind === "above" ? NEAR_IF_MET : NEAR;
  const fits = slipsOf(ask.name).filter(({ times }) =>
    isBalance
      ? low * times - BALANCE_NEAR <= value && value <= high * times + BALANCE_NEAR
      : low * times <= over * value && high * times >= value / under,
  );
  const off = ({ times }: SizeSlip): number => Math.abs((times * (low + high)) / 2 - value);
  const meant = [...fits].sort((a, b) => off(a) - off(b))[0];
  if (meant === undefined) return [];
  const show: (size: number) => QuantityValue = ask.name === "mass" ? mass : length;
  const side = kind === "below" || kind === "above" ? `${kind} ` : "";
  const range = (from: string, to: string): string => (low === high ? from : `${from} to ${to}`);
  return [
    {
      code: "size-slip",
      severity: "warn",
      path: ask.path,
      text: `The ${ASK_WORDS[ask.name]} is asked to be ${side}${range("{low}", "{high}")}, and this knife's is {value}: that is out of all proportion. Did you mean ${range("{asLow}", "{asHigh}")} (${meant.words})?`,
      values: {
        value: show(value),
        low: show(low),
        asLow: show(low * meant.times),
        ...(low === high ? {} : { high: show(high), asHigh: show(high * meant.times) }),
      },
      basis: BASIS,
    },
  ];
}

/** What is thought of, by the kind of the ask; of angles and counts nothing. */
function slipsOf(name: AskAnswer["ask"]["name"]): readonly SizeSlip[] {
  if (name === "coreLine") return [];
  const kind = ASK_KINDS[name];
  const slips = kind === "mass" ? MASS_SLIPS : kind === "length" ? (SIZE_SLIPS.length ?? []) : [];
  return slips.filter(({ times }) => Math.max(times, 1 / times) >= LEAST_TIMES);
}
