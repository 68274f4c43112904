import { cleanText } from "../clean-text.js";
import type { PageInfo } from "../lay-out/sheet-content.js";
import type { OrderHead } from "../models/order-head.js";
import { unitsWords } from "../sheet-units.js";
import type { TitleField } from "../title-block.js";
import { pageWords } from "./words.js";

/**
 * The title block of a sheet about one order: who it is for, what it shows, how it is printed.
 *
 * @param shows - the row between: two fields.
 */
export function orderFields(
  { code, title, units, revision }: OrderHead,
  shows: readonly (readonly [label: string, value: string])[],
  page: PageInfo,
): TitleField[][] {
  const further = revision === undefined ? shows : [...shows, ["Revision", revision] as const];
  return [
    [
      { label: "Order", value: code, share: 0.28, lines: 2 },
      { label: "Title", value: title, share: 0.72, lines: 2 },
    ],
    further.map(([label, value]) => ({ label, value, share: 1 / further.length, lines: 2 })),
    [
      { label: "Units", value: unitsWords(units), share: 0.29 },
      { label: "Drawn", value: "1 : 1", share: 0.13 },
      { label: "Paper", value: pageWords(page), share: 0.58 },
    ],
  ];
}

/** What a sheet is called: its order and what it shows. */
export const orderTitle = ({ code, title }: OrderHead, shows: string): string =>
  `${cleanText(`${code} ${title}`) || "Blade"}: ${shows}`;
