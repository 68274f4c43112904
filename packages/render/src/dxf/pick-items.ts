import type { Bounds } from "@scantling/geometry";
import type { Drawing, DrawingItem, GroupItem } from "../drawing.js";
import type { Role } from "../role.js";
import { circlePath, clipPath, isIn } from "./clip.js";

/**
 * How much of a drawing a file for CAD holds: `page` all of it; `view` what is drawn with its lettering and dimensions, without
 * what belongs to the paper (frame, title block, check bars, words about printing, tables); `geometry` the lines of the
 * knife alone, for a laser or a waterjet.
 */
export type DxfContent = "page" | "view" | "geometry";

/** A thing to write, with no groups left. */
export type PickedItem = Exclude<DrawingItem, GroupItem>;

/** Lines that explain others, or the paper. */
const EXPLAINING: readonly Role[] = ["dimension", "hatch", "frame", "check", "text"];
/** Groups of lettering with the lines that tie it to what it names. */
const LETTERED = /(?:^|-)(?:labels|dimensions)$/;

/** What of the drawing goes into the file. */
export function pickItems(
  drawing: Drawing,
  wanted: { readonly content: DxfContent; readonly roles?: readonly Role[]; readonly maxError: number },
): PickedItem[] {
  const { content, roles, maxError } = wanted;
  const goesIn = (role: Role): boolean =>
    (roles === undefined || roles.includes(role)) &&
    (content !== "view" || role !== "frame") &&
    (content !== "geometry" || !EXPLAINING.includes(role));
  const isLeftOut = ({ ofPaper, name = "" }: GroupItem): boolean =>
    (content !== "page" && ofPaper === true) || (content === "geometry" && LETTERED.test(name));
  const pick = (item: DrawingItem): PickedItem[] => {
    if (item.kind === "group") {
      if (isLeftOut(item)) return [];
      const inside = item.items.flatMap(pick);
      const { clip } = item;
      return clip === undefined ? inside : inside.flatMap((each) => clipItem(each, clip, maxError));
    }
    // White areas only cover what lies under them.
    if (item.kind === "path" && item.fill === "white") return [];
    return goesIn(item.kind === "text" ? "text" : item.role) ? [item] : [];
  };
  return drawing.items.flatMap(pick);
}

function clipItem(item: PickedItem, clip: Bounds, maxError: number): PickedItem[] {
  switch (item.kind) {
    case "text":
      return isIn(item.at, clip) ? [item] : [];
    case "path":
      return [{ ...item, paths: item.paths.flatMap((path) => clipPath(path, clip, maxError)) }];
    case "circle": {
      const path = circlePath(item.centre, item.radius);
      return [{ kind: "path", role: item.role, paths: clipPath(path, clip, maxError) }];
    }
  }
}
