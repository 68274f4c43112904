import type { MixedBar, MixedPlan } from "@scantling/geometry";
import { type FileUnits, formatLength } from "@scantling/geometry/units";
import { inBoth } from "./figures.js";
import { wrap } from "./layout.js";
import { hammeredText, ruleText } from "./setup-sizes.js";
import { sawLength } from "./stock-text.js";

/** Bars of two or more steels to cut, and each of their welds: pieces, what to draw to, how to cut it. */
export const mixedLines = (plan: MixedPlan, units: FileUnits): string[] =>
  mixedSentences(plan, units).flatMap((sentence) => wrap(sentence, undefined, "  "));

/** The same, a sentence each. */
export function mixedSentences(plan: MixedPlan, units: FileUnits): string[] {
  const long = inBoth(sawLength, plan.cutLength, units);
  return [
    `Cut, each ${long} long: ${plan.bars.map((bar) => barText(bar, units)).join("; ")}.`,
    ...plan.stages.map((stage, i) => {
      const next = plan.stages[i + 1];
      const lasts = `${stage.pieces} pieces, ${hammeredText(stage.stackHeight, units)} high cleaned; draw to `;
      return `Weld ${i + 1}: ${lasts}${next === undefined ? lastText(plan, units) : drawnText(plan, i, units)}.`;
    }),
  ];
}

const barText = ({ pieces, steel, thickness, width }: MixedBar, units: FileUnits): string =>
  `${pieces} of ${steel} ${formatLength(thickness, units)} × ${formatLength(width, units)}`;

function drawnText({ stages, asCut }: MixedPlan, weld: number, units: FileUnits): string {
  const next = stages[weld + 1];
  if (next === undefined) return "";
  const long = asCut.welds[weld + 1]?.barLength ?? next.barLength;
  return `${hammeredText(next.width, units)} × ${hammeredText(next.height / next.pieces, units)}, ${ruleText(long, units)} long; cut in ${next.pieces}`;
}

function lastText({ lastBar, asCut, grooves }: MixedPlan, units: FileUnits): string {
  const ground =
    grooves > 0
      ? `, ${ruleText(asCut.lastBar.dressedLength, units)} once the grooves are ground and pressed flat`
      : "";
  return `${hammeredText(lastBar.width, units)} × ${hammeredText(lastBar.thickness, units)}, ${ruleText(asCut.lastBar.length, units)} long${ground}`;
}
