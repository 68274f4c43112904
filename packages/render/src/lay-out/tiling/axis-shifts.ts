/** A row of windows along one axis, begun at `start`, with what its overlaps do to the drawing. */
export interface AxisShift {
  /** Where the first window begins, whole mm. */
  readonly start: number;
  readonly count: number;
  /** Features that lie in an overlap or within 2 mm of one. */
  readonly featuresHidden: number;
  /** Pieces to cut out that a joint leaves a last bit of, and pieces that a joint goes through at all. */
  readonly pieceSlivers: number;
  readonly piecesCut: number;
  /** Lettering that reaches across a whole overlap, so that neither page has it whole; figures that a joint goes through wherever they stand. */
  readonly textsCut: number;
  /** Ends of the view there, with the same room. */
  readonly endsHidden: number;
  /** Corners of outlines there: a joint is laid best where lines run straight on. */
  readonly cornersHidden: number;
  /** Lettering that a joint goes through, so that it is cut and joined again. */
  readonly textsParted: number;
  /** Lettering of which something lies in an overlap. */
  readonly textsTouched: number;
  /** Punched points that a joint goes through or close by. */
  readonly punchedCut: number;
  /** How unevenly the paper left over is shared between both ends, mm. */
  readonly offCentre: number;
}

export interface Axis {
  /** What must be covered, whole mm. */
  readonly from: number;
  readonly to: number;
  /** Length of a window and of an overlap, whole mm. */
  readonly window: number;
  readonly overlap: number;
  readonly features: readonly number[];
  readonly ends: readonly number[];
  readonly corners: readonly number[];
  readonly punched: readonly number[];
  /** Lettering, and the pieces that are cut out. */
  readonly spans: readonly Span[];
  /** Of each figure that may be moved along its line every place that it may take. */
  readonly figures: readonly (readonly Span[])[];
  readonly pieces: readonly Span[];
}

/** What something takes of the axis, mm. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

/** Room that lettering keeps from a joint, mm: what the scissors take, and the line itself. */
export const JOINT_CLEAR = 1;
/** Whether something lies on one side of a joint: whole on its page before that is cut, and after. */
export const isClearOfJoint = ({ from, to }: Span, at: number): boolean =>
  from >= at + JOINT_CLEAR || to <= at - JOINT_CLEAR;
/** Room that a feature keeps from an overlap, mm. */
const FEATURE_CLEAR = 2;
/** Room that a punched point keeps from a joint, mm: half the hole and what the scissors take. Stitches are 3 to 5 mm apart. */
const PUNCH_CLEAR = 1.5;
/** Less than this of a piece is not worth joining, nor of the drawing a page of its own, mm. */
export const SLIVER = 15;

/**
 * Every way to lay equal windows along an axis, by whole mm: one for each shift up to the distance of two windows. Those
 * that need one window more than the least are among them, for such a grid may have more empty windows.
 */
export function axisShifts(axis: Axis): AxisShift[] {
  const { from, to, window, overlap, spans, figures, pieces } = axis;
  const pitch = window - overlap;
  return Array.from({ length: pitch }, (_, shift) => {
    const start = from - shift;
    const count = Math.max(1, Math.ceil((to - start - overlap) / pitch));
    const bands = Array.from({ length: count - 1 }, (_, index) => {
      const low = start + (index + 1) * pitch;
      return { low, high: low + overlap };
    });
    const hidden = (points: readonly number[]): number =>
      points.filter((point) =>
        bands.some(({ low, high }) => point > low - FEATURE_CLEAR && point < high + FEATURE_CLEAR),
      ).length;
    const isCut = (span: Span): boolean => bands.some(({ low, high }) => span.from < low && span.to > high);
    const touched = spans.filter((span) => bands.some(({ low, high }) => span.from < high && span.to > low));
    const joints = bands.map(({ low, high }) => (low + high) / 2);
    const isParted = (span: Span): boolean => joints.some((at) => !isClearOfJoint(span, at));
    // A joint on the very rim of a piece leaves all of it on one page.
    const through = (least: number): number =>
      pieces.reduce(
        (sum, piece) =>
          sum + joints.filter((at) => at > piece.from && at < piece.to && bitOf(piece, at) < least).length,
        0,
      );
    const leftOver = start + count * pitch + overlap - to;
    return {
      start,
      count,
      featuresHidden: hidden(axis.features),
      endsHidden: hidden(axis.ends),
      cornersHidden: hidden(axis.corners),
      punchedCut: axis.punched.filter((point) => joints.some((at) => Math.abs(point - at) < PUNCH_CLEAR))
        .length,
      pieceSlivers: through(SLIVER),
      piecesCut: through(Number.POSITIVE_INFINITY),
      textsCut: spans.filter(isCut).length + figures.filter((places) => places.every(isParted)).length,
      textsParted: spans.filter(isParted).length,
      textsTouched: touched.length,
      offCentre: Math.abs(leftOver - shift),
    };
  });
}

/** What a joint leaves of a piece on its shorter side. */
const bitOf = ({ from, to }: Span, at: number): number => Math.min(at - from, to - at);
