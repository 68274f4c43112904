import { radiansToDegrees } from "@scantling/geometry/units";
import type { ConflictAsk, OrderConflicts } from "../conflict/ask-conflict.js";

const UNITS: Readonly<Record<ConflictAsk["kind"], string>> = {
  mass: "G",
  length: "Mm",
  thin: "Mm",
  angle: "Deg",
  count: "",
  hardness: "Hrc",
};

/** What cannot be had together, for programs: beside the asks in `scantling/check/1` and `scantling/quote/1`. */
export function conflictJson({ conflicts, outOfReach, search, changed }: OrderConflicts): object {
  return {
    conflicts: conflicts.map(({ kind, asks, relaxations }) => ({
      kind,
      asks: asks.map(({ key }) => key),
      relax: relaxations.map(({ ask, limit, from, to }) => ({
        ask: ask.key,
        limit,
        ...named("from", ask, from),
        ...named("to", ask, to),
        ...named("by", ask, Math.abs(to - from)),
      })),
    })),
    outOfReach: outOfReach.map(({ ask, nearest }) => ({ ask: ask.key, ...named("nearest", ask, nearest) })),
    conflictSearch: search,
    conflictChanges: changed.map(({ name }) => name),
  };
}

function named(name: string, { kind }: ConflictAsk, value: number): Readonly<Record<string, number>> {
  return { [`${name}${UNITS[kind]}`]: kind === "angle" ? radiansToDegrees(value) : value };
}
