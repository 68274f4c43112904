import type { PatternFuller } from "@scantling/geometry";
import { formatQuantity } from "@scantling/geometry/units";
import { caliperCell, lengthText, onOneLine } from "../../label-text.js";
import type { PatternModel } from "../../models/pattern-model.js";
import { mainUnits } from "../../sheet-units.js";
import type { TableContent } from "../../table.js";
import { seenFace } from "./view.js";

/** What a fuller is called on the sheet: by number where there is more than one. */
export const fullerName = (index: number, count: number): string =>
  count === 1 ? "fuller" : `fuller ${index + 1}`;

const facesWords = (faces: PatternFuller["faces"], seen: "left" | "right"): string =>
  faces === "both" ? faces : `${faces}, ${faces === seen ? "seen" : "behind"}`;

/** Both ends, radius and depth of every fuller, or undefined where there is none. */
export function fullerTable(model: PatternModel): TableContent | undefined {
  const { fullers = [], units } = model;
  if (fullers.length === 0) return undefined;
  const write = (mm: number): string => onOneLine(caliperCell(mm, units));
  return {
    caption: "Middle lines of fullers from the heel: x to the tip, y to the spine",
    header: ["Fuller", "x", "y", "Radius", "Depth", "Faces"],
    rows: fullers.flatMap(({ from, to, radius, depth, faces }, index) => [
      [
        fullerName(index, fullers.length),
        write(from.x),
        write(from.y),
        write(radius),
        write(depth),
        facesWords(faces, seenFace(model)),
      ],
      ["to", write(to.x), write(to.y), "", "", ""],
    ]),
  };
}

/** Where swedge and fittings begin and end, or undefined where there are none. */
export function crossTable({ swedge, fittings = [], units }: PatternModel): TableContent | undefined {
  if (swedge === undefined && fittings.length === 0) return undefined;
  const write = (mm: number): string => onOneLine(lengthText(mm, units));
  const angle = (rad: number): string => formatQuantity({ quantity: "angle", value: rad }, mainUnits(units));
  const places = fittings.map(({ name, front, rear }) => [name, write(front), write(rear)]);
  const header = ["Part", "Front x", "Rear x"];
  if (swedge === undefined) {
    return { caption: "Fittings: x from the heel to the tip", header, rows: places };
  }
  const planes = ["swedge", write(swedge.to), write(swedge.from), `${angle(swedge.angle)} per side`];
  return {
    caption: `Swedge${places.length === 0 ? "" : " and fittings"}: x from the heel to the tip`,
    header: [...header, "Planes"],
    rows: [planes, ...places.map((row) => [...row, ""])],
  };
}
