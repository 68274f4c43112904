/** A flat piece as it lies on the anvil, mm: `height` is what the hammer takes down. */
export interface FlatPiece {
  readonly width: number;
  readonly height: number;
  readonly length: number;
}

/** One thing that is done to a flat piece, and how it would be undone. */
export interface FlatStep {
  readonly apply: (piece: FlatPiece) => FlatPiece;
  readonly undo: (piece: FlatPiece) => FlatPiece;
}

/**
 * Volume of a flat piece, mm³.
 *
 * @example
 * flatVolume({ width: 40, height: 6, length: 100 }); // 24000
 */
export const flatVolume = ({ width, height, length }: FlatPiece): number => width * height * length;

/**
 * Surface of a flat piece, both ends included, mm².
 *
 * @example
 * pieceSurface({ width: 2, height: 3, length: 4 }); // 52
 */
export const pieceSurface = ({ width, height, length }: FlatPiece): number =>
  2 * width * height + 2 * height * length + 2 * length * width;

/**
 * Squeezes a piece to the share `kept` of its height: the share `spread` of the thinning goes into width, the rest into
 * length, and no steel is lost.
 *
 * @param kept - More than 0; above 1 it is driven back on edge.
 * @param spread - 0 (all into length) to 1 (all into width).
 *
 * @example
 * squeezed(0.5, 0).apply({ width: 40, height: 12, length: 100 }); // { width: 40, height: 6, length: 200 }
 */
export function squeezed(kept: number, spread: number): FlatStep {
  const way = (piece: FlatPiece, share: number): FlatPiece => ({
    width: piece.width / share ** spread,
    height: piece.height * share,
    length: piece.length / share ** (1 - spread),
  });
  return { apply: (piece) => way(piece, kept), undo: (piece) => way(piece, 1 / kept) };
}

/**
 * Takes fixed lengths off a piece: `width`, `height` and `length` mm in all.
 *
 * @example
 * // two joints of a stack, 0.2 mm off both faces of each
 * trimmed({ height: 0.8 }).apply({ width: 40, height: 18, length: 100 }).height; // 17.2
 */
export function trimmed(off: Partial<FlatPiece>): FlatStep {
  const { width = 0, height = 0, length = 0 } = off;
  const way = (piece: FlatPiece, sign: 1 | -1): FlatPiece => ({
    width: piece.width - sign * width,
    height: piece.height - sign * height,
    length: piece.length - sign * length,
  });
  return { apply: (piece) => way(piece, 1), undo: (piece) => way(piece, -1) };
}

/**
 * Burns the share `loss` of a piece in one heat. The section is what it is forged to, so the length gives.
 *
 * @example
 * burnt(0.02).apply({ width: 40, height: 6, length: 100 }).length; // 98
 */
export function burnt(loss: number): FlatStep {
  return {
    apply: (piece) => ({ ...piece, length: piece.length * (1 - loss) }),
    undo: (piece) => ({ ...piece, length: piece.length / (1 - loss) }),
  };
}

/**
 * Burns `volume` mm³ off a piece in one heat, as a skin does; the length gives.
 *
 * @example
 * burntOff(240).apply({ width: 40, height: 6, length: 100 }).length; // 99
 */
export function burntOff(volume: number): FlatStep {
  const way = (piece: FlatPiece, sign: 1 | -1): FlatPiece => ({
    ...piece,
    length: piece.length - (sign * volume) / (piece.width * piece.height),
  });
  return { apply: (piece) => way(piece, 1), undo: (piece) => way(piece, -1) };
}
