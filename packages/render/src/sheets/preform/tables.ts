import { onOneLine } from "../../label-text.js";
import type { PreformModel } from "../../models/preform-model.js";
import type { TableContent } from "../../table.js";
import { hammeredText, ruleText, ruleUpText } from "./figures.js";
import { hotSizeOf } from "./view.js";

type Write = (mm: number) => string;

const longOf =
  ({ units }: PreformModel): Write =>
  (mm) =>
    onOneLine(ruleText(mm, units));
const hammeredOf =
  ({ units }: PreformModel): Write =>
  (mm) =>
    onOneLine(hammeredText(mm, units));

/** The numbered sections of the blade: where, how high, how thick. */
export function stationTable(model: PreformModel): TableContent {
  const [long, thick, hot] = [longOf(model), hammeredOf(model), hotSizeOf(model)];
  return {
    caption: "Sections of the blade, from the shoulder; thickness at the spine",
    header: ["", "At, cold", "Height, cold", "At, hot", "Height, hot", "Thick, cold", "Thick, hot"],
    rows: model.marks.map(({ fromShoulder, height, thickness }, index) => [
      `${index + 1}`,
      long(fromShoulder),
      long(height),
      long(hot(fromShoulder)),
      long(hot(height)),
      thick(thickness),
      thick(hot(thickness)),
    ]),
  };
}

/** Where the marks are, from the butt end. */
export function marksTable(model: PreformModel): TableContent {
  const [long, hot] = [longOf(model), hotSizeOf(model)];
  const row = (name: string, at: number): string[] => [name, long(at), long(hot(at))];
  const { shoulder, heel, length, billetMark, units } = model;
  const up = (mm: number): string => onOneLine(ruleUpText(mm, units));
  return {
    caption: "Marks, from the butt end",
    header: ["Mark", "Cold", "Hot"],
    rows: [
      ["Billet, before the handle is drawn", up(billetMark), up(hot(billetMark))],
      row(heel === undefined ? "Shoulder and heel" : "Shoulder", shoulder),
      ...(heel === undefined ? [] : [row("Heel", heel)]),
      row("End", length),
    ],
  };
}

/** What the handle is drawn to. */
export function handleTable(model: PreformModel): TableContent {
  const [long, hammered, hot] = [longOf(model), hammeredOf(model), hotSizeOf(model)];
  const { front, middle, butt, fillet } = model.handle;
  const row = (name: string, end: typeof front): string[] => [
    name,
    hammered(end.height),
    hammered(hot(end.height)),
    hammered(end.thickness),
  ];
  return {
    caption: `Handle as it is drawn out${fillet === undefined ? "" : `; radius left at the shoulder ${long(fillet)}`}`,
    header: ["At the", "Height, cold", "Height, hot", "Thick, cold"],
    rows: [
      row("butt end", butt),
      ...(middle === undefined ? [] : [row("middle", middle)]),
      row("shoulder", front),
    ],
  };
}
