import { presentFigure } from "@scantling/geometry";
import type { FileUnits } from "@scantling/geometry/units";
import { FileError, readShopFile } from "../file/index.js";
import { withChanges } from "../file/set-yaml.js";
import { figureText } from "./figure-text.js";
import { learningShop } from "./learning-shop.js";
import { changesOf, type Proposal } from "./propose.js";

/** The text of a shop file that has nothing in it yet. */
export const newShopText = (units: FileUnits): string => `scantling: 1\nunits: ${units}\n`;

/**
 * The text of the shop file with the proposals in it; nothing else of it is changed.
 *
 * @returns undefined where the file is laid out in a way that cannot be changed so, or does not say afterwards what was
 * proposed.
 */
export function withProposals(
  text: string,
  proposals: readonly Proposal[],
  units: FileUnits,
): string | undefined {
  const edited = withChanges(text, changesOf(proposals));
  return edited !== undefined && says(edited, proposals, units) ? edited : undefined;
}

/** Whether a shop file can be read, and reckons with what was proposed. */
function says(text: string, proposals: readonly Proposal[], units: FileUnits): boolean {
  try {
    const shop = learningShop(readShopFile(text, "the shop file"));
    return proposals.every(({ path, to }) => {
      const now = presentFigure(path, shop);
      return now !== undefined && figureText(path, now, units) === to;
    });
  } catch (error) {
    if (error instanceof FileError) return false;
    throw error;
  }
}
