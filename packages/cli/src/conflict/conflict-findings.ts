import type { Finding, FindingCode, Severity } from "@scantling/geometry";
import type { FileUnits } from "@scantling/geometry/units";
import { fixed } from "../report/figures.js";
import { limitText, relaxedText } from "../report/outward-text.js";
import type {
  AskConflict,
  AskRelaxation,
  ConflictAsk,
  ConflictKind,
  OrderConflicts,
} from "./ask-conflict.js";

/** What is to be said of asks that cannot be had together. Lengths and a hardness have findings of their own. */
export function conflictFindings(
  { conflicts, outOfReach, changed }: OrderConflicts,
  units: FileUnits,
): readonly Finding[] {
  const sizes = changed.map(({ name }) => name).join(", ");
  return [
    ...conflicts.flatMap((conflict): Finding[] => {
      const told = TOLD[conflict.kind];
      if (told === undefined) return [];
      const { code, severity, why } = told;
      const { text, values } = relaxWords(conflict, units);
      return [
        {
          code,
          severity,
          path: `order.asks.${conflict.asks[0]?.key ?? ""}`,
          text: `What is asked cannot all hold: {asks}. ${why} ${text}`,
          values: { asks: askWords(conflict.asks), sizes, ...values },
          basis: BASIS[code],
        },
      ];
    }),
    ...outOfReach.map(
      ({ ask, nearest }): Finding => ({
        code: "ask-out-of-reach",
        severity: "warn",
        path: `order.asks.${ask.key}`,
        text: "No usual change brings the {ask} to what is asked: {nearest} is the nearest. Looked at: {sizes}. Ask for that, or change more: scantling fit FILE --change help.",
        values: {
          ask: ask.words,
          nearest: ask.kind === "hardness" ? "" : limitText(ask.kind, nearest, "nearest", units),
          sizes,
        },
        basis: BASIS["asks-collide"],
      }),
    ),
  ];
}

interface Told {
  readonly code: Extract<FindingCode, "asks-contradict" | "asks-collide">;
  readonly severity: Severity;
  readonly why: string;
}

const TOLD: Readonly<Partial<Record<ConflictKind, Told>>> = {
  "same-figure": {
    code: "asks-contradict",
    severity: "stop",
    why: "It is one figure, and what is asked of it does not overlap.",
  },
  bevel: {
    code: "asks-contradict",
    severity: "warn",
    why: "A blade so thick and no higher has a steeper bevel, with the edge and the taper of its flats as drawn.",
  },
  changes: {
    code: "asks-collide",
    severity: "warn",
    why: "No knife meets them by usual changes of {sizes}.",
  },
};

const BASIS: Readonly<Record<Told["code"], string>> = {
  "asks-contradict": "the order; geometry",
  "asks-collide": "the order; usual ranges of the sizes: common practice, no source",
};

/** Each limit that settles it by itself, as a sentence whose parts are values. */
function relaxWords({ relaxations }: AskConflict, units: FileUnits): Pick<Finding, "text" | "values"> {
  if (relaxations.length === 0)
    return { text: "No single one of them that gives way settles it.", values: {} };
  const lead = relaxations.length === 1 ? "This settles it:" : "Any one of these settles it:";
  return {
    text: `${lead} ${relaxations.map((_, i) => `{relax${i}}`).join("; or ")}.`,
    values: Object.fromEntries(relaxations.map((each, i) => [`relax${i}`, relaxationWords(each, units)])),
  };
}

/** `mass up to 203 g instead of 200 g`. */
function relaxationWords({ ask, limit, from, to }: AskRelaxation, units: FileUnits): string {
  const way = limit === "atMost" ? "up" : "down";
  const shown =
    ask.kind === "hardness"
      ? { from: `${fixed(from, 1)} HRC`, to: `${fixed(to, 1)} HRC` }
      : relaxedText(ask.kind, from, to, units);
  // Limits that only touch: one that may be reached itself is enough.
  if (shown.to === shown.from) return `${ask.words} of ${shown.to} itself allowed`;
  return `${ask.words} ${way} to ${shown.to} instead of ${shown.from}`;
}

/** `mass and balance`; two asks of one figure are told as one. */
export function askWords(asks: readonly ConflictAsk[]): string {
  const words = asks.map(({ words: own }) => own);
  const counts = [...new Set(words)].map((own) => {
    const times = words.filter((each) => each === own).length;
    return times > 1 ? `${own} ${times === 2 ? "twice" : `${times} times`}` : own;
  });
  return counts.length < 2 ? counts.join("") : `${counts.slice(0, -1).join(", ")} and ${counts.at(-1)}`;
}
