import { cleanText } from "../../clean-text.js";
import { lengthText, massText, onOneLine } from "../../label-text.js";
import type { PageInfo } from "../../lay-out/sheet-content.js";
import type { PatternModel } from "../../models/pattern-model.js";
import type { TitleField } from "../../title-block.js";
import { pageWords, printWords } from "../words.js";

/** The fields of the title block, row by row. */
export function patternFields(model: PatternModel, page: PageInfo): TitleField[][] {
  const { units, revision } = model;
  const { densityFromMemory: guessed } = model;
  return [
    [
      { label: "Order", value: model.code, share: 0.28, lines: 2 },
      { label: "Title", value: model.title, share: 0.72, lines: 2 },
    ],
    revision === undefined
      ? [
          { label: "Steel", value: model.steel, share: 0.58 },
          { label: outlineLabel(model), value: model.state, share: 0.42 },
        ]
      : [
          { label: "Steel", value: model.steel, share: 0.34 },
          { label: outlineLabel(model), value: model.state, share: 0.32 },
          { label: "Revision", value: revision, share: 0.34, lines: 2 },
        ],
    [
      {
        label: steelMassLabel(model),
        value: onOneLine(massText(model.stateMass ?? model.steelMass, units)),
        share: 0.5,
      },
      {
        label: guessed?.knife === true ? "Knife mass, density from memory" : "Knife mass",
        value: onOneLine(massText(model.knifeMass, units)),
        share: 0.5,
      },
    ],
    [
      { label: "Units", value: units === "mm" ? "mm [inches]" : "inches [mm]", share: 0.29 },
      { label: "Drawn", value: "1 : 1", share: 0.13 },
      { label: "Paper", value: pageWords(page), share: 0.58 },
    ],
  ];
}

const outlineLabel = ({ finishedOutline }: PatternModel): string =>
  finishedOutline === undefined ? "Outline" : "Outline; finished dashed";

function steelMassLabel({ densityFromMemory, stateMass }: PatternModel): string {
  if (densityFromMemory?.steel === true) return "Steel mass, density from memory";
  return stateMass === undefined ? "Steel mass, finished" : "Steel mass, as drawn";
}

/** What the sheet is called. */
export const patternTitle = (model: PatternModel): string =>
  `${cleanText(`${model.code} ${model.title}`) || "Blade"}: true-size pattern`;

/** What the sheet shows, for those who hear it read. */
export function patternDescription(model: PatternModel, { paper }: PageInfo): string {
  const write = (mm: number): string => onOneLine(lengthText(mm, model.units));
  const count = model.holes.length;
  const holes = count === 0 ? "no holes" : count === 1 ? "one hole" : `${count} holes`;
  return cleanText(
    `Blade outline, ${model.state}${model.finishedOutline === undefined ? "" : ", the finished one dashed inside it"}, tip to the right, edge down. Overall length ${write(model.overallLength)}, ` +
      `edge length ${write(model.edgeLength)}, height at the heel ${write(model.heelHeight)}, ${holes} in the steel. ` +
      `${printWords(paper)}; check bars of 100 mm and 4 in stand on it, across and up.`,
  );
}
