import { type Changeable, type Knife, usualChanges, usualRange } from "@scantling/geometry";
import type { Job } from "../load.js";
import { fixed } from "./figures.js";
import { layOutTable, wrap } from "./layout.js";
import { sizeText } from "./size-text.js";

/** Everything that can be changed on a knife, as drawn; a mark at what is changed where nothing is named. */
export function changeableText(all: readonly Changeable[], knife: Knife, { units }: Job): string[] {
  const usual = new Set(usualChanges(all, knife).map(({ name }) => name));
  const rows = all.map((each) => {
    const { name, kind, sizes } = each;
    const drawn = sizes.map((size) => sizeText(kind, size.drawn, units));
    return [`${usual.has(name) ? "* " : "  "}${name}`, sizes.length > 1 ? "in proportion" : (drawn[0] ?? "")];
  });
  const ranges = all
    .filter(({ name }) => usual.has(name))
    .map((each) => {
      const { least, most } = usualRange(each, knife);
      const drawn = each.sizes.length > 1 ? 1 : (each.sizes[0]?.drawn ?? 1);
      return `${each.name} ${fixed((least / drawn) * 100, 0)} to ${fixed((most / drawn) * 100, 0)} %`;
    });
  return [
    "CAN BE CHANGED, with --change NAME=LOW..HIGH or NAME=80%..120%",
    ...layOutTable(rows, ["left", "right"]),
    ...wrap("  added@PLACE, a weight put on the tang: added@-100mm=0..40g", undefined, "  "),
    "",
    ...wrap(`* changed where nothing is named: ${ranges.join(", ")}.`),
    ...wrap("A name without a range may go from 75 to 125 % of what is drawn."),
  ];
}

/** The same for programs: `scantling/fit-changes/1`. */
export function changeableJson(all: readonly Changeable[], knife: Knife): unknown {
  const usual = new Set(usualChanges(all, knife).map(({ name }) => name));
  return {
    schema: "scantling/fit-changes/1",
    changes: all.map(({ name, kind, sizes }) => ({
      name,
      kind,
      usual: usual.has(name),
      paths: sizes.map(({ path }) => path),
    })),
  };
}
