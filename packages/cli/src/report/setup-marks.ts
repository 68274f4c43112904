import type { ForgeCard, HeatsLeft } from "@scantling/geometry";
import type { FileUnits } from "@scantling/geometry/units";
import { fineMassText, fixed, inBoth } from "./figures.js";
import { layOutTable } from "./layout.js";
import { ruleText, ruleUpText } from "./setup-sizes.js";

const COLUMNS = ["left", "right", "right"] as const;

/** Where to punch the billet, and what the mark is for. */
export function markText({ marks }: ForgeCard, units: FileUnits): string {
  const { usual, high, at } = marks;
  const neck = Math.abs(usual.handleFront - usual.tang) > 0.5;
  const behind = neck
    ? `behind it is handle and neck, ahead the blade. The step is at the mark, the handle itself begins ${ruleText(high.tang - high.handleFront, units)} behind it.`
    : "behind it is the handle, ahead the blade.";
  return `punch the billet ${inBoth(ruleUpText, at, units)} from its butt end; ${behind} The mark covers high losses for the handle: saw off what is over at the butt. Spare is left at the point.`;
}

/** What the handle and the blade take of the billet's length. */
export function markTable(card: ForgeCard, units: FileUnits): string[] {
  return layOutTable(markRows(card, units), COLUMNS);
}

/** The same as rows, heads first. */
export function markRows({ marks }: ForgeCard, units: FileUnits): string[][] {
  const { usual, high } = marks;
  const row = (name: string, of: (side: typeof usual) => number): string[] => [
    name,
    ruleText(of(usual), units),
    ruleText(of(high), units),
  ];
  return [
    ["Losses", "usual", "high"],
    ["handle takes", ruleText(usual.tang, units), ruleUpText(high.tang, units)],
    row("blade takes", (side) => side.blade),
    row("spare", (side) => side.spare),
    row("billet in all", (side) => side.available),
  ];
}

/** How long the steel lasts in the fire. */
export function heatsTable({ heats: { usual, high } }: ForgeCard, units: FileUnits): string[] {
  const more = ({ more: heatsMore }: HeatsLeft): string =>
    Number.isFinite(heatsMore) ? `${heatsMore}` : "any number";
  const row = (name: string, cell: (side: HeatsLeft) => string): string[] => [name, cell(usual), cell(high)];
  return layOutTable(
    [
      [`Heats left, ${usual.planned} planned`, "usual", "high"],
      row("more than these", more),
      row("each costs, billet", ({ perHeat }) => tenths(perHeat.billet, units)),
      row("each costs, forged", ({ perHeat }) => tenths(perHeat.forged, units)),
      row("over when forged", ({ overForged }) => fineMassText(overForged, units)),
    ],
    COLUMNS,
  );
}

/** A loss of one heat: to 0.1 g, or 0.01 oz. */
const tenths = (grams: number, units: FileUnits): string =>
  units === "mm" ? `${fixed(grams, 1)} g` : fineMassText(grams, units);
