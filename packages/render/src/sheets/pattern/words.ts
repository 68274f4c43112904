import { cleanText } from "../../clean-text.js";
import { lengthText, massText, onOneLine, sizeText } from "../../label-text.js";
import type { PageInfo } from "../../lay-out/sheet-content.js";
import type { PatternModel } from "../../models/pattern-model.js";
import { unitsWords } from "../../sheet-units.js";
import type { TitleField } from "../../title-block.js";
import { pageWords, printWords } from "../words.js";

/** The fields of the title block, row by row. */
export function patternFields(model: PatternModel, page: PageInfo): TitleField[][] {
  const { units, densityFromMemory: guessed } = model;
  return [
    [
      { label: "Order", value: model.code, share: 0.28, lines: 2 },
      { label: "Title", value: model.title, share: 0.72, lines: 2 },
    ],
    ...outlineRows(model),
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
      { label: "Units", value: unitsWords(units), share: 0.29 },
      { label: "Drawn", value: "1 : 1", share: 0.13 },
      { label: "Paper", value: pageWords(page), share: 0.58 },
    ],
  ];
}

/** The steel, whose outline this is, and the revision; several outlines and a line to cut along have a row of their own. */
function outlineRows(model: PatternModel): TitleField[][] {
  const { revision, further = [], cutLine } = model;
  const steel = { label: "Steel", value: model.steel, lines: 2 };
  const outline = { label: outlineLabel(model), value: statesOf(model), lines: 3 };
  const dated = revision === undefined ? [] : [{ label: "Revision", value: revision, lines: 2 }];
  if (cutLine !== undefined || further.length > 1) {
    const beside = [steel, ...dated];
    return [beside.map((field) => ({ ...field, share: 1 / beside.length })), [{ ...outline, share: 1 }]];
  }
  const [ofSteel, ofOutline] = revision === undefined ? [0.58, 0.42] : [0.34, 0.32];
  return [
    [
      { ...steel, share: ofSteel },
      { ...outline, share: ofOutline },
      ...dated.map((field) => ({ ...field, share: 1 - ofSteel - ofOutline })),
    ],
  ];
}

function outlineLabel({ finishedOutline, further = [], cutLine, mirror }: PatternModel): string {
  const face = faceWords(mirror);
  if (face !== undefined || further.length > 0) {
    return `${further.length > 0 ? "Outlines" : "Outline"}${face === undefined ? "" : `, ${face}`}`;
  }
  if (finishedOutline === undefined) return "Outline";
  return cutLine === undefined ? "Outline; finished dashed" : "Outline; finished inside";
}

/** The states of all outlines, outermost first, and the line beside them. */
const statesOf = (model: PatternModel): string => {
  const states = [model.state, ...(model.further ?? []).map((inner) => inner.state)].join(", ");
  const line = cutLineWords(model);
  return line === undefined ? states : `${states}; ${line}`;
};

/** "saw line 0.5 mm outside", where something else than the outline is cut along. */
export function cutLineWords({ cutLine, units }: PatternModel): string | undefined {
  if (cutLine === undefined) return undefined;
  const distance = onOneLine(sizeText(Math.abs(cutLine.offset), units));
  return `saw line ${distance} ${cutLine.offset < 0 ? "inside" : "outside"}`;
}

/** The face that is seen, where it is to be said. */
export const faceWords = (mirror: boolean | undefined): string | undefined =>
  mirror === undefined ? undefined : mirror ? "left face" : "right face";

function steelMassLabel({ densityFromMemory, stateMass }: PatternModel): string {
  if (densityFromMemory?.steel === true) return "Steel mass, density from memory";
  return stateMass === undefined ? "Steel mass, finished" : "Steel mass, as drawn";
}

/** What is to be said of the lines where there is more than the outline. */
export function lineWords({ state, further = [], cutLine }: PatternModel): string[] {
  return [
    ...(further.length === 0 ? [] : [`Dimensions, heights and thickness: ${state}.`]),
    ...(cutLine === undefined
      ? []
      : ["Saw or scribe along the middle of the narrow continuous line. The true outline is dashed."]),
  ];
}

/** What the sheet is called. */
export const patternTitle = (model: PatternModel): string =>
  [
    `${cleanText(`${model.code} ${model.title}`) || "Blade"}: true-size pattern`,
    faceWords(model.mirror),
    cutLineWords(model),
  ]
    .filter((words) => words !== undefined)
    .join(", ");

/** What the sheet shows, for those who hear it read. */
export function patternDescription(model: PatternModel, { paper }: PageInfo): string {
  const write = (mm: number): string => onOneLine(lengthText(mm, model.units));
  const count = model.holes.length;
  const holes = count === 0 ? "no holes" : count === 1 ? "one hole" : `${count} holes`;
  return cleanText(
    `${outlineWords(model)}, tip to the ${model.mirror === true ? "left" : "right"}, edge down. Blade with tang ${write(model.overallLength)} long, ` +
      `edge length ${write(model.edgeLength)}, height at the heel ${write(model.heelHeight)}, ${holes} in the steel. ` +
      `${printWords(paper)}; check bars of 100 mm and 4 in stand on it, across and up.`,
  );
}

function outlineWords(model: PatternModel): string {
  const { state, finishedOutline, further = [], cutLine, mirror, units } = model;
  const face = faceWords(mirror);
  const inside = [
    ...(finishedOutline === undefined
      ? []
      : [`the finished one ${cutLine === undefined ? "dashed " : ""}inside it`]),
    ...further.map((inner) => `inside it ${inner.state}`),
    ...(cutLine === undefined
      ? []
      : [
          `with a line to cut along ${onOneLine(sizeText(Math.abs(cutLine.offset), units))} ${cutLine.offset < 0 ? "inside" : "outside"} it`,
        ]),
  ];
  return ["Blade outline", state, ...inside, ...(face === undefined ? [] : [face])].join(", ");
}
