import { GATE_STAGES } from "@scantling/geometry";
import type { Planned } from "../file/record-file.js";

/** What one figure of a plan is of. */
export type RowKind = "bars" | "mass" | "length" | "place" | "count" | "verdict";

/** One figure of a plan, to be held against that of another. */
export interface PlanRow {
  readonly key: string;
  readonly kind: RowKind;
  /** g, mm, a count; for bars and verdicts the words that they are compared by. */
  readonly value: number | string | undefined;
  /** What it lies between, where it has a band. */
  readonly interval?: readonly [number, number];
}

/** Figures nearer than this are one, g or mm: a snapshot is written to thousandths. */
const SAME = 0.005;

/** The figures of a plan, always the same keys in the same order for one set of asks. */
export function planRows(planned: Planned): readonly PlanRow[] {
  const { bars = [], knife, balance, needed, asks, heats, weldingHeats } = planned;
  const sum = bars.reduce((total, { mass }) => total + mass, 0);
  return [
    ...barRows(bars),
    { key: "cutLength", kind: "length", value: bars[0]?.length },
    { key: "steelMass", kind: "mass", value: bars.length === 0 ? undefined : sum },
    ...GATE_STAGES.map((stage): PlanRow => {
      const need = needed[stage];
      return {
        key: `needed-${stage}`,
        kind: "mass",
        value: need?.usual,
        ...(need === undefined ? {} : { interval: [need.low, need.high] }),
      };
    }),
    { key: "heats", kind: "count", value: heats },
    { key: "weldingHeats", kind: "count", value: weldingHeats },
    { key: "knifeMass", kind: "mass", value: knife.mass, interval: [knife.least, knife.most] },
    { key: "balance", kind: "place", value: balance.at, interval: [balance.least, balance.most] },
    ...asks.map(({ ask, verdict }): PlanRow => ({ key: `ask-${ask}`, kind: "verdict", value: verdict })),
  ];
}

/** A row for each kind of bar; one that says nothing where no bars are known. */
function barRows(bars: NonNullable<Planned["bars"]>): PlanRow[] {
  if (bars.length === 0) return [{ key: "bars", kind: "bars", value: undefined }];
  return bars.map((bar, index) => ({
    key: index === 0 ? "bars" : `bars-${index + 1}`,
    kind: "bars",
    value: barWords(bar),
  }));
}

/** Pieces of a bar: told apart by count, section and steel; their length is a figure of its own. */
const barWords = ({ bar, count }: NonNullable<Planned["bars"]>[number]): string => `${count} x ${bar}`;

/** Whether two figures of one key say the same. */
export function isSameRow(a: PlanRow | undefined, b: PlanRow | undefined): boolean {
  const near = (one: number, other: number): boolean => Math.abs(one - other) <= SAME;
  const [was, is] = [a?.value, b?.value];
  if (typeof was !== "number" || typeof is !== "number") return was === is;
  if (!near(was, is)) return false;
  const [before, now] = [a?.interval, b?.interval];
  if (before === undefined || now === undefined) return before === now;
  return near(before[0], now[0]) && near(before[1], now[1]);
}

/** Keys of either list, in its order, those of the second behind. */
export const keysOf = (a: readonly PlanRow[], b: readonly PlanRow[]): readonly string[] => [
  ...new Set([...a, ...b].map(({ key }) => key)),
];
