import type { Knife } from "../blade/knife.js";
import { type Finding, length } from "../errors/issue.js";
import { isSameMaterial } from "../materials/materials.js";
import type { HandlePiece } from "../stock/bench-tools.js";
import type { ShopSpec } from "../stock/shop.js";
import { type HandleBlank, handleBlank } from "./blanks.js";

/** Sizes in inches do not come out whole in mm. */
const HAIR = 1e-6;

/**
 * Whether a piece on the shelf is large enough for the handle, of its material. Nothing is said where the shop lists no such
 * pieces, or the file does not describe the handle.
 *
 * @example
 * handleStockFindings(knife, DEFAULT_SHOP); // []
 */
export function handleStockFindings(knife: Knife, { handleStock, kerf }: ShopSpec): Finding[] {
  const blank = handleBlank(knife, kerf);
  if (blank === undefined || handleStock === undefined) return [];
  const { handleSpare } = knife.limits;
  const alike = handleStock.filter(({ material }) => isSameMaterial(material, blank.material));
  if (alike.some((piece) => serves(piece, blank, handleSpare.value))) return [];
  const [largest] = [...alike].sort((a, b) => volume(b) - volume(a));
  const needed = {
    material: blank.material,
    length: length(blank.length),
    height: length(blank.height),
    thickness: length(blank.thickness),
  };
  const size =
    blank.kind === "slabs"
      ? "two pieces of {length} × {height} × {thickness}"
      : "a block of {length} × {height} × {thickness}";
  return [
    {
      code: "handle-stock-small",
      severity: "note",
      path: "handleStock",
      text:
        largest === undefined
          ? `No {material} is on the shelf; the handle takes ${size}.`
          : `No piece of {material} on the shelf is large enough: the handle takes ${size}; the largest is {ownLength} × {ownHeight} × {ownThickness}. Take another piece, or draw the handle smaller.`,
      values:
        largest === undefined
          ? needed
          : {
              ...needed,
              ownLength: length(largest.length),
              ownHeight: length(largest.height),
              ownThickness: length(largest.thickness),
            },
      basis: handleSpare.basis,
    },
  ];
}

const volume = (piece: HandlePiece): number => piece.length * piece.height * piece.thickness;

/**
 * Whether a blank can be sawn from a piece, lying as it is or turned on its side.
 *
 * @param spare - what the piece is to be larger each way, mm.
 */
function serves(piece: HandlePiece, { kind, bookMatched, ...blank }: HandleBlank, spare: number): boolean {
  const { count = 1 } = piece;
  const over = spare - HAIR;
  const holds = (thickness: number): boolean =>
    piece.length >= blank.length + over &&
    ((piece.height >= blank.height + over && piece.thickness >= thickness + over) ||
      (piece.thickness >= blank.height + over && piece.height >= thickness + over));
  if (kind === "block") return holds(blank.thickness);
  return (count >= 2 && holds(blank.thickness)) || (bookMatched !== undefined && holds(bookMatched));
}
