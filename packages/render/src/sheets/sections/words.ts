import { cleanText } from "../../clean-text.js";
import { fitText } from "../../fit-text.js";
import { lengthText, onOneLine } from "../../label-text.js";
import type { PageInfo } from "../../lay-out/sheet-content.js";
import { KEY } from "../../lettering-size.js";
import type { SectionStation, SectionsModel } from "../../models/sections-model.js";
import { unitsWords } from "../../sheet-units.js";
import type { TitleField } from "../../title-block.js";
import { pageWords, printWords } from "../words.js";

/** What stands over a section: "B: 60 % of the edge" and "x = 135 mm [5 5/16"]"; a place may come from the command line. */
export const stationTitle = (
  { place, x }: SectionStation,
  letter: string,
  units: SectionsModel["units"],
): [string, string] => [
  fitText(`${letter}: ${place}`, KEY, TITLE_ROOM, 1)[0] ?? letter,
  `x = ${onOneLine(lengthText(x, units))}`,
];

/** Width that a heading may take, mm. */
const TITLE_ROOM = 100;

/** The fields of the title block, row by row. */
export function sectionsFields(model: SectionsModel, page: PageInfo): TitleField[][] {
  const { units, revision } = model;
  return [
    [
      { label: "Order", value: model.code, share: 0.28, lines: 2 },
      { label: "Title", value: model.title, share: 0.72, lines: 2 },
    ],
    [
      { label: "Steel", value: model.steel, share: 0.42, lines: 2 },
      { label: "Units", value: unitsWords(units), share: 0.3 },
      { label: "Drawn", value: "as labelled", share: 0.28 },
    ],
    ...(revision === undefined ? [] : [[{ label: "Revision", value: revision, share: 1, lines: 2 }]]),
    [{ label: "Paper", value: pageWords(page), share: 1 }],
  ];
}

/** What the sheet is called. */
export const sectionsTitle = (model: SectionsModel): string =>
  `${cleanText(`${model.code} ${model.title}`) || "Blade"}: sections`;

/** What the sheet shows, for those who hear it read. */
export function sectionsDescription(model: SectionsModel, { paper }: PageInfo): string {
  const places = model.stations.map(({ place, x }) => `${place} at ${onOneLine(lengthText(x, model.units))}`);
  return cleanText(
    `Sections of the knife square to its length, edge down, at true size and enlarged: ${places.join("; ")}. ` +
      `Tables give their thicknesses, bevels and areas. ${printWords(paper)}; check bars of 100 mm and 4 in stand on it, across and up.`,
  );
}
