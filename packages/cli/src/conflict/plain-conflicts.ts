import {
  type AskedWindow,
  clashingBevel,
  clashingLengths,
  clashingWindows,
  type PlainConflict,
} from "@scantling/geometry";
import { limitsOf } from "../asks.js";
import { ASK_KINDS, type Ask, type AskName } from "../file/index.js";
import { askKey } from "../fit/order-targets.js";
import type { Measured } from "../measure.js";
import { askLabel } from "../report/asks-text.js";
import { placeOf } from "../size-intervals.js";
import type { AskConflict, ConflictAsk, ConflictKind } from "./ask-conflict.js";

/** What needs no search: asks that contradict each other by what they are, and a hardness that the steel does not come to. */
export function plainConflicts(measured: Measured): readonly AskConflict[] {
  const { job } = measured;
  // As they are measured: each at its place.
  const asks = measured.answers.map(({ ask }) => ask).filter(({ should }) => !should);
  const named = new Map(
    asks.map((ask): readonly [string, ConflictAsk] => {
      const key = askKey(ask);
      return [key, { key, words: askLabel(ask, job.units), kind: ASK_KINDS[ask.name] }];
    }),
  );
  const of = (kind: ConflictKind, found: readonly PlainConflict[]): readonly AskConflict[] =>
    found.map(({ names, relaxations }) => ({
      kind,
      asks: names.map((name) => named.get(name) as ConflictAsk),
      relaxations: relaxations.map(({ name, ...limit }) => ({
        ask: named.get(name) as ConflictAsk,
        ...limit,
      })),
    }));
  return [
    ...of("same-figure", sameFigure(asks, measured)),
    ...of("lengths", lengths(asks, measured)),
    ...of("bevel", bevels(asks, measured)),
    ...hardness(measured),
  ];
}

function windowOf(ask: Ask): AskedWindow {
  const { atLeast, atMost, inclusive } = limitsOf(ask.test);
  return { name: askKey(ask), low: atLeast, high: atMost, isOpen: !inclusive };
}

/** Places on the blade that are nearer than this are one, mm. */
const SAME_PLACE = 1e-6;

const PLACED: readonly AskName[] = ["thickness", "behindEdge", "bevelAngle"];

/** Several asks of one figure at one place, however that is written. */
function sameFigure(asks: readonly Ask[], { knife }: Measured): readonly PlainConflict[] {
  const placed = asks.filter(({ name }) => PLACED.includes(name));
  const groups = new Map<string, Ask[]>();
  for (const ask of placed) {
    const figure = [ask.name, Math.round(placeOf(knife, ask) / SAME_PLACE), ask.up ?? ""].join(" ");
    groups.set(figure, [...(groups.get(figure) ?? []), ask]);
  }
  return [...groups.values()].flatMap((group) => clashingWindows(group.map(windowOf)));
}

/** Edge, ricasso and handle are the whole. */
function lengths(asks: readonly Ask[], { knife }: Measured): readonly PlainConflict[] {
  const of = (name: AskName): AskedWindow | undefined => {
    const ask = asks.find((one) => one.name === name);
    return ask && windowOf(ask);
  };
  // So far the shop lets them miss adding up.
  const apart = knife.limits.lengthsApart.value;
  const asked = of("overallLength");
  const whole = asked && { ...asked, low: asked.low - apart, high: asked.high + apart };
  return clashingLengths({
    ...(whole === undefined ? {} : { whole }),
    parts: [of("edgeLength"), of("handleLength")],
    rest: knife.outline.ricasso,
  });
}

/** Angle, spine and height at the heel, where both faces are alike. */
function bevels(asks: readonly Ask[], { knife }: Measured): readonly PlainConflict[] {
  const { laws } = knife;
  if (!laws.symmetric) return [];
  const at = (name: AskName): readonly AskedWindow[] =>
    asks
      .filter((ask) => ask.name === name && ask.up === undefined)
      .filter((ask) => Math.abs(placeOf(knife, ask)) < SAME_PLACE)
      .map(windowOf);
  const [angle, thickness, height, behindEdge] = [
    least(at("bevelAngle")),
    greatest(at("thickness")),
    least(at("heelHeight")),
    least(at("behindEdge")),
  ];
  return clashingBevel({
    ...(angle === undefined ? {} : { angle }),
    ...(thickness === undefined ? {} : { thickness }),
    ...(height === undefined ? {} : { height }),
    ...(behindEdge === undefined ? {} : { behindEdge }),
    drawnEdge: laws.edgeThickness.valueAt(0),
    flankTaper: laws.flankTaper.valueAt(0),
  });
}

/** Of several windows the one that allows least, upward or downward. */
const least = (windows: readonly AskedWindow[]): AskedWindow | undefined =>
  windows.toSorted((a, b) => a.high - b.high)[0];
const greatest = (windows: readonly AskedWindow[]): AskedWindow | undefined =>
  windows.toSorted((a, b) => b.low - a.low)[0];

/** Nothing of what is asked can be had of the steel: neither end of it. */
function hardness({ hardness: answer, job }: Measured): readonly AskConflict[] {
  if (answer?.reach === undefined || job.knife.order.hardness?.should === true) return [];
  const { asked, reach } = answer;
  const { low = Number.NEGATIVE_INFINITY, high } = reach;
  const ask: ConflictAsk = { key: "hardness", words: "hardness", kind: "hardness" };
  const of = (limit: "atLeast" | "atMost", from: number, to: number): AskConflict => ({
    kind: "hardness",
    asks: [ask],
    relaxations: [{ ask, limit, from, to }],
  });
  if (asked.low > high) return [of("atLeast", asked.low, high)];
  return asked.high < low ? [of("atMost", asked.high, low)] : [];
}
