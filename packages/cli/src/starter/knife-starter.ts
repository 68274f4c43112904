import type { FamilyName, TangSpec } from "@scantling/geometry";
import type { FileUnits } from "@scantling/geometry/units";
import { bladeLines, headingLines, orderLines } from "./blade-lines.js";
import { commentedLines } from "./commented-lines.js";
import { handleLines, tangLines, workLines } from "./handle-lines.js";
import type { Size } from "./size-text.js";
import { starterSizes } from "./starter-sizes.js";

/** A material as the file has it: a name of the table, or one with its density. */
export interface StarterMaterial {
  readonly name: string;
  /** As typed, with its unit. */
  readonly density?: string;
}

/** What a starter is written from; sizes that are left out are usual ones of the family. */
export interface StarterWishes {
  readonly family: FamilyName;
  readonly units: FileUnits;
  readonly code: string;
  readonly title: string;
  readonly edgeLength?: Size;
  readonly heelHeight?: Size;
  /** Thickness at the heel. */
  readonly spine?: Size;
  readonly tang: TangSpec["form"];
  readonly steel: StarterMaterial;
  readonly handle: StarterMaterial;
  /** As typed, with its unit. */
  readonly massBelow?: string;
}

/** Steel and handle of a starter of which nothing is said. */
export const STARTER_STEEL: StarterMaterial = { name: "1084" };
export const STARTER_HANDLE: StarterMaterial = { name: "European ash" };

/**
 * A knife file to begin with: every key that matters, and those that may be left out as comments, with what holds without
 * them.
 */
export function knifeStarter(wishes: StarterWishes): string {
  const sizes = starterSizes(wishes);
  return `${[
    ...headingLines(wishes),
    ...commentedLines(orderLines(wishes)),
    ...commentedLines(bladeLines(wishes, sizes)),
    ...commentedLines([...tangLines(wishes, sizes), ...handleLines(wishes, sizes)]),
    ...commentedLines(workLines(wishes, sizes)),
  ].join("\n")}\n`;
}
